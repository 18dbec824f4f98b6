package blindlap.ride;

import blindlap.desk.day.DayResult;
import blindlap.desk.day.RiderDays;
import blindlap.session.day.Day;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import blindlap.wording.day.Problems;
import blindlap.wording.day.RideTrialWords;
import blindlap.wording.day.RideWords;
import blindlap.wording.day.Trouble;
import java.math.BigDecimal;
import java.time.Clock;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/**
 * The rider's day on any page: what was that lap like? Every answer is saved when its control is
 * released; times stay hidden until the lap is done, and by default until the review. A page says
 * how it shows what is told here; it decides nothing.
 */
public abstract class RideDay extends RideShown {
  private final RiderDays days;
  private final LongSupplier version;
  private final Elsewhere elsewhere;
  private final Clock clock;
  private final RideWatches watches;
  private final RideUndo undo;
  private final RideGuess guess;
  private final RideScorer scorer;
  private final RideDone done;
  private final RideVoids voids;
  private final RideCovariates covariates;

  private RideSheet sheet = RideSheet.NONE;
  private RideQuestions questions = RideQuestions.NONE;
  private @Nullable SessionId id;
  private @Nullable Day day;
  private @Nullable LapId watched;
  private long seen = Long.MIN_VALUE;
  private int underWay;
  private boolean saving;
  private boolean stepping;

  /**
   * @param days the rider's use cases
   * @param version grows whenever any window writes to the notebook
   * @param elsewhere where the disk is waited for
   * @param clock wall clock of watches and of "saved"
   * @param monotonic nanoseconds that only ever grow
   */
  protected RideDay(
      RiderDays days,
      LongSupplier version,
      Elsewhere elsewhere,
      Clock clock,
      LongSupplier monotonic) {
    this.days = days;
    this.version = version;
    this.elsewhere = elsewhere;
    this.clock = clock;
    RideHand hand = new Hand();
    this.watches = new RideWatches(hand, days, clock, monotonic);
    this.undo = new RideUndo(hand, days);
    this.scorer = new RideScorer(hand, days);
    this.done = new RideDone(hand);
    this.guess = new RideGuess(hand, days, done);
    this.voids = new RideVoids(hand, days, done, undo);
    this.covariates = new RideCovariates(hand, days, undo);
  }

  /** What is asked now. */
  public RideSheet sheet() {
    return sheet;
  }

  /** Taking back the last answer. */
  public RideUndo undo() {
    return undo;
  }

  /** The watches of the lap in hand. */
  public RideWatches watches() {
    return watches;
  }

  /** What the score sheet asks. */
  public RideQuestions questions() {
    return questions;
  }

  /** The guess on the stint. */
  public RideGuess guess() {
    return guess;
  }

  /** Who scores. */
  public RideScorer scorer() {
    return scorer;
  }

  /** Being done with a lap, and opening it again. */
  public RideDone done() {
    return done;
  }

  /** Laps spoiled by an event. */
  public RideVoids voids() {
    return voids;
  }

  /** What is asked of covariates. */
  public RideCovariates covariates() {
    return covariates;
  }

  /** The stint that is spoken of, 0 for the warm-up; -1 where no lap is in hand. */
  public int stintSpokenOf() {
    return sheet.lap() == null ? -1 : sheet.stint();
  }

  /** A lap as it is spoken of: its number over the day, in a telling run "2 of trial 4". */
  public String lapName(LapId lap) {
    return RideTrialWords.lap(Objects.requireNonNull(day, "no day is read").plan(), lap);
  }

  /** "Stint 7 of 16", or which lap of stint, warm-up or trial; empty where there is no lap. */
  public String headline() {
    return day == null ? "" : sheet.headline(day.plan());
  }

  /** Opens a session. */
  public void open(SessionId session) {
    id = session;
    day = null;
    done.clear();
    watched = null;
    undo.clear();
    opened(session);
    showsSaved("");
    reload();
  }

  private void reload() {
    SessionId now = id;
    if (now != null) {
      elsewhere.run(() -> days.day(now), found -> found.ifPresent(this::show), this::failed);
    }
  }

  /** Once a second: takes up what another window wrote. */
  public void tick() {
    if (id == null) {
      return;
    }
    elsewhere.run(
        version::getAsLong,
        now -> {
          if (now != seen) {
            seen = now;
            reload();
          }
        },
        this::failed);
  }

  /** Takes up the day as it stands. */
  protected final void show(Day latest) {
    day = latest;
    questions = RideQuestions.of(latest.plan());
    watches.takeUp(latest);
    RideSheet next = done.sheet(latest);
    if (next.lap() != null && !next.lap().equals(watched)) {
      watched = next.lap();
      watches.clear();
      undo.clear();
    }
    undo.look(latest);
    sheet = next;
    done.look(next);
    shows(next);
    showsVoids(voids.standing());
    showsOpen(done.words(next));
  }

  private void act(Callable<DayResult> work) {
    act(work, "", latest -> {});
  }

