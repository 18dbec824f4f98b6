package blindlap.review;

import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.plan.TrailGate;
import blindlap.plan.TrailVersion;
import blindlap.seal.OpenKey;
import blindlap.session.day.LapId;
import blindlap.stats.order.Orders;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Invented days with recorded laps, whose gain is known piece by piece. */
public final class WhereDays {
  /** Metres along the line of the gates of the invented trail. */
  public static final double[] GATES = {0, 195, 420, 690};

  private static final String[] NAMES = {"Gate post", "Rock garden", "Bridge", "Ford"};
  private static final int PIECES = 23;
  private static final double METRES = 30;

  /** Halves of pieces, so that a gate may stand in the middle of one. */
  private static final int STEPS = 2 * PIECES;

  private WhereDays() {}

  /** Number of pieces, 30 m each. */
  public static int pieces() {
    return PIECES;
  }

  /** The trail with its four gates. */
  public static TrailVersion trail() {
    List<TrailGate> gates = new ArrayList<>();
    for (int i = 0; i < NAMES.length; i++) {
      BigDecimal north = new BigDecimal("11.000").add(BigDecimal.valueOf(i, 3));
      gates.add(
          new TrailGate(
              NAMES[i],
              new TrailGate.Point(north, new BigDecimal("-38.0001")),
              new TrailGate.Point(north, new BigDecimal("-37.9999")),
              1));
    }
    return new TrailVersion(2, gates, "5".repeat(64));
  }

  /** A plan of one lap time. */
  public static Plan plan(Rule rule, boolean declared) {
    return of(Days.plan(rule, List.of(Days.lapTime())), declared);
  }

  /** The same plan with the trail's version, or without. */
  public static Plan of(Plan plan, boolean declared) {
    return new Plan(
        plan.kind(),
        plan.question(),
        plan.expectations(),
        plan.rider(),
        plan.trail(),
        plan.day(),
        plan.conditions(),
        plan.setups(),
        plan.change(),
        plan.bikes(),
        plan.differencesReason(),
        plan.bike(),
        plan.measures(),
        plan.protocol(),
        plan.stints(),
        plan.laps(),
        plan.blinding(),
        plan.timetable(),
        plan.noise(),
        plan.override(),
        plan.series(),
        plan.seriesSessions(),
        plan.covariates(),
        plan.looks(),
        declared ? trail() : null,
        null,
        null);
  }

  /** The gain of a setup that is faster between two places of the line, by half piece. */
  public static double[] gain(double from, double to, double whole) {
    double[] gain = new double[STEPS];
    double step = METRES / 2;
    for (int i = 0; i < STEPS; i++) {
      double inside = Math.max(0, Math.min(to, (i + 1) * step) - Math.max(from, i * step));
      gain[i] = -whole * inside / (to - from);
    }
    return gain;
  }

  /** The same by piece. */
  public static double[] byPiece(double[] gain) {
    double[] pieces = new double[PIECES];
    for (int i = 0; i < STEPS; i++) {
      pieces[i / 2] += gain[i];
    }
    return pieces;
  }

  /**
   * A day: every piece of every lap takes its ground's time, the day's drift, the lap's form and
   * noise of its own; passes stand where the gates do.
   *
   * @param effect seconds that B takes longer, by half piece
   * @param noise standard deviation of a piece
   */
  public static DayRecord day(
      Plan plan, String order, double[] effect, double noise, Random random) {
    int[] setups = Orders.parse(order);
    TreeMap<LapId, RecordedTimes.Lap> laps = new TreeMap<>();
    double[] lapTimes = new double[setups.length];
    for (int stint = 1; stint <= setups.length; stint++) {
      double form = 0.01 * random.nextGaussian() + 0.01 * stint;
      double[] times = new double[STEPS];
      for (int i = 0; i < STEPS; i++) {
        times[i] =
            round(
                2.1
                    + 0.4 * Math.sin(i / 2.0)
                    + form / 2
                    + noise * Math.sqrt(0.5) * random.nextGaussian()
                    + (setups[stint - 1] == 1 ? effect[i] : 0));
        lapTimes[stint - 1] += times[i];
      }
      laps.put(new LapId(stint, plan.laps().settling() + 1), lap(times));
    }
    DayRecord day = Days.day(plan, order, Map.of("lap time", lapTimes));
    return day.with(new RecordedTimes(borders(), laps));
  }

