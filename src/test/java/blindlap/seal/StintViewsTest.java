package blindlap.seal;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.seal.StintViews.Shown;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What to set for one stint under a one-time code. */
class StintViewsTest {
  private static final String SESSION = "00000000-0000-4000-8000-000000000001";
  private static final String VECTOR =
      "9DPIz4wcxIfPOYzQKAmUd4hHAC5e0FWgrAVAqk82DPIx92yQmL5wLh4nX9621SlB";

  private int derived;

  /** Every source gives its own byte over and over. */
  private StintViews views() {
    SealingSources sources =
        new SealingSources(all(0), all(0), all(0), all(0), all(0x05), all(0x11), all(0x22));
    return new StintViews(
        sources,
        new SealParameters(1000),
        (code, salt, rounds) -> {
          derived++;
          return Ciphering.pbkdf2(code, salt, rounds);
        });
  }

  private static SecureBytes all(int value) {
    return count -> {
      byte[] bytes = new byte[count];
      Arrays.fill(bytes, (byte) value);
      return bytes;
    };
  }

  @Test
  void whatWasSealedIsOpenedByItsWordsAsPeopleTypeThem() {
    StintViews views = views();
    StintCode code = views.draw();
    StintView view = views.seal(SESSION, 3, new Shown(1, false), code);
    StintCode typed = StintCode.read(code.text().toUpperCase(java.util.Locale.ROOT)).orElseThrow();
    assertThat(views.open(SESSION, view, typed)).contains(new Shown(1, false));
    String[] words = code.text().split(" ");
    String begun = String.join("-", words[0].substring(0, 4), words[1].substring(0, 4), words[2]);
    assertThat(views.open(SESSION, view, StintCode.read(begun).orElseThrow()))
        .contains(new Shown(1, false));
    assertThat(StintView.read(view.line())).contains(view);
  }

  @Test
  void otherWordsAnotherStintAndAnotherSessionOpenNothingAndCostTheSame() {
    StintViews views = views();
    StintCode code = views.draw();
    StintView view = views.seal(SESSION, 3, new Shown(0, true), code);
    StintCode other = StintCode.read(other(code)).orElseThrow();
    StintView moved = new StintView(4, view.rounds(), view.salt(), view.iv(), view.ciphertext());
    derived = 0;
    assertThat(views.open(SESSION, view, code)).isPresent();
    assertThat(derived).isEqualTo(1);
    assertThat(views.open(SESSION, view, other)).isEmpty();
    assertThat(derived).isEqualTo(2);
    assertThat(views.open(SESSION, moved, code)).isEmpty();
    assertThat(views.open(SESSION.replace('1', '2'), view, code)).isEmpty();
    assertThat(derived).isEqualTo(4);
  }

  private static String other(StintCode code) {
    String[] words = code.text().split(" ");
    words[1] = Words.word((Words.find(words[1]) + 1) % Words.COUNT);
    return String.join(" ", words);
  }

  @Test
  void everyViewHasOneLengthWhateverItShows() {
    StintViews views = views();
    Set<Integer> lengths = new HashSet<>();
    for (int setup = 0; setup < 4; setup++) {
      for (boolean real : new boolean[] {true, false}) {
        Shown shown = new Shown(setup, real);
        lengths.add(views.seal(SESSION, 1 + setup, shown, views.draw()).line().length());
        assertThat(shown).hasToString("Shown[]");
      }
    }
    assertThat(lengths).hasSize(1);
    assertThat(views.draw()).hasToString("StintCode[3 words]");
  }

  @Test
  void threeWordsOfTheListAreACodeAndNothingElseIs() {
    String code = views().draw().text();
    assertThat(StintCode.read(code)).isPresent();
    assertThat(StintCode.read(code + " " + code)).isEmpty();
    assertThat(StintCode.read("")).isEmpty();
    assertThat(StintCode.read("qqqq " + code.substring(code.indexOf(' ')))).isEmpty();
  }

  @Test
  void whatIsNoViewIsNotRead() {
    StintViews views = views();
    String line = views.seal(SESSION, 3, new Shown(0, true), views.draw()).line();
    assertThat(StintView.read(line)).isPresent();
    for (String other :
        new String[] {
          "", line + " ", line.substring(5), line.replace("0003", "0000"), "1 2 3 4 5"
        }) {
      assertThat(StintView.read(other)).as(other).isEmpty();
    }
    assertThat(StintView.read(line.replace(line.substring(line.length() - 8), "!"))).isEmpty();
  }

  @Test
  void theVectorOfTheDocumentIsWhatIsSealed() throws IOException {
    StintViews views = views();
    StintCode code = views.draw();
    StintView view = views.seal(SESSION, 3, new Shown(1, false), code);
    assertThat(view.ciphertext()).isEqualTo(VECTOR);
    assertThat(Files.readString(Path.of("docs/sealing.md"), StandardCharsets.UTF_8))
        .contains(code.text(), VECTOR);
  }
}
