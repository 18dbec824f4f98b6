package blindlap.exchange;

import blindlap.exchange.PackageTables.Column;
import blindlap.fault.Unreadable;
import blindlap.review.Remark;
import java.time.ZonedDateTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What was said and done on a day, as a table of a data package. */
final class RemarkTable {
  static final String NAME = "record";
  static final String FILE = NAME + ".csv";
  private static final String AT = "at";

  private static final List<Column> COLUMNS =
      List.of(
          Column.of("kind", "string", "what it is about, such as replaced, outside, timed"),
          Column.of("stint", "integer", "stint, from 1; 0 is the warm-up, -1 none in particular"),
          Column.of("lap", "integer", "number over the day; 0 for none in particular"),
          Column.of("about", "string", "measure, setting, condition or kind of event"),
          Column.of("who", "string", "who did or decided it"),
          Column.of("before", "string", "a value that no longer stands, or was aimed at"),
          Column.of("value", "string", "the value that stands, or was found"),
          Column.of("words", "string", "what was typed"),
          Column.of(
              AT, "string", "when, with offset and zone, where words took the place of others"));

  private RemarkTable() {}

  static void write(PackageTables tables, List<Remark> remarks) {
    tables.table(NAME, COLUMNS, remarks.stream().map(RemarkTable::row).toList());
  }

  private static List<String> row(Remark remark) {
    return List.of(
        remark.kind().name().toLowerCase(java.util.Locale.ROOT),
        String.valueOf(remark.stint()),
        String.valueOf(remark.lap()),
        remark.about(),
        remark.who(),
        remark.before(),
        remark.value(),
        remark.words(),
        remark.at().map(ZonedDateTime::toString).orElse(""));
  }

  /**
   * Remarks of the rows of a table.
   *
   * @throws Unreadable if a column is missing or a cell cannot be read
   */
  static List<Remark> read(List<Map<String, String>> rows) {
    return rows.stream().map(RemarkTable::remark).toList();
  }

  private static Remark remark(Map<String, String> row) {
    return new Remark(
        kind(PackageCells.text(row, "kind")),
        PackageCells.whole(row, "stint"),
        PackageCells.whole(row, "lap"),
        PackageCells.text(row, "about"),
        PackageCells.text(row, "who"),
        PackageCells.text(row, "before"),
        PackageCells.text(row, "value"),
        PackageCells.text(row, "words"),
        at(row.getOrDefault(AT, ""))); // older packages have no such column
  }

  private static Optional<ZonedDateTime> at(String written) {
    try {
      return written.isEmpty() ? Optional.empty() : Optional.of(ZonedDateTime.parse(written));
    } catch (DateTimeParseException e) {
      throw PackageCells.because(e, PackageFault.NOT_A_TIME, FILE, written);
    }
  }

  private static Remark.Kind kind(String word) {
    for (Remark.Kind kind : Remark.Kind.values()) {
      if (kind.name().equalsIgnoreCase(word)) {
        return kind;
      }
    }
    throw new Unreadable(PackageFault.NOT_A_REMARK, word);
  }
}
