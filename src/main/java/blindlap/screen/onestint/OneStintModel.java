package blindlap.screen.onestint;

import blindlap.desk.DeskFault;
import blindlap.desk.OneStints;
import blindlap.desk.Sessions;
import blindlap.fault.Problem;
import blindlap.fault.TypedNumber;
import blindlap.screen.part.Background;
import blindlap.session.OneStint;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.wording.OneStintWords;
import blindlap.wording.SwapWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;

/**
 * The one-stint view in the window: what to set for a stint is held for as long as it is shown, and
 * then let go of for good. Whether the rider saw is asked afterwards.
 */
public final class OneStintModel {
  /** How long what to set is in sight. */
  public static final Duration IN_SIGHT = Duration.ofSeconds(60);

  /** What the page shows. */
  public enum Phase {
    /** Another page is in its place. */
    CLOSED,
    /** Name, stint and words are asked for. */
    ASKS,
    /** What to set is in sight. */
    SHOWN,
    /** It is gone, and whether the rider saw is still to be said. */
    GONE,
    /** Nothing can be shown in this session now. */
    REFUSED
  }

  /**
   * Whether the rider saw is to be said of a stint.
   *
   * @param name of whoever looked
   */
  public record Asked(int stint, String name) {}

  private final OneStints views;
  private final Sessions sessions;
  private final Background background;
  private final LongSupplier monotonic;
  private final Runnable written;
  private final ReadOnlyObjectWrapper<Phase> phase = new ReadOnlyObjectWrapper<>(Phase.CLOSED);
  private final ReadOnlyObjectWrapper<Optional<Asked>> asked =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyStringWrapper left = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private @Nullable SessionId id;
  private OneStints.Shown.@Nullable Setup shown;
  private long since;
  private boolean working;

  /**
   * @param views shows what to set, once
   * @param monotonic nanoseconds that only ever grow
   * @param written run after every entry that was written here
   */
  public OneStintModel(
      OneStints views,
      Sessions sessions,
      Background background,
      LongSupplier monotonic,
      Runnable written) {
    this.views = views;
    this.sessions = sessions;
    this.background = background;
    this.monotonic = monotonic;
    this.written = written;
  }

  /** What the page shows. */
  public ReadOnlyObjectProperty<Phase> phaseProperty() {
    return phase.getReadOnlyProperty();
  }

  /** Of which stint it is to be said whether the rider saw; empty if of none. */
  public ReadOnlyObjectProperty<Optional<Asked>> askedProperty() {
    return asked.getReadOnlyProperty();
  }

  /** How long what to set stays in sight, such as "gone in 0:43"; empty unless it is. */
  public ReadOnlyStringProperty leftProperty() {
    return left.getReadOnlyProperty();
  }

  /** One sentence if something was refused; else empty. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** What to set; empty unless it is in sight. */
  Optional<OneStints.Shown.Setup> shown() {
    return Optional.ofNullable(shown);
  }

  /** Nanoseconds that only ever grow. */
  LongSupplier monotonic() {
    return monotonic;
  }

  /** Opens a session. */
  public void open(SessionId session) {
    if (!session.equals(id)) {
      id = session;
      leave();
      asked.set(Optional.empty());
    }
    reload(this::take);
  }

  private void reload(java.util.function.Consumer<SessionState> taken) {
    SessionId now = id;
    if (now != null) {
      background.run(() -> sessions.state(now), found -> found.ifPresent(taken), this::failed);
    }
  }

  private void take(SessionState latest) {
    asked.set(
        views
            .unanswered(latest)
            .flatMap(
                stint ->
                    Optional.ofNullable(latest.oneStint().get(stint))
                        .map(OneStint::name)
                        .map(name -> new Asked(stint, name))));
    if (phase.get() == Phase.GONE && asked.get().isEmpty()) {
      phase.set(Phase.CLOSED);
    }
  }

  /** Somebody comes with a slip. */
  public void begin() {
    trouble.set("");
    reload(
        latest -> {
          take(latest);
          Optional<List<Problem>> refusal = views.refusal(latest);
          refusal.ifPresent(this::refuse);
          phase.set(
              refusal.isPresent()
                  ? Phase.REFUSED
                  : asked.get().isPresent() ? Phase.GONE : Phase.ASKS);
        });
  }

  /**
   * Shows what to set for a stint, once: up to a second of work.
   *
   * @param name of whoever looks
   * @param stint as typed
   * @param words as typed
   */
  public void show(String name, String stint, String words) {
    SessionId now = id;
    if (now == null || working || phase.get() != Phase.ASKS) {
      return;
    }
    Optional<Integer> number = TypedNumber.whole(stint.strip());
    if (number.isEmpty()) {
      refuse(List.of(Problem.of(DeskFault.ONE_STINT_NO_CODE, "", stint.strip())));
      return;
    }
    working = true;
    background.run(
        () -> {
          SessionState latest = sessions.state(now).orElseThrow();
          List<Problem> missing = views.missing(latest, number.get());
          return missing.isEmpty()
              ? views.show(latest, number.get(), name.strip(), words)
              : new OneStints.Shown.Refused(missing);
        },
        this::came,
        this::failed);
  }

  private void came(OneStints.Shown answer) {
    working = false;
    if (answer instanceof OneStints.Shown.Refused refused) {
      refuse(refused.problems());
      return;
    }
    written.run();
    if (phase.get() != Phase.ASKS) {
      reload(this::take); // whoever asked has left meanwhile: it is shown to nobody
      return;
    }
    trouble.set("");
    shown = (OneStints.Shown.Setup) answer;
    since = monotonic.getAsLong();
    phase.set(Phase.SHOWN);
    tick();
  }

  /** Once a second. */
  public void tick() {
    if (phase.get() == Phase.SHOWN) {
      Duration rest = IN_SIGHT.minusNanos(monotonic.getAsLong() - since);
      if (rest.isNegative() || rest.isZero()) {
        hide();
      } else {
        left.set(OneStintWords.say("page.left", SwapWords.countdown(rest)));
      }
    }
  }

  /** What to set goes, and does not come back. */
  public void hide() {
    if (phase.get() == Phase.SHOWN) {
      shown = null;
      left.set("");
      phase.set(Phase.GONE);
      reload(this::take);
    }
  }

  /** The page is left. */
  public void leave() {
    hide();
    trouble.set("");
    phase.set(Phase.CLOSED);
  }

  /** Whether the rider saw or heard what was set; if so the blind is broken in that stint. */
  public void answer(boolean saw) {
    SessionId now = id;
    Asked question = asked.get().orElse(null);
    if (now == null || question == null || working) {
      return;
    }
    working = true;
    background.run(
        () -> views.answer(now, question.stint(), saw),
        result -> {
          working = false;
          if (result instanceof Sessions.Result.Refused refused) {
            refuse(refused.problems());
            return;
          }
          trouble.set("");
          take(((Sessions.Result.Done) result).state());
          written.run();
        },
        this::failed);
  }

  private void refuse(List<Problem> problems) {
    trouble.set(String.join(" ", Problems.sentences(problems)));
  }

  private void failed(Exception problem) {
    working = false;
    trouble.set(SwapWords.say("not.saved", Trouble.sentence(problem)));
  }

  /** Says nothing of what it shows. */
  @Override
  public String toString() {
    return "OneStintModel[" + phase.get() + "]";
  }
}
