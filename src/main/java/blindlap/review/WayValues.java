package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.day.LapId;
import blindlap.stats.compare.StintSummary;
import blindlap.stats.order.Drift;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.math3.stat.StatUtils;

/**
 * Recorded times by stint (docs/method.md#where): of sectors, each with its own masks, and of
 * pieces, where a lap with any piece missing or any sector void is left out of all.
 */
final class WayValues {
  private final DayRecord day;
  private final Plan plan;
  private final RecordedTimes times;
  private final Measure time;
  private final StintSummary summary;
  private final boolean voidsCount;

  WayValues(DayRecord day) {
    this.day = day;
    this.plan = day.plan();
    this.times = day.recorded();
    this.time = time(plan);
    this.summary = time.kind().timed() ? time.summary() : StintSummary.MEAN;
    this.voidsCount = StintValues.Laps.counting(plan) == StintValues.Laps.ALL_RIDDEN;
  }

  /**
   * The measure whose drift and summary hold: the lap time, else another time, else the primary.
   */
  private static Measure time(Plan plan) {
    Stream<Measure> laps = plan.measures().stream().filter(m -> m.kind() == Measure.Kind.LAP_TIME);
    Stream<Measure> times = plan.measures().stream().filter(m -> m.kind().timed());
    return Stream.of(laps, times, plan.primary().stream())
        .flatMap(each -> each)
        .findFirst()
        .orElseThrow();
  }

  /** What is removed. */
  Drift drift() {
    return time.drift();
  }

  /** How a stint's laps become one value. */
  StintSummary summary() {
    return summary;
  }

  /**
   * A column of values.
   *
   * @param values by stint; NaN where masked
   * @param share of the stints with a lap that counts, those without a value
   * @param perSetup laps that enter, of A and of B
   */
  record Column(double[] values, double share, int[] perSetup) {
    /** True if few enough values are missing for a test. */
    boolean tested() {
      return share <= Analysis.MOST_MISSING;
    }
  }

  /** Times of a sector, from 0. */
  Column sector(int sector) {
    double[] values = new double[plan.stints()];
    int[] perSetup = new int[plan.setups().size()];
    int open = 0;
    int missing = 0;
    for (int stint = 1; stint <= values.length; stint++) {
      double[] laps = new double[plan.laps().scored()];
      Arrays.fill(laps, Double.NaN);
      boolean counts = false;
      for (int lap = 0; lap < laps.length; lap++) {
        LapId id = id(stint, lap);
        Optional<RecordedTimes.Lap> timed = timed(id);
        boolean isVoid = !voidsCount && timed.filter(t -> t.voided().contains(sector)).isPresent();
        if (counts(id) && !isVoid) {
          counts = true;
          laps[lap] = timed.map(t -> t.sector(sector)).orElse(Double.NaN);
        }
      }
      values[stint - 1] = summary.of(laps);
      boolean masked = Double.isNaN(values[stint - 1]);
      open += counts ? 1 : 0;
      missing += counts && masked ? 1 : 0;
      perSetup[day.setup(stint)] += masked ? 0 : known(laps);
    }
    return new Column(values, share(missing, open), perSetup);
  }

  /**
   * Times of all pieces.
   *
   * @param values by stint and piece; NaN where masked
   * @param share of the stints with a lap that counts, those without a value
   */
  record Table(double[][] values, double share) {}

  Table pieces() {
    int pieces = times.pieces();
    double[][] values = new double[plan.stints()][pieces];
    int open = 0;
    int missing = 0;
    for (int stint = 1; stint <= values.length; stint++) {
      boolean counts = false;
      for (int lap = 0; lap < plan.laps().scored(); lap++) {
        counts |=
            counts(id(stint, lap))
                && (voidsCount
                    || timed(id(stint, lap)).filter(t -> !t.voided().isEmpty()).isEmpty());
      }
      for (int piece = 0; piece < pieces; piece++) {
        double[] laps = new double[plan.laps().scored()];
        for (int lap = 0; lap < laps.length; lap++) {
          int at = piece;
          laps[lap] = whole(id(stint, lap)).map(t -> t.piece(at)).orElse(Double.NaN);
        }
        values[stint - 1][piece] = summary.of(laps);
      }
      open += counts ? 1 : 0;
      missing += counts && Double.isNaN(values[stint - 1][0]) ? 1 : 0;
    }
    return new Table(values, share(missing, open));
  }

  private static double share(int missing, int open) {
    return open == 0 ? 1 : (double) missing / open;
  }

  private static int known(double[] laps) {
    return (int) Arrays.stream(laps).filter(v -> !Double.isNaN(v)).count();
  }

  private LapId id(int stint, int scored) {
    return new LapId(stint, plan.laps().settling() + 1 + scored);
  }

  private Optional<RecordedTimes.Lap> timed(LapId id) {
    return Optional.ofNullable(times.laps().get(id));
  }

  private boolean counts(LapId id) {
    return day.lap(id)
        .filter(lap -> lap.ridden() && (voidsCount || lap.voided().isEmpty()))
        .isPresent();
  }

  /** A lap that counts, with every piece and without a void sector. */
  private Optional<RecordedTimes.Lap> whole(LapId id) {
    return timed(id)
        .filter(t -> counts(id))
        .filter(t -> voidsCount || t.voided().isEmpty())
        .filter(t -> t.pieces().size() == times.pieces())
        .filter(t -> t.pieces().stream().noneMatch(p -> p == null));
  }

  private List<LapId> scored() {
    return IntStream.rangeClosed(1, plan.stints())
        .boxed()
        .flatMap(stint -> IntStream.range(0, plan.laps().scored()).mapToObj(lap -> id(stint, lap)))
        .toList();
  }

  /** Root of the mean square of the uncertainties of a sector's times; NaN where none is known. */
  double uncertainty(int sector) {
    double[] known =
        scored().stream()
            .filter(this::counts)
            .flatMap(id -> timed(id).stream())
            .mapToDouble(t -> t.uncertainty(sector))
            .filter(u -> !Double.isNaN(u))
            .toArray();
    return known.length == 0 ? Double.NaN : Math.sqrt(StatUtils.sumSq(known) / known.length);
  }

  /**
   * Where along the line the gates stand: the median place at which laps passed them by the times
   * of their pieces, so that nothing but the recorded times is needed. A gate that no whole lap
   * passed has none, NaN.
   */
  double[] gates() {
    int sectors = times.sectors();
    double[] gates = new double[sectors + 1];
    gates[0] = border(0);
    gates[sectors] = border(times.pieces());
    for (int gate = 1; gate < sectors; gate++) {
      int at = gate;
      double[] places =
          scored().stream()
              .flatMap(id -> whole(id).stream())
              .mapToDouble(lap -> place(lap, at))
              .filter(metres -> !Double.isNaN(metres))
              .toArray();
      gates[gate] = places.length == 0 ? Double.NaN : StatUtils.percentile(places, 50);
    }
    return gates;
  }

  private double border(int border) {
    return times.borders().get(border).doubleValue();
  }

  private double place(RecordedTimes.Lap lap, int gate) {
    double seconds = 0;
    for (int sector = 0; sector < gate; sector++) {
      seconds += lap.sector(sector);
    }
    double gone = 0;
    for (int piece = 0; piece < times.pieces(); piece++) {
      double takes = lap.piece(piece);
      if (seconds <= gone + takes) {
        double share = takes > 0 ? (seconds - gone) / takes : 0;
        return border(piece) + share * (border(piece + 1) - border(piece));
      }
      gone += takes;
    }
    return Double.isNaN(seconds) ? Double.NaN : border(times.pieces());
  }
}
