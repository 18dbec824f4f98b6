package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.wording.day.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Of one thing nothing is said in the plural. */
class CountedWordsTest {
  private static final Path BUNDLES = Path.of("src/main/resources/blindlap/wording");

  private static final String MANY =
      "(laps|stints|days|entries|sessions|orders|measures|setups|riders|files|degrees|voids"
          + "|comparisons|null runs|noise runs|pairs|values|codes|characters|notebooks|backups)";

  private static final Pattern WRONG =
      Pattern.compile(
          "(?<![\\w.])1 (new |old |scored |settling |declared |such |open )*"
              + MANY
              + "\\b|(?<![\\w.])1 (lap|stint|day|session|measure|rider) (are|were|have|share)\\b");

  /** Every template of every bundle with one number in all places. */
  private static List<String> said(String number) throws IOException {
    Object[] arguments = new Object[10];
    Arrays.fill(arguments, number);
    List<String> said = new ArrayList<>();
    try (Stream<Path> files = Files.list(BUNDLES)) {
      for (Path file : files.sorted().toList()) {
        String bundle = file.getFileName().toString().replace(".properties", "");
        Words words = Words.of(bundle);
        words.keys().stream()
            .sorted()
            .forEach(key -> said.add(bundle + " " + key + ": " + words.say(key, arguments)));
      }
    }
    return said;
  }

  @Test
  void everyTemplateSaysOneLapAndNotOneLaps() throws IOException {
    assertThat(said("1"))
        .hasSizeGreaterThan(1000)
        .noneMatch(sentence -> WRONG.matcher(sentence).find());
  }

  @Test
  void thePatternFindsWhatItLooksFor() throws IOException {
    assertThat(List.of("x: 1 laps", "x: 1 new entries", "x: 0 of 1 stints", "x: 1 stint were"))
        .allMatch(sentence -> WRONG.matcher(sentence).find());
    assertThat(List.of("11 laps", "0.1 laps", "1 lap", "1 stint was"))
        .noneMatch(sentence -> WRONG.matcher(sentence).find());
    assertThat(said("2")).anyMatch(sentence -> sentence.contains("2 stints can show"));
  }

  @Test
  void whatIsCountedHasItsThousandsSetOffAndWhatIsNamedHasNot() {
    Words problems = Words.of("problems");
    assertThat(problems.say("TextFault.FILE_TOO_LARGE", "", 12345678, 1000L))
        .startsWith("The file holds 12,345,678 bytes, but at most 1,000 are read.");
    assertThat(problems.say("TextFault.FILE_TOO_LARGE", "", 1, 999))
        .startsWith("The file holds 1 byte, but at most 999 are read.");
    assertThat(problems.say("NotebookTrouble.NOT_READABLE", "", "2026"))
        .startsWith("The notebook 2026 cannot");
  }
}
