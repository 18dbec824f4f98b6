package blindlap.ride;

import blindlap.desk.day.RiderDays;
import blindlap.session.day.Guess;
import org.jspecify.annotations.Nullable;

/** The rider's guess on the stint in hand, after its last scored lap and before any time. */
public final class RideGuess {
  private final RideHand hand;
  private final RiderDays days;
  private @Nullable Guess given;
  private int stint;
  private Guess.@Nullable Sureness held;
  private String heldCue = "";

  RideGuess(RideHand hand, RiderDays days) {
    this.hand = hand;
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

  /**
   * Index of the guessed setup, the number of setups for "don't know"; null if none. In a telling
   * run the place among the laps that can be named.
   */
  public @Nullable Integer chosen() {
    Guess guess = now();
    if (guess == null) {
      return null;
    }
    Integer setup = guess.setup();
    return setup == null ? Integer.valueOf(setups()) : Integer.valueOf(setup - before());
  }

  /** Laps of a trial before the first that can be named; 0 of any other session. */
  private int before() {
    RideTrials trials = hand.questions().trials();
    return trials == null ? 0 : trials.first() - 1;
  }

  /** Key of how sure the guess is; null if not said. */
  public @Nullable String sureness() {
    Guess guess = now();
    Guess.Sureness sure = guess == null ? held : guess.sureness();
    return sure == null ? null : sure.name();
  }

  /** What gave it away, so far. */
  public String cue() {
    return cue(now());
  }

  private String cue(@Nullable Guess guess) {
    return guess == null ? heldCue : guess.cue();
  }

  /**
   * Guesses.
   *
   * @param index of the guessed setup; the number of setups for "don't know"
   */
  public void choose(int index) {
    Guess known = now();
    Integer setup =
        index == setups() && hand.questions().trials() == null
            ? null
            : Integer.valueOf(index + before());
    save(new Guess(setup, known == null ? held : known.sureness(), cue(known)));
    held = null;
    heldCue = "";
  }

  /** How sure the guess is. */
  public void sureness(String key) {
    Guess known = now();
    Guess.Sureness sure = Guess.Sureness.valueOf(key);
    if (waits(known)) {
      held = sure;
    } else {
      save(new Guess(known == null ? null : known.setup(), sure, cue(known)));
    }
  }

  /** What gave it away. */
  public void cue(String words) {
    Guess known = now();
    if (words.equals(cue(known))) {
      return;
    }
    if (waits(known)) {
      heldCue = words;
    } else {
      save(
          new Guess(
              known == null ? null : known.setup(),
              known == null ? null : known.sureness(),
              words));
    }
  }

  /** In a telling run what is said beside an answer waits for it: an answer names a lap. */
  private boolean waits(@Nullable Guess known) {
    return known == null && hand.questions().trials() != null;
  }

  /** Another lap is in hand: what was said without an answer is gone. */
  void clear() {
    held = null;
    heldCue = "";
  }

  private void save(Guess guess) {
    int at = hand.lap().stint();
    given = guess;
    stint = at;
    hand.saveGuess(at, () -> days.guess(hand.session(), at, guess));
  }
}
