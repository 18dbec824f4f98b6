package blindlap.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * What a rider or a helper reads has short sentences, known words, and none of the statistician's.
 */
class ReadabilityTest {
  private static final Path TOP = Path.of("");
  private static final Path PAGE = Path.of("docs/readability.md");

  /** Most words in a sentence, as docs/readability.md says. */
  private static final int LONGEST = 30;

  /** Largest share of words that stand in neither list, as docs/readability.md says. */
  private static final double OUTSIDE = 0.15;

  private static final List<String> STATISTICIANS =
      List.of("degrees of freedom", "mid-p", "p can be as small as");

  @Test
  void everyTextOfRiderAndHelperKeepsTheLimits() throws IOException {
    Map<String, Readability.Measured> all = Readability.of(TOP).all(TOP);
    assertThat(all).hasSize(Readability.PAGES.size() + Readability.BUNDLES.size());
    all.forEach(
        (name, m) -> {
          assertThat(m.longestWords()).as(name + ": " + m.longest()).isLessThanOrEqualTo(LONGEST);
          assertThat(m.outside()).as(name + ": " + m.strange()).isLessThanOrEqualTo(OUTSIDE);
        });
    assertThat(Files.readString(PAGE))
        .contains("**" + LONGEST + " words**", "**" + Math.round(100 * OUTSIDE) + " %**");
  }

  @Test
  void noneOfThemSpeaksAsAStatistician() throws IOException {
    List<Path> files = new ArrayList<>();
    Readability.PAGES.forEach(page -> files.add(Path.of("docs/manual", page + ".md")));
    for (String bundle : Readability.BUNDLES) {
      files.add(Path.of("src/main/resources/blindlap/wording", bundle + ".properties"));
    }
    // Not theirs alone, but everybody reads the finding.
    for (String bundle : List.of("finding", "noise")) {
      files.add(Path.of("src/main/resources/blindlap/wording", bundle + ".properties"));
    }
    for (Path file : files) {
      String said = Files.readString(file).replaceAll("(?m)^#.*$", "");
      String text = said.toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
      STATISTICIANS.forEach(words -> assertThat(text).as(file.toString()).doesNotContain(words));
      assertThat(text).as(file.toString()).doesNotContainPattern("\\bp can\\b|\\bsmall p\\b");
    }
  }

  @Test
  void sentencesEndAtTheirPointAndAtTheEndOfABlock() {
    Readability read = new Readability("| lap | one |\n", "one\ntwo\nthe\nis\n");
    List<String> blocks =
        Readability.page(
            "# One two\n"
                + "The lap is one. The *two*\n"
                + "laps [is](a.md#b) two `x y z` one.\n\n"
                + "- one two\n"
                + "- two\n\n"
                + "```\n"
                + "no words of it\n"
                + "```\n"
                + "| one | two two |\n"
                + "![no](p.png)\n");
    Readability.Measured measured = read.measure(blocks);
    assertThat(measured.longest()).startsWith("The two laps is two").endsWith("one.");
    assertThat(measured.longestWords()).isEqualTo(7);
    assertThat(measured.words()).isEqualTo(18);
    assertThat(measured.outside()).isZero();
    assertThat(read.measure(List.of("the wheels, the wheel")).strange())
        .containsExactly("wheels 1", "wheel 1");
    assertThat(read.measure(List.of("the wheels, the wheel")).outside()).isEqualTo(0.5);
  }

  @Test
  void theListOfCommonWordsHasAThousand() throws IOException {
    List<String> words =
        Files.readAllLines(Path.of("src/test/resources/blindlap/docs/common-words.txt")).stream()
            .filter(line -> !line.startsWith("#"))
            .toList();
    assertThat(words).hasSize(1000).doesNotHaveDuplicates().startsWith("the", "of", "and");
    assertThat(words).allMatch(word -> word.matches("[a-z]+"));
  }
}
