package blindlap.command;

import blindlap.compute.DivisionsJson;
import blindlap.compute.TrialsJson;
import blindlap.desk.Desk;
import blindlap.desk.PlanPreview;
import blindlap.fault.Problem;
import blindlap.plan.DayAnswer;
import blindlap.plan.DayAnswers;
import blindlap.plan.DayDetail;
import blindlap.plan.DayDivided;
import blindlap.plan.DayDivider;
import blindlap.plan.EarlierNoise;
import blindlap.plan.Plan;
import blindlap.plan.Schedule;
import blindlap.plan.TellingRun;
import blindlap.session.NotebookException;
import blindlap.session.SessionState;
import blindlap.wording.AnswerWords;
import blindlap.wording.CovariateWords;
import blindlap.wording.HandlingWords;
import blindlap.wording.LooksShowWords;
import blindlap.wording.MeasureAnswers;
import blindlap.wording.PlanSummary;
import blindlap.wording.PlanWords;
import blindlap.wording.TrialsWords;
import blindlap.wording.day.DayWords;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import blindlap.wording.day.Words;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What a planned day can show; commits nothing. */
@Command(
    name = "plan",
    description = {
      "Says what a planned day can show, before anything is committed.",
      "The plan is a YAML or JSON file; docs/plan-file.md describes it. All mistakes are named with"
          + " their place."
    })
final class PlanCommand extends SessionCommand {
  /** One seed for all, so that the same plan gets the same answer. */
  private static final long SEED = 20_251_101L;

  private static final int MOST_DAYS = 100_000;

  @Parameters(arity = "0..1", paramLabel = "FILE", description = "The plan file.")
  @Nullable Path file;

  @Option(
      names = "--like",
      paramLabel = "SESSION",
      description =
          "In place of a file: drafts a plan like a session's, with the noise unsealed days tell. "
              + WHICH)
  @Nullable String like;

