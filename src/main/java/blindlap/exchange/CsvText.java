package blindlap.exchange;

import blindlap.fault.Unreadable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Tables as text after RFC 4180: header first, quotes where needed, lines end in LF. Every table
 * that leaves Blindlap is written here.
 */
public final class CsvText {
  private CsvText() {}

  /** A table as comma-separated text. */
  static String write(List<String> header, List<List<String>> rows) {
    return write(',', header, rows);
  }

  /** A table as text with a separator of its own. */
  public static String write(char separator, List<String> header, List<List<String>> rows) {
    StringBuilder out = new StringBuilder();
    line(out, separator, header);
    rows.forEach(row -> line(out, separator, row));
    return out.toString();
  }

  private static void line(StringBuilder out, char separator, List<String> cells) {
    for (int i = 0; i < cells.size(); i++) {
      if (i > 0) {
        out.append(separator);
      }
      out.append(quoted(cells.get(i), separator));
    }
    out.append('\n');
  }

  private static String quoted(String cell, char separator) {
    boolean plain =
        cell.chars().noneMatch(c -> c == separator || c == '"' || c == '\n' || c == '\r');
    return plain ? cell : '"' + cell.replace("\"", "\"\"") + '"';
  }

  /**
   * Rows as maps from column to cell.
   *
   * @throws Unreadable if a row has more or fewer cells than the header, or a quote is out of place
   */
  static List<Map<String, String>> read(String name, String text) {
    List<List<String>> lines = lines(name, text);
    List<Map<String, String>> rows = new ArrayList<>();
    for (int i = 1; i < lines.size(); i++) {
      if (lines.get(i).size() != lines.get(0).size()) {
        throw new Unreadable(
            PackageFault.RAGGED_ROW, name, i, lines.get(i).size(), lines.get(0).size());
      }
      Map<String, String> row = new LinkedHashMap<>();
      for (int c = 0; c < lines.get(0).size(); c++) {
        row.put(TextCells.read(lines.get(0).get(c)), TextCells.read(lines.get(i).get(c)));
      }
      rows.add(row);
    }
    return rows;
  }

  private static List<List<String>> lines(String name, String text) {
    try {
      return CsvRows.written(text, ',').stream().map(CsvRows.Row::cells).toList();
    } catch (CsvRows.Unreadable e) {
      throw new Unreadable(PackageFault.BAD_TABLE, name, e.line());
    }
  }
}
