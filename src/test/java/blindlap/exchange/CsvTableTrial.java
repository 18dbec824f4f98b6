package blindlap.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/**
 * The long version of {@link CsvTableTest}: {@code mvn test -Dtest=CsvTableTrial -Dtables=500000}.
 */
class CsvTableTrial {
  @Test
  void everyRandomTableIsReadAsTheRuleSaysAndAsTheParserDoes() {
    CsvTables tables = new CsvTables(20_261_117);
    int wanted = Integer.getInteger("tables", 500_000);
    for (int i = 0; i < wanted; i++) {
      tables.one();
    }
    assertThat(tables.counts).containsKeys("read", "RAGGED_ROW", "CANNOT_READ");
    System.out.println(tables.counts);
  }
}
