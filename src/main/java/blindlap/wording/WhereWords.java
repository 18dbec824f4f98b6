package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.TrailVersion;
import blindlap.review.Caveat;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.review.WhereOnTrail;
import blindlap.stats.compare.Along;
import blindlap.stats.compare.StintSummary;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where on the trail the difference arises, in words. It is evidence on where, never a second
 * verdict: no word of worth or of harm stands here.
 */
public final class WhereWords {
  static final Words WORDS = Words.of("where");

  /** More notes than that hide the line they are about. */
  private static final int MOST_NOTES = 2;

  private final DayRecord day;
  private final Plan plan;
  private final WhereOnTrail where;
  private final List<String> setups;
  private final WhereSizes sizes;

  private WhereWords(Finding finding, WhereOnTrail where) {
    this.day = finding.day();
    this.plan = day.plan();
    this.where = where;
    this.setups = plan.setups().stream().map(s -> s.name()).toList();
    this.sizes = WhereSizes.of(where);
  }

  /** Of a finding; empty where nothing was recorded. */
  public static Optional<WhereWords> of(Finding finding) {
    return finding.where().map(where -> new WhereWords(finding, where));
  }

  /** How the numbers are computed; empty where nothing could be compared. */
  public static Optional<String> formula(Finding finding) {
    return finding
        .where()
        .filter(WhereOnTrail::compared)
        .map(where -> Words.of("computed").say("where.formula"));
  }

  /** What the picture shows: "Time gained or lost by the way, Shock L less Shock K, in seconds". */
  public String pictured() {
    return WORDS.say("picture", setups.get(1), setups.get(0));
  }

  /** A text of the section that stands for itself. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** "Where on the trail". */
  public static String title() {
    return WORDS.say("title");
  }

  /**
   * Words on the picture about one sector.
   *
   * @param sector from 0
   */
  public record Note(int sector, String words) {}

  /** The sentence: where which setup gains, and where nothing is shown. */
  public String headline() {
    String plain = plain();
    boolean shown = !new WhereStretches(this::gate, where).shown().isEmpty();
    String said =
        shown && VerdictWords.capped(plan.level()) && !day.nullRun()
            ? plain.substring(0, plain.length() - 1) + VerdictWords.tailOfMany(plan.level())
            : plain;
    return (where.declared() ? "" : WORDS.say("label.exploratory"))
        + LevelWords.label(plan.level())
        + NullRunWords.label(day)
        + said;
  }

  private String plain() {
    if (setups.size() > 2) {
      return WORDS.say("headline.many", setups.size());
    }
    if (!where.compared()) {
      String why = where.why().map(p -> " " + Problems.sentence(p)).orElse("");
      return WORDS.say("headline.refused", setups.get(0), setups.get(1)) + why;
    }
    if (!where.tested()) {
      return WORDS.say("headline.untested", setups.get(0), setups.get(1));
    }
    WhereStretches stretches = new WhereStretches(this::gate, where);
    if (stretches.shown().isEmpty()) {
      return day.nullRun()
          ? WORDS.say("headline.null.none")
          : WORDS.say(
              stretches.ofSectors() ? "headline.none" : "headline.none.line",
              setups.get(0),
              setups.get(1));
    }
    if (day.nullRun()) {
      return WORDS.say("headline.null", stretches.all());
    }
    int gains = stretches.gaining();
    String lost = stretches.of(1 - gains);
    return WORDS.say(
        (lost.isEmpty() ? "headline.gains" : "headline.both") + (stretches.whole() ? ".all" : ""),
        setups.get(gains),
        stretches.of(gains),
        lost);
  }

  /** Name of a gate, from 0. */
  public String gate(int gate) {
    TrailVersion trail = plan.trailVersion();
    if (trail != null && gate < trail.gates().size()) {
      return trail.gates().get(gate).name();
    }
    int last = day.recorded().sectors();
    return gate == 0
        ? WORDS.say("gate.start")
        : gate == last ? WORDS.say("gate.finish") : WORDS.say("gate.split", gate);
  }

  /** Heads of the table of sectors. */
  public List<String> columns() {
    return sectorWords().columns();
  }

  /** A row a sector, in the order of riding. */
  public List<WhereSectorWords.Row> rows() {
    return sectorWords().rows();
  }

  private WhereSectorWords sectorWords() {
    return new WhereSectorWords(setups, where, sizes, this::gate, day.nullRun());
  }

  private List<WhereOnTrail.OfSector> sectors() {
    return where.sectors().map(WhereOnTrail.Sectors::each).orElse(List.of());
  }

