package blindlap.review;

import blindlap.fault.Problem;
import blindlap.fault.Unusable;
import blindlap.stats.compare.Along;
import blindlap.stats.compare.SeveralMeasures;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Sampling;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;

/** Works out where on the trail the difference arises (docs/method.md#where). */
final class WhereAnalysis {
  private final DayRecord day;
  private final Assignments set;
  private final int[] order;
  private final Drift drift;
  private final WayValues values;
  private final Set<Caveat> caveats = new TreeSet<>();
  private Optional<Problem> why = Optional.empty();

  private WhereAnalysis(DayRecord day, Assignments set, boolean stopped) {
    this.day = day;
    this.set = set;
    this.order = day.key().setups();
    this.values = new WayValues(day);
    this.drift = values.drift();
    if (EarlyEnd.freely(day)) {
      caveats.add(Caveat.ENDED_FREELY);
    }
    if (stopped) {
      caveats.add(Caveat.STOPPED_EARLY);
    }
  }

  /**
   * Of a day; empty where nothing was recorded.
   *
   * @param stopped true if a look before the end stopped the day
   */
  static Optional<WhereOnTrail> of(DayRecord day, Assignments set, boolean stopped) {
    return day.recorded().isEmpty()
        ? Optional.empty()
        : Optional.of(new WhereAnalysis(day, set, stopped).found());
  }

  private WhereOnTrail found() {
    Optional<WhereOnTrail.Line> line = tried(this::line);
    Optional<WhereOnTrail.Sectors> sectors = tried(this::sectors);
    return new WhereOnTrail(
        day.plan().trailVersion() != null,
        drift,
        values.summary(),
        line,
        sectors.filter(s -> compared(sectors)),
        caveats,
        line.isEmpty() && !compared(sectors) ? why : Optional.empty());
  }

  private static boolean compared(Optional<WhereOnTrail.Sectors> sectors) {
    return sectors.isPresent()
        && sectors.get().each().stream().anyMatch(s -> !Double.isNaN(s.estimate()));
  }

  /** Something that may be impossible with the values at hand. */
  private interface Step<T> {
    Optional<T> take();
  }

  private <T> Optional<T> tried(Step<T> step) {
    try {
      return step.take();
    } catch (Unusable e) {
      why = why.or(() -> Optional.of(e.problem()));
      return Optional.empty();
    }
  }

  private Optional<WhereOnTrail.Line> line() {
    if (!day.recorded().hasPieces()) {
      return Optional.empty();
    }
    WayValues.Table table = values.pieces();
    Along along = Along.compare(set, order, table.values(), all(), drift, Sampling.PREFERRED);
    double[] borders =
        day.recorded().borders().stream().mapToDouble(java.math.BigDecimal::doubleValue).toArray();
    return Optional.of(
        new WhereOnTrail.Line(borders, values.gates(), table.values(), along, table.share()));
  }

  private boolean[] all() {
    boolean[] all = new boolean[set.stints()];
    Arrays.fill(all, true);
    return all;
  }

  /**
   * Every sector with its own masks. Where all have the same and the set is large enough the
   * intervals are the band of all sectors at once; else each is the ordinary interval of its own.
   */
  private Optional<WhereOnTrail.Sectors> sectors() {
    List<WayValues.Column> columns = new ArrayList<>();
    for (int sector = 0; sector < day.recorded().sectors(); sector++) {
      columns.add(values.sector(sector));
    }
    boolean together = Along.banded(set) && alike(columns);
    List<Optional<Size>> sizes = together ? together(columns) : alone(columns);
    Optional<SeveralMeasures> tested = tested(columns, sizes);
    List<WhereOnTrail.OfSector> each = new ArrayList<>();
    int member = 0;
    for (int sector = 0; sector < columns.size(); sector++) {
      Optional<Size> size = sizes.get(sector);
      boolean family = inFamily(columns.get(sector), size);
      OptionalDouble p =
          family && tested.isPresent()
              ? OptionalDouble.of(tested.get().pAdjusted()[member])
              : OptionalDouble.empty();
      member += family ? 1 : 0;
      each.add(
          new WhereOnTrail.OfSector(
              sector,
              columns.get(sector).values(),
              size.map(Size::estimate).orElse(Double.NaN),
              size.flatMap(Size::interval),
              caveats.isEmpty() ? p : OptionalDouble.empty(),
              values.uncertainty(sector),
              columns.get(sector).perSetup()));
    }
    return Optional.of(
        new WhereOnTrail.Sectors(
            each,
            tested.map(SeveralMeasures::method).orElse(SeveralMeasures.Method.STEP_DOWN_MAXIMUM),
            together,
            set.count(),
            Sampling.PREFERRED.samples(set)));
  }

  /** A difference with its interval. */
  private record Size(double estimate, Optional<Interval> interval) {}

  private static boolean inFamily(WayValues.Column column, Optional<Size> size) {
    return size.isPresent() && column.tested();
  }

  private Optional<SeveralMeasures> tested(
      List<WayValues.Column> columns, List<Optional<Size>> sizes) {
    List<SeveralMeasures.Series> family = new ArrayList<>();
    for (int sector = 0; sector < columns.size(); sector++) {
      if (inFamily(columns.get(sector), sizes.get(sector))) {
        family.add(
            new SeveralMeasures.Series(
                "sector " + (sector + 1), columns.get(sector).values(), Nuisance.of(drift)));
      }
    }
    return family.isEmpty()
        ? Optional.empty()
        : Optional.of(SeveralMeasures.compare(set, order, family, all(), Sampling.PREFERRED));
  }

  private List<Optional<Size>> together(List<WayValues.Column> columns) {
    Along.Band band = along(columns).pieces();
    List<Optional<Size>> sizes = new ArrayList<>();
    for (int sector = 0; sector < columns.size(); sector++) {
      double estimate = band.estimates()[sector];
      sizes.add(Optional.of(new Size(estimate, around(estimate, band.halfWidths()[sector]))));
    }
    return sizes;
  }

  /** Of a sector that too few stints have, nothing; the others are compared all the same. */
  private List<Optional<Size>> alone(List<WayValues.Column> columns) {
    List<Optional<Size>> sizes = new ArrayList<>();
    for (WayValues.Column column : columns) {
      sizes.add(tried(() -> Optional.of(alone(column))));
    }
    return sizes;
  }

  private Size alone(WayValues.Column column) {
    TwoSetups alone =
        TwoSetups.compare(set, order, column.values(), all(), drift, Sampling.PREFERRED);
    return new Size(
        alone.estimate(), alone.noVariation() ? Optional.empty() : alone.curve().interval(0.95));
  }

  private static Optional<Interval> around(double estimate, double half) {
    return Double.isNaN(half)
        ? Optional.empty()
        : Optional.of(new Interval(estimate - half, estimate + half));
  }

  private Along along(List<WayValues.Column> columns) {
    double[][] table = new double[set.stints()][columns.size()];
    for (int stint = 0; stint < table.length; stint++) {
      for (int sector = 0; sector < columns.size(); sector++) {
        table[stint][sector] = columns.get(sector).values()[stint];
      }
    }
    return Along.compare(set, order, table, all(), drift, Sampling.PREFERRED);
  }

  /** True if all sectors have values on the same stints. */
  private static boolean alike(List<WayValues.Column> columns) {
    for (WayValues.Column column : columns) {
      for (int stint = 0; stint < column.values().length; stint++) {
        if (Double.isNaN(column.values()[stint]) != Double.isNaN(columns.get(0).values()[stint])) {
          return false;
        }
      }
    }
    return true;
  }
}
