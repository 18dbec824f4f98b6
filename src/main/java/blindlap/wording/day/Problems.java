package blindlap.wording.day;

import blindlap.fault.Fault;
import blindlap.fault.Problem;
import blindlap.plan.PlanFault;
import blindlap.session.day.Step;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Problems as sentences. */
public final class Problems {
  private static final Words WORDS = Words.of("problems");
  private static final Words STEPS = Words.of("steps");

  /** More than these nobody reads, and they stand on one screen. */
  private static final int MOST = 20;

  private Problems() {}

  /** The bundle key of a fault. */
  public static String key(Fault fault) {
    return type(fault).getSimpleName() + "." + fault.name();
  }

  private static Class<?> type(Fault fault) {
    return fault instanceof Enum<?> option ? option.getDeclaringClass() : fault.getClass();
  }

  /** One problem as a sentence, with its place in front where it has one. */
  public static String sentence(Problem problem) {
    Object[] arguments = new Object[problem.details().size() + 1];
    arguments[0] = problem.where();
    for (int i = 1; i < arguments.length; i++) {
      arguments[i] = detail(problem.fault(), i, problem.details().get(i - 1));
    }
    String sentence = WORDS.say(key(problem.fault()), arguments);
    return problem.where().isBlank() ? sentence : capital(problem.where()) + ": " + sentence;
  }

  /** Several problems, one a line; of very many the first, and how many more there are. */
  public static List<String> sentences(List<Problem> problems) {
    List<String> sentences = new ArrayList<>();
    problems.stream().limit(MOST).map(Problems::sentence).forEach(sentences::add);
    if (problems.size() > MOST) {
      sentences.add(WORDS.say("and.more", Figures.count(problems.size() - MOST)));
    }
    return List.copyOf(sentences);
  }

  private static String detail(Fault fault, int place, String detail) {
    if (fault == PlanFault.DAY_TOO_LONG && place == 3) {
      return DayWords.ways(detail);
    }
    boolean p =
        fault == PlanFault.CANNOT_SHOW_ANYTHING
            || fault == PlanFault.TRIALS_SHOW_NOTHING && place == 2;
    if (p && detail.matches("[0-9.E-]+")) {
      return Figures.p(Double.parseDouble(detail));
    }
    for (String of : List.of(key(fault), type(fault).getSimpleName(), fault.name())) {
      if (WORDS.has("detail." + of + "." + detail)) {
        return WORDS.say("detail." + of + "." + detail);
      }
    }
    for (Step step : Step.values()) {
      if (step.name().equals(detail)) {
        return STEPS.say(step.name());
      }
    }
    return detail;
  }

  private static String capital(String where) {
    return where.startsWith("line")
        ? where.substring(0, 1).toUpperCase(Locale.ROOT) + where.substring(1)
        : where;
  }
}
