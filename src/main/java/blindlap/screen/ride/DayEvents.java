package blindlap.screen.ride;

import blindlap.desk.RiderDays;
import blindlap.desk.Sessions;
import blindlap.screen.part.Background;
import blindlap.session.SessionState;
import blindlap.session.day.DayEvent;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.SessionId;
import blindlap.wording.SwapWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.RideWords;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.IntConsumer;
import java.util.function.IntSupplier;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;

/**
 * What rider and helper may both say on the day, without a phrase: the blind is broken, a cover
 * came off, the day ends early, the day is closed. What it does to the result is said at once.
 */
public final class DayEvents {
  private final RiderDays days;
  private final Background background;
  private final IntSupplier stint;
  private final Consumer<SessionState> then;
  private final Sealing sealing;
  private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private @Nullable SessionId id;

  /** What became of words that were to be sealed. */
  public enum Sealed {
    DONE,
    /** There is no entry to seal them in, or nobody seals here: everyone may read them. */
    NOT,
    /** The entry in hand has no more room; nothing was kept of them. */
    NO_ROOM
  }

  /** Takes the words on an event out of what the rider can read. */
  @FunctionalInterface
  public interface Sealing {
    Sealed seal(DayEvent event, int stint, String words);
  }

  /**
   * @param stint the stint the page speaks of, 0 for the warm-up; negative for the one that is
   *     ridden now
   * @param then takes the session as it stands afterwards
   */
  public DayEvents(
      RiderDays days, Background background, IntSupplier stint, Consumer<SessionState> then) {
    this(days, background, stint, then, (event, at, words) -> Sealed.NOT);
  }

  /**
   * @param sealing takes the words on an event where they can be sealed
   */
  public DayEvents(
      RiderDays days,
      Background background,
      IntSupplier stint,
      Consumer<SessionState> then,
      Sealing sealing) {
    this.sealing = sealing;
    this.days = days;
    this.background = background;
    this.stint = stint;
    this.then = then;
  }

  public void open(SessionId session) {
    id = session;
    said.set("");
    trouble.set("");
  }

  public void refuse(String why) {
    trouble.set(why);
  }

  public void say(String words) {
    said.set(words);
  }

  /** What the latest event does to the result; else empty. */
  public ReadOnlyStringProperty saidProperty() {
    return said.getReadOnlyProperty();
  }

  /** One sentence if an event was refused; else empty. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  private SessionId session() {
    return Objects.requireNonNull(id, "no session is open");
  }

  /** Another helper takes over. */
  public void helperChanged(String who) {
    deviation(DeviationKind.HELPER_CHANGED, DayEvent.HELPER_CHANGED, who);
  }

  /** A cover came off. */
  public void coverOff(String what) {
    deviation(DeviationKind.COVER_OFF, DayEvent.COVER_OFF, what);
  }

  private void deviation(DeviationKind kind, DayEvent event, String what) {
    withStint(
        at ->
            sealed(event, at, what)
                .ifPresent(
                    words ->
                        act(
                            () -> days.deviation(session(), at, kind, words),
                            RideWords.say("deviation.done"))));
  }

  /** The words that everyone may read; empty if nothing can be recorded. */
  private Optional<String> sealed(DayEvent event, int stint, String words) {
    if (words.isBlank()) {
      return Optional.of(words);
    }
    return switch (sealing.seal(event, stint, words)) {
      case DONE -> Optional.of(SwapWords.say("event.sealed"));
      case NOT -> Optional.of(words);
      case NO_ROOM -> {
        refuse(SwapWords.say("event.too.long"));
        yield Optional.empty();
      }
    };
  }

  /** The rider saw or was told, or someone had to look at the bike. */
  public void blindBroken(String what) {
    withStint(
        at -> {
          int broken = Math.max(1, at);
          sealed(DayEvent.BLIND_BROKEN, broken, what)
              .ifPresent(
                  words ->
                      act(
                          () -> days.blindBroken(session(), broken, words),
                          RideWords.say("blind.broken.done", broken)));
        });
  }

  private void withStint(IntConsumer then) {
    int shown = stint.getAsInt();
    if (shown >= 0) {
      then.accept(shown);
      return;
    }
    background.run(
        () -> DayEnd.stintNow(days.state(session()).orElseThrow()), then::accept, this::failed);
  }

  /** The day ends after the stint that was ridden last. */
  public void cutShort(String reason, String decidedBy, boolean knowsKey) {
    background.run(
        () -> days.state(session()).orElseThrow(),
        state -> {
          int last = DayEnd.lastStint(state);
          act(
              () -> days.cutShort(session(), last, reason, decidedBy, knowsKey),
              RideWords.cutShort(last, DayEnd.smallestP(state.plan(), last)));
        },
        this::failed);
  }

  /** The day is over. */
  public void closeDay() {
    act(() -> days.closeDay(session()), RideWords.say("day.closed.done"));
  }

  private void act(Callable<Sessions.Result> work, String effect) {
    background.run(
        work,
        result -> {
          if (result instanceof Sessions.Result.Refused refused) {
            trouble.set(String.join(" ", Problems.sentences(refused.problems())));
            return;
          }
          trouble.set("");
          said.set(effect);
          then.accept(((Sessions.Result.Done) result).state());
        },
        this::failed);
  }

  private void failed(Exception problem) {
    trouble.set(RideWords.notSaved(String.valueOf(problem.getMessage())));
  }
}
