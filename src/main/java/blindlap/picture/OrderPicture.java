package blindlap.picture;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.StepsDay;
import blindlap.plot.Axis;
import blindlap.plot.RiddenContent;
import blindlap.plot.RiddenOrder;
import blindlap.plot.SetupMark;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.review.DayRecord;
import blindlap.review.StintValues;
import blindlap.session.day.LapId;
import blindlap.wording.EndNames;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Shown;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The stints in ridden order with one fitted line a setup. */
final class OrderPicture {
  private static final Words WORDS = Words.of("pictures");

  private final DayRecord day;
  private final Plan plan;
  private final Measure measure;
  private final StintValues stints;
  private final double[] above;

  OrderPicture(DayRecord day, Measure measure, StintValues stints, double[] above) {
    this.day = day;
    this.plan = day.plan();
    this.measure = measure;
    this.stints = stints;
    this.above = above;
  }

  Drawing open() {
    FittedDrift fitted = new FittedDrift(day, measure, stints, above);
    double[] drift = fitted.drift();
    List<RiddenContent.FittedLine> lines = new ArrayList<>();
    for (int setup = 0; marked() && setup < plan.setups().size(); setup++) {
      lines.add(line(setup, fitted));
    }
    return RiddenOrder.of(
        new RiddenContent(
            stints(),
            lines,
            blockEnds(plan),
            axis(measure),
            WORDS.say(marked() ? "stint" : "stint.level"),
            driftWords(drift),
            new Spoken(WORDS.say("spoken.order", plan.stints(), driftWords(drift)), "")));
  }

  /** A dot without a mark is named by its level. */
  private String level(int stint) {
    StepsDay steps = plan.steps();
    return steps == null
        ? ""
        : Shown.text(EndNames.bare(steps, plan.setups().get(day.setup(stint)).name()));
  }

  /** Levels of a steps day have neither letter nor ink: their stints are drawn alike. */
  private boolean marked() {
    return plan.steps() == null;
  }

  static Axis axis(Measure measure) {
    return PictureAxes.of(measure, 0).plainValues();
  }

  static List<Integer> blockEnds(Plan plan) {
    List<Integer> ends = new ArrayList<>();
    for (int end = plan.rule().block(); end < plan.stints(); end += plan.rule().block()) {
      ends.add(end);
    }
    return ends;
  }

  private List<RiddenContent.Stint> stints() {
    StintValues all = StintValues.of(day, measure, StintValues.Laps.ALL_RIDDEN);
    List<RiddenContent.Stint> list = new ArrayList<>();
    for (int stint = 1; stint <= plan.stints(); stint++) {
      boolean isVoid = all.voided(stint);
      double value = (isVoid ? all : stints).said(stint, measure);
      list.add(
          new RiddenContent.Stint(
              stint,
              Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value),
              marked() ? Optional.of(SetupMark.of(day.setup(stint))) : Optional.empty(),
              level(stint),
              isVoid ? RiddenContent.Standing.VOID : RiddenContent.Standing.KEPT,
              isVoid ? WORDS.say("void", reason(stint)) : ""));
    }
    return list;
  }

  private String reason(int stint) {
    return day.lap(new LapId(stint, plan.laps().perStint()))
        .flatMap(DayRecord.Lap::voided)
        .map(v -> v.event().text())
        .orElse("");
  }

  private RiddenContent.FittedLine line(int setup, FittedDrift fitted) {
    List<RiddenContent.Fitted> points = new ArrayList<>();
    int step = measure.drift().columns() > 2 ? 1 : plan.stints() - 1;
    for (int stint = 1; stint <= plan.stints(); stint += step) {
      double value = above[setup] + fitted.at(stint);
      points.add(new RiddenContent.Fitted(stint, measure.scale().back(value)));
    }
    return new RiddenContent.FittedLine(
        SetupMark.of(setup), Shown.text(plan.setups().get(setup).name()), points);
  }

  private String driftWords(double[] drift) {
    if (drift.length < 2) {
      return WORDS.say("drift.none");
    }
    if (drift.length > 2) {
      return WORDS.say(marked() ? "drift.curve" : "drift.levels.curve");
    }
    double slope = drift[1] / plan.stints();
    boolean ratio = measure.scale() == blindlap.stats.compare.Scale.RATIO;
    double size = ratio ? 100 * Math.expm1(Math.abs(slope)) : Math.abs(slope);
    String words = Figures.number(size, 2) + (ratio ? " %" : " " + measure.unit());
    String way = slope < 0 ? "fall" : "rise";
    return WORDS.say(marked() ? "drift." + way : "drift.levels." + way, words);
  }
}
