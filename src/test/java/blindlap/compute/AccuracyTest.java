package blindlap.compute;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Digits that agree with the certified values of the NIST Statistical Reference Datasets; least
 * digits as measured in docs/accuracy.md, rounded down.
 */
class AccuracyTest {
  @Test
  void univariateSetsReachTheDigitsThatTheStoredDataAllow() throws Exception {
    Map<String, double[]> rows = AccuracyTable.univariate();
    assertThat(rows).hasSize(7);
    rows.forEach(
        (name, row) -> {
          boolean hard = name.equals("NumAcc3") || name.equals("NumAcc4");
          assertThat(row[1]).as(name + " mean").isGreaterThanOrEqualTo(15);
          assertThat(row[2]).as(name + " sd").isGreaterThanOrEqualTo(hard ? 8 : 14.5);
          assertThat(row[3]).as(name + " lag-1").isGreaterThanOrEqualTo(hard ? 11 : 14.5);
        });
  }

  @Test
  void oneWaySetsReachTheDigitsThatTheStoredDataAllow() throws Exception {
    Map<String, double[]> rows = AccuracyTable.oneWay();
    Map<String, Double> least =
        Map.of("SiRstv", 12.9, "SmLs01", 14.5, "SmLs04", 8.8, "SmLs05", 7.5, "SmLs07", 4.0);
    assertThat(rows.keySet()).isEqualTo(new java.util.TreeSet<>(least.keySet()));
    rows.forEach(
        (name, row) -> {
          for (int i = 1; i < row.length; i++) {
            if (!Double.isNaN(row[i])) {
              assertThat(row[i])
                  .as("%s, column %d", name, i)
                  .isGreaterThanOrEqualTo(least.get(name));
            }
          }
        });
  }
}
