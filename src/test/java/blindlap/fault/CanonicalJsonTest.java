package blindlap.fault;

import static org.assertj.core.api.Assertions.assertThat;

import java.text.Normalizer;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** One content has one text. */
class CanonicalJsonTest {
  @Test
  void whatLiesBelowTheFirstCombiningMarkIsItsOwnFormNfc() {
    // Unicode Standard Annex 15; the long way is the platform's own normalizer.
    Random random = new Random(7);
    for (int trial = 0; trial < 20_000; trial++) {
      StringBuilder text = new StringBuilder();
      for (int i = 0; i < 6; i++) {
        text.append((char) (0x20 + random.nextInt(0x300 - 0x20)));
      }
      assertThat(Normalizer.normalize(text, Normalizer.Form.NFC)).isEqualTo(text.toString());
    }
  }

  @Test
  void lettersWithAndWithoutCombiningMarksGiveOneText() {
    String composed = "Bl\u00fcte \u212b";
    String parted = "Blu\u0308te A\u030a";
    assertThat(CanonicalJson.text(composed)).isEqualTo("\"Bl\u00fcte \u00c5\"");
    assertThat(CanonicalJson.text(parted)).isEqualTo(CanonicalJson.text(composed));
    assertThat(CanonicalJson.text(Map.of(parted, "x")))
        .isEqualTo(CanonicalJson.text(Map.of(composed, "x")));
  }
}