  /** A ridden day with recorded laps beside its own values, on the invented trail. */
  public static DayRecord recorded(DayRecord ridden, double[] effect, double noise, Random random) {
    Plan plan = of(ridden.plan(), true);
    RecordedTimes times = day(plan, ridden.order(), effect, noise, random).recorded();
    return new DayRecord(
        ridden.session(),
        plan,
        ridden.key(),
        ridden.laps(),
        ridden.guesses(),
        ridden.blindBroken(),
        ridden.lastStint(),
        ridden.fits(),
        ridden.remarks(),
        ridden.handlings(),
        ridden.covariates(),
        ridden.looks(),
        ridden.masks(),
        times);
  }

  private static double round(double seconds) {
    return BigDecimal.valueOf(seconds).setScale(3, RoundingMode.HALF_EVEN).doubleValue();
  }

  private static List<BigDecimal> borders() {
    List<BigDecimal> borders = new ArrayList<>();
    for (int i = 0; i <= PIECES; i++) {
      borders.add(BigDecimal.valueOf(METRES * i).setScale(1, RoundingMode.HALF_EVEN));
    }
    return borders;
  }

  private static RecordedTimes.Lap lap(double[] times) {
    List<@Nullable BigDecimal> pieces = new ArrayList<>();
    for (double time : byPiece(times)) {
      pieces.add(BigDecimal.valueOf(time).setScale(3, RoundingMode.HALF_EVEN));
    }
    List<@Nullable BigDecimal> sectors = new ArrayList<>();
    List<@Nullable BigDecimal> uncertainties = new ArrayList<>();
    for (int gate = 1; gate < GATES.length; gate++) {
      double time = passed(times, GATES[gate]) - passed(times, GATES[gate - 1]);
      sectors.add(BigDecimal.valueOf(time).setScale(3, RoundingMode.HALF_EVEN));
      uncertainties.add(new BigDecimal("0.1400"));
    }
    return new RecordedTimes.Lap(sectors, uncertainties, pieces, new TreeSet<>());
  }

  private static double passed(double[] times, double metres) {
    double seconds = 0;
    for (int i = 0; i < Math.round(metres / (METRES / 2)); i++) {
      seconds += times[i];
    }
    return seconds;
  }

  /** The same day with one lap's recording changed. */
  public static DayRecord with(DayRecord day, int stint, RecordedTimes.Lap lap) {
    TreeMap<LapId, RecordedTimes.Lap> laps = new TreeMap<>(day.recorded().laps());
    laps.put(new LapId(stint, 1), lap);
    return day.with(new RecordedTimes(day.recorded().borders(), laps));
  }

  /** The recording of a stint's lap, one sector void. */
  public static RecordedTimes.Lap voided(DayRecord day, int stint, int sector) {
    RecordedTimes.Lap lap = lap(day, stint);
    return new RecordedTimes.Lap(
        lap.sectors(), lap.uncertainties(), lap.pieces(), new TreeSet<>(List.of(sector)));
  }

  /** The recording of a stint's lap, one piece not recorded. */
  public static RecordedTimes.Lap gap(DayRecord day, int stint, int piece) {
    RecordedTimes.Lap lap = lap(day, stint);
    List<@Nullable BigDecimal> pieces = new ArrayList<>(lap.pieces());
    pieces.set(piece, null);
    return new RecordedTimes.Lap(lap.sectors(), lap.uncertainties(), pieces, lap.voided());
  }

  private static RecordedTimes.Lap lap(DayRecord day, int stint) {
    RecordedTimes.Lap lap = day.recorded().laps().get(new LapId(stint, 1));
    if (lap == null) {
      throw new IllegalArgumentException("no lap of stint " + stint);
    }
    return lap;
  }

  /** The same day with one setup on throughout. */
  public static DayRecord nullRun(DayRecord day) {
    return with(
        day,
        OpenKey.opened(
            "test",
            day.order(),
            day.key().codes(),
            "0".repeat(64),
            "0".repeat(64),
            0,
            Optional.of(0)),
        day.lastStint());
  }

  /** The same day, ended early by choice: laps after a stint were not ridden. */
  public static DayRecord ended(DayRecord day, int last) {
    return with(day, day.key(), last);
  }

  private static DayRecord with(DayRecord day, OpenKey key, int last) {
    TreeMap<LapId, RecordedTimes.Lap> recorded = new TreeMap<>(day.recorded().laps());
    recorded.keySet().removeIf(lap -> lap.stint() > last);
    return new DayRecord(
        day.session(),
        day.plan(),
        key,
        day.laps().stream().filter(lap -> lap.id().stint() <= last).toList(),
        day.guesses(),
        day.blindBroken(),
        last,
        day.fits(),
        day.remarks(),
        day.handlings(),
        day.covariates(),
        day.looks(),
        day.masks(),
        new RecordedTimes(day.recorded().borders(), recorded));
  }
}
