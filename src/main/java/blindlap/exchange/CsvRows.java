package blindlap.exchange;

import blindlap.wording.day.Figures;
import com.univocity.parsers.common.TextParsingException;
import com.univocity.parsers.csv.CsvParser;
import com.univocity.parsers.csv.CsvParserSettings;
import com.univocity.parsers.csv.UnescapedQuoteHandling;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;

/**
 * The one CSV parser. Quotes and separators are read by the parser beneath Tablesaw alone, and line
 * numbers are the parser's: a second count of quotes by hand would disagree with it sooner or later
 * (docs/adr/0005-csv-and-tables.md).
 */
final class CsvRows {
  /** Most cells of a row. */
  static final int MOST_CELLS = 10_000;

  /** Most rows of a table that somebody typed: a hundred seasons of laps. */
  static final int MOST_ROWS = 100_000;

  /** Most characters of a cell. */
  static final int MOST_CHARACTERS = 10_000;

  private static final int BUFFER = 8192;

  /** Stands alone in a last row of its own, unless a quote before it was never closed. */
  private static final String END = "\uE000";

  private CsvRows() {}

  /**
   * A row.
   *
   * @param line where it starts, from 1; quoted cells may hold line breaks
   * @param cells at least one
   * @param blank true if nothing but blanks stands there
   */
  record Row(int line, List<String> cells, boolean blank) {
    Row {
      cells = List.copyOf(cells);
    }
  }

  /** The text is not a table; the message says why, in words that may be shown. */
  static final class Unreadable extends Exception {
    private static final long serialVersionUID = 1L;
    private final int line;

    Unreadable(int line, String why) {
      super(why);
      this.line = line;
    }

    int line() {
      return line;
    }
  }

  /**
   * The rows of a table that somebody typed or saved. Blanks around a cell do not count; a double
   * quote opens a cell only where the cell begins; a cell in which more follows its closing quote
   * is taken as it stands.
   *
   * @param text with any of the three line ends
   */
  static List<Row> typed(String text, char separator) throws Unreadable {
    String lines = text.replace("\r\n", "\n").replace('\r', '\n');
    CsvParserSettings settings = settings(separator);
    settings.setUnescapedQuoteHandling(UnescapedQuoteHandling.STOP_AT_DELIMITER);
    return rows(lines, settings);
  }

  /**
   * The rows of a table that {@link CsvText} wrote: every character of a cell counts, and a quote
   * out of place is an error. Lines end in LF; CRLF, into which some programs turn it, is taken.
   */
  static List<Row> written(String text, char separator) throws Unreadable {
    CsvParserSettings settings = settings(separator);
    settings.setUnescapedQuoteHandling(UnescapedQuoteHandling.RAISE_ERROR);
    settings.setIgnoreLeadingWhitespaces(false);
    settings.setIgnoreTrailingWhitespaces(false);
    settings.setNormalizeLineEndingsWithinQuotes(false);
    settings.setKeepQuotes(true);
    return rows(text, settings).stream().map(CsvRows::asWritten).toList();
  }

  private static Row asWritten(Row row) {
    List<String> cells = new ArrayList<>();
    for (String cell : row.cells()) {
      boolean last = cells.size() == row.cells().size() - 1;
      boolean quoted = cell.startsWith("\"");
      cells.add(
          quoted
              ? cell.substring(1, cell.length() - 1)
              : last && cell.endsWith("\r") ? cell.substring(0, cell.length() - 1) : cell);
    }
    return new Row(row.line(), cells, row.blank());
  }

  private static CsvParserSettings settings(char separator) {
    CsvParserSettings settings = new CsvParserSettings();
    settings.getFormat().setDelimiter(separator);
    settings.getFormat().setQuote('"');
    settings.getFormat().setQuoteEscape('"');
    settings.getFormat().setLineSeparator("\n");
    settings.setCommentProcessingEnabled(false);
    settings.setSkipEmptyLines(false);
    settings.setMaxColumns(MOST_CELLS);
    settings.setMaxCharsPerColumn(-1);
    settings.setReadInputOnSeparateThread(false);
    settings.setInputBufferSize(BUFFER);
    // A cell without anything is null, one of two quotes is not: only the first can be a blank row.
    settings.setEmptyValue("");
    return settings;
  }

  private static List<Row> rows(String text, CsvParserSettings settings) throws Unreadable {
    CsvParser parser = new CsvParser(settings);
    List<Row> rows = new ArrayList<>();
    int line = 1;
    try {
      parser.beginParsing(new StringReader(text + "\n" + END));
      for (String[] cells = parser.parseNext(); cells != null; cells = parser.parseNext()) {
        if (rows.size() > MOST_ROWS) {
          throw new Unreadable(line, "it holds more than " + Figures.count(MOST_ROWS) + " rows");
        }
        rows.add(row(line, cells, settings.getFormat().getDelimiter()));
        line = (int) parser.getContext().currentLine() + 1;
      }
    } catch (TextParsingException e) {
      throw new Unreadable(
          line,
          e.getCause() instanceof ArrayIndexOutOfBoundsException
              ? "a row holds more than " + Figures.count(MOST_CELLS) + " cells"
              : "a double quote stands where none may be");
    } finally {
      parser.stopParsing();
    }
    Row end = rows.remove(rows.size() - 1);
    if (!end.cells().equals(List.of(END))) {
      throw new Unreadable(end.line(), "a double quote opens a cell and is never closed");
    }
    if (!rows.isEmpty() && rows.get(rows.size() - 1).blank()) {
      rows.remove(rows.size() - 1); // the break that ends the last line begins no further one
    }
    return rows;
  }

  private static Row row(int line, String[] cells, char separator) throws Unreadable {
    List<String> texts = new ArrayList<>();
    // Tabs that part columns are blanks, too: a spreadsheet leaves them in its empty rows.
    boolean blank = cells.length == 1 || separator == '\t';
    for (String cell : cells) {
      if (cell != null && cell.length() > MOST_CHARACTERS && !cell.endsWith(END)) {
        throw new Unreadable(
            line, "a cell holds more than " + Figures.count(MOST_CHARACTERS) + " characters");
      }
      blank &= cell == null;
      texts.add(cell == null ? "" : cell);
    }
    return new Row(line, texts, blank);
  }
}
