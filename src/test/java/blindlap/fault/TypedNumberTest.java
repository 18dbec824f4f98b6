package blindlap.fault;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TypedNumberTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      ignoreLeadingAndTrailingWhitespace = false,
      value = {
        "5.5|5.5",
        "5,5|5.5",
        "−5,5|-5.5",
        "–5|-5",
        "-5|-5",
        "+5|5",
        ".5|0.5",
        ",5|0.5",
        "5.|5",
        "1,234|1.234",
        "  7 |7",
        "\u00a07\u2009|7",
        "\u202f0\t|0",
        "123456789012345.123456789012|123456789012345.123456789012",
      })
  void aNumberIsReadWithPointOrCommaAndAnyMinus(String typed, String value) {
    assertThat(TypedNumber.number(typed)).get().isEqualTo(new BigDecimal(value));
    assertThat(TypedNumber.time(typed)).isEqualTo(TypedNumber.number(typed));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        ".",
        ",",
        "-",
        "1,234.5",
        "1.234,5",
        "1.2.3",
        "1,2,3",
        "1 234",
        "1\u202f234",
        "1'234",
        "- 5",
        "--5",
        "5-",
        "1e3",
        "5 mm",
        "5%",
        "٥",
        "５",
        "NaN",
        "0x1p3",
        "1234567890123456",
        "0.1234567890123",
      })
  void whatMightMeanTwoThingsOrNoneIsNoNumber(String typed) {
    assertThat(TypedNumber.number(typed)).isEmpty();
    assertThat(TypedNumber.time(typed)).isEmpty();
    assertThat(TypedNumber.whole(typed)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1:33.1|93.1",
        "1:33,1|93.1",
        "0:05|5",
        "1:00:00|3600",
        "1:02:03.5|3723.5",
        "100:00|6000",
        " 1:33 |93"
      })
  void aTimeMayHaveMinutesAndHours(String typed, String seconds) {
    assertThat(TypedNumber.time(typed)).get().isEqualTo(new BigDecimal(seconds));
    assertThat(TypedNumber.number(typed)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"1:5", "1:75", "1:2:03", "-1:33", "1:33:", ":33", "1:33.1,5", "1:61:00"})
  void aTimeThatIsHalfTypedOrCannotBeIsNone(String typed) {
    assertThat(TypedNumber.time(typed)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"7,7", "−7,-7", "007,7", "2147483647,2147483647"})
  void aWholeNumberHasNoPart(String typed, int value) {
    assertThat(TypedNumber.whole(typed)).contains(value);
    assertThat(TypedNumber.whole(typed + ".0")).isEmpty();
    assertThat(TypedNumber.whole("2147483648")).isEmpty();
  }

  @Test
  void aCellWithBothSignsSettlesNoSignForItsFile() {
    Decimals decimals = new Decimals(true);
    assertThat(decimals.mixed("1,234.5", 2)).isFalse();
    assertThat(decimals.mixed("5.5", 3)).isFalse();
    assertThat(decimals.mixed("5,5", 4)).isTrue();
    assertThat(decimals.firstLine()).isEqualTo(3);
  }

  @Test
  void aCommaIsNoDecimalSignWhereItPartsColumnsUnlessItWasChosen() {
    assertThat(new Decimals(false).number("5,5")).isEmpty();
    assertThat(Decimals.of(Decimals.Sign.COMMA, false).number("5,5")).isPresent();
    assertThat(Decimals.of(Decimals.Sign.COMMA, false).mixed("5.5", 2)).isTrue();
  }
}
