package blindlap.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TextCellsTest {
  @ParameterizedTest
  @ValueSource(
      strings = {"=1+1", "+cmd|x", "-2+3", "@SUM(A1)", "\t=1", "\n=1", "'=1", "''+x", "=", "--"})
  void aTextThatASpreadsheetWouldRunIsQuietAndComesBack(String text) {
    String cell = TextCells.written(text);
    assertThat(text.length() == 1 ? "'" : cell).startsWith("'");
    assertThat(TextCells.read(cell)).isEqualTo(text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "-", "-12.5", "+3", "'quoted'", "don't", "a=b", "5-6"})
  void whatRunsNothingStaysAsItIs(String text) {
    assertThat(TextCells.written(text)).isEqualTo(text);
    assertThat(TextCells.read(text)).isEqualTo(text);
  }

  @Test
  void everyTextComesBackAsItWas() {
    Random random = new Random(11);
    String letters = "'=+-@\t\n1.a ";
    for (int i = 0; i < 20_000; i++) {
      StringBuilder text = new StringBuilder();
      for (int c = random.nextInt(6); c > 0; c--) {
        text.append(letters.charAt(random.nextInt(letters.length())));
      }
      assertThat(TextCells.read(TextCells.written(text.toString()))).isEqualTo(text.toString());
    }
  }
}
