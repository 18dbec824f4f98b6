package blindlap.seal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HelperPhraseTest {
  private static final String TEXT = "abandon ability ablaze above abroad absolute";

  private static HelperPhrase phrase() {
    return HelperPhrase.draw(FixedBytes.hex("000100020003000400050006"));
  }

  @Test
  void theListHas2048LowerCaseWordsToldApartByTheirFirstFourLetters() {
    Set<String> beginnings = new HashSet<>();
    for (String word : Words.all()) {
      assertThat(word).matches("[a-z]{4,8}");
      beginnings.add(word.substring(0, 4));
    }
    assertThat(Words.all()).hasSize(2048);
    assertThat(beginnings).hasSize(2048);
    assertThat(Words.all()).containsExactlyElementsOf(new TreeSet<>(Words.all()));
  }

  @Test
  void twoBytesGiveAWordAndAllWordsAreReachedEquallyOften() {
    assertThat(phrase().text()).isEqualTo(TEXT);
    // 65 536 values of two bytes on 2048 words: a word repeats exactly every 2048 values.
    assertThat(HelperPhrase.draw(FixedBytes.hex("080108020803080408050806")).text())
        .isEqualTo(TEXT);
    assertThat(HelperPhrase.draw(FixedBytes.hex("ffff")).text())
        .isEqualTo("zoom ".repeat(6).trim());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        TEXT,
        "  Abandon   ABILITY ablaze\tabove abroad\nabsolute ",
        "abandon-ability-ablaze-above-abroad-absolute",
        "abandon – ability, ablaze; above. abroad — absolute.",
        "aban abil abla abov abro abso"
      })
  void capitalsSpacesDashesAndShortenedWordsDoNotMatter(String typed) {
    assertThat(PhraseReading.of(typed)).isEqualTo(new PhraseReading.Read(phrase()));
  }

  @Test
  void aWordThatIsNotInTheListIsNamedWithTheNearestOnes() {
    assertThat(PhraseReading.of("abandon ability albaze above abroad absolute"))
        .isInstanceOfSatisfying(
            PhraseReading.UnknownWord.class,
            unknown -> {
              assertThat(unknown.position()).isEqualTo(3);
              assertThat(unknown.typed()).isEqualTo("albaze");
              assertThat(unknown.near()).startsWith("ablaze").hasSizeLessThanOrEqualTo(3);
            });
    assertThat(PhraseReading.of("xxxxxxxxxxxx"))
        .isInstanceOfSatisfying(
            PhraseReading.UnknownWord.class, unknown -> assertThat(unknown.near()).isEmpty());
    assertThat(PhraseReading.of("aba ability ablaze above abroad absolute"))
        .as("three letters are not enough")
        .isInstanceOf(PhraseReading.UnknownWord.class);
  }

  @Test
  void fiveOrSevenWordsAreCounted() {
    assertThat(PhraseReading.of("abandon ability ablaze above abroad"))
        .isEqualTo(new PhraseReading.WrongCount(5));
    assertThat(PhraseReading.of(TEXT + " zoom")).isEqualTo(new PhraseReading.WrongCount(7));
    assertThat(PhraseReading.of("")).isEqualTo(new PhraseReading.WrongCount(0));
  }

  @Test
  void anyTwoPlacesOfAPhraseMayBeAskedAndAllEquallyOften() {
    java.util.Map<String, Integer> seen = new java.util.TreeMap<>();
    for (int value = 0; value < 256; value++) {
      // A byte of 255 is thrown away and the next one taken.
      PhraseAsked asked =
          PhraseAsked.draw(FixedBytes.hex("000100020003000400050006%02x00".formatted(value)));
      seen.merge(asked.first() + " " + asked.second(), value == 255 ? 0 : 1, Integer::sum);
      assertThat(asked.first()).isBetween(1, 5);
      assertThat(asked.second()).isBetween(asked.first() + 1, 6);
    }
    assertThat(seen).hasSize(15).allSatisfy((places, often) -> assertThat(often).isEqualTo(17));
  }

  @Test
  void theTwoWordsAreReadAsPatientlyAsAPhraseAndWrongOnesAreNamedByPlace() {
    // 06 is the pair (2, 4).
    PhraseAsked asked = PhraseAsked.draw(FixedBytes.hex("00010002000300040005000606"));
    String[] words = asked.text().split(" ");
    assertThat(List.of(asked.first(), asked.second())).containsExactly(2, 4);
    assertThat(asked.typed("  " + words[1].toUpperCase(java.util.Locale.ROOT) + " - " + words[3]))
        .isInstanceOf(PhraseAsked.Back.Right.class);
    assertThat(asked.typed(words[1].substring(0, 4) + "," + words[3].substring(0, 4)))
        .isInstanceOf(PhraseAsked.Back.Right.class);
    assertThat(asked.typed(words[1] + " " + words[4]))
        .isEqualTo(new PhraseAsked.Back.Wrong(List.of(4)));
    assertThat(asked.typed(words[0] + " " + words[3]))
        .isEqualTo(new PhraseAsked.Back.Wrong(List.of(2)));
    assertThat(asked.typed(words[3] + " " + words[1]))
        .isEqualTo(new PhraseAsked.Back.Wrong(List.of(2, 4)));
    for (String none : List.of("", words[1], asked.text(), "qqqq")) {
      assertThat(asked.typed(none)).isEqualTo(new PhraseAsked.Back.Wrong(List.of(2, 4)));
    }
  }
}
