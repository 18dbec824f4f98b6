package blindlap.compute;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Requests over admissible orders: every option, and refusals that name the field. */
class OrderRequestsTest {
  private static final String BLOCK4_12 = "'rule':{'setups':2,'stints':12,'block':4}";
  private static final String BLOCK4_28 = "'rule':{'setups':2,'stints':28,'block':28}";
  private static final String ORDER = "'order':'ABBABABAABAB'";
  private static final String VALUES = "'values':[3,5,6,2,5,4,6,3,2,7,3,8]";
  private static final String LONG_ORDER = "'order':'ABBAABBAABBAABBAABBAABBAABAB'";
  private static final String LONG_VALUES =
      "'values':[3,5,6,2,5,4,6,3,2,7,3,8,3,5,6,2,5,4,6,3,2,7,3,8,4,5,6,1]";
  private static final String LINE = "'drift':'line'";

  private final Calculations calculations = Calculations.standard();

  private JsonNode whole(String name, String... fields) {
    String text =
        ("{'calculation':'" + name + "','given':{" + String.join(",", fields) + "}}")
            .replace('\'', '"');
    try {
      return new ObjectMapper()
          .readTree(calculations.answer(CalculationRequest.parse(text).requests().get(0)).print());
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  private JsonNode result(String name, String... fields) {
    return whole(name, fields).get("result");
  }

  private void refused(String field, String name, String... fields) {
    assertThatThrownBy(() -> result(name, fields))
        .isInstanceOfSatisfying(
            RequestException.class,
            e -> {
              assertThat(e.field()).isEqualTo(field);
              assertThat(e.getMessage()).endsWith(".").doesNotContain("\n");
            });
  }

  @Test
  void aListOfOrdersStandsForTheRuleThatGivesIt() {
    JsonNode listed =
        result("orders", "'orders':['ABBA','BAAB','ABAB','BABA','AABB','BBAA','ABBA']");
    JsonNode ruled = result("orders", "'rule':{'setups':2,'stints':4,'block':4},'list':true");
    assertThat(listed.get("count").intValue()).isEqualTo(6);
    assertThat(listed.get("trend_efficiency")).isEqualTo(ruled.get("trend_efficiency"));
    assertThat(ruled.get("orders").get(0).textValue()).isEqualTo("AABB");
    assertThat(listed.has("orders")).isFalse();
  }

  @Test
  void aVeryLargeCountIsPrintedWhole() {
    JsonNode found = result("orders", "'rule':{'setups':3,'stints':60,'block':60}");
    assertThat(found.get("count").bigIntegerValue().toString())
        .isEqualTo("577831214478475823831865900");
    assertThat(found.get("trend_efficiency").isNull()).isTrue();
  }

  @Test
  void aStintMarkedNotValidOrNullCountsAsMissing() {
    String gap = "'values':[3,5,6,null,5,4,6,3,2,7,3,8]";
    String valid = "'valid':[true,true,true,null,true,true,true,true,true,true,true,true]";
    String flag = "'valid':[true,true,true,false,true,true,true,true,true,true,true,true]";
    JsonNode missing = result("compare-two", BLOCK4_12, ORDER, gap, LINE);
    assertThat(result("compare-two", BLOCK4_12, ORDER, VALUES, valid, LINE)).isEqualTo(missing);
    assertThat(result("compare-two", BLOCK4_12, ORDER, VALUES, flag, LINE)).isEqualTo(missing);
    assertThat(missing.get("df").intValue()).isEqualTo(8);
    assertThat(missing.get("count").intValue()).isEqualTo(216);
  }

  @Test
  void aSampledAnswerStatesDrawsSeedAndError() {
    JsonNode found =
        result("compare-two", BLOCK4_28, LONG_ORDER, LONG_VALUES, LINE, "'draws':4000,'seed':77");
    double p = found.get("p").doubleValue();
    assertThat(found.get("draws").intValue()).isEqualTo(4000);
    assertThat(found.get("seed").intValue()).isEqualTo(77);
    assertThat(found.get("p_error").doubleValue())
        .isCloseTo(Math.sqrt(p * (1 - p) / 4000), within(1e-15));
    assertThat(found.get("count").longValue()).isEqualTo(40_116_600);
    assertThat(found.get("orders_counted").intValue()).isEqualTo(8002);
    JsonNode exact = result("compare-two", BLOCK4_12, ORDER, VALUES, LINE, "'draws':4000");
    assertThat(exact.has("p_error")).isFalse();
    assertThat(exact.has("draws")).isFalse();
  }

  @Test
  void everySampledCalculationStatesItsSample() {
    JsonNode many =
        result(
            "compare-many",
            "'rule':{'setups':3,'stints':27,'block':3}",
            "'order':'ABCABCABCABCABCABCABCABCABC'",
            LONG_VALUES.replace(",1]", "]"),
            LINE,
            "'draws':500,'seed':3");
    assertThat(many.get("draws").intValue()).isEqualTo(500);
    assertThat(many.get("pairs").get(0).has("p_error")).isTrue();
    JsonNode measures =
        result(
            "compare-measures",
            BLOCK4_28,
            LONG_ORDER,
            "'measures':[{'name':'time'," + LONG_VALUES + "}]",
            LINE,
            "'draws':500");
    assertThat(measures.get("p_error")).hasSize(1);
    JsonNode ratio = result("count-ratio", BLOCK4_28, LONG_ORDER, LONG_VALUES, "'draws':500");
    assertThat(ratio.get("draws").intValue()).isEqualTo(500);
  }

  @Test
  void onTheRatioScaleResultsAreRatiosAndTheNoiseStaysInLogs() {
    String ratio = "'scale':'ratio'";
    JsonNode found =
        result(
            "compare-two",
            BLOCK4_12,
            ORDER,
            VALUES,
            LINE,
            ratio,
            "'at':[1,2],'curve':true,'worthwhile':10");
    StringBuilder logs = new StringBuilder("'values':[");
    for (String value : VALUES.substring(10, VALUES.length() - 1).split(",")) {
      logs.append(Math.log(Double.parseDouble(value))).append(',');
    }
    logs.setCharAt(logs.length() - 1, ']');
    double margin = Math.log(1.1);
    JsonNode raw =
        result(
            "compare-two",
            BLOCK4_12,
            ORDER,
            logs.toString(),
            LINE,
            "'at':[0," + Math.log(2) + "],'curve':true,'worthwhile':" + margin);
    assertThat(Math.log(found.get("estimate").doubleValue()))
        .isCloseTo(raw.get("estimate").doubleValue(), within(1e-12));
    assertThat(Math.log(found.get("interval_95").get(0).doubleValue()))
        .isCloseTo(raw.get("interval_95").get(0).doubleValue(), within(1e-12));
    assertThat(Math.log(found.get("knots").get(7).doubleValue()))
        .isCloseTo(raw.get("knots").get(7).doubleValue(), within(1e-12));
    assertThat(found.get("noise_sd")).isEqualTo(raw.get("noise_sd"));
    assertThat(found.get("at").get(1).get("count_plus"))
        .isEqualTo(raw.get("at").get(1).get("count_plus"));
    assertThat(found.get("at").get(1).get("shift").doubleValue()).isEqualTo(2);
    assertThat(found.get("verdict")).isEqualTo(raw.get("verdict"));
    refused(
        "given.values[2]",
        "compare-two",
        BLOCK4_12,
        ORDER,
        VALUES.replace("5,6,2", "5,0,2"),
        LINE,
        ratio);
    refused("given.at[0]", "compare-two", BLOCK4_12, ORDER, VALUES, LINE, ratio, "'at':[0]");
  }

  @Test
  void withoutVariationThereIsNoIntervalNoCurveAndTheVerdictSaysSo() {
    JsonNode found =
        result(
            "compare-two",
            BLOCK4_12,
            ORDER,
            "'values':[7,7,7,7,7,7,7,7,7,7,7,7]",
            LINE,
            "'worthwhile':1,'curve':true");
    assertThat(found.get("interval_95").isNull()).isTrue();
    assertThat(found.get("verdict").textValue()).isEqualTo("no variation");
    assertThat(found.has("knots")).isFalse();
  }

  @Test
  void usableStintsThatDifferGiveHolmAndAreNamedInTheMethod() {
    JsonNode answer =
        whole(
            "compare-measures",
            BLOCK4_12,
            ORDER,
            "'measures':[{'name':'time',"
                + VALUES
                + "},{'name':'trust','values':[5,5,6,2,5,null,6,3,2,7,3,9]}]",
            LINE);
    assertThat(answer.get("result").get("p_single_step").isNull()).isTrue();
    assertThat(answer.get("method").textValue()).contains("Holm");
  }

  @Test
  void guessesAreNeverSampledHoweverLargeTheSet() {
    JsonNode found =
        result(
            "guesses",
            BLOCK4_28,
            LONG_ORDER,
            "'guesses':'ABBAABBAABBAABBAABBAABBAABAB','exact':'required'");
    assertThat(found.get("p").doubleValue()).isCloseTo(1 / 40_116_600.0, within(1e-20));
    assertThat(found.has("draws")).isFalse();
  }

  @Test
  void aDayWithoutAttainableLevelDetectsNothing() {
    JsonNode found =
        result(
            "detectable", "'rule':{'setups':2,'stints':8,'block':4}", "'sd':1,'power':0.8", LINE);
    assertThat(found.get("difference").isNull()).isTrue();
    assertThat(found.get("attainable_level").doubleValue()).isZero();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "given.rule.block      | 'rule':{'setups':2,'stints':10,'block':4}",
        "given.rule.block      | 'rule':{'setups':3,'stints':8,'block':4}",
        "given.rule.stints     | 'rule':{'setups':2,'block':4}",
        "given.rule.stints     | 'rule':{'setups':2,'stints':5000,'block':4}",
        "given.rule.setups     | 'rule':{'setups':1,'stints':4,'block':4}",
        "given.rule.max_run    | 'rule':{'setups':2,'stints':8,'block':4,'max_run':0}",
        "given.rule.patterns   | 'rule':{'setups':2,'stints':8,'block':4,'patterns':['ABBA']}",
        "given.rule.patterns   | 'rule':{'setups':2,'stints':8,'block':4,'patterns':[]}",
        "given.rule.patterns[0] |"
            + " 'rule':{'setups':2,'stints':8,'block':4,'patterns':['ABBB','BAAB']}",
        "given.rule.min_trend_efficiency |"
            + " 'rule':{'setups':2,'stints':8,'block':4,'min_trend_efficiency':2}",
        "given.rule.blocks     | 'rule':{'setups':2,'stints':8,'block':4,'blocks':2}",
        "given.rule            |"
            + " 'rule':{'setups':2,'stints':8,'block':4,'max_run':1,'min_trend_efficiency':1}",
        "given.rule            | 'list':true",
        "given.orders          | 'rule':{'setups':2,'stints':4,'block':4},'orders':['ABBA','BAAB']",
        "given.orders          | 'orders':['ABBA','BAAB','ABAB']",
        "given.orders          | 'orders':[]",
        "given.orders[1]       | 'orders':['ABBA','BAA']",
        "given.orders[1]       | 'orders':['ABBA','baab']",
        "given.list            | 'rule':{'setups':2,'stints':24,'block':24},'list':true",
        "given.exact           | 'rule':{'setups':2,'stints':4,'block':4},'exact':'yes'",
        "given.draws           | 'rule':{'setups':2,'stints':4,'block':4},'draws':5",
        "given.drift           | 'rule':{'setups':2,'stints':4,'block':4},'drift':'line'"
      })
  void aRuleOrListThatCannotBeUsedIsRefusedAtItsField(String field, String fields) {
    refused(field.trim(), "orders", fields);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "given.order      | 'order':'AAAABBBBABAB'",
        "given.order      | 'order':'ABBA'",
        "given.order      | 'order':'ABBABABAABAC'",
        "given.order      | 'order':'abbababaabab'",
        "given.values     | 'values':[]",
        "given.values     | 'values':[1,2,3]",
        "given.values     | 'values':[3,5,6,2,5,4,6,3,2,7,3,8,9]",
        "given.values     | 'values':[3,null,null,2,null,null,null,null,null,null,null,null]",
        "given.values[1]  | 'values':[3,'x',6,2,5,4,6,3,2,7,3,8]",
        "given.values[1]  | 'values':[3,1e999,6,2,5,4,6,3,2,7,3,8]",
        "given.valid      | 'valid':[true,false]",
        "given.drift      | 'drift':'bend'",
        "given.drift      | 'drift':null",
        "given.worthwhile | 'worthwhile':0",
        "given.worthwhile | 'worthwhile':-1",
        "given.at         | 'at':1",
        "given.scale      | 'scale':'percent'",
        "given.shift      | 'shift':1",
      })
  void aComparisonThatCannotBeMadeIsRefusedAtItsField(String field, String change) {
    String name = change.substring(1, change.indexOf('\'', 1));
    StringBuilder fields = new StringBuilder(BLOCK4_12);
    for (String each : new String[] {ORDER, VALUES, LINE}) {
      if (!each.startsWith("'" + name + "'")) {
        fields.append(',').append(each);
      }
    }
    refused(field.trim(), "compare-two", fields + "," + change);
  }

