package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.wording.day.Shown;
import blindlap.wording.day.Words;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ShownTest {
  @Test
  void whatIsOrdinaryIsShownAsItIs() {
    String text = "Łódź 🚲\n\tsecond line\r\n";
    assertThat(Shown.text(text)).isSameAs(text);
    assertThat(Shown.inLetters(text)).isSameAs(text);
  }

  @Test
  void controlsAreShownAsTheirPictures() {
    assertThat(Shown.text("\u0000a\u0007\u001B[31m\u007F")).isEqualTo("␀a␇␛[31m␡");
    assertThat(Shown.text("over\rwritten")).isEqualTo("over␍written");
  }

  @Test
  void marksOfDirectionHalvesAndOthersAreShownByTheirNumber() {
    assertThat(Shown.text("a\u202Eb\u2066c\u200Fd\u061C"))
        .isEqualTo("a‹U+202E›b‹U+2066›c‹U+200F›d‹U+061C›");
    assertThat(Shown.text("\uD83D!\uDEB2")).isEqualTo("‹U+D83D›!‹U+DEB2›");
    assertThat(Shown.text("\u009B\u2028\uFFFF")).isEqualTo("‹U+009B›‹U+2028›‹U+FFFF›");
  }

  @ParameterizedTest
  @CsvSource({"␇a,‹U+0007›a", "b␡,b‹U+007F›"})
  void lettersStandWhereTheTypefaceHasNoPictures(String pictures, String letters) {
    assertThat(Shown.inLetters(pictures)).isEqualTo(letters);
  }

  @Test
  void aSentenceShowsWhatItIsGiven() {
    assertThat(Words.of("problems").say("DeskFault.NO_SUCH_SESSION", "", "\u001B[2J"))
        .contains("\"␛[2J\"");
  }
}
