package blindlap.wording;

import blindlap.plan.BlindLevel;
import blindlap.plan.Blinding;
import blindlap.plan.DayAnswer;
import blindlap.plan.Differences;
import blindlap.plan.EarlierNoise;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.Practised;
import blindlap.plan.Schedule;
import blindlap.plan.Setup;
import blindlap.plan.TellingRun;
import blindlap.plan.Timetable;
import blindlap.wording.day.DayWords;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A plan in running text, to read before it is signed. Expectations are left out: they are unseen.
 */
public final class PlanSummary {
  private static final Words WORDS = Words.of("plan");

  /**
   * A part of the plan.
   *
   * @param title its heading
   * @param lines its text, a sentence each
   */
  public record Part(String title, List<String> lines) {
    public Part {
      lines = List.copyOf(lines);
    }
  }

  private PlanSummary() {}

  /**
   * All parts, in the order in which they are read.
   *
   * @param earlier what earlier days tell of the noise of measures beside the primary
   */
  public static List<Part> parts(Plan plan, Optional<DayAnswer> answer, EarlierNoise earlier) {
    List<Part> parts = new ArrayList<>();
    parts.add(
        part(
            "question",
            plan.question(),
            WORDS.say("sum.who", plan.rider(), plan.trail(), plan.day()),
            plan.conditions()));
    parts.add(new Part(WORDS.say("sum.setups"), setups(plan)));
    if (!plan.measures().isEmpty()) {
      parts.add(
          new Part(
              WORDS.say("sum.measures"),
              Stream.concat(
                      plan.measures().stream().map(each -> measure(plan, each)),
                      TimingWords.declared(plan).stream())
                  .toList()));
    }
    if (!plan.covariates().isEmpty()) {
      parts.add(new Part(CovariateWords.title(), CovariateWords.planned(plan, earlier)));
    }
    parts.add(new Part(WORDS.say("sum.day"), day(plan, answer, earlier)));
    parts.add(new Part(WORDS.say("sum.blinding"), blinding(plan)));
    return parts;
  }

  private static List<String> day(Plan plan, Optional<DayAnswer> answer, EarlierNoise earlier) {
    AnswerWords words = new AnswerWords(plan, answer);
    List<String> day = new ArrayList<>();
    TellingRun run = plan.kind() == Plan.Kind.TELLING_RUN ? plan.telling() : null;
    day.add(
        run != null
            ? trials(plan, run)
            : WORDS.say(
                "sum.rule",
                plan.protocol().title(),
                plan.stints(),
                plan.laps().settling(),
                plan.laps().scored(),
                plan.laps().warmUp()));
    LooksShowWords.declared(plan).ifPresent(day::add);
    day.add(words.sentence().text());
    day.addAll(words.lead());
    noise(plan, earlier).ifPresent(day::add);
    MeasureAnswers measures = new MeasureAnswers(plan, answer, earlier);
    day.addAll(measures.lines());
    day.addAll(measures.notes());
    Schedule.of(plan).ifPresent(schedule -> day.add(DayWords.summary(schedule)));
    practised(plan).ifPresent(day::add);
    series(plan).ifPresent(day::add);
    if (!plan.override().isBlank()) {
      day.add(WORDS.say("sum.override", plan.override()));
    }
    return day;
  }

  private static String trials(Plan plan, TellingRun run) {
    return WORDS.say(
        "sum.trials",
        run.trials(),
        PlanJson.word(run.task()),
        run.task().laps(),
        plan.laps().warmUp());
  }

  private static Optional<String> noise(Plan plan, EarlierNoise earlier) {
    return plan.primary()
        .flatMap(primary -> earlier.of(primary, plan.laps().scored()))
        .flatMap(told -> PlanWords.noise(plan, told));
  }

  private static Optional<String> practised(Plan plan) {
    Timetable table = plan.timetable();
    if (table == null || !table.practised().any()) {
      return Optional.empty();
    }
    Practised all = table.practised();
    boolean taken = all.minutes().compareTo(table.swap()) == 0;
    return Optional.of(
        WORDS.say(
            taken ? "sum.practised" : "sum.practised.other",
            table.swap().stripTrailingZeros().toPlainString(),
            all.seconds().size(),
            Practised.text(all.longest())));
  }