  @Test
  void whatWouldBeSampledIsRefusedWhereExactIsRequired() {
    String exact = "'exact':'required'";
    refused("given.exact", "compare-two", BLOCK4_28, LONG_ORDER, LONG_VALUES, LINE, exact);
    refused("given.exact", "count-ratio", BLOCK4_28, LONG_ORDER, LONG_VALUES, exact);
    refused(
        "given.exact",
        "compare-measures",
        BLOCK4_28,
        LONG_ORDER,
        "'measures':[{'name':'time'," + LONG_VALUES + "}]",
        LINE,
        exact);
    refused("given.exact", "compare-many", BLOCK4_28, LONG_ORDER, LONG_VALUES, LINE, exact);
    refused("given.exact", "detectable", BLOCK4_28, "'sd':1,'power':0.8,'drift':'curve'", exact);
    assertThat(result("detectable", BLOCK4_28, "'sd':1,'power':0.8", LINE, exact).get("df"))
        .isNotNull();
  }

  @Test
  void otherCalculationsRefuseAtTheirFieldsToo() {
    refused(
        "given.measures[0].unit",
        "compare-measures",
        BLOCK4_12,
        ORDER,
        "'measures':[{'name':'time','unit':'s'," + VALUES + "}]",
        LINE);
    refused(
        "given.measures[1].values",
        "compare-measures",
        BLOCK4_12,
        ORDER,
        "'measures':[{'name':'time'," + VALUES + "},{'name':'b','values':[1]}]",
        LINE);
    refused("given.measures", "compare-measures", BLOCK4_12, ORDER, "'measures':[]", LINE);
    refused("given.guesses", "guesses", BLOCK4_12, ORDER, "'guesses':'AB'");
    refused("given.waits", "waits", BLOCK4_12, ORDER, "'waits':[null,1,2]");
    refused(
        "given.waits", "waits", BLOCK4_12, ORDER, "'waits':[0,1,2,3,4,5,6,7,null,null,null,null]");
    refused("given.guesses", "guesses", BLOCK4_12, ORDER, "'guesses':'ABBABABAABAx'");
    refused("given.values[0]", "count-ratio", BLOCK4_12, ORDER, VALUES.replace("[3", "[-3"));
    refused("given.sd", "detectable", BLOCK4_12, "'sd':0,'power':0.8", LINE);
    refused("given.power", "detectable", BLOCK4_12, "'sd':1,'power':1.2", LINE);
    refused(
        "given.rule",
        "detectable",
        "'rule':{'setups':3,'stints':9,'block':3}",
        "'sd':1,'power':0.8",
        LINE);
    refused(
        "given.rule",
        "compare-two",
        "'rule':{'setups':3,'stints':9,'block':3}",
        "'order':'ABCABCABC','values':[1,2,3,4,5,6,7,8,9]",
        LINE);
  }

