package blindlap.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import blindlap.plan.Rule;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SealingDocumentTest {
  private static final Path DOCUMENT = Path.of("docs", "sealing.md");

  @Test
  void theResultsInTheDocumentAreThoseOfThisProgram() throws IOException {
    String document = Files.readString(DOCUMENT);
    assertThat(document).contains("| order | `ABABBABAAABBBABA` | `BBABAAAB` |");
    for (Rule rule :
        List.of(Golden.BLOCKS_OF_FOUR, Golden.EIGHT_STINT_SET, Golden.FIVE_TRIANGLES)) {
      OpenKey key = Golden.key(rule);
      assertThat(document).contains("`" + key.order() + "`");
      assertThat(document).contains("`" + Golden.sealed(rule).fingerprint().hex() + "`");
    }
    for (String name :
        List.of(
            PlanFingerprint.VERSION,
            ReviewFingerprint.VERSION,
            Draw.ALGORITHM,
            Draw.TRIALS,
            OpenKey.TEXT_VERSION,
            SealedKey.VERSION,
            HelperRecord.VERSION,
            "blindlap-key-encryption-1",
            "blindlap-helper-records-1",
            "blindlap-phrase-check-1")) {
      assertThat(document).contains(name);
    }
  }

  @Test
  void thePythonProgramOfTheDocumentRepeatsTheDraws(@TempDir Path folder) throws Exception {
    String document = Files.readString(DOCUMENT);
    int start = document.indexOf("```python\n") + "```python\n".length();
    Path program = folder.resolve("replay.py");
    Files.writeString(program, document.substring(start, document.indexOf("```\n", start)));
    Process python;
    try {
      python = new ProcessBuilder("python3", program.toString()).redirectErrorStream(true).start();
    } catch (IOException absent) {
      assumeTrue(false, "python3 is not on this machine");
      return;
    }
    String printed = new String(python.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(python.waitFor(60, TimeUnit.SECONDS)).isTrue();
    assertThat(printed.lines())
        .containsExactly(
            line(Golden.BLOCKS_OF_FOUR), line(Golden.EIGHT_STINT_SET), line(Golden.FIVE_TRIANGLES));
  }

  private static String line(Rule rule) {
    return Golden.key(rule).order() + " " + Golden.sealed(rule).fingerprint().hex();
  }
}
