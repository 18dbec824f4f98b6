package blindlap.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.compute.CalculationRequest;
import blindlap.compute.Calculations;
import blindlap.stats.power.SimulatedPairs;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The tables of docs/method.md, part four, come out of the programs that it names. */
class MethodFiguresTest {
  private static final Map<String, String> RULES =
      Map.of(
          "eight-stint set", "\"block\": 8, \"max_run\": 3, \"min_trend_efficiency\": 0.8",
          "whole day", "\"block\": %d",
          "pairs", "\"block\": 2",
          "ABBA/BAAB", "\"block\": 4, \"patterns\": [\"ABBA\", \"BAAB\"]",
          "blocks of four", "\"block\": 4",
          "runs of two at most", "\"block\": %d, \"max_run\": 2");

  /** Rows of the first table behind an anchor. */
  private static List<String[]> table(String anchor) throws IOException {
    String page = Files.readString(Path.of("docs/method.md"));
    String from = page.substring(page.indexOf("<a id=\"" + anchor + "\">"));
    String table = from.substring(from.indexOf("\n| "));
    table = table.substring(1, table.indexOf("\n\n"));
    return table.lines().skip(2).map(row -> row.substring(2).split(" ?\\| ?")).toList();
  }

  private static JsonNode orders(String rule, int stints) throws IOException {
    String text =
        "{\"calculation\": \"orders\", \"given\": {\"list\": false, \"rule\": {\"setups\": 2,"
            + " \"stints\": "
            + stints
            + ", "
            + RULES.get(rule).formatted(stints)
            + "}}}";
    CalculationRequest request = CalculationRequest.parse(text).requests().get(0);
    return new ObjectMapper()
        .readTree(Calculations.standard().answer(request).print())
        .get("result");
  }

  private static void rounded(String printed, double found, String where) {
    BigDecimal figure = new BigDecimal(printed);
    double half = Math.min(figure.ulp().doubleValue() / 2, figure.scale() == 0 ? 0.0005 : 1);
    assertThat(found).as(where).isCloseTo(figure.doubleValue(), within(half * 1.0001));
  }

  @Test
  void theRulesAreWhatTheRequestGives() throws IOException {
    List<String[]> rows = table("figures-of-rules");
    assertThat(rows).hasSize(20);
    for (String[] row : rows) {
      String where = row[0] + ", " + row[1];
      JsonNode found = orders(row[0], Integer.parseInt(row[1]));
      assertThat(found.get("count").asText()).as(where).isEqualTo(row[2].replaceAll("[ ,]", ""));
      rounded(row[3], found.get("smallest_p").asDouble(), where + ", smallest p");
      String level = row[4].equals("none") ? "0" : row[4];
      rounded(level, found.get("attainable_level").asDouble(), where + ", level");
      rounded(row[5], found.get("mean_swaps").asDouble(), where + ", swaps");
      rounded(row[6], found.get("trend_efficiency").asDouble(), where + ", efficiency");
    }
  }

  @Test
  void threeAndFourSetupsAreToldApartAsOftenInAShortRun() throws IOException {
    for (String[] row : table("figures-of-pairs")) {
      String[] day = row[0].split(", ");
      SimulatedPairs.Odds odds =
          PairsTable.odds(Integer.parseInt(day[0]), Integer.parseInt(day[1]), 400);
      // Three standard errors of 400 days.
      assertThat(odds.pair()).as(row[0]).isCloseTo(Double.parseDouble(row[1]), within(0.075));
      assertThat(odds.differ()).as(row[0]).isCloseTo(Double.parseDouble(row[2]), within(0.075));
    }
  }

  @Test
  void guessesAreFlaggedAsOftenInAShortRun() throws IOException {
    List<String[]> rows = table("figures-of-guesses");
    assertThat(rows).hasSize(4);
    for (String[] row : rows) {
      Design design =
          Stream.of(Design.values()).filter(d -> d.text().equals(row[0])).findFirst().orElseThrow();
      int half = design.orders().stints() / 2;
      share(row, 1, GuessesTable.flagged(design, 0, GuessesTable.Others.COIN, 1_000));
      for (GuessesTable.Others others : GuessesTable.Others.values()) {
        share(row, 2 + others.ordinal(), GuessesTable.flagged(design, half, others, 1_000));
      }
    }
  }

  /** Three standard errors of 1 000 days and the rounding. */
  private static void share(String[] row, int column, double found) {
    double printed = Double.parseDouble(row[column]);
    double error = 3 * Math.sqrt(printed * (1 - printed) / 1_000) + 0.006;
    assertThat(found).as(row[0] + ", column " + column).isCloseTo(printed, within(error));
  }

  @Test
  void theClaimOnGuessesHoldsForACoinAndForNothingElse() {
    Design twelve = Design.BLOCK4_12;
    assertThat(1 - GuessesTable.flagged(twelve, 6, GuessesTable.Others.COIN, 4_000))
        .isGreaterThan(1 / 3.0 - 0.02)
        .isCloseTo(0.34, within(0.03));
    assertThat(1 - GuessesTable.flagged(twelve, 6, GuessesTable.Others.NO_ANSWER, 4_000))
        .isLessThan(0.01);
    assertThat(1 - GuessesTable.flagged(twelve, 6, GuessesTable.Others.ALWAYS_B, 4_000))
        .isCloseTo(0.23, within(0.03));
  }
}
