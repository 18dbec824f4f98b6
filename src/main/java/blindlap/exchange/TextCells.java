package blindlap.exchange;

import blindlap.wording.day.Shown;
import java.util.regex.Pattern;

/**
 * Cells of texts in the tables of a data package. Spreadsheets run what begins with {@code =},
 * {@code +}, {@code -}, {@code @}, a tab or a line break; such a text gets an apostrophe in front,
 * which spreadsheets know as "this is a text" and which is taken off when it is read again
 * (docs/file-format.md, "Data packages"). A text that has apostrophes there already gets one more,
 * so that every text comes back as it was. Numbers that stand in a column of texts, and a lone
 * sign, are nothing to run.
 */
final class TextCells {
  private static final Pattern RUN = Pattern.compile("(?s)'*[=+\\-@\t\r\n].+");
  private static final Pattern WRITTEN = Pattern.compile("(?s)'+[=+\\-@\t\r\n].+");
  private static final Pattern NUMBER = Pattern.compile("[+-]\\d+(?:[.,]\\d+)?");

  private TextCells() {}

  /** A text as its cell. */
  static String written(String text) {
    String shown = Shown.text(text);
    boolean number = NUMBER.matcher(shown).matches();
    return !number && RUN.matcher(shown).matches() ? "'" + shown : shown;
  }

  /** A cell as its text. */
  static String read(String cell) {
    return WRITTEN.matcher(cell).matches() ? cell.substring(1) : cell;
  }
}
