package blindlap.session;

import blindlap.plan.Plan;
import blindlap.session.day.Guess;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Guesses as they are typed: a setup's name, any beginning that no other name has, its letter, or
 * "-" for "don't know".
 */
public final class GuessWords {
  private GuessWords() {}

  /** The guess of some words, or empty if they name nothing. */
  public static Optional<Guess> parse(Plan plan, String words) {
    String plain = words.strip();
    if (plain.equals("-") || plain.equals("−") || plain.equalsIgnoreCase("don't know")) {
      return Optional.of(new Guess(null, null, ""));
    }
    for (int i = 0; i < plan.setups().size(); i++) {
      if (plan.setups().get(i).name().equalsIgnoreCase(plain)) {
        return Optional.of(new Guess(i, null, ""));
      }
    }
    int letter = plain.length() == 1 ? Character.toUpperCase(plain.charAt(0)) - 'A' : -1;
    boolean known = letter >= 0 && letter < plan.setups().size();
    return known ? Optional.of(new Guess(letter, null, "")) : begun(plan, plain);
  }

  private static Optional<Guess> begun(Plan plan, String plain) {
    String lower = plain.toLowerCase(Locale.ROOT);
    List<Integer> begun =
        IntStream.range(0, plan.setups().size())
            .filter(i -> plan.setups().get(i).name().toLowerCase(Locale.ROOT).startsWith(lower))
            .boxed()
            .toList();
    return begun.size() == 1 && !plain.isEmpty()
        ? Optional.of(new Guess(begun.get(0), null, ""))
        : Optional.empty();
  }
}
