package blindlap.screen.plan;

import blindlap.plan.DayAnswer;
import blindlap.plan.NoiseKnown;
import blindlap.plan.Plan;
import blindlap.plan.Schedule;
import blindlap.plan.TellingRun;
import blindlap.plot.Axis;
import blindlap.plot.DayStrip;
import blindlap.plot.DetectableContent;
import blindlap.plot.DetectableCurve;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.wording.AnswerWords;
import blindlap.wording.day.DayWords;
import blindlap.wording.day.Figures;
import java.time.Duration;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Pictures of the Plan page, from what is planned. */
final class PlanPictures {
  /** Width of the dark block at the end of daylight, as a share of the day. */
  private static final double END_SHARE = 0.06;

  private PlanPictures() {}

  /** The day against the clock, if it can be worked out. */
  static Optional<Schedule> schedule(Plan plan) {
    boolean possible =
        plan.timetable() != null
            && plan.timetable().lap().signum() > 0
            && plan.timetable().restEvery() >= 0
            && plan.stints() >= 1
            && plan.stints() <= plan.kind().mostStints()
            && plan.laps().scored() >= 1
            && plan.laps().scored() < 10
            && plan.laps().settling() < 10
            && plan.laps().warmUp() < 10;
    try {
      return possible ? Schedule.of(plan) : Optional.empty();
    } catch (java.time.DateTimeException | ArithmeticException impossible) {
      // A duration beyond all measure; PlanCheck says so beside its field.
      return Optional.empty();
    }
  }

  /** What other numbers of stints can show. */
  static Optional<Drawing> curve(Plan plan, DayAnswer answer, AnswerWords words) {
    List<DetectableContent.Dot> dots = new ArrayList<>();
    StringBuilder table = new StringBuilder();
    for (DayAnswer.Point point : answer.curve()) {
      boolean never = Double.isNaN(point.difference());
      String said =
          never ? AnswerWords.say("curve.never", point.stints()) : words.amount(point.difference());
      dots.add(dot(point, said, never));
      table.append(AnswerWords.say("curve.spoken", point.stints(), said)).append("; ");
    }
    if (answer.curve().stream().allMatch(p -> Double.isNaN(p.difference()))) {
      return Optional.empty();
    }
    return Optional.of(
        DetectableCurve.of(
            content(
                plan, answer, words, dots, new Spoken(words.sentence().text(), table.toString()))));
  }

  private static DetectableContent content(
      Plan plan,
      DayAnswer answer,
      AnswerWords words,
      List<DetectableContent.Dot> dots,
      Spoken spoken) {
    boolean unknown = answer.noise().kind() == NoiseKnown.Kind.UNKNOWN;
    boolean declared = !unknown && answer.worthwhile() > 0;
    boolean timed = plan.timetable() != null;
    String chosen = words.amount(answer.chosen().difference());
    return new DetectableContent(
        dots,
        OptionalInt.of(plan.stints()),
        AnswerWords.say("curve.chosen", plan.stints(), chosen),
        declared ? answer.worthwhile() : 1,
        declared
            ? AnswerWords.say("curve.worthwhile", words.declared())
            : AnswerWords.say("curve.noise"),
        timed ? AnswerWords.say("curve.within", answer.mostStints()) : "",
        timed ? AnswerWords.say("curve.beyond") : "",
        new Axis(
            AnswerWords.of(plan, "curve.title", words.unitOfCurve()),
            Axis.Counting.DECIMAL,
            (value, step) -> Figures.number(value, Figures.decimals(step))),
        AnswerWords.of(plan, "curve.across"),
        spoken);
  }

  private static DetectableContent.Dot dot(DayAnswer.Point point, String said, boolean never) {
    return new DetectableContent.Dot(
        point.stints(),
        never ? OptionalDouble.empty() : OptionalDouble.of(point.difference()),
        point.range() == null ? OptionalDouble.empty() : OptionalDouble.of(point.range().low()),
        point.range() == null ? OptionalDouble.empty() : OptionalDouble.of(point.range().high()),
        said,
        point.fits() ? DetectableContent.Fit.FITS : DetectableContent.Fit.NEEDS_MORE);
  }