  @Test
  void aTrendAnswersWithMeansAndWithWhatMayBeSaidOfMiddleAndEnds() {
    String[] fields = {
      "'rule':{'setups':3,'stints':12,'block':3}",
      "'levels':[3,9,6]",
      "'order':'BCAACBCABBAC'",
      "'values':[62.1,59.9,62.1,61.9,60.2,61.8,60.1,61.9,62.1,61.9,62.1,60.0]",
      LINE
    };
    JsonNode plain = result("trend", fields);
    assertThat(plain.has("middle_better")).isFalse();
    assertThat(plain.get("attainable_level").doubleValue()).isCloseTo(64.0 / 1296, within(1e-12));
    assertThat(plain.get("means")).hasSize(3);
    assertThat(plain.get("means").get(1).get("level").doubleValue()).isEqualTo(6);
    assertThat(plain.get("means").get(1).get("stints").intValue()).isEqualTo(4);
    assertThat(plain.get("means").get(1).get("mean").doubleValue()).isCloseTo(60.05, within(.1));
    JsonNode between = plain.get("between");
    assertThat(between)
        .extracting(pair -> pair.get("pair").textValue())
        .containsExactly("A-C", "A-B", "C-B");
    assertThat(between.get(0).get("interval_95").get(1).doubleValue()).isNegative();
    String[] better = java.util.Arrays.copyOf(fields, 6);
    better[5] = "'better':'lower'";
    assertThat(result("trend", better).get("middle_better").doubleValue()).isEqualTo(6);
    assertThat(result("trend", better).get("still_better").isNull()).isTrue();
    better[5] = "'better':'higher'";
    assertThat(result("trend", better).get("middle_better").isNull()).isTrue();
  }