  /** A step of the day: pressed twice before the disk has it, it is still one step. */
  private void step(Callable<DayResult> work, String effect, Consumer<Day> accepted) {
    if (stepping) {
      return;
    }
    stepping = true;
    act(work, effect, accepted);
  }

  private void act(Callable<DayResult> work, String effect, Consumer<Day> accepted) {
    under(1);
    elsewhere.run(
        work,
        result -> {
          underWay--;
          finished(result, effect, accepted);
          under(0);
        },
        problem -> {
          under(-1);
          failed(problem);
        });
  }

  private void under(int more) {
    underWay += more;
    saving = underWay > 0;
    stepping = stepping && saving;
    showsSaving(saving);
  }

  private void finished(DayResult result, String effect, Consumer<Day> accepted) {
    if (result instanceof DayResult.Refused refused) {
      showsTrouble(String.join(" ", Problems.sentences(refused.problems())));
      return;
    }
    Day latest = ((DayResult.Done) result).day();
    accepted.accept(latest);
    showsTrouble("");
    if (!effect.isEmpty()) {
      says(effect);
    }
    showsSaved(RideWords.saved(clock.instant().atZone(clock.getZone())));
    show(latest);
  }

  private void failed(Exception problem) {
    showsTrouble(RideWords.notSaved(Trouble.sentence(problem)));
  }

  /** The session in hand. */
  public SessionId session() {
    return Objects.requireNonNull(id, "no session is open");
  }

  private LapId lap() {
    return Objects.requireNonNull(sheet.lap(), "no lap is in hand");
  }

  /** The helper handed the bike over, said here where he works from paper. */
  public void handedOver() {
    int stint = sheet.stint();
    step(() -> days.handedOver(session(), stint), "", latest -> {});
  }

  /** A warm-up lap was ridden. */
  public void warmUpRidden() {
    step(() -> days.warmUp(session()), "", latest -> {});
  }

  /** An answer was given: a scale, category or count was released. */
  public void answer(String measure, BigDecimal value) {
    LapId lap = lap();
    boolean knows = scorer.knowsKey();
    actOn(lap, measure, () -> days.score(session(), lap, measure, value, knows), () -> {});
  }

  private void actOn(LapId lap, String measure, Callable<DayResult> work, Runnable restored) {
    act(work, "", latest -> undo.given(lap, measure, day, latest, restored));
  }

  /** A note was left. */
  public void note(String text) {
    LapId lap = lap();
    act(() -> days.note(session(), lap, text), "", latest -> undo.noted(lap, day, latest));
  }

  /** Conditions of the lap, by name. */
  public void condition(String name, String words) {
    LapId lap = lap();
    act(() -> days.conditions(session(), lap, Map.of(name, words)));
  }

  /** Done with the lap: scores, notes and guess are saved, only now about times. */
  public void lapDone() {
    LapId lap = lap();
    step(() -> days.ridden(session(), lap), "", latest -> doneWith(lap));
  }

  private void doneWith(LapId lap) {
    done.with(lap);
    undo.clear();
  }

  /** Every lap agreed to is ridden; one more is, for this reason. */
  public void pastCap(String reason) {
    int stint = lap().stint();
    step(() -> days.pastCap(session(), stint, reason), "", latest -> {});
  }

  /** On to the next lap. */
  public void next() {
    done.clear();
    reload();
  }

  /** The day in hand, for what is asked of one lap alone. */
  private final class Hand implements RideHand {
    @Override
    public SessionId session() {
      return RideDay.this.session();
    }

    @Override
    public LapId lap() {
      return RideDay.this.lap();
    }

    @Override
    public RideSheet sheet() {
      return sheet;
    }

    @Override
    public RideQuestions questions() {
      return questions;
    }

    @Override
    public Optional<Day> day() {
      return Optional.ofNullable(day);
    }

    @Override
    public void reload() {
      RideDay.this.reload();
    }

    @Override
    public void lapDone() {
      RideDay.this.lapDone();
    }

    @Override
    public void ask(String words) {
      asksWhetherDone(words);
    }

    @Override
    public int setups() {
      return questions.setups().size();
    }

    @Override
    public boolean saving() {
      return saving;
    }

    @Override
    public void save(Callable<DayResult> work, Consumer<Day> accepted) {
      act(work, "", accepted);
    }

    @Override
    public void step(Callable<DayResult> work, String effect, Consumer<Day> accepted) {
      RideDay.this.step(work, effect, accepted);
    }

    @Override
    public void saveAnswer(LapId lap, String measure, Callable<DayResult> work, Runnable restored) {
      actOn(lap, measure, work, restored);
    }

    @Override
    public void saveGuess(int stint, Callable<DayResult> work) {
      act(work, "", latest -> undo.guessed(stint, day, latest));
    }

    @Override
    public void refuse(String words) {
      showsTrouble(words);
    }

    @Override
    public void say(String words) {
      says(words);
    }

    @Override
    public void canTakeBack(String what) {
      offersToTakeBack(what);
    }
  }
}