  @Option(
      names = "--committed",
      paramLabel = "SESSION",
      description =
          "In place of a file: reads the plan that a session was committed with, and its"
              + " fingerprint. What anyone expects is shown after unsealing. "
              + WHICH)
  @Nullable String committed;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description =
          "With --like: writes a plan file instead of a draft. With --committed: writes the plan as"
              + " a file, too. An existing file is kept.")
  @Nullable Path out;

  @Option(
      names = "--two-best",
      description =
          "With --like and an unsealed steps day: an ordinary comparison of its two best levels.")
  boolean twoBest;

  @Option(
      names = "--level",
      paramLabel = "LEVEL",
      description =
          "With --like and an unsealed steps day: a plan that has its setup with the setting at"
              + " this level, such as 7.")
  @Nullable String level;

  @Option(
      names = "--series-of",
      paramLabel = "N",
      description =
          "With --like: declares a series of N sessions, 2 to 100, that begins with this day.")
  @Nullable Integer seriesOf;

  @Option(
      names = "--days",
      paramLabel = "N",
      description =
          "Days to simulate, 1 to 100,000; 2,000 if not given, 500 with three setups or four.")
  @Nullable Integer days;

  @Option(names = "--times", description = "Also the clock times of every stint.")
  boolean times;

  @Option(
      names = "--divide",
      description =
          "In place of the answer: in how many stints and scored laps the day can be divided, and"
              + " what each way can show.")
  boolean divide;

  @Option(
      names = "--json",
      description =
          "With --divide: the divisions as JSON. Of a telling run: what its trials can show.")
  boolean json;

  PlanCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    String session = like;
    refuseLevels();
    if (Stream.of(session, file, committed).filter(Objects::nonNull).count() != 1) {
      throw new Complaint(
          ExitCode.BAD_INPUT,
          "plan takes a plan file, or --like or --committed with a session: one of the three."
              + " Nothing was made.");
    }
    if (divide && (file == null || days != null || times)) {
      throw new Complaint(
          ExitCode.BAD_INPUT,
          "--divide takes a plan file, and does not go with --days and --times. Nothing was worked"
              + " out.");
    }
    if (json && !divide && (file == null || days != null || times)) {
      throw onlyDivided();
    }
    if (committed != null) {
      return reads(committed);
    }
    if (session != null) {
      try (Desk desk = open()) {
        List<String> made = madeLike(desk, find(desk, session));
        did(out == null ? Done.DRAFTED : Done.WRITTEN);
        made.forEach(this::say);
        return ExitCode.DONE;
      }
    }
    if (out != null || seriesOf != null) {
      throw new Complaint(
          ExitCode.BAD_INPUT, "--out and --series-of go with --like only. Nothing was made.");
    }
    return divide ? divides() : shows();
  }

  private void refuseLevels() {
    if ((twoBest || level != null) && (like == null || seriesOf != null)
        || twoBest && level != null) {
      throw new Complaint(
          ExitCode.BAD_INPUT,
          "--two-best and --level go with --like alone, one of them at a time. Nothing was made.");
    }
  }

  private List<String> madeLike(Desk desk, SessionState session) {
    return twoBest || level != null
        ? PlanLike.afterSteps(desk, session, level, out)
        : PlanLike.make(desk, session, seriesOf, out);
  }

  private static String trials(Plan plan) {
    TellingRun run = plan.telling();
    if (run == null) {
      throw onlyDivided();
    }
    return TrialsJson.write(plan, run);
  }

  private static Complaint onlyDivided() {
    return new Complaint(
        ExitCode.BAD_INPUT,
        "--json goes with --divide, or with the plan file of a telling run. Nothing was worked"
            + " out.");
  }

  private Integer divides() {
    String text = ReadFile.PLAN.text(Objects.requireNonNull(file));
    DayAnswers answers = PlanPreview.answersOfOneDay();
    PlanPreview preview = preview(text, answers);
    Plan plan = preview.plan().orElse(null);
    List<Problem> problems = DividedDay.problems(preview);
    if (plan == null || !problems.isEmpty()) {
      throw complaint(problems);
    }
    DayDivided divided;
    try (StillWorking waiting = new StillWorking(this::complain)) {
      waiting.on("step.divide");
      divided = DividedDay.divided(preview, answers);
    }
    if (divided.divisions().isEmpty()) {
      throw complaint(List.of(DayDivider.nothingFits(plan)));
    }
    if (json) {
      say(DivisionsJson.write(plan, divided));
      return ExitCode.DONE;
    }
    say(plan.title() + ", " + plan.trail() + ", " + plan.rider() + ", " + plan.day());
    DividedDay.lines(plan, divided).forEach(this::say);
    say(Words.of("cautions").say("short"));
    return ExitCode.DONE;
  }

  private Integer reads(String session) {
    if (seriesOf != null || days != null || times) {
      throw new Complaint(
          ExitCode.BAD_INPUT,
          "--series-of, --days and --times do not go with --committed. Nothing was read.");
    }
    try (Desk desk = open()) {
      List<String> lines = CommittedPlan.lines(desk, find(desk, session), out);
      did(out == null ? Done.NOTHING : Done.WRITTEN);
      lines.forEach(this::say);
      return ExitCode.DONE;
    }
  }

  private void refuseDays() {
    if (days != null && (days < 1 || days > MOST_DAYS)) {
      throw new Complaint(
          ExitCode.BAD_INPUT,
          "--days: %s days cannot be simulated; give 1 to %s. Nothing was worked out."
              .formatted(days, Figures.count(MOST_DAYS)));
    }
  }

  private Integer shows() {
    refuseDays();
    String text = ReadFile.PLAN.text(java.util.Objects.requireNonNull(file));
    DayAnswers answers = PlanPreview.answersOfOneDay();
    PlanPreview preview = preview(text, answers);
    Plan plan = preview.plan().orElse(null);
    if (plan == null || !preview.problems().isEmpty()) {
      if (plan != null && preview.answer().isPresent()) {
        AnswerWords words = new AnswerWords(plan, preview.answer());
        say(words.sentence().text());
        words.lead().forEach(this::say);
      }
      throw complaint(preview.problems());
    }
    if (json) {
      say(trials(plan));
      return ExitCode.DONE;
    }
    say(plan.title() + ", " + plan.trail() + ", " + plan.rider() + ", " + plan.day());
    try (StillWorking waiting = new StillWorking(this::complain)) {
      answer(plan, preview, answers, waiting);
    }
    Schedule.of(plan).ifPresent(schedule -> say(DayWords.summary(schedule)));
    if (times) {
      Schedule.of(plan).ifPresent(schedule -> DayWords.stints(plan, schedule).forEach(this::say));
    }
    PlanSummary.series(plan).ifPresent(this::say);
    preview.hints().forEach(hint -> say(Problems.sentence(hint)));
    say(Words.of("cautions").say("short"));
    say("Nothing is committed yet. To fix the plan and draw the order: blindlap commit " + file);
    return ExitCode.DONE;
  }

  private PlanPreview preview(String text, DayAnswers answers) {
    try (StillWorking waiting = new StillWorking(this::complain)) {
      waiting.on("step.show");
      return asked(text, answers);
    }
  }

  private void answer(Plan plan, PlanPreview preview, DayAnswers answers, StillWorking waiting) {
    waiting.on("step.days");
    Optional<DayDetail> detail =
        answers
            .simulate(plan, days == null ? DayAnswers.usualDays(plan) : days, SEED, () -> false)
            .map(simulated -> answers.detail(plan, simulated));
    Optional<DayAnswer> answer =
        preview
            .answer()
            .map(quick -> detail.map(d -> answers.refined(plan, quick, d)).orElse(quick));
    AnswerWords words = new AnswerWords(plan, answer);
    say(words.sentence().text());
    words.lead().forEach(this::say);
    words.orders().forEach(this::say);
    TrialsWords.of(plan).ifPresent(trials -> trials(plan, trials));
    preview.told().flatMap(told -> PlanWords.noise(plan, told)).ifPresent(this::say);
    measures(plan, answer, preview.earlier());
    CovariateWords.planned(plan, preview.earlier()).forEach(this::say);
    detail.ifPresent(found -> simulated(plan, words, found));
    detail.map(found -> LooksShowWords.lines(plan, found)).ifPresent(l -> l.forEach(this::say));
    waiting.on("step.left");
    answers.left(plan, () -> false).ifPresent(left -> words.cuts(left).forEach(this::say));
  }

  private void trials(Plan plan, TrialsWords trials) {
    trials.handlings().forEach(this::say);
    HandlingWords.planned(plan).stream().limit(1).forEach(this::say);
    trials.table().forEach(this::say);
  }

  private void measures(Plan plan, Optional<DayAnswer> answer, EarlierNoise earlier) {
    if (answer.filter(day -> !day.measures().isEmpty()).isEmpty()) {
      return;
    }
    MeasureAnswers measures = new MeasureAnswers(plan, answer, earlier);
    if (!measures.rows().isEmpty()) {
      say(AnswerWords.say("measures.title"));
      measures.lines().forEach(this::say);
      measures.notes().forEach(this::say);
    }
  }

  /** With the notebook if there is one; a plan is answered without it too. */
  private PlanPreview asked(String text, DayAnswers answers) {
    if (!Files.exists(notebookFile())) {
      return PlanPreview.of(text, answers).begun(answers);
    }
    try (Desk desk = open()) {
      return desk.planning().preview(text);
    } catch (NotebookException | UncheckedIOException e) {
      complain(AnswerWords.say("measures.unasked", Trouble.sentence(e)));
      return PlanPreview.of(text, answers);
    }
  }

  private void simulated(Plan plan, AnswerWords words, DayDetail detail) {
    words.simulated(detail).ifPresent(this::say);
    if (!detail.odds().isEmpty()) {
      say(AnswerWords.of(plan, "odds.title"));
      words.odds(detail.odds()).forEach(this::say);
      say(words.oddsSource(detail.odds(), detail.days()));
    } else if (!detail.pairs().isEmpty()) {
      say(AnswerWords.say("odds.pairs.title"));
      words.pairOdds(detail.pairs()).forEach(this::say);
      say(words.pairOddsSource(detail));
    }
  }
}
