package blindlap.exchange;

import blindlap.fault.Problem;
import blindlap.fault.TypedText;
import java.util.ArrayList;
import java.util.List;

/**
 * A CSV file as texts, each row with the line it starts on: UTF-8, separator {@code ;}, tab or
 * {@code ,} as the header has it.
 *
 * @param separator what parts the columns
 * @param header names of the columns
 * @param headerLine line of the header
 * @param rows the rows below it
 */
record CsvTable(char separator, List<String> header, int headerLine, List<Row> rows) {
  CsvTable {
    header = List.copyOf(header);
    rows = List.copyOf(rows);
  }

  /**
   * A row.
   *
   * @param line where it starts; quoted cells may hold line breaks
   * @param cells one per column, without blanks around
   */
  record Row(int line, List<String> cells) {
    Row {
      cells = List.copyOf(cells);
    }
  }

  /** The file is not such a table. */
  static final class Unreadable extends Exception {
    private static final long serialVersionUID = 1L;
    private final transient List<Problem> problems;

    Unreadable(List<Problem> problems) {
      super("not a table");
      this.problems = List.copyOf(problems);
    }

    List<Problem> problems() {
      return problems;
    }
  }

  /** Names of the columns; one without a name is called by its place. */
  List<String> names() {
    List<String> names = new ArrayList<>();
    for (String name : header) {
      names.add(name.isBlank() ? "column " + (names.size() + 1) : name);
    }
    return names;
  }

  /** As {@link #read}, for a file whose texts are kept: none may hold what no text may. */
  static CsvTable ofTexts(byte[] bytes) throws Unreadable {
    CsvTable table = read(bytes);
    List<Problem> flaws = new ArrayList<>();
    flaws(table.headerLine, table.header, flaws);
    table.rows.forEach(row -> flaws(row.line(), row.cells(), flaws));
    if (flaws.isEmpty()) {
      edges(TypedText.decoded(bytes).orElse(""), flaws);
    }
    if (!flaws.isEmpty()) {
      throw new Unreadable(flaws);
    }
    return table;
  }

  /** The parser takes control characters off the ends of a cell as if they were blanks. */
  private static void edges(String text, List<Problem> flaws) {
    List<String> lines = text.lines().toList();
    for (int line = 0; line < lines.size(); line++) {
      TypedText.flaw(lines.get(line), TypedText.Form.WORDS, "line " + (line + 1))
          .ifPresent(flaws::add);
    }
  }

  private static void flaws(int line, List<String> cells, List<Problem> flaws) {
    for (int c = 0; c < cells.size(); c++) {
      String where = "line " + line + ", column " + (c + 1);
      TypedText.problem(cells.get(c), TypedText.Form.WORDS, where).ifPresent(flaws::add);
    }
  }

  static CsvTable read(byte[] bytes) throws Unreadable {
    String plain = TypedText.decoded(bytes).orElseThrow(() -> unreadable(FileFault.NOT_UTF8));
    char separator = separator(plain.lines().filter(l -> !l.isBlank()).findFirst().orElse(""));
    List<CsvRows.Row> found = rows(plain, separator);
    if (found.size() < 2) {
      throw unreadable(FileFault.NO_ROWS);
    }
    int columns = found.get(0).cells().size();
    List<Problem> ragged =
        found.stream()
            .filter(row -> row.cells().size() != columns)
            .map(
                row ->
                    Problem.of(
                        FileFault.RAGGED_ROW, "line " + row.line(), row.cells().size(), columns))
            .toList();
    if (!ragged.isEmpty()) {
      throw new Unreadable(ragged);
    }
    List<Row> rows = found.stream().map(CsvTable::stripped).toList();
    return new CsvTable(
        separator, rows.get(0).cells(), rows.get(0).line(), rows.subList(1, rows.size()));
  }

  private static List<CsvRows.Row> rows(String text, char separator) throws Unreadable {
    try {
      return CsvRows.typed(text, separator).stream().filter(row -> !row.blank()).toList();
    } catch (CsvRows.Unreadable e) {
      String why = String.valueOf(e.getMessage());
      throw new Unreadable(List.of(Problem.of(FileFault.CANNOT_READ, "line " + e.line(), why)));
    }
  }

  private static Row stripped(CsvRows.Row row) {
    return new Row(row.line(), row.cells().stream().map(String::strip).toList());
  }

  private static Unreadable unreadable(FileFault fault) {
    return new Unreadable(List.of(Problem.of(fault, "")));
  }

  private static char separator(String header) {
    return header.indexOf(';') >= 0 ? ';' : header.indexOf('\t') >= 0 ? '\t' : ',';
  }
}