  @Test
  void aTrendOfRatiosIsTheTrendOfTheirLogarithms() {
    double[] values = {62.1, 59.9, 62.1, 61.9, 60.2, 61.8, 60.1, 61.9, 62.1};
    String rule = "'rule':{'setups':3,'stints':9,'block':3}";
    String order = "'levels':[3,9,5],'order':'BCAACBCAB','better':'lower'";
    double[] logs = java.util.Arrays.stream(values).map(Math::log).toArray();
    JsonNode ratio =
        result(
            "trend", rule, order, list(values), LINE, "'scale':'ratio','worthwhile':2,'at':[1.02]");
    double margin = Math.log(1.02);
    JsonNode plain =
        result(
            "trend",
            rule,
            order,
            list(logs),
            LINE,
            "'worthwhile':" + margin + ",'at':[" + margin + "]");
    for (String field : new String[] {"p", "bend", "verdict", "noise_sd", "middle_better"}) {
      assertThat(ratio.get(field)).as(field).isEqualTo(plain.get(field));
    }
    assertThat(ratio.get("at").get(0).get("count_plus"))
        .isEqualTo(plain.get("at").get(0).get("count_plus"));
    for (String field : new String[] {"estimate", "per_unit"}) {
      back(ratio.get(field), plain.get(field));
    }
    for (int end = 0; end < 2; end++) {
      back(ratio.get("interval_90").get(end), plain.get("interval_90").get(end));
    }
    for (int i = 0; i < 3; i++) {
      JsonNode mean = ratio.get("means").get(i);
      back(mean.get("mean"), plain.get("means").get(i).get("mean"));
      back(mean.get("interval_95").get(1), plain.get("means").get(i).get("interval_95").get(1));
      assertThat(mean.get("standard_error"))
          .isEqualTo(plain.get("means").get(i).get("standard_error"));
      JsonNode pair = ratio.get("between").get(i);
      back(pair.get("estimate"), plain.get("between").get(i).get("estimate"));
      back(pair.get("interval_95").get(0), plain.get("between").get(i).get("interval_95").get(0));
    }
  }

