package blindlap.session;

import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.plan.StepsDay;
import blindlap.plan.TellingRun;
import blindlap.session.day.Guess;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * Guesses as they are typed: a setup's name, any beginning that no other name has, its letter; on a
 * steps day the end that the level is nearer to; or "-" for "don't know". In a telling run the
 * answer names a lap of the trial by its number, and something must be named.
 */
public final class GuessWords {
  private static final Pattern END =
      Pattern.compile("(?:nearer (?:to )?(?:the )?)?([a-z]+)(?: end)?");

  private static final Pattern LAP = Pattern.compile("(?i)(?:lap )?([1-9])");

  private GuessWords() {}

  /** The guess of some words, or empty if they name nothing. */
  public static Optional<Guess> parse(Plan plan, String words) {
    String plain = words.strip();
    if (plain.equals("-") || plain.equals("−") || plain.equalsIgnoreCase("don't know")) {
      return Optional.of(new Guess(null, null, ""));
    }
    return named(plan, plain).map(each -> new Guess(each, null, ""));
  }

  private static Optional<Integer> named(Plan plan, String plain) {
    if (plan.telling() != null) {
      return lap(plan.telling(), plain);
    }
    return plan.steps() == null ? setup(plan, plain) : end(plain);
  }

  /** The place of a lap in its trial, from 0: "2", "lap 2". */
  private static Optional<Integer> lap(TellingRun run, String plain) {
    Matcher named = LAP.matcher(plain);
    return named.matches() && Integer.parseInt(named.group(1)) <= run.task().laps()
        ? Optional.of(Integer.parseInt(named.group(1)) - 1)
        : Optional.empty();
  }

  /** How a guess stands in tables; what {@link #parse} reads. */
  public static String text(Plan plan, Guess guess) {
    Integer named = guess.setup();
    if (named == null || plan.telling() != null) {
      return number(guess);
    }
    return plan.steps() == null
        ? String.valueOf((char) ('A' + named))
        : StepsDay.End.values()[named].name().toLowerCase(Locale.ROOT);
  }

  /** The answer of a guess by its number, from 1, where it may name nothing. */
  static String number(Guess guess) {
    Integer named = guess.setup();
    return named == null ? "-" : String.valueOf(named + 1);
  }

  /** What is wrong with words that name nothing. */
  static Problem refused(Plan plan, String where, String guess) {
    TellingRun run = plan.telling();
    if (run != null) {
      int first = run.task().firstNamed();
      return Problem.of(SessionFault.NOT_A_LAP_OF_TRIAL, where, guess, first, run.task().laps());
    }
    if (plan.steps() != null) {
      return Problem.of(SessionFault.NOT_AN_END, where, guess);
    }
    String names = String.join(", ", plan.setups().stream().map(Setup::name).toList());
    return Problem.of(SessionFault.UNKNOWN_SETUP, where, guess, names);
  }

  /** How many answers there are to choose from beside "don't know". */
  public static int answers(Plan plan) {
    if (plan.telling() != null) {
      return plan.telling().task().laps();
    }
    return plan.steps() == null ? plan.setups().size() : StepsDay.End.values().length;
  }

  /** "low", "h", "nearer the high end". */
  private static Optional<Integer> end(String plain) {
    Matcher named = END.matcher(plain.toLowerCase(Locale.ROOT));
    return named.matches()
        ? Arrays.stream(StepsDay.End.values())
            .filter(each -> each.name().toLowerCase(Locale.ROOT).startsWith(named.group(1)))
            .map(StepsDay.End::ordinal)
            .findFirst()
        : Optional.empty();
  }

  /** The setup, or level, of some words; empty if they name none. */
  public static Optional<Integer> setup(Plan plan, String words) {
    String plain = words.strip();
    for (int i = 0; i < plan.setups().size(); i++) {
      if (plan.setups().get(i).name().equalsIgnoreCase(plain)) {
        return Optional.of(i);
      }
    }
    int letter = plain.length() == 1 ? Character.toUpperCase(plain.charAt(0)) - 'A' : -1;
    boolean known = letter >= 0 && letter < plan.setups().size();
    return known ? Optional.of(letter) : begun(plan, plain);
  }

  private static Optional<Integer> begun(Plan plan, String plain) {
    String lower = plain.toLowerCase(Locale.ROOT);
    List<Integer> begun =
        IntStream.range(0, plan.setups().size())
            .filter(i -> plan.setups().get(i).name().toLowerCase(Locale.ROOT).startsWith(lower))
            .boxed()
            .toList();
    return begun.size() == 1 && !plain.isEmpty() ? Optional.of(begun.get(0)) : Optional.empty();
  }
}
