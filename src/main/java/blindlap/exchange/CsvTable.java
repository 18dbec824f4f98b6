package blindlap.exchange;

import blindlap.fault.Problem;
import java.io.StringReader;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tech.tablesaw.api.ColumnType;
import tech.tablesaw.api.Table;
import tech.tablesaw.io.csv.CsvReadOptions;

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

  private record Shape(int line, int cells) {}

  static CsvTable read(byte[] bytes) throws Unreadable {
    String text;
    try {
      text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      throw unreadable(FileFault.NOT_UTF8);
    }
    String plain = text.startsWith("\uFEFF") ? text.substring(1) : text;
    char separator = separator(plain.lines().filter(l -> !l.isBlank()).findFirst().orElse(""));
    List<Shape> shapes = shapes(plain, separator);
    if (shapes.size() < 2) {
      throw unreadable(FileFault.NO_ROWS);
    }
    List<Problem> ragged =
        shapes.stream()
            .filter(row -> row.cells != shapes.get(0).cells)
            .map(
                row ->
                    Problem.of(
                        FileFault.RAGGED_ROW, "line " + row.line, row.cells, shapes.get(0).cells))
            .toList();
    if (!ragged.isEmpty()) {
      throw new Unreadable(ragged);
    }
    Table table = table(plain, separator);
    List<Row> rows = new ArrayList<>();
    for (int row = 1; row < table.rowCount(); row++) {
      rows.add(new Row(row < shapes.size() ? shapes.get(row).line : row + 1, cells(table, row)));
    }
    return new CsvTable(separator, cells(table, 0), shapes.get(0).line, rows);
  }

  private static Unreadable unreadable(FileFault fault, Object... details) {
    return new Unreadable(List.of(Problem.of(fault, "", details)));
  }

  private static char separator(String header) {
    return header.indexOf(';') >= 0 ? ';' : header.indexOf('\t') >= 0 ? '\t' : ',';
  }

  private static List<Shape> shapes(String text, char separator) {
    List<Shape> shapes = new ArrayList<>();
    boolean quoted = false;
    int start = 0;
    int cells = 1;
    int number = 0;
    for (String line : text.split("\\R", -1)) {
      number++;
      if (!quoted) {
        start = number;
        cells = 1;
      }
      for (int i = 0; i < line.length(); i++) {
        quoted ^= line.charAt(i) == '"';
        cells += !quoted && line.charAt(i) == separator ? 1 : 0;
      }
      if (!quoted && !(start == number && line.isBlank())) {
        shapes.add(new Shape(start, cells));
      }
    }
    return shapes;
  }

  private static Table table(String text, char separator) throws Unreadable {
    try {
      return Table.read()
          .usingOptions(
              CsvReadOptions.builder(new StringReader(text))
                  .separator(separator)
                  .header(false)
                  .columnTypes(column -> ColumnType.STRING)
                  .missingValueIndicator("")
                  .allowDuplicateColumnNames(true)
                  .ignoreZeroDecimal(false)
                  .maxCharsPerColumn(10_000)
                  .build());
    } catch (RuntimeException e) {
      throw unreadable(FileFault.CANNOT_READ, firstLine(e.getMessage()));
    }
  }

  private static List<String> cells(Table table, int row) {
    List<String> cells = new ArrayList<>();
    for (int c = 0; c < table.columnCount(); c++) {
      cells.add(table.getString(row, c).strip());
    }
    return cells;
  }

  private static String firstLine(@Nullable String message) {
    return message == null ? "not a table" : message.strip().split("\\R", 2)[0];
  }
}
