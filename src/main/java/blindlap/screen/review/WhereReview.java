package blindlap.screen.review;

import blindlap.picture.WherePicture;
import blindlap.plot.surface.Drawing;
import blindlap.review.Finding;
import blindlap.wording.WhereSectorWords;
import blindlap.wording.WhereWords;
import java.util.List;
import java.util.Optional;

/**
 * What the Review page shows of where on the trail the difference arises.
 *
 * @param headline the sentence
 * @param pictured what the picture shows
 * @param line the picture; empty where the trail has no line
 * @param columns heads of the table of sectors
 * @param rows its rows; empty where nothing could be compared
 * @param how how both are read
 * @param worth what it is worth
 * @param recorder what the recorder lets be seen; empty where nothing could be compared
 */
record WhereReview(
    String headline,
    String pictured,
    Optional<Drawing> line,
    List<String> columns,
    List<Row> rows,
    List<String> how,
    List<String> worth,
    Optional<String> recorder) {

  /** A sector in words, with its interval drawn where it has one. */
  record Row(WhereSectorWords.Row words, Optional<Drawing> interval) {}

  /** Of a finding; empty where nothing was recorded. */
  static Optional<WhereReview> of(Finding finding) {
    return WhereWords.of(finding).map(words -> of(words, WherePicture.of(finding).orElseThrow()));
  }

  private static WhereReview of(WhereWords words, WherePicture picture) {
    return new WhereReview(
        words.headline(),
        words.pictured(),
        picture.line(),
        words.columns(),
        words.rows().stream().map(row -> new Row(row, picture.interval(row))).toList(),
        words.how(),
        words.worth(),
        words.recorder());
  }
}
