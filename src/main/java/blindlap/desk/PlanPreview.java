package blindlap.desk;

import blindlap.exchange.PlanReader;
import blindlap.exchange.Protocols;
import blindlap.fault.Problem;
import blindlap.plan.DayAnswer;
import blindlap.plan.DayAnswers;
import blindlap.plan.Plan;
import blindlap.plan.PlanCheck;
import blindlap.plan.PlanHints;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * A plan file as read, with everything that is wrong with it, what its tester should know, and what
 * such a day can show. Commits nothing.
 *
 * @param plan the plan; empty if the file cannot be read
 * @param problems mistakes of the file and of the plan; none if it can be committed
 * @param hints what the tester should know
 * @param answer what the day can show, by formula; empty where there is no valid rule
 * @param judged false if there may be more problems, since a large rule is still to be judged
 */
public record PlanPreview(
    Optional<Plan> plan,
    List<Problem> problems,
    List<Problem> hints,
    Optional<DayAnswer> answer,
    boolean judged) {
  public PlanPreview {
    problems = List.copyOf(problems);
    hints = List.copyOf(hints);
  }

  /** Works out what days can show; recommends among the protocols of the program. */
  public static DayAnswers answersOfOneDay() {
    return new DayAnswers(() -> List.copyOf(BundledProtocols.load().all()));
  }

  /** Reads a plan file's text, with the protocols of the program. */
  public static PlanPreview of(String text) {
    return of(text, BundledProtocols.load());
  }

  /** The same, with answers kept from earlier readings. */
  public static PlanPreview of(String text, DayAnswers answers) {
    return of(text, BundledProtocols.load(), answers);
  }

  /** Reads a plan file's text. */
  public static PlanPreview of(String text, Protocols protocols) {
    return of(text, protocols, new DayAnswers(() -> List.copyOf(protocols.all())));
  }

  /**
   * Reads a plan file's text, with answers kept from earlier readings.
   *
   * @param answers keeps what depends on the rule alone
   */
  public static PlanPreview of(String text, Protocols protocols, DayAnswers answers) {
    return of(
        text,
        protocols,
        plan -> new PlanCheck.Judged(PlanCheck.problems(plan, answers.rules()), true),
        answers::quick);
  }

  /**
   * The same at once, with nothing made that takes long: a large rule that nobody asked for yet is
   * not judged, and what such a day can show is left out where it {@link DayAnswers#takesLong takes
   * long}.
   */
  public static PlanPreview atOnce(String text, Protocols protocols, DayAnswers answers) {
    return of(
        text,
        protocols,
        plan -> PlanCheck.atOnce(plan, answers.rules()),
        plan -> answers.takesLong(plan) ? Optional.empty() : answers.quick(plan));
  }

  /** The same, wholly judged, without what such a day can show. */
  static PlanPreview judged(String text, Protocols protocols, DayAnswers answers) {
    return of(
        text,
        protocols,
        plan -> new PlanCheck.Judged(PlanCheck.problems(plan, answers.rules()), true),
        plan -> Optional.empty());
  }

  private static PlanPreview of(
      String text,
      Protocols protocols,
      Function<Plan, PlanCheck.Judged> check,
      Function<Plan, Optional<DayAnswer>> answer) {
    PlanReader.Reading reading = PlanReader.read(text, protocols);
    Plan plan = reading.plan();
    List<Problem> problems = new ArrayList<>(reading.problems());
    if (plan == null) {
      return new PlanPreview(Optional.empty(), problems, List.of(), Optional.empty(), true);
    }
    List<String> told = problems.stream().map(Problem::where).map(PlanPreview::path).toList();
    PlanCheck.Judged found = check.apply(plan);
    found.problems().stream()
        .filter(problem -> told.stream().noneMatch(path -> same(path, problem.where())))
        .forEach(problems::add);
    return new PlanPreview(
        Optional.of(plan), problems, PlanHints.of(plan), answer.apply(plan), found.whole());
  }

  /** A place without the line and column it has in a file. */
  private static String path(String where) {
    return where.replaceFirst(" ?\\(?line \\d+, column \\d+\\)?$", "");
  }

  /** True if what was said of one place makes it pointless to say more of the other. */
  private static boolean same(String told, String where) {
    return where.equals(told)
        || where.startsWith(told + ".")
        || where.startsWith(told + "[")
        || told.startsWith(where + ".")
        || told.startsWith(where + "[");
  }
}