  /** A sector a line, for a terminal. */
  public List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add(WORDS.say("line", headline()));
    for (WhereSectorWords.Row row : rows()) {
      String said = (row.answer() + " " + row.evidence()).strip();
      lines.add(
          row.difference().isEmpty()
              ? WORDS.say("row.line.bare", row.name(), row.under(), "", "", said)
              : WORDS.say(
                  "row.line", row.name(), row.under(), row.difference(), row.limits(), said));
    }
    lines.addAll(worth());
    recorder().ifPresent(lines::add);
    return lines;
  }

  /** How the picture and the table are read. */
  public List<String> how() {
    List<String> lines = new ArrayList<>();
    String key = day.nullRun() ? "how.text.null" : "how.text";
    if (where.line().isPresent()) {
      lines.add(WORDS.say(key, setups.get(1), setups.get(0)));
    }
    if (!day.nullRun()) {
      lines.add(WORDS.say("how.sectors", setups.get(1), setups.get(0)));
    }
    return lines;
  }

  /** What it is worth, with what is not declared, left out or withheld. */
  public List<String> worth() {
    List<String> lines = new ArrayList<>();
    if (!where.compared()) {
      return lines;
    }
    lines.add(WORDS.say("worth.verdict", plan.primary().map(Measure::name).orElse("")));
    if (!where.declared()) {
      lines.add(WORDS.say("worth.exploratory"));
    }
    for (Caveat caveat : where.caveats()) {
      lines.add(WORDS.say("worth.why." + caveat.name()));
    }
    where.line().ifPresent(line -> ofLine(lines, line));
    if (where.summary() == StintSummary.MEDIAN) {
      lines.add(WORDS.say("worth.median"));
    }
    if (!plan.covariates().isEmpty()) {
      lines.add(WORDS.say("worth.covariates"));
    }
    return lines;
  }

  private void ofLine(List<String> lines, WhereOnTrail.Line line) {
    if (line.used() < plan.stints()) {
      lines.add(WORDS.say("worth.masked", line.used(), plan.stints()));
    }
    if (where.lineMissing()) {
      lines.add(WORDS.say("worth.line.missing"));
    }
    if (banded()) {
      lines.add(WORDS.say("worth.band"));
    } else if (!Along.banded(plan.rule().assignments())) {
      lines.add(WORDS.say("worth.no.band", Figures.count(line.along().count())));
    }
    if (line.along().sampled()) {
      lines.add(WORDS.say("worth.drawn"));
    }
  }

  /** True if the line has a band. */
  public boolean banded() {
    return where.line().isPresent()
        && java.util.Arrays.stream(where.line().get().along().cumulative().halfWidths())
            .anyMatch(half -> !Double.isNaN(half));
  }

  /** What the recorder lets be seen; empty without sectors. */
  public Optional<String> recorder() {
    Optional<WhereOnTrail.OfSector> worst =
        sectors().stream()
            .filter(s -> !Double.isNaN(s.recorder()))
            .max(java.util.Comparator.comparingDouble(WhereOnTrail.OfSector::recorder));
    if (sectors().isEmpty()) {
      return Optional.empty();
    }
    if (worst.isEmpty()) {
      return Optional.of(WORDS.say("recorder.none"));
    }
    WhereOnTrail.OfSector sector = worst.get();
    String said =
        WORDS.say(
            "recorder.text",
            Figures.near(1.96 * sector.uncertainty()),
            Figures.near(sector.recorder()),
            sector.laps());
    return Optional.of(stretch(sector.recorder()).map(m -> said + " " + m).orElse(said));
  }

  /** The stretch in which the whole lap's gain is as large as what the recorder alone makes. */
  private Optional<String> stretch(double recorder) {
    return where
        .line()
        .filter(line -> Math.abs(line.total()) > recorder && !day.nullRun())
        .map(line -> recorder * line.length() / Math.abs(line.total()))
        .map(
            metres -> WORDS.say("recorder.length", Figures.number(10 * Math.ceil(metres / 10), 0)));
  }

  /** What is written on the picture: the sectors with the largest differences that are shown. */
  public List<Note> notes() {
    if (sectors().size() < 2 || !where.tested()) {
      return List.of();
    }
    return where.sectors().orElseThrow().shown().stream()
        .sorted((a, b) -> Double.compare(Math.abs(b.estimate()), Math.abs(a.estimate())))
        .limit(MOST_NOTES)
        .map(sector -> new Note(sector.sector(), note(sector)))
        .toList();
  }

  private String note(WhereOnTrail.OfSector sector) {
    double whole = where.line().map(WhereOnTrail.Line::total).orElse(Double.NaN);
    boolean part =
        sectors().stream().allMatch(s -> s.estimate() * whole >= 0)
            && Math.abs(sector.estimate()) <= Math.abs(whole);
    String key = day.nullRun() ? "note.null" : part ? "note.part" : "note.gains";
    String size = day.nullRun() ? sizes.signed(sector.estimate()) : sizes.plain(sector.estimate());
    return WORDS.say(
        key,
        setups.get(sector.faster()),
        WORDS.say("size", size),
        gate(sector.sector()),
        gate(sector.sector() + 1),
        Double.isNaN(whole) ? "" : WORDS.say("size", sizes.plain(whole)));
  }

  /** Words at the end of the line: how much faster or slower B is over the whole lap. */
  public String end() {
    WhereOnTrail.Line line = where.line().orElseThrow();
    double[] halves = line.along().cumulative().halfWidths();
    double half = halves[halves.length - 1];
    String key =
        day.nullRun()
            ? "end.null"
            : (where.tested() && Math.abs(line.total()) > half ? "end." : "end.best.")
                + (line.total() < 0 ? "faster" : "slower");
    String size = day.nullRun() ? sizes.signed(line.total()) : sizes.plain(line.total());
    return line.total() == 0 && !day.nullRun()
        ? WORDS.say("end.equal")
        : WORDS.say(key, WORDS.say("size", size));
  }

  /** The picture in words: its sentence, then what stands at every gate. */
  public String spokenGates() {
    WhereOnTrail.Line line = where.line().orElseThrow();
    List<String> said = new ArrayList<>();
    for (int gate = 0; gate < line.gates().length; gate++) {
      double metres = line.gates()[gate];
      if (!Double.isNaN(metres)) {
        said.add(
            WORDS.say(
                "spoken.gate",
                gate(gate),
                Figures.number(metres - line.borders()[0], 0),
                WORDS.say("size", sizes.signed(line.at(metres)))));
      }
    }
    return String.join(" ", said);
  }
}
