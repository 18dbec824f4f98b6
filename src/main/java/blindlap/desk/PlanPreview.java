package blindlap.desk;

import blindlap.exchange.PlanReader;
import blindlap.exchange.Protocols;
import blindlap.fault.Problem;
import blindlap.plan.DayAnswer;
import blindlap.plan.DayAnswers;
import blindlap.plan.DayDivider;
import blindlap.plan.DeclaredNoise;
import blindlap.plan.EarlierNoise;
import blindlap.plan.Plan;
import blindlap.plan.PlanCheck;
import blindlap.plan.PlanFault;
import blindlap.plan.PlanHints;
import blindlap.plan.Trail;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/**
 * A plan file as read, with everything that is wrong with it, what its tester should know, and what
 * such a day can show. Commits nothing.
 *
 * @param plan the plan; empty if the file cannot be read
 * @param problems mistakes of the file and of the plan; none if it can be committed
 * @param hints what the tester should know
 * @param answer what the day can show, by formula; empty where there is no valid rule
 * @param earlier what earlier days tell of the rider's noise on the trail
 * @param noiseTold true if the plan says nothing of the noise and takes what earlier days tell
 * @param judged false if there may be more problems, since a large rule is still to be judged
 */
public record PlanPreview(
    Optional<Plan> plan,
    List<Problem> problems,
    List<Problem> hints,
    Optional<DayAnswer> answer,
    EarlierNoise earlier,
    boolean noiseTold,
    boolean judged) {
  public PlanPreview {
    problems = List.copyOf(problems);
    hints = List.copyOf(hints);
  }

  /**
   * The same with what its series refuses, not while the plan itself has mistakes there, and with
   * what that series can show.
   */
  public PlanPreview in(SeriesPlans plans, DayAnswers answers) {
    List<Problem> all = new ArrayList<>(problems);
    List<String> told = problems.stream().map(Problem::where).map(PlanPreview::path).toList();
    plan.map(plans::refusals).orElse(List.of()).stream()
        .filter(problem -> told.stream().noneMatch(path -> same(path, problem.where())))
        .forEach(all::add);
    Optional<DayAnswer> shown =
        answer.map(
            day ->
                plan.flatMap(
                        own -> plans.standing(own).flatMap(those -> answers.series(own, those)))
                    .map(day::with)
                    .orElse(day));
    return new PlanPreview(plan, all, hints, shown, earlier, noiseTold, judged);
  }

  /** The same with what its declared series can show if no session of it stands yet. */
  public PlanPreview begun(DayAnswers answers) {
    Optional<DayAnswer> shown =
        answer.map(
            day -> plan.flatMap(own -> answers.series(own, List.of())).map(day::with).orElse(day));
    return new PlanPreview(plan, problems, hints, shown, earlier, noiseTold, judged);
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
    return of(text, protocols, answers, plan -> EarlierNoise.NONE);
  }

  /**
   * The same with what earlier days tell: a plan of a comparison that says nothing of the rider's
   * noise takes it from there. What is typed stays.
   *
   * @param days what earlier days of a plan's rider on its trail tell
   */
  public static PlanPreview of(
      String text, Protocols protocols, DayAnswers answers, Function<Plan, EarlierNoise> days) {
    return of(text, protocols, answers, days, PlanGates.NONE);
  }

  /** The same with the gates that a trail book has. */
  static PlanPreview of(
      String text,
      Protocols protocols,
      DayAnswers answers,
      Function<Plan, EarlierNoise> days,
      PlanGates gates) {
    return answered(
        PlanReader.read(text, protocols),
        plan -> new PlanCheck.Judged(PlanCheck.problems(plan, answers.rules()), true),
        answers::quick,
        days,
        gates);
  }

  /**
   * The same at once, with nothing made that takes long: a large rule that nobody asked for yet is
   * not judged, and what such a day can show is left out where it {@link DayAnswers#takesLong takes
   * long}.
   */
  public static PlanPreview atOnce(
      String text, Protocols protocols, DayAnswers answers, Function<Plan, EarlierNoise> days) {
    return atOnce(text, protocols, answers, days, PlanGates.NONE);
  }

  /** The same with the gates that a trail book has. */
  static PlanPreview atOnce(
      String text,
      Protocols protocols,
      DayAnswers answers,
      Function<Plan, EarlierNoise> days,
      PlanGates gates) {
    return answered(
        PlanReader.read(text, protocols),
        plan -> PlanCheck.atOnce(plan, answers.rules()),
        plan -> answers.takesLong(plan) ? Optional.empty() : answers.quick(plan),
        days,
        gates);
  }

  /** The same, wholly judged, without what such a day can show. */
  static PlanPreview judged(
      String text,
      Protocols protocols,
      DayAnswers answers,
      Function<Plan, EarlierNoise> days,
      PlanGates gates) {
    return answered(
        PlanReader.read(text, protocols),
        plan -> new PlanCheck.Judged(PlanCheck.problems(plan, answers.rules()), true),
        plan -> Optional.empty(),
        days,
        gates);
  }

  private static PlanPreview answered(
      PlanReader.Reading reading,
      Function<Plan, PlanCheck.Judged> check,
      Function<Plan, Optional<DayAnswer>> answer,
      Function<Plan, EarlierNoise> days,
      PlanGates gates) {
    Plan typed = reading.plan();
    List<Problem> problems = new ArrayList<>(reading.problems());
    if (typed == null) {
      return new PlanPreview(
          Optional.empty(), problems, List.of(), Optional.empty(), EarlierNoise.NONE, false, true);
    }
    PlanGates.Filled filled = gates.of(typed);
    problems.addAll(filled.problems());
    Plan read = filled.plan();
    EarlierNoise earlier = days.apply(read);
    Plan plan = read.noise() == null ? told(read, earlier).map(read::with).orElse(read) : read;
    List<String> told = problems.stream().map(Problem::where).map(PlanPreview::path).toList();
    PlanCheck.Judged found = check.apply(plan);
    boolean ruled = told.stream().noneMatch(PlanPreview::ofTheRule);
    found.problems().stream()
        .filter(problem -> ruled || problem.fault() != PlanFault.CANNOT_SHOW_ANYTHING)
        .filter(problem -> told.stream().noneMatch(path -> same(path, problem.where())))
        .forEach(problems::add);
    return new PlanPreview(
        Optional.of(plan),
        problems,
        hints(plan, filled.trail()),
        ruled ? answer.apply(plan) : Optional.empty(),
        earlier,
        read.noise() == null,
        found.whole());
  }

  private static List<Problem> hints(Plan plan, Optional<Trail> trail) {
    List<Problem> hints = new ArrayList<>(PlanHints.of(plan));
    trail.ifPresent(known -> hints.addAll(RecorderHints.of(plan, known)));
    return hints;
  }

  /** What earlier days tell of the noise of the primary measure; nothing for a noise run. */
  public Optional<DeclaredNoise> told() {
    return plan.flatMap(own -> told(own, earlier));
  }

  /** The noise of stints of so many scored laps, as the plan would take it with so many. */
  public IntFunction<@Nullable DeclaredNoise> noiseOfLaps() {
    Plan own = plan.orElseThrow();
    return noiseTold ? DayDivider.told(own, earlier) : DayDivider.typed(own);
  }

  private static Optional<DeclaredNoise> told(Plan plan, EarlierNoise earlier) {
    return plan.kind().drawn()
        ? plan.primary().flatMap(primary -> earlier.of(primary, plan.laps().scored()))
        : Optional.empty();
  }

  /** A place without the line and column it has in a file. */
  private static String path(String where) {
    return where.replaceFirst(" ?\\(?line \\d+, column \\d+\\)?$", "");
  }

  /** True where a mistake leaves the rule a stand-in, of which nothing is said. */
  private static boolean ofTheRule(String path) {
    return path.equals("stints") || path.matches("(protocol|rule)([.\\[].*)?");
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
