package blindlap.wording;

import blindlap.review.WhereOnTrail;
import blindlap.stats.compare.SeveralMeasures;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;

/** The table of sectors of where on the trail, in words. */
public final class WhereSectorWords {
  private static final Words WORDS = Words.of("where");

  /**
   * What is said of a sector, for a row of a table.
   *
   * @param name "Rock garden to Bridge"
   * @param under its length and stints
   * @param difference B less A; empty where there is none
   * @param limits of its interval; empty where there is no difference
   * @param answer who was faster, or why nothing is said
   * @param evidence the orders that show as much; empty without a test
   */
  public record Row(
      WhereOnTrail.OfSector sector,
      String name,
      String under,
      String difference,
      String limits,
      String answer,
      String evidence) {}

  private final List<String> setups;
  private final WhereOnTrail where;
  private final WhereSizes sizes;
  private final IntFunction<String> gates;
  private final boolean byName;

  /**
   * @param gates names of gates, from 0
   * @param byName true for a null run
   */
  WhereSectorWords(
      List<String> setups,
      WhereOnTrail where,
      WhereSizes sizes,
      IntFunction<String> gates,
      boolean byName) {
    this.setups = setups;
    this.where = where;
    this.sizes = sizes;
    this.gates = gates;
    this.byName = byName;
  }

  /** "Rock garden to Bridge". */
  private String sector(int sector) {
    return WORDS.say("sector", gates.apply(sector), gates.apply(sector + 1));
  }

  /** Heads of the table of sectors. */
  List<String> columns() {
    int count = sectors().size();
    boolean together = where.sectors().filter(WhereOnTrail.Sectors::together).isPresent();
    String interval =
        !together || count == 1
            ? "col.interval.alone"
            : count == 2 ? "col.interval.two" : "col.interval";
    return List.of(
        WORDS.say("col.sector"),
        WORDS.say(interval, "", "", count),
        WORDS.say("col.less", setups.get(1), setups.get(0)),
        WORDS.say(count == 1 ? "col.answer.one" : "col.answer", "", "", count));
  }

  private List<WhereOnTrail.OfSector> sectors() {
    return where.sectors().map(WhereOnTrail.Sectors::each).orElse(List.of());
  }

  /** A row a sector, in the order of riding. */
  List<Row> rows() {
    return sectors().stream().map(this::row).toList();
  }

  private Row row(WhereOnTrail.OfSector sector) {
    boolean none = Double.isNaN(sector.estimate());
    return new Row(
        sector,
        sector(sector.sector()),
        under(sector),
        none ? "" : WORDS.say("size", sizes.signed(sector.estimate())),
        none ? "" : sector.interval().map(this::interval).orElse(WORDS.say("unbounded")),
        answer(sector),
        sector.p().isPresent() ? evidence(sector, sector.p().getAsDouble()) : "");
  }

  private String interval(Interval interval) {
    return Double.isInfinite(interval.halfWidth()) || Double.isNaN(interval.halfWidth())
        ? WORDS.say("unbounded")
        : sizes.limits(interval);
  }

  private String under(WhereOnTrail.OfSector sector) {
    Optional<String> metres =
        where
            .line()
            .map(WhereOnTrail.Line::gates)
            .map(g -> g[sector.sector() + 1] - g[sector.sector()])
            .filter(length -> !Double.isNaN(length))
            .map(length -> Figures.number(length, 0));
    return WORDS.say(
        metres.isPresent() ? "under" : "under.stints", metres.orElse(""), sector.used());
  }

  private String answer(WhereOnTrail.OfSector sector) {
    if (Double.isNaN(sector.estimate())) {
      return WORDS.say("row.nothing");
    }
    if (!where.tested()) {
      return WORDS.say("row.untested");
    }
    if (sector.p().isEmpty()) {
      return WORDS.say("row.missing");
    }
    return !sector.shown()
        ? WORDS.say("row.open")
        : byName ? WORDS.say("row.null") : WORDS.say("row.faster", setups.get(sector.faster()));
  }

  private String evidence(WhereOnTrail.OfSector sector, double p) {
    WhereOnTrail.Sectors all = where.sectors().orElseThrow();
    String said = DifferenceWords.p(p);
    String orders = Figures.count(all.count());
    if (all.sampled()) {
      return WORDS.say("row.drawn", "", orders, said);
    }
    if (all.method() == SeveralMeasures.Method.HOLM) {
      return WORDS.say("row.holm", "", orders, said);
    }
    long asMuch = Math.round(p * all.count().doubleValue());
    return WORDS.say(
        sectors().size() == 1 ? "row.count.one" : "row.count", Figures.count(asMuch), orders, said);
  }
}