  /** What belonging to a series means; empty for a session of its own. */
  public static Optional<String> series(Plan plan) {
    String id = plan.series();
    Integer declared = plan.seriesSessions();
    return id == null
        ? Optional.empty()
        : Optional.of(
            declared == null
                ? WORDS.say("sum.series", id)
                : WORDS.say("sum.series.of", id, declared));
  }

  private static Part part(String key, String... lines) {
    return new Part(
        WORDS.say("sum." + key), java.util.Arrays.stream(lines).filter(l -> !l.isBlank()).toList());
  }

  private static List<String> setups(Plan plan) {
    List<String> lines = new ArrayList<>(HandlingWords.signed(plan));
    for (int i = 0; i < plan.setups().size(); i++) {
      Setup setup = plan.setups().get(i);
      String settings =
          String.join(
              "; ", setup.settings().stream().map(s -> s.name() + " " + s.shown()).toList());
      String letter = String.valueOf((char) ('A' + i));
      lines.add(
          settings.isBlank()
              ? WORDS.say("sum.setup", letter, setup.name())
              : WORDS.say("sum.setup.settings", letter, setup.name(), settings));
      setup
          .limits()
          .forEach(l -> lines.add(WORDS.say("sum.limit", l.what(), l.value(), l.source())));
    }
    Differences differences = Differences.of(plan);
    for (Differences.Row row : differences.rows()) {
      if (row.values().stream().flatMap(Optional::stream).anyMatch(s -> s.equal())) {
        BigDecimal tolerance = row.tolerance();
        lines.add(
            WORDS.say(
                tolerance == null || tolerance.signum() == 0 ? "sum.equal" : "sum.equal.within",
                row.name(),
                String.join(WORDS.say("sum.and"), row.shown()),
                tolerance == null ? "" : tolerance.toPlainString()));
      }
    }
    List<String> names = differences.names();
    if (names.size() > 1) {
      boolean told = plan.kind() == Plan.Kind.TELLING_RUN;
      String key = told ? "sum.packages.told" : "sum.packages";
      lines.add(WORDS.say(key, String.join(", ", names), plan.differencesReason()));
    }
    return lines;
  }

  private static String measure(Plan plan, Measure measure) {
    BigDecimal worthwhile = measure.worthwhile();
    return worthwhile == null
        ? WORDS.say("sum.measure", measure.name(), PlanJson.word(measure.role()))
        : WORDS.say(
            plan.steps() == null ? "sum.measure.worthwhile" : "sum.measure.worthwhile.levels",
            measure.name(),
            PlanJson.word(measure.role()),
            worthwhile.toPlainString(),
            measure.unit());
  }

  /** How blind it is, and who makes it so. */
  public static String level(Blinding blinding) {
    if (blinding.level() != BlindLevel.HELPER) {
      String by = blinding.preparation().by();
      boolean marks = blinding.level() == BlindLevel.MASKED && by.isBlank();
      return WORDS.say("sum.level." + blinding.level().name() + (marks ? ".marks" : ""), by);
    }
    String key = blinding.helper().isBlank() ? "sum.blinded.nobody" : "sum.blinded";
    return WORDS.say(key, blinding.helper());
  }

  private static List<String> blinding(Plan plan) {
    Blinding blinding = plan.blinding();
    List<String> lines = new ArrayList<>();
    lines.add(level(blinding));
    add(lines, "cover", blinding.cover());
    add(lines, "ballast", blinding.ballast());
    add(lines, "noise", blinding.noise());
    add(lines, "rider_waits", blinding.riderWaits());
    add(lines, "helper_waits", blinding.helperWaits());
    add(lines, "bike_moved_by", blinding.bikeMovedBy());
    add(lines, "levers_touched_by", blinding.leversTouchedBy());
    add(lines, "others_who_know", blinding.othersWhoKnow());
    add(lines, "remaining_cues", blinding.remainingCues());
    if (plan.kind() != Plan.Kind.TELLING_RUN) { // whose answers are all that is asked
      lines.add(WORDS.say(blinding.guesses() ? "sum.guesses" : "sum.no.guesses"));
    }
    return lines;
  }

  private static void add(List<String> lines, String field, String text) {
    if (!text.isBlank()) {
      lines.add(PlanWords.field("blinding." + field) + ": " + text);
    }
  }
}
