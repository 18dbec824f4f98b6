package blindlap.ride;

import blindlap.desk.day.DayResult;
import blindlap.desk.day.RiderDays;
import blindlap.plan.DayEnd;
import blindlap.plan.TellingRun;
import blindlap.session.day.Day;
import blindlap.session.day.DayEvent;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.SessionId;
import blindlap.wording.day.Problems;
import blindlap.wording.day.RideTrialWords;
import blindlap.wording.day.RideWords;
import blindlap.wording.day.Trouble;
import blindlap.wording.day.Words;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.IntConsumer;
import java.util.function.IntSupplier;
import org.jspecify.annotations.Nullable;

/**
 * What rider and helper may both say on the day, without a phrase: the blind is broken, a cover
 * came off, the day ends early, the day is closed. What it does to the result is said at once; a
 * page says how.
 */
public abstract class DayEvents {
  /** The helper's page has the words on what is sealed. */
  private static final Words HELPER = Words.of("swap");

  private final RiderDays days;
  private final Elsewhere elsewhere;
  private final IntSupplier stint;
  private final Consumer<Day> then;
  private final Sealing sealing;
  private @Nullable SessionId id;
  private String last = "";

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
   * @param then takes the day as it stands afterwards
   * @param sealing takes the words on an event where they can be sealed
   */
  protected DayEvents(
      RiderDays days, Elsewhere elsewhere, IntSupplier stint, Consumer<Day> then, Sealing sealing) {
    this.days = days;
    this.elsewhere = elsewhere;
    this.stint = stint;
    this.then = then;
    this.sealing = sealing;
  }

  /** Shows what an event does to the result; empty to take it away. */
  public abstract void say(String words);

  /** Shows why something is refused; empty to take it away. */
  public abstract void refuse(String why);

  /** Opens a session. */
  public void open(SessionId session) {
    id = session;
    last = "";
    say("");
    refuse("");
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

  /** Pressed twice with the same words, an event is recorded once. */
  private boolean again(DayEvent event, int stint, String words) {
    String now = event + " " + stint + " " + words;
    boolean again = now.equals(last);
    last = now;
    return again;
  }

  private void deviation(DeviationKind kind, DayEvent event, String what) {
    if (what.isBlank()) {
      say("");
      refuse(RideWords.say("event.words.missing"));
      return;
    }
    withStint(
        at -> {
          if (again(event, at, what)) {
            return;
          }
          sealed(event, at, what)
              .ifPresent(
                  words ->
                      act(
                          () -> days.deviation(session(), at, kind, words),
                          RideWords.say("deviation.done")));
        });
  }

  /** The words that everyone may read; empty if nothing can be recorded. */
  private Optional<String> sealed(DayEvent event, int stint, String words) {
    if (words.isBlank()) {
      return Optional.of(words);
    }
    return switch (sealing.seal(event, stint, words)) {
      case DONE -> Optional.of(HELPER.say("event.sealed"));
      case NOT -> Optional.of(words);
      case NO_ROOM -> {
        refuse(HELPER.say("event.too.long"));
        yield Optional.empty();
      }
    };
  }

  /** The rider saw or was told, or someone had to look at the bike. */
  public void blindBroken(String what) {
    withStint(
        at -> {
          int broken = Math.max(1, at);
          if (!what.isBlank() && again(DayEvent.BLIND_BROKEN, broken, what)) {
            return;
          }
          sealed(DayEvent.BLIND_BROKEN, broken, what)
              .ifPresent(
                  words ->
                      act(
                          () -> days.blindBroken(session(), broken, words),
                          day -> RideWords.broken(day.plan().level(), broken)));
        });
  }

  private void withStint(IntConsumer then) {
    int shown = stint.getAsInt();
    if (shown >= 0) {
      then.accept(shown);
      return;
    }
    elsewhere.run(() -> days.day(session()).orElseThrow().stintNow(), then::accept, this::failed);
  }

  /** The day ends after the stint that was ridden last. */
  public void cutShort(String reason, String decidedBy, boolean knowsKey) {
    elsewhere.run(
        () -> days.day(session()).orElseThrow(),
        day -> {
          int last = day.latestStint();
          act(() -> days.cutShort(session(), last, reason, decidedBy, knowsKey), this::left);
        },
        this::failed);
  }

  /** What a day that was just cut short can still show. */
  private String left(Day day) {
    int last = day.lastStint();
    TellingRun run = day.plan().telling();
    return run == null
        ? RideWords.cutShort(last, DayEnd.smallestP(day.plan(), last))
        : RideTrialWords.cutShort(day, run);
  }

  /** What of the day is not ridden yet, in a sentence; empty if all of it is. */
  public String missing() {
    return Optional.ofNullable(id).flatMap(days::day).map(RideTrialWords::missing).orElse("");
  }

  /** The day is over. */
  public void closeDay() {
    act(() -> days.closeDay(session()), RideWords.say("day.closed.done"));
  }

  private void act(Callable<DayResult> work, String effect) {
    act(work, day -> effect);
  }

  private void act(Callable<DayResult> work, Function<Day, String> effect) {
    elsewhere.run(
        work,
        result -> {
          if (result instanceof DayResult.Refused refused) {
            last = "";
            say("");
            refuse(String.join(" ", Problems.sentences(refused.problems())));
            return;
          }
          Day day = ((DayResult.Done) result).day();
          refuse("");
          say(effect.apply(day));
          then.accept(day);
        },
        this::failed);
  }

  private void failed(Exception problem) {
    last = "";
    refuse(RideWords.notSaved(Trouble.sentence(problem)));
  }
}
