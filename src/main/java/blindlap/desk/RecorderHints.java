package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.PlanHint;
import blindlap.plan.Sector;
import blindlap.plan.Timetable;
import blindlap.plan.Trail;
import blindlap.plan.TrailVersion;
import blindlap.recording.Fix;
import blindlap.recording.PassUncertainty;
import blindlap.stats.compare.Scale;
import blindlap.wording.TrailWords;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/**
 * What a usual recorder can show of the times that a plan takes from it
 * (docs/method.md#recordings): known before riding from the trail's line, if it was recorded, else
 * from its length and the time that the timetable has for a lap.
 */
final class RecorderHints {
  /** Standard deviations to either side that hold 95 %. */
  private static final double WIDE = 1.96;

  /** A recorder that tells nothing else writes a place a second. */
  private static final double USUAL_STEP = 1;

  private static final int SECONDS_A_MINUTE = 60;
  private static final int PER_CENT = 100;

  private final Plan plan;
  private final List<TrailWords.Said> gates;
  private final List<Problem> hints = new ArrayList<>();

  private RecorderHints(Plan plan, Trail trail) {
    this.plan = plan;
    this.gates = TrailShape.of(TrailDraft.of(trail)).said();
  }

  /**
   * A time between two gates.
   *
   * @param seconds that it takes, about
   * @param uncertainty standard deviation of it, of the recorder alone
   * @param speed metres a second, over the whole way
   */
  private record Timed(double seconds, double uncertainty, double speed) {}

  static List<Problem> of(Plan plan, Trail trail) {
    RecorderHints hints = new RecorderHints(plan, trail);
    for (int i = 0; i < plan.measures().size(); i++) {
      if (plan.measures().get(i).recorded()) {
        hints.measure(plan.measures().get(i), "measures[" + (i + 1) + "].timed_by");
      }
    }
    return List.copyOf(hints.hints);
  }

  private void measure(Measure measure, String where) {
    TrailVersion version = plan.trailVersion();
    Sector sector = measure.timing().sector();
    int from = version == null || sector == null ? 0 : version.gate(sector.from());
    int to = version == null || sector == null ? gates.size() - 1 : version.gate(sector.to());
    if (from < 0 || to <= from || to >= gates.size()) {
      return; // the plan does not hold, and its gates are named elsewhere
    }
    Timed time = timed(gates.get(from), gates.get(to));
    if (!(time.seconds() > 0 && Double.isFinite(time.uncertainty()))) {
      return;
    }
    int setups = Math.max(2, plan.setups().size());
    double laps = (double) plan.stints() * plan.laps().scored() / setups;
    double between = WIDE * time.uncertainty() * Math.sqrt(2 / laps);
    BigDecimal worthwhile = measure.worthwhile();
    double matters =
        worthwhile == null
            ? Double.POSITIVE_INFINITY
            : measure.scale() == Scale.RATIO
                ? worthwhile.doubleValue() / PER_CENT * time.seconds()
                : worthwhile.doubleValue();
    boolean hides = between > matters;
    double first = hides ? matters : WIDE * time.uncertainty();
    hints.add(
        Problem.of(
            hides ? PlanHint.RECORDER_HIDES : PlanHint.RECORDER_LEAVES,
            where,
            measure.name(),
            rounded(first, 2),
            rounded(between, 2),
            rounded(time.speed(), 1)));
  }

  private Timed timed(TrailWords.Said from, TrailWords.Said to) {
    double metres = to.along() - from.along();
    double seconds = to.seconds() - from.seconds();
    if (seconds > 0) {
      return new Timed(seconds, Math.hypot(from.uncertainty(), to.uncertainty()), metres / seconds);
    }
    Timetable table = plan.timetable();
    if (table == null) {
      return new Timed(Double.NaN, Double.NaN, Double.NaN);
    }
    double whole = gates.get(gates.size() - 1).along() - gates.get(0).along();
    double speed = whole / (table.lap().doubleValue() * SECONDS_A_MINUTE);
    double pass = PassUncertainty.of(Fix.USUAL_RADIUS, USUAL_STEP, speed);
    return new Timed(metres / speed, Math.hypot(pass, pass), speed);
  }

  private static String rounded(double number, int places) {
    return BigDecimal.valueOf(number).setScale(places, RoundingMode.HALF_EVEN).toPlainString();
  }
}
