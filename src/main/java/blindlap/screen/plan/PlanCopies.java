package blindlap.screen.plan;

import blindlap.desk.Planning;
import blindlap.plan.Plan;
import blindlap.screen.part.Shell;
import blindlap.screen.part.TypedForm;
import blindlap.session.day.SessionId;
import blindlap.wording.PlanWords;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/**
 * Drafts that are copies of committed plans, and the series that a draft belongs to: a copy stays
 * in a series that is under way, and the page asks whether it is to.
 */
public final class PlanCopies {
  private final Planning planning;
  private final Shell shell;
  private final TypedForm form;
  private final Consumer<Map<String, Object>> start;
  private final Consumer<Runnable> step;
  private final ReadOnlyBooleanWrapper sessionOpen = new ReadOnlyBooleanWrapper();
  private final ReadOnlyStringWrapper place = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper question = new ReadOnlyStringWrapper("");

  /**
   * @param start begins a draft with these fields
   * @param step makes what is changed in it one step that can be taken back
   */
  PlanCopies(
      Planning planning,
      Shell shell,
      TypedForm form,
      ReadOnlyObjectProperty<Optional<Plan>> plan,
      Consumer<Map<String, Object>> start,
      Consumer<Runnable> step) {
    this.planning = planning;
    this.shell = shell;
    this.form = form;
    this.start = start;
    this.step = step;
    shell.sessionProperty().addListener((o, before, now) -> sessionOpen.set(now.isPresent()));
    sessionOpen.set(shell.sessionProperty().get().isPresent());
    plan.addListener((o, before, now) -> place());
  }

  /** True if a session is open that a plan can start from. */
  public ReadOnlyBooleanProperty sessionOpenProperty() {
    return sessionOpen.getReadOnlyProperty();
  }

  /** Starts a draft as a copy of the open session's plan. */
  public void startFromOpenSession() {
    shell.sessionProperty().get().ifPresent(this::startFrom);
  }

  /** Starts a draft as a copy of a committed session's plan. */
  public void startFrom(SessionId session) {
    planning
        .copyOf(session)
        .ifPresent(
            fields -> {
              start.accept(fields);
              ask();
            });
  }

  /** Another draft is on the page. */
  void opened(String draft) {
    question.set("");
    place();
    if (shell.takeCopied(draft)) {
      ask();
    }
  }

  /** Which session of its series the draft is; empty outside one. */
  public ReadOnlyStringProperty placeProperty() {
    return place.getReadOnlyProperty();
  }

  /** What is asked of a copy of a plan of a series; empty if nothing is. */
  public ReadOnlyStringProperty questionProperty() {
    return question.getReadOnlyProperty();
  }

  private void ask() {
    place();
    question.set(place.get().isEmpty() ? "" : place.get() + " " + PlanWords.say("series.ask"));
  }

  private void place() {
    String series = form.field("series").get().strip();
    place.set(
        series.isEmpty()
            ? ""
            : PlanWords.seriesPlace(
                series,
                planning.numberInSeries(series),
                form.field("series_sessions").get().strip()));
  }

  /** The copy stays in its series. */
  public void keepInSeries() {
    question.set("");
  }

  /** The copy becomes a session of its own. */
  public void planOutside() {
    question.set("");
    step.accept(
        () -> {
          form.field("series").set("");
          form.field("series_sessions").set("");
        });
  }
}
