package blindlap.fault;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.TypedText.Form;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TypedTextTest {
  @Test
  void aFileInAnotherEncodingIsNotTakenForText() {
    byte[] latin = "Güte".getBytes(StandardCharsets.ISO_8859_1);
    byte[] wide = "Güte".getBytes(StandardCharsets.UTF_16);
    assertThat(TypedText.decoded(latin)).isEmpty();
    assertThat(TypedText.decoded(wide)).isEmpty();
    assertThat(TypedText.decoded("\uFEFFGüte".getBytes(StandardCharsets.UTF_8))).hasValue("Güte");
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 7, 0x0B, 0x1B, 0x7F, 0x85, 0x9B, 0x2028})
  void aControlCharacterIsNamedWithItsPlace(int control) {
    String text = "🚲a" + Character.toString(control);
    for (Form form : Form.values()) {
      assertThat(TypedText.flaw(text, form, "name"))
          .hasValue(Problem.of(TextFault.CONTROL, "name", TypedText.code(control), 3));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"\uD83D", "\uDEB2", "\uDEB2\uD83D", "\uFFFE", "\uFDD0", "\uD83F\uDFFF"})
  void halvesAndCodesWithoutACharacterAreNamed(String odd) {
    assertThat(TypedText.flaw(odd, Form.WORDS, "note").map(Problem::fault))
        .hasValue(TextFault.NO_CHARACTER);
  }

  @Test
  void onlyWordsMayHaveSeveralLines() {
    assertThat(TypedText.flaw("a\tb\r\nc", Form.WORDS, "")).isEmpty();
    assertThat(TypedText.flaw("ab\nc", Form.LINE, "name"))
        .hasValue(Problem.of(TextFault.LINE_BREAK, "name", 3));
    assertThat(TypedText.flaw("a\tb", Form.LINE, "").map(Problem::fault))
        .hasValue(TextFault.CONTROL);
  }

  @Test
  void lettersOfEveryScriptMarksOfDirectionAndJoinersAreLetIn() {
    assertThat(TypedText.flaw("Łódź, 東京, עברית\u200F, 👩\u200D🔧, \uFFFD", Form.LINE, ""))
        .isEmpty();
  }

  @Test
  void lengthCountsCharactersNotHalves() {
    assertThat(TypedText.problem("🚲".repeat(2000), Form.WORDS, "note")).isEmpty();
    assertThat(TypedText.problem("🚲".repeat(2001), Form.WORDS, "note"))
        .hasValue(Problem.of(TextFault.TOO_LONG, "note", 2000));
  }
}
