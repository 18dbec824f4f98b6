package blindlap.picture;

import blindlap.plan.Measure;
import blindlap.plot.FieldRows;
import blindlap.plot.Limits;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.review.FieldFinding;
import blindlap.wording.FieldRowWords;
import blindlap.wording.FieldWords;
import blindlap.wording.day.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The picture of a field: the same drawing for screen, PDF and HTML. */
public final class FieldPicture {
  private FieldPicture() {}

  /** The setups against the reference; empty where nothing of all days together is told. */
  public static Optional<Drawing> of(FieldFinding finding) {
    if (!finding.told()) {
      return Optional.empty();
    }
    Measure measure = finding.measure().orElseThrow();
    PictureAxes axes = PictureAxes.of(measure, 0);
    FieldWords words = new FieldWords(finding);
    List<FieldRows.Row> rows = new ArrayList<>();
    rows.add(
        new FieldRows.Row(
            FieldRows.Kind.REFERENCE,
            Shown.text(finding.reference().orElseThrow().name()),
            words.referenceRidden(),
            0,
            new Limits(0, 0),
            FieldWords.say("reference")));
    List<String> spoken = new ArrayList<>(List.of(words.referenceLine()));
    for (FieldRowWords row : words.rows()) {
      rows.add(row(row, axes));
      spoken.add(row.sentence());
    }
    spoken.addAll(words.cautions());
    return Optional.of(
        FieldRows.of(
            new FieldRows.Content(
                rows,
                finding
                    .worthwhile()
                    .map(band -> PictureAxes.band(measure, axes.length(band.high()))),
                axes.difference(),
                Shown.text(words.side(-1)),
                Shown.text(words.side(1)),
                new Spoken(words.headline().text(), String.join(" ", spoken)))));
  }

  private static FieldRows.Row row(FieldRowWords row, PictureAxes axes) {
    FieldFinding.Pair pair = row.pair();
    FieldRows.Kind kind =
        switch (pair.standing()) {
          case RIDDEN -> FieldRows.Kind.RIDDEN;
          case FOLLOWS -> FieldRows.Kind.FOLLOWS;
          case APART -> FieldRows.Kind.APART;
        };
    Limits limits =
        pair.interval95()
            .map(i -> new Limits(axes.length(i.low()), axes.length(i.high())))
            .orElse(new Limits(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY));
    return new FieldRows.Row(
        kind,
        Shown.text(row.name()),
        Shown.text(row.met()),
        axes.length(pair.estimate().orElse(0)),
        limits,
        row.brief());
  }
}
