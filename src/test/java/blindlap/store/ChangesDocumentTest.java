package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.EntryText;
import blindlap.exchange.SessionFile;
import blindlap.review.Edition;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** docs/changes.md knows the forms of today and every version there was. */
class ChangesDocumentTest {
  private static String page() throws IOException {
    return Files.readString(Path.of("docs", "changes.md"));
  }

  @Test
  void everyVersionOfTheNotebookHasASectionTheNewestFirst() throws IOException {
    List<Integer> sections =
        Pattern.compile("^## Version (\\d+), \\p{Lu}\\w+ \\d{4}$", Pattern.MULTILINE)
            .matcher(page())
            .results()
            .map(found -> Integer.valueOf(found.group(1)))
            .toList();
    assertThat(sections)
        .isEqualTo(
            IntStream.iterate(NotebookFile.VERSION, v -> v > 0, v -> v - 1).boxed().toList());
  }

  @Test
  void theFormsOfTodayAreNamed() throws IOException {
    assertThat(page())
        .contains(
            "Forms today: notebook "
                + NotebookFile.VERSION
                + ", entries `"
                + EntryText.VERSION
                + "` and, given by a phone, `"
                + EntryText.BY_PHONE
                + "`, session files `"
                + SessionFile.VERSION
                + "`, findings by edition "
                + Edition.CURRENT);
  }

  @Test
  void everySectionSaysWhatChangedInTheFiles() throws IOException {
    List<String> sections = List.of(page().split("\n## Version ", -1));
    assertThat(sections).hasSize(NotebookFile.VERSION + 1);
    assertThat(sections.subList(1, sections.size()))
        .allSatisfy(section -> assertThat(section).contains("\n- Files: "));
  }
}
