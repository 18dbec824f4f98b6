package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What docs/check-a-report.md shows is what the scripts in the package of that day print. Two
 * things are others here and compared by {@code .ci/run}, which makes the package as the page does:
 * the demo writes its reports down as two entries more, and it derives the key by as many rounds as
 * the program does, on which the hash of the commit and so the fingerprint of the review hangs.
 */
class CheckReportDocumentTest {
  private static final Pattern REVIEW = Pattern.compile("(fingerprint of the review: .* give ).*");

  @TempDir Path folder;

  private static List<String> block(String begins) throws IOException {
    String page = Files.readString(Path.of("docs", "check-a-report.md"));
    Matcher block = Pattern.compile("```text\n(.*?)```", Pattern.DOTALL).matcher(page);
    return block
        .results()
        .map(found -> found.group(1))
        .filter(text -> text.startsWith(begins))
        .findFirst()
        .orElseThrow()
        .lines()
        .toList();
  }

  private List<String> type(String... words) {
    List<String> command = new ArrayList<>(List.of("python3"));
    command.addAll(List.of(words));
    try {
      ProcessBuilder builder =
          new ProcessBuilder(command).directory(folder.toFile()).redirectErrorStream(true);
      builder.environment().put("PYTHONIOENCODING", "utf-8");
      Process python = builder.start();
      String said = new String(python.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertThat(python.waitFor(60, TimeUnit.SECONDS)).isTrue();
      assertThat(python.exitValue()).as(said).isZero();
      return said.lines().toList();
    } catch (IOException absent) {
      assumeTrue(false, "python3 is not on this machine");
      throw new UncheckedIOException(absent);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private static List<String> masked(List<String> lines) {
    return lines.stream()
        .map(line -> REVIEW.matcher(line).replaceAll("$1"))
        .map(line -> line.replaceFirst("session file: \\d+ entries", "session file: entries"))
        .toList();
  }

  private void packed() {
    SampleDays.ride(
        "shocks-on-quarry-loop",
        (desk, state) -> {
          try {
            for (Map.Entry<String, byte[]> file : desk.reviews().export(state).entrySet()) {
              Files.write(folder.resolve(file.getKey()), file.getValue());
            }
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        });
  }

  @Test
  void theAnswersOnThePageAreThoseOfTheScripts() throws IOException {
    packed();
    List<String> said = type("verify.py");
    assertThat(masked(said)).isEqualTo(masked(block("ok ")));
    String review =
        said.stream()
            .map(REVIEW::matcher)
            .filter(Matcher::find)
            .map(found -> found.group().substring(found.group(1).length()))
            .findFirst()
            .orElseThrow();
    String page = Files.readString(Path.of("docs", "check-a-report.md"));
    String plan = "3dbffceb 189e74d1";
    assertThat(page).contains("--compare \"" + plan + "\"");
    assertThat(type("verify.py", "--compare", plan))
        .contains("ok          compare: yes, it is the fingerprint of plan, order and codes");
    assertThat(type("verify.py", "--compare", review.substring(0, 17)))
        .contains("ok          compare: yes, it is the fingerprint of the closed review");
    String[] shown = block("lap time").get(0).split("  ");
    String[] found = type("recompute.py").get(0).split("\t");
    assertThat(found).hasSameSizeAs(shown);
    for (int i = 1; i < shown.length; i++) {
      assertThat(Double.parseDouble(found[i]))
          .isCloseTo(Double.parseDouble(shown[i]), org.assertj.core.data.Offset.offset(1e-9));
    }
  }

  /** Every file has its line, and no line names a file that is not there. */
  @Test
  void theReadmeHasALineForEveryFile() throws IOException {
    packed();
    List<String> named =
        Files.readString(folder.resolve("README.md"))
            .lines()
            .filter(line -> line.startsWith("- `"))
            .map(line -> line.substring(3, line.indexOf('`', 3)))
            .toList();
    try (var files = Files.list(folder)) {
      assertThat(named)
          .containsExactlyElementsOf(
              files.map(file -> file.getFileName().toString()).sorted().toList());
    }
  }
}