  /** The day as a strip. */
  static Drawing strip(Plan plan, Schedule schedule) {
    int laps = lapsOfTrial(plan);
    List<DayStrip.Block> blocks = blocks(schedule, laps);
    double end = minutes(schedule.start(), schedule.end());
    double limit = minutes(schedule.start(), schedule.limit());
    if (limit >= end) {
      blocks.add(
          new DayStrip.Block(
              DayStrip.Kind.END,
              limit,
              limit + Math.max(1, END_SHARE * limit),
              DayWords.limit(schedule),
              DayWords.clock(schedule.limit())));
    }
    double handling =
        plan.timetable() == null || laps > 1
            ? 0 // a foot for each of so many laps would fill the strip
            : plan.timetable().swap().add(plan.timetable().coolDown()).doubleValue();
    String spare = schedule.fits() ? DayWords.spare(schedule) : "";
    String spoken = String.join(" ", DayWords.stints(plan, schedule));
    return DayStrip.of(
        new DayStrip.Content(
            blocks,
            overrun(schedule, limit, end),
            handling,
            DayWords.clock(schedule.end()),
            spare,
            new Spoken(said(plan, schedule), spoken)));
  }

  private static Optional<DayStrip.Overrun> overrun(Schedule schedule, double limit, double end) {
    return limit < end
        ? Optional.of(
            new DayStrip.Overrun(limit, DayWords.limit(schedule), DayWords.clock(schedule.limit())))
        : Optional.empty();
  }

  private static String said(Plan plan, Schedule schedule) {
    return DayWords.dark(plan, schedule)
        .map(dark -> DayWords.summary(schedule) + " " + dark)
        .orElseGet(() -> DayWords.summary(schedule));
  }

  private static int lapsOfTrial(Plan plan) {
    TellingRun run = plan.kind() == Plan.Kind.TELLING_RUN ? plan.telling() : null;
    return run == null ? 1 : run.task().laps();
  }

  /**
   * @param of stints in a block of the strip: the laps of a trial stand together
   */
  private static List<DayStrip.Block> blocks(Schedule schedule, int of) {
    List<DayStrip.Block> blocks = new ArrayList<>();
    Schedule.Kind before = Schedule.Kind.REST;
    double began = 0;
    for (Schedule.Block block : schedule.blocks()) {
      double from = minutes(schedule.start(), block.from());
      double to = minutes(schedule.start(), block.to());
      boolean stint = block.kind() == Schedule.Kind.STINT;
      if (stint && of > 1) {
        began = block.stint() % of == 1 ? from : began;
        if (block.stint() % of != 0) {
          continue; // its trial is not over
        }
        from = began;
      }
      if (to > from) {
        blocks.add(
            new DayStrip.Block(
                stint ? DayStrip.Kind.STINT : DayStrip.Kind.OTHER,
                from,
                to,
                stint ? String.valueOf(block.stint() / of) : word(block.kind()),
                clock(block.kind(), before) ? began(schedule, from) : ""));
        before = block.kind();
      }
    }
    return blocks;
  }

  private static String began(Schedule schedule, double minutes) {
    return DayWords.clock(schedule.start().plus(Duration.ofMillis(Math.round(minutes * 60_000))));
  }

  /** The first handling is too short a block for a word; warm-up follows it at once. */
  private static String word(Schedule.Kind kind) {
    return kind == Schedule.Kind.FIRST_HANDLING ? "" : DayWords.block(kind);
  }

  /** Whatever begins but a stint after a stint, and a warm-up after its handling. */
  private static boolean clock(Schedule.Kind kind, Schedule.Kind before) {
    return switch (kind) {
      case FIRST_HANDLING, REST -> true;
      case WARM_UP -> false;
      case STINT -> before != Schedule.Kind.STINT;
    };
  }

  private static double minutes(ZonedDateTime from, ZonedDateTime to) {
    return Duration.between(from, to).toSeconds() / 60.0;
  }
}
