package blindlap.exchange;

import blindlap.fault.Unreadable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Tables as comma-separated text after RFC 4180: header first, quotes where needed, lines end in
 * LF.
 */
final class CsvText {
  private CsvText() {}

  /** A table as text. */
  static String write(List<String> header, List<List<String>> rows) {
    StringBuilder out = new StringBuilder();
    line(out, header);
    rows.forEach(row -> line(out, row));
    return out.toString();
  }

  private static void line(StringBuilder out, List<String> cells) {
    for (int i = 0; i < cells.size(); i++) {
      out.append(i == 0 ? "" : ",").append(quoted(cells.get(i)));
    }
    out.append('\n');
  }

  private static String quoted(String cell) {
    boolean plain = cell.chars().noneMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
    return plain ? cell : '"' + cell.replace("\"", "\"\"") + '"';
  }

  /**
   * Rows as maps from column to cell.
   *
   * @throws Unreadable if a row has more or fewer cells than the header
   */
  static List<Map<String, String>> read(String name, String text) {
    List<List<String>> lines = lines(text);
    List<Map<String, String>> rows = new ArrayList<>();
    for (int i = 1; i < lines.size(); i++) {
      if (lines.get(i).size() != lines.get(0).size()) {
        throw new Unreadable(
            PackageFault.RAGGED_ROW, name, i, lines.get(i).size(), lines.get(0).size());
      }
      Map<String, String> row = new LinkedHashMap<>();
      for (int c = 0; c < lines.get(0).size(); c++) {
        row.put(lines.get(0).get(c), lines.get(i).get(c));
      }
      rows.add(row);
    }
    return rows;
  }

  private static List<List<String>> lines(String text) {
    List<List<String>> lines = new ArrayList<>();
    List<String> line = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean inQuotes = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (inQuotes) {
        boolean doubled = c == '"' && i + 1 < text.length() && text.charAt(i + 1) == '"';
        inQuotes = c != '"' || doubled;
        if (inQuotes) {
          cell.append(c);
        }
        i += doubled ? 1 : 0;
      } else if (c == '"') {
        inQuotes = true;
      } else if (c == ',' || c == '\n') {
        line.add(cell.toString());
        cell.setLength(0);
        if (c == '\n') {
          lines.add(line);
          line = new ArrayList<>();
        }
      } else if (c != '\r') {
        cell.append(c);
      }
    }
    if (cell.length() > 0 || !line.isEmpty()) {
      line.add(cell.toString());
      lines.add(line);
    }
    return lines;
  }
}
