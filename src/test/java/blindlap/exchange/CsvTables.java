package blindlap.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.Problem;
import com.univocity.parsers.csv.CsvParser;
import com.univocity.parsers.csv.CsvParserSettings;
import java.io.StringReader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.TreeMap;

/** Random tables, read by Blindlap, by the parser alone and by {@link CsvOracle}. */
final class CsvTables {
  private static final String[] CELLS = {
    "1", "lap", "1:33.1", "5,5", "24\" wheel", "\"", "\"\"", "#", "x y", "ä", "−3", "\"a\"b", ""
  };
  private static final String[] ENDS = {"\n", "\r\n", "\r"};
  private static final String ANY = "ab\"\"\";,\t \n\r#1é";

  private final Random random;

  /** How often each thing came about, so that a trial that tried nothing is noticed. */
  final Map<String, Integer> counts = new TreeMap<>();

  CsvTables(long seed) {
    random = new Random(seed);
  }

  /** One table of some kind. */
  void one() {
    String mark = random.nextInt(4) == 0 ? "\uFEFF" : "";
    Charset[] charsets = {
      StandardCharsets.UTF_8, StandardCharsets.ISO_8859_1, StandardCharsets.UTF_16
    };
    Charset charset = charsets[Math.max(0, random.nextInt(12) - 9)];
    byte[] bytes = (mark + (random.nextBoolean() ? table() : noise())).getBytes(charset);
    String decoded = new String(bytes, StandardCharsets.UTF_8);
    boolean utf8 = decoded.indexOf('\uFFFD') < 0;
    String text = decoded.startsWith("\uFEFF") ? decoded.substring(1) : decoded;
    try {
      CsvTable table = CsvTable.read(bytes);
      assertThat(utf8).as("read as UTF-8: %s", shown(text)).isTrue();
      compare(text, table);
    } catch (CsvTable.Unreadable e) {
      refused(text, utf8, e.problems());
    }
  }

  private void compare(String text, CsvTable table) {
    CsvOracle oracle = new CsvOracle(text, table.separator());
    assertThat(oracle.open).as(shown(text)).isFalse();
    List<CsvOracle.Row> found = new ArrayList<>();
    found.add(new CsvOracle.Row(table.headerLine(), table.header()));
    table.rows().forEach(row -> found.add(new CsvOracle.Row(row.line(), row.cells())));
    assertThat(found).as(shown(text)).isEqualTo(oracle.rows);
    assertThat(found.stream().map(CsvOracle.Row::cells))
        .as(shown(text))
        .isEqualTo(parsed(text, table.separator()));
    count("read");
    if (table.rows().stream().anyMatch(row -> row.cells().toString().contains("\n"))) {
      count("read, with line breaks in cells");
    }
    if (table.rows().stream().anyMatch(row -> row.cells().toString().contains("\""))) {
      count("read, with quotes in cells");
    }
  }

  /** The parser's own answer, without blank rows. */
  private static List<List<String>> parsed(String text, char separator) {
    CsvParserSettings settings = new CsvParserSettings();
    settings.getFormat().setDelimiter(separator);
    settings.getFormat().setLineSeparator("\n");
    settings.setCommentProcessingEnabled(false);
    settings.setEmptyValue("");
    settings.setInputBufferSize(7); // a row may begin in one read of the text and end in another
    settings.setMaxCharsPerColumn(-1);
    List<List<String>> rows = new ArrayList<>();
    String lines = text.replace("\r\n", "\n").replace('\r', '\n') + "\n";
    for (String[] row : new CsvParser(settings).parseAll(new StringReader(lines))) {
      boolean nothing = Arrays.stream(row).allMatch(Objects::isNull);
      if (!nothing || (row.length > 1 && separator != '\t')) {
        rows.add(Arrays.stream(row).map(cell -> cell == null ? "" : cell.strip()).toList());
      }
    }
    return rows;
  }

  private void refused(String text, boolean utf8, List<Problem> problems) {
    FileFault fault = (FileFault) problems.get(0).fault();
    count(fault.name());
    if (!utf8) {
      assertThat(fault).as(shown(text)).isEqualTo(FileFault.NOT_UTF8);
      return;
    }
    CsvOracle oracle = new CsvOracle(text, separator(text));
    assertThat(fault == FileFault.CANNOT_READ).as(shown(text)).isEqualTo(oracle.open);
    if (fault == FileFault.NO_ROWS) {
      assertThat(oracle.rows).as(shown(text)).hasSizeLessThan(2);
    } else if (fault == FileFault.RAGGED_ROW) {
      int columns = oracle.rows.get(0).cells().size();
      assertThat(problems)
          .as(shown(text))
          .extracting(Problem::where)
          .containsExactlyElementsOf(
              oracle.rows.stream()
                  .filter(row -> row.cells().size() != columns)
                  .map(row -> "line " + row.line())
                  .toList());
    } else {
      assertThat(fault).as(shown(text)).isEqualTo(FileFault.CANNOT_READ);
    }
  }

  private static char separator(String text) {
    String header = text.lines().filter(line -> !line.isBlank()).findFirst().orElse("");
    return header.contains(";") ? ';' : header.contains("\t") ? '\t' : ',';
  }

  /** A table as somebody might save it; some of its cells are quoted, some needlessly. */
  private String table() {
    String separator = List.of(";", ",", "\t").get(random.nextInt(3));
    String end = ENDS[random.nextInt(3)];
    int columns = 1 + random.nextInt(4);
    StringBuilder text = new StringBuilder(end.repeat(Math.max(0, random.nextInt(5) - 3)));
    int rows = random.nextInt(6);
    for (int row = 0; row < rows; row++) {
      int own = random.nextInt(40) == 0 ? columns + 1 : columns;
      for (int column = 0; column < own; column++) {
        text.append(column == 0 ? "" : separator).append(cell(separator, end));
      }
      boolean last = row == rows - 1 && random.nextBoolean();
      text.append(last ? "" : end.repeat(random.nextInt(6) == 0 ? 2 : 1));
    }
    return text.toString();
  }

  private String cell(String separator, String end) {
    String plain = CELLS[random.nextInt(random.nextInt(4) == 0 ? CELLS.length : 5)];
    if (random.nextInt(3) > 0 && !plain.contains(separator)) {
      return random.nextInt(5) == 0 ? " " + plain + " " : plain;
    }
    String inside = random.nextInt(4) == 0 ? plain + separator + end + plain : plain;
    return '"' + inside.replace("\"", "\"\"") + '"';
  }

  private String noise() {
    StringBuilder text = new StringBuilder("h" + ";,\t".charAt(random.nextInt(3)) + "k\n");
    int length = random.nextInt(40);
    for (int i = 0; i < length; i++) {
      text.append(ANY.charAt(random.nextInt(ANY.length())));
    }
    return text.toString();
  }

  private void count(String what) {
    counts.merge(what, 1, Integer::sum);
  }

  private static String shown(String text) {
    return text.replace("\n", "\\n").replace("\r", "\\r").replace("\t", "\\t");
  }
}
