package blindlap.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import blindlap.fault.Unreadable;
import blindlap.wording.day.Problems;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

class CsvTableTest {
  private static CsvTable read(String text) throws CsvTable.Unreadable {
    return CsvTable.read(text.getBytes(StandardCharsets.UTF_8));
  }

  private static List<String> refused(String text) {
    CsvTable.Unreadable no = catchThrowableOfType(CsvTable.Unreadable.class, () -> read(text));
    return Problems.sentences(no.problems());
  }

  @Test
  void anInchMarkInACellIsText() throws Exception {
    CsvTable table = read("lap;note\n1;24\" wheel\n2;24\" again\n3;\"27.5\"\" now\"\n");
    assertThat(table.rows())
        .containsExactly(
            new CsvTable.Row(2, List.of("1", "24\" wheel")),
            new CsvTable.Row(3, List.of("2", "24\" again")),
            new CsvTable.Row(4, List.of("3", "27.5\" now")));
  }

  @Test
  void rowsKeepTheLineTheyStartOnAfterBlankLinesAndBreaksInCells() throws Exception {
    CsvTable table = read("\r\n\r\nlap;note\r\n1;\"two\r\nlines\"\r\n   \r\n2;\r\n");
    assertThat(table.headerLine()).isEqualTo(3);
    assertThat(table.rows())
        .containsExactly(
            new CsvTable.Row(4, List.of("1", "two\nlines")), new CsvTable.Row(7, List.of("2", "")));
  }

  @Test
  void aQuoteThatIsNeverClosedIsNamedByLineAndSwallowsNoRows() {
    assertThat(refused("lap;note\n1;dry\n2;\"wet\n3;dry\n"))
        .containsExactly(
            "Line 3: The file of laps is not a table: a double quote opens a cell and is never"
                + " closed. Nothing was recorded.");
  }

  @Test
  void aRowWithOtherCellsThanTheHeaderIsNamedByItsLine() {
    assertThat(refused("lap;note\n1;24\" wheel\n\n2\n3;a;b\n"))
        .containsExactly(
            "Line 4: This row has 1 cells, the header has 2. Nothing was recorded.",
            "Line 5: This row has 3 cells, the header has 2. Nothing was recorded.");
  }

  @Test
  void aCellOrARowBeyondReasonIsRefusedWithoutWordsOfTheParser() {
    assertThat(refused("lap;note\n1;" + "x".repeat(10_001) + "\n"))
        .containsExactly(
            "Line 2: The file of laps is not a table: a cell holds more than 10,000 characters."
                + " Nothing was recorded.");
    assertThat(refused("lap;note\n1;" + ";".repeat(20_000) + "\n"))
        .containsExactly(
            "Line 2: The file of laps is not a table: a row holds more than 10,000 cells."
                + " Nothing was recorded.");
  }

  @Test
  void aSharpSignOpensNoComment() throws Exception {
    assertThat(read("#;t\n1;95\n").header()).containsExactly("#", "t");
  }

  @Test
  void aTableThatIsWrittenComesBackWithEveryCharacter() {
    List<String> odd =
        List.of("", " ", "24\" wheel", "\"", "a,b", "x\ny", "x\r\ny", "x\r", "#", "'", "ä", " b ");
    List<String> header = List.of("one", "two, \"three\"");
    for (String left : odd) {
      for (String right : odd) {
        String text = CsvText.write(header, List.of(List.of(left, right), List.of(right, left)));
        assertThat(CsvText.read("t.csv", text))
            .extracting(row -> List.copyOf(row.values()))
            .containsExactly(List.of(left, right), List.of(right, left));
      }
    }
  }

  @Test
  void aWrittenTableOfOneColumnKeepsItsEmptyCells() {
    String text = CsvText.write(List.of("note"), List.of(List.of(""), List.of("x"), List.of("")));
    assertThat(CsvText.read("t.csv", text))
        .extracting(row -> row.get("note"))
        .containsExactly("", "x", "");
    assertThat(CsvText.read("t.csv", text.replace("\n", "\r\n"))).hasSize(3);
  }

  @Test
  void aWrittenTableWithAQuoteOutOfPlaceIsRefusedByName() {
    for (String rows : List.of("1,\"x\"y\n", "1,\"x\n")) {
      Unreadable refused =
          catchThrowableOfType(Unreadable.class, () -> CsvText.read("t.csv", "a,b\n" + rows));
      assertThat(Problems.sentence(refused.problem()))
          .isEqualTo("t.csv, line 2: a quote is out of place. Export the package again.");
    }
  }

  /** The long version is {@link CsvTableTrial}. */
  @Test
  void fiveThousandRandomTablesAreReadAsTheRuleSaysAndAsTheParserDoes() {
    CsvTables tables = new CsvTables(20_261_116);
    for (int i = 0; i < 5_000; i++) {
      tables.one();
    }
    assertThat(tables.counts.values()).as(tables.counts.toString()).allMatch(many -> many > 50);
    assertThat(tables.counts)
        .containsKeys("NOT_UTF8", "NO_ROWS", "RAGGED_ROW", "CANNOT_READ")
        .containsKeys("read, with line breaks in cells", "read, with quotes in cells");
  }
}