  private static String list(double[] values) {
    return "'values':" + java.util.Arrays.toString(values);
  }

  private static void back(JsonNode ratio, JsonNode log) {
    assertThat(Math.log(ratio.doubleValue())).isCloseTo(log.doubleValue(), within(1e-12));
  }

  @Test
  void whatWasReallyOnGivesTheEstimateAlone() {
    String rule = "'rule':{'setups':3,'stints':9,'block':3},'levels':[3,9,5]";
    String values = "'values':[62.1,59.9,62.1,61.9,60.2,61.8,60.1,61.9,62.1]";
    JsonNode drawn = result("trend", rule, values, LINE, "'order':'BCAACBCAB'");
    JsonNode on = result("trend", rule, values, LINE, "'fitted':[9,5,3,3,5,9,5,3,9]");
    assertThat(on.get("estimate")).isEqualTo(drawn.get("estimate"));
    assertThat(on.get("per_unit")).isEqualTo(drawn.get("per_unit"));
    assertThat(on.size()).isEqualTo(2);
    JsonNode wrong = result("trend", rule, values, LINE, "'fitted':[9,5,3,3,5.5,9,5,3,9]");
    assertThat(wrong.get("estimate")).isNotEqualTo(drawn.get("estimate"));
  }

  @Test
  void guessesOfLevelsAreAnsweredByRequest() {
    String rule = "'rule':{'setups':3,'stints':9,'block':3}";
    String levels = "'levels':[13,1,4]";
    JsonNode found =
        result("guesses", rule, levels, "'order':'BCAACBCAB'", "'guesses':'LLHHLLLHL'");
    assertThat(found.get("p").doubleValue()).isCloseTo(8 / 216.0, within(1e-12));
    assertThat(found.get("right").intValue()).isEqualTo(9);
    refused("given.guesses", "guesses", rule, levels, "'order':'BCAACBCAB'", "'guesses':'AB'");
  }
}
