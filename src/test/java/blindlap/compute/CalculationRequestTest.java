package blindlap.compute;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CalculationRequestTest {
  private static Given given(String fields) {
    return CalculationRequest.parse("{\"calculation\": \"x\", \"given\": {" + fields + "}}")
        .requests()
        .get(0)
        .given();
  }

  @Test
  void oneRequestOrAnArrayOfThemIsRead() {
    var lone = CalculationRequest.parse("{\"calculation\": \"sag\", \"given\": {}}");
    assertThat(lone.array()).isFalse();
    assertThat(lone.requests()).singleElement().extracting("calculation").isEqualTo("sag");
    var two =
        CalculationRequest.parse(
            "[{\"calculation\": \"a\", \"given\": {}}, {\"calculation\": \"b\", \"given\": {}}]");
    assertThat(two.array()).isTrue();
    assertThat(two.requests()).extracting("calculation").containsExactly("a", "b");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "''|text: is empty",
        "{|text: is not JSON at line 1, column 2: it breaks off there.",
        "{} {}|text: is not JSON at line 1, column 4: something stands behind its end.",
        "{\"a\":}|text: is not JSON at line 1, column 6: a sign stands there that has no place"
            + " there.",
        "[]|text: must be a request object or a non-empty array",
        "3|text: must be a request object",
        "[3]|[0]: must be a request object",
        "{\"given\": {}}|calculation: is missing.",
        "{\"calculation\": 3, \"given\": {}}|calculation: must be a text.",
        "{\"calculation\": \"sag\"}|given: is missing.",
        "[{\"calculation\": \"sag\", \"given\": []}]|[0].given: must be an object.",
        "{\"calculation\": \"sag\", \"given\": {}, \"gvien\": {}}|gvien: is not a known field.",
        "{\"calculation\": \"sag\", \"given\": {\"a\": 1, \"a\": 2}}|text: is not JSON at line 1,"
            + " column 45: the field \"a\" stands twice.",
        "{\"calculation\": \"sag\", \"given\": {\"a\": NaN}}|text: is not JSON at line 1, column"
            + " 42: a number is wanted, and this is none.",
      })
  void whatIsNoRequestIsRefusedWithItsPlace(String text, String start) {
    assertThatThrownBy(() -> CalculationRequest.parse(text))
        .isInstanceOf(RequestException.class)
        .hasMessageStartingWith(start);
  }

  @Test
  void aFieldOfAnotherTypeIsRefusedByName() {
    Given given = given("\"a\": \"ten\", \"b\": 2.5, \"c\": [1, null], \"d\": 1e999, \"e\": null");
    refuses("given.a: must be a number.", g -> g.number("a"), given);
    refuses("given.b: must be a whole number.", g -> g.whole("b"), given);
    refuses("given.b: must be a text.", g -> g.text("b"), given);
    refuses("given.b: must be true or false.", g -> g.flag("b"), given);
    refuses("given.b: must be a list.", g -> g.numbers("b"), given);
    refuses("given.b: must be an object.", g -> g.object("b"), given);
    refuses("given.c[1]: must be a number.", g -> g.numbers("c"), given);
    refuses("given.c[0]: must be a list.", g -> g.table("c"), given);
    refuses("given.d: is too large to be a number here.", g -> g.number("d"), given);
    refuses("given.e: is missing.", g -> g.number("e"), given);
    refuses("given.f: is missing.", g -> g.text("f"), given);
    refuses("given.b: is not a known field.", g -> g.allowOnly(Set.of("a", "c", "d", "e")), given);
    refuses(
        "given.a: \"ten\" is none of read-first, write.", g -> g.option("a", Word.class), given);
  }

  @Test
  void wholeNumbersBeyondTheirRangeAreRefused() {
    Given given = given("\"a\": 3000000000, \"b\": 20.0, \"c\": 12345678901234567890");
    refuses("given.a: is beyond the whole numbers up to 2147483647.", g -> g.whole("a"), given);
    refuses("given.c: must be a whole number.", g -> g.longWhole("c"), given);
    assertThat(given.longWhole("a")).isEqualTo(3_000_000_000L);
    assertThat(given.whole("b")).isEqualTo(20);
  }

  @Test
  void fieldsOfTheRightTypeAreRead() {
    Given given =
        given(
            "\"n\": [1, 2.5], \"gaps\": [1, null], \"flags\": [true, null], \"word\":"
                + " \"read-first\", \"table\": [[1], [2, 3]], \"inner\": {\"x\": 1}, \"list\":"
                + " [{\"y\": 2}], \"texts\": [\"A\"], \"wholes\": [3]");
    assertThat(given.numbers("n")).containsExactly(1, 2.5);
    assertThat(given.numbersWithGaps("gaps")).containsExactly(1, Double.NaN);
    assertThat(given.flags("flags")).containsExactly(true, false);
    assertThat(given.option("word", Word.class)).isEqualTo(Word.READ_FIRST);
    assertThat(given.option("absent", Word.class, Word.WRITE)).isEqualTo(Word.WRITE);
    assertThat(given.table("table")).isDeepEqualTo(new double[][] {{1}, {2, 3}});
    assertThat(given.object("inner").whole("x")).isEqualTo(1);
    assertThat(given.objects("list").get(0).whole("y")).isEqualTo(2);
    assertThat(given.texts("texts")).isEqualTo(List.of("A"));
    assertThat(given.wholes("wholes")).containsExactly(3);
    refuses("given.list[0].z: is missing.", g -> g.objects("list").get(0).whole("z"), given);
  }

  private enum Word {
    READ_FIRST,
    WRITE
  }

  private static void refuses(String message, Consumer<Given> reading, Given given) {
    assertThatThrownBy(() -> reading.accept(given))
        .isInstanceOf(RequestException.class)
        .hasMessage(message);
  }
}
