package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.wording.day.WordForms;
import blindlap.wording.day.WordList;
import blindlap.wording.day.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WordListTest {
  private static final WordList LIST = WordList.bundled();

  private static List<String> names() {
    return LIST.all().stream().map(WordList.Word::name).toList();
  }

  @Test
  void theProgramHasThePageOfTheManualRowForRow() throws IOException {
    String page = Files.readString(Path.of("docs/manual/words.md"));
    assertThat(LIST.all()).hasSizeGreaterThan(150).isEqualTo(WordList.of(page).all());
    assertThat(page.lines().filter(line -> line.startsWith("| ")).count())
        .as("a row that is not read")
        .isEqualTo(LIST.all().size() + 2);
    assertThat(LIST.all()).noneMatch(word -> word.meaning().matches("(?s).*[\\[\\]`*|].*"));
  }

  @Test
  void everyWordStandsOnceAndWhereTheAlphabetHasIt() {
    List<String> small = names().stream().map(name -> name.toLowerCase(Locale.ROOT)).toList();
    assertThat(small).doesNotHaveDuplicates().isSorted();
    assertThat(small).noneMatch(name -> name.contains(","));
  }

  @Test
  void whatTheProgramUsesAndDoesNotExplainStandsThere() {
    assertThat(names())
        .contains("starter", "mask", "block", "warm-up", "drift", "interval", "p", "day PIN")
        .contains("data package", "amendment", "verdict", "worthwhile difference", "dummy swap")
        .contains("really told", "covariate", "look", "void", "seal", "key", "fingerprint");
  }

  @Test
  void everyVerdictPhraseIsExplained() {
    Words verdicts = Words.of("verdicts");
    List<String> phrases =
        verdicts.keys().stream()
            .filter(key -> !key.startsWith("OPEN.") && !key.startsWith("MASKED."))
            .map(verdicts::say)
            .flatMap(phrase -> List.of(phrase.split(", ")).stream())
            .toList();
    assertThat(phrases).hasSizeGreaterThan(7);
    assertThat(names()).containsAll(phrases);
    assertThat(names()).contains("can tell", "cannot tell as often as would matter");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Scored laps a stint | scored lap",
        "Worthwhile difference | worthwhile difference",
        "Void | void",
        "voided | void",
        "SWAPS | swap",
        "a dummy swap | dummy swap",
        "the rider's page | rider",
        "series | series",
        "The smallest p of these orders | p",
        "stints and laps | stint",
        "ridden | ride",
        "Shock K | ",
        "' ' | "
      })
  void aTextIsAboutTheLongestWordThatItHolds(String text, String word) {
    assertThat(LIST.in(text).map(WordList.Word::name).orElse(null)).isEqualTo(word);
  }

  @Test
  void aSearchPutsTheWordItselfBeforeWordsThatBeginWithItAndMeaningsThatHoldIt() {
    List<String> found = LIST.search(" Laps ").stream().map(WordList.Word::name).toList();
    assertThat(found).startsWith("lap").contains("stint");
    List<String> swap = LIST.search("swap").stream().map(WordList.Word::name).toList();
    assertThat(swap).startsWith("swap", "swap time").contains("dummy swap", "helper");
    assertThat(swap).doesNotHaveDuplicates();
    assertThat(LIST.search("")).isEqualTo(LIST.all());
    assertThat(LIST.search("qqq")).isEmpty();
  }

  @Test
  void endingsAreThoseOfEnglish() {
    assertThat(WordForms.of("lap")).contains("lap", "laps", "lapped", "lapping");
    assertThat(WordForms.of("ride")).contains("rides", "riding", "ridden");
    assertThat(WordForms.of("try")).contains("tries", "tried");
    assertThat(WordForms.of("p")).containsExactly("p");
  }
}
