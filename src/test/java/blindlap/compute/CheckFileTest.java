package blindlap.compute;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CheckFileTest {
  private static final CalculationAnswer ANSWER =
      new CalculationAnswer(
          "x",
          new ResultFields()
              .number("number", 100)
              .number("nothing", Double.NaN)
              .text("text", "yes")
              .flag("flag", true)
              .interval("interval", 1, Double.POSITIVE_INFINITY)
              .object("inner", new ResultFields().number("a", 1).number("b", 2)),
          "method",
          List.of());

  private static List<String> shortfalls(String expect, String tolerance) {
    String text =
        """
        {"id": "i", "title": "t", "source": "s", "calculation": "x", "given": {},
         "expect": {%s}, "tolerance": {%s}}
        """
            .formatted(expect, tolerance);
    return CheckFile.parse(text).get(0).shortfalls(ANSWER);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"number\": 101|\"rel\": 0.01",
        "\"number\": 101|\"abs\": 1",
        "\"number\": 102|\"rel\": 0.01, \"abs\": 0.98",
        "\"number\": 100|''",
        "\"number\": 110|\"rel\": 0, \"fields\": {\"number\": {\"abs\": 10}}",
        "\"nothing\": null|''",
        "\"text\": \"yes\", \"flag\": true|''",
        "\"interval\": [1.5, null]|\"abs\": 0.5",
        "\"inner\": {\"b\": 2}|''",
        "\"inner\": {\"b\": 2.5}|\"fields\": {\"inner\": {\"abs\": 0.5}}",
      })
  void whatTheToleranceAllowsPasses(String expect, String tolerance) {
    assertThat(shortfalls(expect, tolerance)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"number\": 101.1|\"rel\": 0.01|result.number is 100.0, expected 101.1: off by",
        "\"number\": 110|\"rel\": 1, \"fields\": {\"number\": {}}|result.number is 100.0",
        "\"number\": null|''|result.number is 100.0, expected null",
        "\"nothing\": 0|\"abs\": 9|result.nothing is null, expected 0",
        "\"text\": \"no\"|''|result.text is \"yes\", expected \"no\"",
        "\"flag\": false|''|result.flag is true, expected false",
        "\"flag\": 1|\"abs\": 9|result.flag is true, expected 1",
        "\"interval\": [1]|''|result.interval has 2 elements, expected 1",
        "\"interval\": [1, 9]|''|result.interval[1] is null, expected 9",
        "\"inner\": {\"c\": null}|''|result.inner.c is missing, expected null",
        "\"other\": 1|''|result.other is missing, expected 1",
        "\"inner\": 3|''|result.inner is {",
      })
  void whatFallsShortIsNamedWithItsPlace(String expect, String tolerance, String start) {
    assertThat(shortfalls(expect, tolerance)).singleElement().asString().startsWith(start);
  }

  @Test
  void everyPlaceThatFallsShortIsReported() {
    assertThat(shortfalls("\"number\": 1, \"inner\": {\"a\": 9, \"b\": 9}", "")).hasSize(3);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"expect\": {}|expect: must be an object with at least one field.",
        "\"expect\": {\"a\": 1}, \"tolerance\": {\"rle\": 1}|tolerance.rle: is not a known field.",
        "\"expect\": {\"a\": 1}, \"tolerance\": {\"rel\": -1}|tolerance.rel: must be a number",
        "\"expect\": {\"a\": 1}, \"tolerance\": {\"fields\": {\"b\": {}}}|tolerance.fields.b: is not",
        "\"expect\": {\"a\": 1}, \"tolerance\": {\"fields\": {\"a\": {\"x\": 1}}}|tolerance.fields.a.x:",
        "\"expect\": {\"a\": 1}, \"tolerance\": 3|tolerance: must be an object.",
      })
  void aCheckThatCouldPassByMistakeIsRefused(String fields, String start) {
    String text =
        "{\"id\": \"i\", \"title\": \"t\", \"source\": \"s\", \"calculation\": \"x\", \"given\": {}, "
            + fields
            + "}";
    assertThatThrownBy(() -> CheckFile.parse(text))
        .isInstanceOf(RequestException.class)
        .hasMessageStartingWith(start);
  }

  @Test
  void aCheckWithoutSourceIsRefused() {
    assertThatThrownBy(
            () ->
                CheckFile.parse(
                    "{\"id\": \"i\", \"title\": \"t\", \"calculation\": \"x\", \"given\": {},"
                        + " \"expect\": {\"a\": 1}}"))
        .hasMessageStartingWith("source: is missing");
  }

  @Test
  void answersPrintTheShortestNumbersThatReadBackTheSame() {
    String json =
        new CalculationAnswer(
                "x",
                new ResultFields()
                    .numbers("a", 2e-3, 0.1, 2.0E-323, 1.0 / 3, Double.NaN)
                    .whole("n", 3)
                    .wholesOrNone("m", 4, -1),
                "m",
                List.of("note"))
            .print();
    assertThat(json.replaceAll("\\s", ""))
        .isEqualTo(
            "{\"calculation\":\"x\",\"result\":{\"a\":[0.002,0.1,2.0E-323,0.3333333333333333,null],"
                + "\"n\":3,\"m\":[4,null]},\"method\":\"m\",\"notes\":[\"note\"]}");
  }
}
