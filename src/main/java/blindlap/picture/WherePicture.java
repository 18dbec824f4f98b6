package blindlap.picture;

import blindlap.plan.Plan;
import blindlap.plot.AlongWay;
import blindlap.plot.Axis;
import blindlap.plot.Limits;
import blindlap.plot.SetupMark;
import blindlap.plot.SmallInterval;
import blindlap.plot.WayContent;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.review.Finding;
import blindlap.review.WhereOnTrail;
import blindlap.stats.distribution.Interval;
import blindlap.wording.WhereSectorWords;
import blindlap.wording.WhereWords;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The pictures of where on the trail the difference arises. */
public final class WherePicture {
  private final Plan plan;
  private final WhereOnTrail where;
  private final WhereWords words;

  private WherePicture(Finding finding, WhereOnTrail where, WhereWords words) {
    this.plan = finding.day().plan();
    this.where = where;
    this.words = words;
  }

  /** Of a finding; empty where nothing was recorded. */
  public static Optional<WherePicture> of(Finding finding) {
    return finding
        .where()
        .map(where -> new WherePicture(finding, where, WhereWords.of(finding).orElseThrow()));
  }

  /** The running sum along the line; empty where the trail has no line. */
  public Optional<Drawing> line() {
    return where.line().map(this::line);
  }

  private Drawing line(WhereOnTrail.Line line) {
    int places = line.borders().length;
    double[] way = new double[places];
    double[] sums = new double[places];
    double[] halves = new double[places];
    for (int i = 0; i < places; i++) {
      way[i] = line.borders()[i] - line.borders()[0];
      sums[i] = i == 0 ? 0 : line.along().cumulative().estimates()[i - 1];
      halves[i] = i == 0 ? 0 : line.along().cumulative().halfWidths()[i - 1];
    }
    List<WayContent.Gate> gates = new ArrayList<>();
    for (int gate = 0; gate < line.gates().length; gate++) {
      double metres = line.gates()[gate] - line.borders()[0];
      if (!Double.isNaN(metres)) {
        gates.add(
            new WayContent.Gate(Shown.text(words.gate(gate)), metres, Figures.number(metres, 0)));
      }
    }
    return AlongWay.of(
        new WayContent(
            way,
            sums,
            halves,
            gates,
            notes(line),
            new Axis(
                WhereWords.say("picture.unit"),
                Axis.Counting.DECIMAL,
                (value, step) -> Figures.number(value, decimals(step))),
            WhereWords.say("picture.axis", words.gate(0)),
            WhereWords.say("picture.band"),
            new WayContent.Named(SetupMark.A, setup(0), ""),
            new WayContent.Named(SetupMark.B, setup(1), words.end()),
            new Spoken(words.headline(), words.spokenGates())));
  }

  private String setup(int setup) {
    return Shown.text(plan.setups().get(setup).name());
  }

  private List<WayContent.Note> notes(WhereOnTrail.Line line) {
    double start = line.borders()[0];
    return words.notes().stream()
        .map(
            note ->
                new WayContent.Note(
                    line.gates()[note.sector()] - start,
                    line.gates()[note.sector() + 1] - start,
                    note.words()))
        .filter(note -> !Double.isNaN(note.to() - note.from()))
        .toList();
  }

  private static int decimals(double step) {
    return step >= 1 ? 0 : (int) Math.ceil(-Math.log10(step) - 1e-9);
  }

  /** A sector's interval for its row, all rows on one scale; empty where there is no difference. */
  public Optional<Drawing> interval(WhereSectorWords.Row row) {
    WhereOnTrail.OfSector sector = row.sector();
    if (Double.isNaN(sector.estimate())) {
      return Optional.empty();
    }
    Limits limits =
        sector
            .interval()
            .map(i -> new Limits(i.low(), i.high()))
            .orElse(new Limits(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY));
    return Optional.of(
        SmallInterval.of(
            new SmallInterval.Content(
                sector.estimate(),
                limits,
                new Limits(sector.estimate(), sector.estimate()),
                0,
                reach()),
            new Spoken(row.name() + ": " + row.difference() + ", " + row.limits(), "")));
  }

  /**
   * How far the common scale of all sectors reaches from zero; what goes on much farther than any
   * difference ends in an arrow.
   */
  private double reach() {
    double near = 0;
    double far = 0;
    for (WhereOnTrail.OfSector sector : where.sectors().orElseThrow().each()) {
      near = Math.max(near, Double.isNaN(sector.estimate()) ? 0 : Math.abs(sector.estimate()));
      for (Interval interval : sector.interval().stream().toList()) {
        double end = Math.max(Math.abs(interval.low()), Math.abs(interval.high()));
        far = Double.isFinite(end) ? Math.max(far, end) : far;
      }
    }
    double reach = 1.1 * Math.max(near, Math.min(far, 4 * near));
    return reach > 0 ? reach : 1;
  }
}
