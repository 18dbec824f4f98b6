package blindlap.exchange;

import java.util.ArrayList;
import java.util.List;

/**
 * The rule of docs/laps-file.md once more, written as plainly as it reads: one character after the
 * other, without the parser.
 */
final class CsvOracle {
  /** A row with the line it starts on. */
  record Row(int line, List<String> cells) {}

  private final String text;
  private final char separator;
  private int at;
  private int line = 1;

  /** True if a quote was opened and never closed; then the rows end before it. */
  boolean open;

  final List<Row> rows = new ArrayList<>();

  CsvOracle(String anyLineEnds, char separator) {
    this.text = anyLineEnds.replaceAll("\r\n?", "\n");
    this.separator = separator;
    while (at < text.length() && !open) {
      row();
    }
  }

  private void row() {
    int start = line;
    int begin = at;
    List<String> cells = new ArrayList<>();
    do {
      cells.add(cell());
    } while (!open && take(separator));
    boolean blank = text.substring(begin, at).isBlank();
    if (take('\n')) {
      line++;
    }
    if (!blank && !open) {
      rows.add(new Row(start, cells));
    }
  }

  private boolean take(char wanted) {
    boolean here = at < text.length() && text.charAt(at) == wanted;
    at += here ? 1 : 0;
    return here;
  }

  private boolean ended() {
    return at == text.length() || text.charAt(at) == separator || text.charAt(at) == '\n';
  }

  private void blanks() {
    while (!ended() && Character.isWhitespace(text.charAt(at))) {
      at++;
    }
  }

  private String cell() {
    blanks();
    String before = "";
    if (take('"')) {
      String inside = quoted();
      int after = at;
      blanks();
      if (ended()) {
        return inside.strip();
      }
      at = after;
      before = '"' + inside + '"';
    }
    int begin = at;
    while (!ended()) {
      at++;
    }
    return (before + text.substring(begin, at)).strip();
  }

  private String quoted() {
    StringBuilder inside = new StringBuilder();
    while (at < text.length()) {
      char c = text.charAt(at++);
      if (c == '"' && !take('"')) {
        return inside.toString();
      }
      line += c == '\n' ? 1 : 0;
      inside.append(c);
    }
    open = true;
    return "";
  }
}
