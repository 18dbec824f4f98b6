package blindlap.phone;

import blindlap.session.day.Guess;

/** Guesses, and taking them back. Setups are counted from 1 on the wire. */
final class GuessActs {
  private GuessActs() {}

  static Act read(String word, Given act) throws Turned {
    int stint = act.small("stint");
    if (word.equals("guess")) {
      Guess guess = guess(act);
      return (days, id) -> days.guess(id, stint, guess);
    }
    Guess from = guess(act.inside("from"));
    Guess to = act.has("to") ? guess(act.inside("to")) : null;
    return (days, id) -> days.guessTakenBack(id, stint, from, to);
  }

  private static Guess guess(Given act) throws Turned {
    Integer setup = null;
    if (act.has("setup")) {
      int number = act.small("setup");
      if (number < 1) {
        throw Turned.form();
      }
      setup = number - 1;
    }
    return new Guess(
        setup, act.maybeOne(Guess.Sureness.class, "sureness"), act.maybe("cue").orElse(""));
  }
}
