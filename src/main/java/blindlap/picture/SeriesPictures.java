package blindlap.picture;

import blindlap.plan.Measure;
import blindlap.plot.Limits;
import blindlap.plot.PooledRows;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.review.SeriesFinding;
import blindlap.stats.compare.Scale;
import blindlap.stats.distribution.Interval;
import blindlap.stats.pool.RidersInGeneral;
import blindlap.stats.pool.StratifiedSessions;
import blindlap.wording.SeriesWords;
import blindlap.wording.day.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Pictures of a series: the same drawing for screen, PDF and HTML. */
public final class SeriesPictures {
  private final SeriesFinding finding;
  private final SeriesWords words;

  public SeriesPictures(SeriesFinding finding) {
    this.finding = finding;
    this.words = new SeriesWords(finding);
  }

  /**
   * Every session of one rider, or every rider, beside what is pooled; empty before the end of the
   * series, without a session to pool, and for three and more setups.
   */
  public Optional<Drawing> pooled() {
    if (!finding.open() || finding.these().isEmpty()) {
      return Optional.empty();
    }
    List<PooledRows.Row> rows = new ArrayList<>();
    finding.riders().forEach(rider -> rider(rider, rows));
    these(finding.these().get(), rows);
    finding.general().ifPresent(general -> general(general, rows));
    Measure measure = finding.measure();
    List<String> table = new ArrayList<>(words.riders());
    words.rows().stream()
        .filter(row -> !row.result().isEmpty())
        .forEach(row -> table.add(row.day() + ", " + row.rider() + ": " + row.result() + "."));
    return Optional.of(
        PooledRows.of(
            new PooledRows.Content(
                rows,
                finding.band().map(b -> PictureAxes.band(measure, picture(b.high()))),
                PictureAxes.of(measure, 0).difference(),
                words.side(-1),
                words.side(1),
                new Spoken(
                    words.headline().text() + " " + String.join(" ", words.lead()),
                    String.join(" ", table)))));
  }

  private void rider(SeriesFinding.Rider rider, List<PooledRows.Row> rows) {
    boolean alone = finding.riders().size() == 1;
    if (!alone) {
      rows.add(
          row(
              PooledRows.Kind.OWN,
              parts(rider).stream().noneMatch(SeriesPictures::unblinded),
              Shown.text(rider.name()),
              rider.estimate(),
              rider.interval95(),
              rider.interval90()));
    }
    List<SeriesFinding.Part> drawn = alone || rider.sessions() > 1 ? parts(rider) : List.of();
    for (SeriesFinding.Part part : drawn) {
      rows.add(
          row(
              alone ? PooledRows.Kind.OWN : PooledRows.Kind.UNDER,
              !unblinded(part),
              SeriesWords.date(part.day()),
              part.estimate().orElseThrow(),
              part.interval95(),
              part.interval90()));
    }
  }

  private static boolean unblinded(SeriesFinding.Part part) {
    return part.remarks().contains(SeriesFinding.Remark.UNBLINDED)
        || part.remarks().contains(SeriesFinding.Remark.MASKED);
  }

  private List<SeriesFinding.Part> parts(SeriesFinding.Rider rider) {
    String name = rider.name().strip().toLowerCase(Locale.ROOT);
    return finding.parts().stream()
        .filter(p -> p.fate() == SeriesFinding.Fate.POOLED)
        .filter(p -> p.rider().strip().toLowerCase(Locale.ROOT).equals(name))
        .toList();
  }

  private void these(StratifiedSessions these, List<PooledRows.Row> rows) {
    rows.add(
        row(
            PooledRows.Kind.POOLED,
            true,
            SeriesWords.say(
                finding.riders().size() == 1 ? "picture.these.one" : "picture.these.riders"),
            these.estimate(),
            these.curve().interval(0.95),
            these.curve().interval(0.90)));
  }

  private void general(RidersInGeneral general, List<PooledRows.Row> rows) {
    rows.add(
        row(
            PooledRows.Kind.POOLED,
            true,
            SeriesWords.say(general.tooFew() ? "picture.general.few" : "picture.general"),
            general.estimate(),
            Optional.of(general.interval95()),
            Optional.of(general.interval90())));
  }

  private PooledRows.Row row(
      PooledRows.Kind kind,
      boolean blinded,
      String label,
      double estimate,
      Optional<Interval> wide,
      Optional<Interval> ninety) {
    return new PooledRows.Row(
        kind,
        blinded,
        label,
        picture(estimate),
        limits(wide),
        limits(ninety),
        words.signed(estimate, wide));
  }

  private Limits limits(Optional<Interval> shifts) {
    return shifts
        .map(i -> new Limits(picture(i.low()), picture(i.high())))
        .orElse(new Limits(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY));
  }

  /** Shifts are drawn in the unit, or in hundredths of a logarithm on the ratio scale. */
  private double picture(double shift) {
    return finding.measure().scale() == Scale.RATIO ? 100 * shift : shift;
  }
}
