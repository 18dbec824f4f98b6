package blindlap.screen.plan;

import blindlap.plan.Practised;
import blindlap.screen.part.TypedForm;
import blindlap.wording.PlanWords;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;

/**
 * Swaps practised before the day: from each setup to the next in turn, so that none of it says
 * anything of an order, which is not even drawn. The times go into the plan as if they were typed.
 */
final class PracticeModel {
  /** Three swaps each way. */
  private static final int ENOUGH = 6;

  private final TypedForm form;
  private final Clock clock;
  private final ReadOnlyStringWrapper now = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper proposal = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper running = new ReadOnlyBooleanWrapper();
  private @Nullable Instant begun;

  PracticeModel(TypedForm form, Clock clock) {
    this.form = form;
    this.clock = clock;
    times().textProperty().addListener((o, before, after) -> say());
    say();
  }

  private TypedForm.Entry times() {
    return form.part("timetable").field("practised");
  }

  private Practised practised() {
    return Practised.read(times().get()).orElse(Practised.NONE);
  }

  /** What to fit next, or what runs. */
  ReadOnlyStringProperty nowProperty() {
    return now.getReadOnlyProperty();
  }

  /** The swap time that the practised swaps ask for; empty if none was practised. */
  ReadOnlyStringProperty proposalProperty() {
    return proposal.getReadOnlyProperty();
  }

  /** True while a swap is timed. */
  ReadOnlyBooleanProperty runningProperty() {
    return running.getReadOnlyProperty();
  }

  /** The rider would give the bike back now: a swap begins. */
  void begin() {
    begun = clock.instant();
    running.set(true);
    say();
  }

  /** The bike is ready: the swap counts. */
  void done() {
    Instant from = begun;
    stop();
    if (from == null) {
      return;
    }
    long seconds = Duration.between(from, clock.instant()).toSeconds();
    if (seconds > 0) {
      times().set(practised().with(BigDecimal.valueOf(seconds)).text());
    }
  }

  /** What runs does not count. */
  void stop() {
    begun = null;
    running.set(false);
    say();
  }

  /** The last practised swap does not count. */
  void takeBack() {
    times().set(practised().withoutLast().text());
  }

  /** Takes the proposal as the swap time of the plan. */
  void take() {
    if (practised().any()) {
      form.part("timetable").field("swap").set(practised().minutes().toPlainString());
    }
  }

  /** Says what to fit now; the setups may have got other names. */
  void say() {
    Practised all = practised();
    int done = all.seconds().size();
    String way =
        PlanWords.say(
            "practice.way", name(done), name(done + 1), done + 1, Math.max(ENOUGH, done + 1));
    now.set(running.get() ? PlanWords.say("practice.running", way) : way);
    proposal.set(
        all.any()
            ? PlanWords.say(
                "practice.proposal",
                Practised.text(all.longest()),
                done,
                all.minutes().toPlainString())
            : "");
  }

  private String name(int place) {
    List<TypedForm> setups = form.list("setups");
    int at = setups.size() < 2 ? place % 2 : place % setups.size();
    String name = at < setups.size() ? setups.get(at).field("name").get().strip() : "";
    return name.isEmpty()
        ? PlanWords.say("practice.setup", String.valueOf((char) ('A' + at)))
        : name;
  }
}
