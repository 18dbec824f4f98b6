package blindlap.screen.plan;

import blindlap.screen.part.TypedForm;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/** What can be taken back on the Plan page: the steps of every draft that was open. */
public final class PlanUndo {
  private final Map<String, PlanSteps> drafts = new LinkedHashMap<>();
  private final ReadOnlyStringWrapper back = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper again = new ReadOnlyStringWrapper("");
  private final TypedForm form;
  private final Consumer<Runnable> restore;
  private PlanSteps steps = new PlanSteps(Map.of());

  /**
   * @param form the draft on the page
   * @param restore makes a change that is no step of its own, and keeps the draft
   */
  PlanUndo(TypedForm form, Consumer<Runnable> restore) {
    this.form = form;
    this.restore = restore;
  }

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

  /** True while something is being typed that is no step yet. */
  boolean open() {
    return steps.open();
  }

  /** A text takes its own typing back; see {@link PlanSteps#inField}. */
  void inField(Runnable takesBack) {
    steps.inField(takesBack);
    tell();
  }

  void settle() {
    steps.settle();
    tell();
  }

  /**
   * Takes the last step back.
   *
   * @return where it changed something, as in a plan file; empty if nothing was left
   */
  public Optional<String> takeBack() {
    return steps.undo().map(step -> become(step.before(), step));
  }

  /** Does the step again that was taken back; answers as {@link #takeBack}. */
  public Optional<String> doAgain() {
    return steps.redo().map(step -> become(step.after(), step));
  }

  private String become(Map<String, Object> fields, PlanSteps.Step step) {
    restore.accept(() -> form.become(fields));
    tell();
    return step.path();
  }

  private void tell() {
    back.set(steps.last().map(PlanSteps.Step::words).orElse(""));
    again.set(steps.next().map(PlanSteps.Step::words).orElse(""));
  }
}
