package blindlap.screen.plan;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/** What can be taken back on the Plan page: the steps of every draft that was open. */
public final class PlanUndo {
  private final Map<String, PlanSteps> drafts = new LinkedHashMap<>();
  private final ReadOnlyStringWrapper back = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper again = new ReadOnlyStringWrapper("");
  private PlanSteps steps = new PlanSteps(Map.of());

  /** What would be taken back next, for people; empty if nothing would. */
  public ReadOnlyStringProperty backProperty() {
    return back.getReadOnlyProperty();
  }

  /** What would be done again next, for people; empty if nothing would. */
  public ReadOnlyStringProperty againProperty() {
    return again.getReadOnlyProperty();
  }

  /** Another draft is open; its steps are those it had, unless it was changed elsewhere. */
  void open(String draft, Map<String, Object> fields) {
    steps.settle();
    PlanSteps kept = drafts.get(draft);
    steps = kept != null && Objects.equals(kept.fields(), fields) ? kept : new PlanSteps(fields);
    drafts.put(draft, steps);
    tell();
  }

  /** The draft has become a session: nothing of it is taken back any more. */
  void forget(String draft) {
    drafts.remove(draft);
  }

  void changed(Map<String, Object> fields) {
    steps.changed(fields);
    tell();
  }

  void settle() {
    steps.settle();
    tell();
  }

  Optional<PlanSteps.Step> undo() {
    return move(PlanSteps::undo);
  }

  Optional<PlanSteps.Step> redo() {
    return move(PlanSteps::redo);
  }

  private Optional<PlanSteps.Step> move(Function<PlanSteps, Optional<PlanSteps.Step>> way) {
    Optional<PlanSteps.Step> step = way.apply(steps);
    tell();
    return step;
  }

  private void tell() {
    back.set(steps.last().map(PlanSteps.Step::words).orElse(""));
    again.set(steps.next().map(PlanSteps.Step::words).orElse(""));
  }
}
