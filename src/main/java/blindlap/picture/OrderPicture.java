package blindlap.picture;

import blindlap.plan.Covariate;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plot.Axis;
import blindlap.plot.RiddenContent;
import blindlap.plot.RiddenOrder;
import blindlap.plot.SetupMark;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.review.DayRecord;
import blindlap.review.StintValues;
import blindlap.review.TakenOut;
import blindlap.session.day.LapId;
import blindlap.stats.order.DayCheck;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Shown;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.Arrays;
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
    double[] drift = drift();
    List<RiddenContent.FittedLine> lines = new ArrayList<>();
    for (int setup = 0; marked() && setup < plan.setups().size(); setup++) {
      lines.add(line(setup, drift));
    }
    return RiddenOrder.of(
        new RiddenContent(
            stints(),
            lines,
            blockEnds(plan),
            axis(measure),
            WORDS.say("stint"),
            driftWords(drift),
            new Spoken(WORDS.say("spoken.order", plan.stints(), driftWords(drift)), "")));
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
              "",
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

  /**
   * Coefficients of the drift in the stint number, by least squares on values less setups, together
   * with those of the covariates that are taken out.
   */
  private double[] drift() {
    double[] values = stints.values();
    int powers = measure.drift().columns();
    List<double[]> out = covariates();
    int columns = powers + out.size();
    double[][] normal = new double[columns][columns + 1];
    for (int i = 0; i < values.length; i++) {
      if (Double.isNaN(values[i])) {
        continue;
      }
      double[] row = Arrays.copyOf(powers(i + 1, powers), columns);
      for (int c = powers; c < columns; c++) {
        row[c] = out.get(c - powers)[i];
      }
      double y = values[i] - above[day.setup(i + 1)];
      for (int r = 0; r < columns; r++) {
        for (int c = 0; c < columns; c++) {
          normal[r][c] += row[r] * row[c];
        }
        normal[r][columns] += row[r] * y;
      }
    }
    return Arrays.copyOf(solved(normal), powers);
  }

  /** Those that are taken out, each less its mean and over its largest size. */
  private List<double[]> covariates() {
    boolean[] use = stints.valid();
    List<double[]> columns = new ArrayList<>();
    for (Covariate covariate : TakenOut.of(day, measure, stints).used()) {
      double[] column = DayCheck.centred(TakenOut.values(day, covariate), use);
      double largest = 0;
      for (int i = 0; i < column.length; i++) {
        column[i] = use[i] ? column[i] : 0;
        largest = Math.max(largest, Math.abs(column[i]));
      }
      for (int i = 0; i < column.length; i++) {
        column[i] /= largest;
      }
      columns.add(column);
    }
    return columns;
  }

  /** Centred powers, so that the equations stay well conditioned. */
  private double[] powers(int stint, int columns) {
    double t = (stint - (plan.stints() + 1) / 2.0) / plan.stints();
    double[] row = new double[columns];
    row[0] = 1;
    for (int c = 1; c < columns; c++) {
      row[c] = row[c - 1] * t;
    }
    return row;
  }

  private static double[] solved(double[][] m) {
    int n = m.length;
    for (int p = 0; p < n; p++) {
      int best = p;
      for (int r = p + 1; r < n; r++) {
        best = Math.abs(m[r][p]) > Math.abs(m[best][p]) ? r : best;
      }
      double[] swap = m[p];
      m[p] = m[best];
      m[best] = swap;
      for (int r = 0; r < n; r++) {
        double factor = r == p || m[p][p] == 0 ? 0 : m[r][p] / m[p][p];
        for (int c = p; c <= n; c++) {
          m[r][c] -= factor * m[p][c];
        }
      }
    }
    double[] x = new double[n];
    for (int i = 0; i < n; i++) {
      x[i] = m[i][i] == 0 ? 0 : m[i][n] / m[i][i];
    }
    return x;
  }

  private RiddenContent.FittedLine line(int setup, double[] drift) {
    List<RiddenContent.Fitted> points = new ArrayList<>();
    int step = drift.length > 2 ? 1 : plan.stints() - 1;
    for (int stint = 1; stint <= plan.stints(); stint += step) {
      double value = above[setup];
      double[] row = powers(stint, drift.length);
      for (int c = 0; c < drift.length; c++) {
        value += drift[c] * row[c];
      }
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
      return WORDS.say("drift.curve");
    }
    double slope = drift[1] / plan.stints();
    boolean ratio = measure.scale() == blindlap.stats.compare.Scale.RATIO;
    double size = ratio ? 100 * Math.expm1(Math.abs(slope)) : Math.abs(slope);
    String words = Figures.number(size, 2) + (ratio ? " %" : " " + measure.unit());
    return WORDS.say(slope < 0 ? "drift.fall" : "drift.rise", words);
  }
}
