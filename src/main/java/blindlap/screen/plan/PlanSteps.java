package blindlap.screen.plan;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The steps of one draft that can be taken back and done again. What is typed into one field is one
 * step, however many letters it has; what comes or goes at one press is one, too.
 */
final class PlanSteps {
  /** Far more than anybody takes back; older ones are let go. */
  static final int MOST = 500;

  /**
   * One step.
   *
   * @param before the fields before it
   * @param after the fields after it
   * @param changes what it changed
   */
  record Step(Map<String, Object> before, Map<String, Object> after, List<PlanChange> changes) {
    /** Where the first change stands, as in a plan file. */
    String path() {
      return changes.isEmpty() ? "" : changes.get(0).path();
    }

    /** What was changed, for people. */
    String words() {
      return PlanChange.words(changes);
    }
  }

  private final Deque<Step> done = new ArrayDeque<>();
  private final Deque<Step> undone = new ArrayDeque<>();

  /** The fields when the last step was complete, and as they are now. */
  private Map<String, Object> rest;

  private Map<String, Object> now;

  /** The fields before a text began to take its own typing back; null while none does. */
  private @Nullable Map<String, Object> typed;

  private boolean inField;

  PlanSteps(Map<String, Object> fields) {
    this.rest = fields;
    this.now = fields;
  }

  /** The fields as they are now. */
  Map<String, Object> fields() {
    return now;
  }

  /**
   * A text takes its own typing back. Once it is as it was, what it held can be done again here,
   * for the text itself forgets it when it is left.
   */
  void inField(Runnable takesBack) {
    Map<String, Object> whole = typed == null ? now : typed;
    inField = true;
    takesBack.run();
    inField = false;
    typed = whole;
    List<PlanChange> changes = PlanChange.between(rest, whole);
    if (!open() && !changes.isEmpty()) {
      undone.push(new Step(rest, whole, changes));
      typed = null;
    }
  }

  /** Something was changed: the same step goes on only while it is the same field. */
  void changed(Map<String, Object> fields) {
    if (!inField) {
      typed = null;
    }
    List<PlanChange> all = PlanChange.between(rest, fields);
    if (all.size() > 1) {
      settle();
      all = PlanChange.between(rest, fields);
    }
    now = fields;
    if (all.stream().anyMatch(change -> change.kind() != PlanChange.Kind.TYPED)) {
      settle();
    }
  }

  /** A field was left: its step is complete. */
  void settle() {
    List<PlanChange> changes = PlanChange.between(rest, now);
    if (!changes.isEmpty()) {
      done.push(new Step(rest, now, changes));
      undone.clear();
      typed = null;
      if (done.size() > MOST) {
        done.removeLast();
      }
    }
    rest = now;
  }

  /** True while something differs from the end of the last step. */
  boolean open() {
    return !rest.equals(now);
  }

  /** What would be taken back next; a field that is being typed into comes first. */
  Optional<Step> last() {
    List<PlanChange> open = PlanChange.between(rest, now);
    return open.isEmpty()
        ? Optional.ofNullable(done.peek())
        : Optional.of(new Step(rest, now, open));
  }

  /** What would be done again next. */
  Optional<Step> next() {
    return PlanChange.between(rest, now).isEmpty()
        ? Optional.ofNullable(undone.peek())
        : Optional.empty();
  }

  /** Takes a step back; the fields are then those before it. */
  Optional<Step> undo() {
    settle();
    Step step = done.poll();
    if (step == null) {
      return Optional.empty();
    }
    undone.push(step);
    rest = step.before();
    now = rest;
    return Optional.of(step);
  }

  /** Does a step again that was taken back. */
  Optional<Step> redo() {
    settle();
    Step step = undone.poll();
    if (step == null) {
      return Optional.empty();
    }
    done.push(step);
    rest = step.after();
    now = rest;
    return Optional.of(step);
  }
}
