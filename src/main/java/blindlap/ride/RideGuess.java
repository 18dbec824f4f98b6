package blindlap.ride;

import blindlap.desk.day.DayResult;
import blindlap.desk.day.RiderDays;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.wording.day.RideWords;
import org.jspecify.annotations.Nullable;

/**
 * The rider's guess on the stint in hand, after its last scored lap and before any time; in a
 * telling run the answer to the trial. There one lap is named first: nothing is kept of how sure
 * the rider is before that, and the answer says that the trial's last lap is ridden.
 */
public final class RideGuess {
  private final RideHand hand;
  private final RiderDays days;
  private final RideDone done;
  private @Nullable Guess given;
  private int stint;

  RideGuess(RideHand hand, RiderDays days, RideDone done) {
    this.hand = hand;
    this.done = done;
    this.days = days;
  }

  /** The guess on record, or the one on its way there: two answers in a row are one guess. */
  private @Nullable Guess now() {
    boolean ahead = hand.saving() && stint == hand.sheet().stint();
    return ahead ? given : hand.sheet().guess();
  }

  private int setups() {
    return hand.setups();
  }

  /** Index of the guessed setup, the number of setups for "don't know"; null if none. */
  public @Nullable Integer chosen() {
    Guess guess = now();
    if (guess == null) {
      return null;
    }
    Integer setup = guess.setup();
    return setup == null ? Integer.valueOf(setups()) : setup;
  }

  /** Key of how sure the guess is; null if not said. */
  public @Nullable String sureness() {
    Guess guess = now();
    Guess.Sureness sure = guess == null ? null : guess.sureness();
    return sure == null ? null : sure.name();
  }

  /** What gave it away, so far. */
  public String cue() {
    return cue(now());
  }

  private static String cue(@Nullable Guess guess) {
    return guess == null ? "" : guess.cue();
  }

  /**
   * Guesses.
   *
   * @param index of the guessed setup; the number of setups for "don't know"
   */
  public void choose(int index) {
    Integer setup = index == setups() ? null : Integer.valueOf(index);
    Guess before = now();
    save(new Guess(setup, before == null ? null : before.sureness(), cue(before)));
  }

  /** True once something is named that the rest of the answer can stand beside. */
  public boolean named() {
    Guess guess = now();
    return !hand.questions().forced() || guess != null && guess.setup() != null;
  }

  private boolean refused() {
    if (!named()) {
      hand.refuse(RideWords.say("trial.name.first"));
    }
    return !named();
  }

  /** How sure the guess is. */
  public void sureness(String key) {
    if (refused()) {
      return;
    }
    Guess before = now();
    save(
        new Guess(
            before == null ? null : before.setup(), Guess.Sureness.valueOf(key), cue(before)));
  }

  /** What gave it away. */
  public void cue(String words) {
    Guess before = now();
    if (!words.equals(cue(before)) && !refused()) {
      save(
          new Guess(
              before == null ? null : before.setup(),
              before == null ? null : before.sureness(),
              words));
    }
  }

  private void save(Guess guess) {
    int at = hand.lap().stint();
    given = guess;
    stint = at;
    if (!hand.questions().forced()) {
      hand.saveGuess(at, () -> days.guess(hand.session(), at, guess));
      return;
    }
    LapId lap = hand.lap();
    boolean ridden = hand.day().filter(day -> day.ridden(lap)).isPresent();
    done.stay(lap);
    hand.saveGuess(at, () -> ridden ? days.guess(hand.session(), at, guess) : both(lap, guess));
  }

  /** The lap first: an answer stands only once all laps of its trial are ridden. */
  private DayResult both(LapId lap, Guess guess) {
    DayResult lapDone = days.ridden(hand.session(), lap);
    return lapDone instanceof DayResult.Refused
        ? lapDone
        : days.guess(hand.session(), lap.stint(), guess);
  }
}
