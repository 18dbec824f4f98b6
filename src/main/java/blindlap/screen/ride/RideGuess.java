package blindlap.screen.ride;

import blindlap.desk.RiderDays;
import blindlap.session.day.Guess;
import org.jspecify.annotations.Nullable;

/** The rider's guess on the stint in hand, after its last scored lap and before any time. */
public final class RideGuess {
  private final RideModel model;
  private final RiderDays days;
  private @Nullable Guess given;
  private int stint;

  RideGuess(RideModel model, RiderDays days) {
    this.model = model;
    this.days = days;
  }

  /** The guess on record, or the one on its way there: two answers in a row are one guess. */
  private @Nullable Guess now() {
    boolean ahead = model.savingProperty().get() && stint == model.sheetProperty().get().stint();
    return ahead ? given : model.sheetProperty().get().guess();
  }

  private int setups() {
    return model.questions().setups().size();
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

  /** How sure the guess is. */
  public void sureness(String key) {
    Guess before = now();
    save(
        new Guess(
            before == null ? null : before.setup(), Guess.Sureness.valueOf(key), cue(before)));
  }

  /** What gave it away. */
  public void cue(String words) {
    Guess before = now();
    if (!words.equals(cue(before))) {
      save(
          new Guess(
              before == null ? null : before.setup(),
              before == null ? null : before.sureness(),
              words));
    }
  }

  private void save(Guess guess) {
    int at = model.lap().stint();
    given = guess;
    stint = at;
    model.act(() -> days.guess(model.session(), at, guess));
  }
}
