package blindlap.compute;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CheckRunTest {
  private final CheckRun run = new CheckRun(Calculations.standard());

  @TempDir Path folder;

  private static String check(String id, String given, double expected) {
    return """
    {"id": "%s", "title": "t", "source": "closed form", "calculation": "sag",
     "given": {%s}, "expect": {"sag_percent": %s}, "tolerance": {"rel": 1e-12}}
    """
        .formatted(id, given, expected);
  }

  @Test
  void foldersAreWalkedInOrderAndEachFailureHasOneLine() throws IOException {
    Files.createDirectories(folder.resolve("b/deep"));
    Path short1 = folder.resolve("b/deep/2.json");
    Path short2 = folder.resolve("c.json");
    String good = "\"stroke_mm\": 50, \"sag_mm\": 15";
    Files.writeString(folder.resolve("a.json"), check("good", good, 30));
    Files.writeString(short1, "[" + check("off", good, 31) + "," + check("fine", good, 30) + "]");
    Files.writeString(short2, check("bad", "\"stroke_mm\": 50, \"sag\": 15", 30));
    Files.writeString(folder.resolve("notes.txt"), "no check");
    CheckRun.Report report = run.over(List.of(folder));
    assertThat(report.closing())
        .containsExactly("outside checks: 2 passed, 2 failed", "2 passed, 2 failed");
    assertThat(report.lines())
        .satisfiesExactly(
            line ->
                assertThat(line)
                    .startsWith(short1 + ": off: result.sag_percent is 30.0, expected 31.0"),
            line -> assertThat(line).isEqualTo(short2 + ": bad: given.sag: is not a known field."));
  }

  @Test
  void aFileThatIsNoCheckCountsAsFailed() throws IOException {
    Path broken = Files.writeString(folder.resolve("x.json"), "{");
    Path request =
        Files.writeString(folder.resolve("y.json"), "{\"calculation\": \"sag\", \"given\": {}}");
    Path bytes = Files.write(folder.resolve("z.json"), new byte[] {(byte) 0xff, (byte) 0xfe});
    CheckRun.Report report = run.over(List.of(broken, request, bytes));
    assertThat(report.closing()).containsExactly("0 passed, 3 failed");
    assertThat(report.lines().get(0)).startsWith(broken + ": text: is not JSON");
    assertThat(report.lines().get(1)).startsWith(request + ": id: is missing");
    assertThat(report.lines().get(2)).isEqualTo(bytes + ": is not text in UTF-8.");
  }

  @Test
  void aFileThatIsNotThereStopsTheRun() {
    assertThatThrownBy(() -> run.over(List.of(folder.resolve("none.json"))))
        .isInstanceOf(NoSuchFileException.class);
  }

  @Test
  void ownVectorsAreCountedApart() throws IOException {
    String good = "\"stroke_mm\": 50, \"sag_mm\": 15";
    String own = check("own", good, 30).replace("closed form", "own: another program");
    String before = check("named", good, 31).replace("closed form", "Blindlap reference vector");
    String outside = check("kept", good, 30).replace("closed form", "Owner's table of sag");
    Path file = folder.resolve("a.json");
    Files.writeString(file, "[" + String.join(",", own, before, outside) + "]");
    CheckRun.Report report = run.over(List.of(file));
    assertThat(report.closing())
        .containsExactly(
            "outside checks: 1 passed, 0 failed",
            "own reference vectors: 1 passed, 1 failed",
            "2 passed, 1 failed");
    assertThat(report.lines()).singleElement().asString().startsWith(file + ": named: ");
  }

  @Test
  void aCalculationThatIsNotBuiltIsNamedAndNoFailure() throws IOException {
    String good = "\"stroke_mm\": 50, \"sag_mm\": 15";
    String later = check("later", good, 30).replace("\"sag\"", "\"sag-by-weight\"");
    Path file = folder.resolve("a.json");
    Files.writeString(file, "[" + later + "," + check("now", good, 30) + "]");
    CheckRun.Report report = run.over(List.of(file));
    assertThat(report.lines())
        .containsExactly(
            file + ": later: not built: there is no calculation \"sag-by-weight\" here.");
    assertThat(report.closing())
        .containsExactly(
            "outside checks: 1 passed, 0 failed", "not built: 1", "1 passed, 0 failed");
    assertThat(report.failed()).isZero();
    assertThat(report.empty()).isFalse();
  }

  @Test
  void allChecksRunAsAFolderToo() throws Exception {
    CheckRun.Report report = run.over(CheckFilesTest.folders());
    assertThat(report.lines()).isEmpty();
    assertThat(report.closing())
        .containsExactly(
            "outside checks: 192 passed, 0 failed",
            "own reference vectors: 70 passed, 0 failed",
            "262 passed, 0 failed");
  }
}
