package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.desk.DayPin.Try;
import blindlap.seal.SealParameters;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DayPinTest {
  private final DayPin pin = DayPin.of("0417", byte[]::new, SealParameters.standard());

  @Test
  void theChosenDigitsOpenThePage() {
    assertThat(pin.attempt("0417")).isEqualTo(Try.RIGHT);
  }

  @Test
  void fiveWrongTriesInARowUseThePinUpEvenForTheRightDigits() {
    for (int i = 0; i < 4; i++) {
      assertThat(pin.attempt("0418")).isEqualTo(Try.WRONG);
      assertThat(pin.left()).isEqualTo(4 - i);
    }
    assertThat(pin.attempt("0418")).isEqualTo(Try.USED_UP);
    assertThat(pin.attempt("0417")).isEqualTo(Try.USED_UP);
  }

  @Test
  void aRightTryGivesAllFiveTriesBack() {
    pin.attempt("1111");
    pin.attempt("2222");
    pin.attempt("0417");
    assertThat(pin.left()).isEqualTo(DayPin.TRIES);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "417", "04170", "04a7", "٠٤١٧", " 417"})
  void onlyFourPlainDigitsMakeAPin(String typed) {
    assertThatThrownBy(() -> DayPin.of(typed, byte[]::new, SealParameters.standard()))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(pin.attempt(typed)).isEqualTo(Try.WRONG);
  }

  @Test
  void itPrintsNothingOfItself() {
    assertThat(pin.toString()).isEqualTo("DayPin[]");
  }
}
