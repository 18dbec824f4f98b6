package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.compute.Calculations;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class ComputeCommandTest {
  private static final String SAG =
      "{\"calculation\": \"sag\", \"given\": {\"stroke_mm\": 50, \"sag_mm\": 15}}";
  private static final String BAD = "{\"calculation\": \"sag\", \"given\": {\"stroke_mm\": 50}}";

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @TempDir Path folder;

  private int run(String input, String... arguments) {
    var stdin = new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8));
    return new CommandLine(new ComputeCommand(Calculations.standard(), stdin))
        .setOut(new PrintWriter(out))
        .setErr(new PrintWriter(err))
        .execute(arguments);
  }

  private String file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text).toString();
  }

  @Test
  void oneRequestIsAnsweredByOneObject() throws IOException {
    assertThat(run("", file("a.json", SAG))).isZero();
    assertThat(out.toString().replaceAll("\\s", ""))
        .startsWith("{\"calculation\":\"sag\",\"result\":{\"sag_percent\":30.0},\"method\":")
        .endsWith("\"notes\":[]}");
    assertThat(err.toString()).isEmpty();
  }

  @Test
  void moreThanAnyoneAsksAtOnceIsRefusedByItsSize() throws IOException {
    String large = SAG + " ".repeat(ComputeCommand.MOST_BYTES + 1 - SAG.length());
    String file = file("large.json", large);
    assertThat(run("", file)).isEqualTo(2);
    assertThat(err.toString().strip())
        .isEqualTo(file + ": is larger than the 10 MB that requests may have.");
    assertThat(run(large, "-")).isEqualTo(2);
    assertThat(err.toString()).contains("-: is larger than the 10 MB");
    assertThat(out.toString()).isEmpty();
    assertThat(run(large.substring(0, ComputeCommand.MOST_BYTES), "-")).isZero();
  }

  @Test
  void aCheckFileLargerThanRequestsMayBeFailsByItsSizeAndTheOthersAreRun() throws IOException {
    String large = file("large.json", "[".repeat(ComputeCommand.MOST_BYTES + 1));
    String small = file("small.json", "{}");
    assertThat(run("", "--check", large, small)).isEqualTo(1);
    assertThat(out.toString().lines())
        .contains(large + ": is larger than the 10 MB that checks may have.", "0 passed, 2 failed");
  }

  @Test
  void standardInputAndSeveralFilesAreAnsweredByOneArrayInOrder() throws IOException {
    String second = SAG.replace("15", "10");
    assertThat(run("[" + SAG + "]", "-", file("b.json", second))).isZero();
    assertThat(out.toString().replaceAll("\\s", ""))
        .startsWith("[{")
        .containsSubsequence("\"sag_percent\":30.0", "\"sag_percent\":20.0")
        .endsWith("}]");
  }

  @Test
  void aBadRequestPrintsNoAnswerAtAllAndNamesFileAndField() throws IOException {
    String good = file("a.json", SAG);
    String bad = file("b.json", "[" + SAG + "," + BAD + "]");
    assertThat(run("", good, bad)).isEqualTo(2);
    assertThat(out.toString()).isEmpty();
    assertThat(err.toString().strip()).isEqualTo(bad + ": [1].given.sag_mm: is missing.");
  }

  @Test
  void anUnknownCalculationInAnArrayIsNamedWithItsPlace() {
    assertThat(run("[" + SAG + ", {\"calculation\": \"oracle\", \"given\": {}}]", "-"))
        .isEqualTo(2);
    assertThat(err.toString().strip())
        .isEqualTo("-: [1].calculation: \"oracle\" is not a known calculation.");
  }

  @Test
  void fileTroubleIsNotTheSameAsBadInput() throws IOException {
    String none = folder.resolve("none.json").toString();
    assertThat(run("", none)).isEqualTo(3);
    assertThat(err.toString().strip()).isEqualTo(none + ": there is no such file.");
    assertThat(run("", folder.toString())).isEqualTo(3);
    assertThat(run("", "--check", none)).isEqualTo(3);
    Path bytes = Files.write(folder.resolve("x.json"), new byte[] {(byte) 0xff});
    assertThat(run("", bytes.toString())).isEqualTo(2);
    assertThat(out.toString()).isEmpty();
  }

  @Test
  void checksPrintOneLinePerFailureAndAClosingLine() throws IOException {
    String check =
        SAG.replaceFirst("\\{", "{\"id\": \"one\", \"title\": \"t\", \"source\": \"s\", ")
            .replaceFirst("\\}\\}$", "}, \"expect\": {\"sag_percent\": 30}}");
    file("a.json", check);
    assertThat(run("", "--check", folder.toString())).isZero();
    assertThat(out.toString().lines())
        .containsExactly("outside checks: 1 passed, 0 failed", "1 passed, 0 failed");
    out.getBuffer().setLength(0);
    String off = file("b.json", check.replace("\"sag_percent\": 30", "\"sag_percent\": 31"));
    assertThat(run("", "--check", folder.toString())).isEqualTo(1);
    assertThat(out.toString().lines())
        .satisfiesExactly(
            line -> assertThat(line).startsWith(off + ": one: result.sag_percent is 30.0"),
            line -> assertThat(line).isEqualTo("outside checks: 1 passed, 1 failed"),
            line -> assertThat(line).isEqualTo("1 passed, 1 failed"));
    out.getBuffer().setLength(0);
    String later = file("c.json", check.replace("\"sag\"", "\"sag-by-weight\""));
    assertThat(run("", "--check", later)).isZero();
    assertThat(out.toString().lines())
        .containsExactly(
            later + ": one: not built: there is no calculation \"sag-by-weight\" here.",
            "not built: 1",
            "0 passed, 0 failed");
    // A check file is also a request.
    assertThat(run("", off)).isZero();
  }

  @Test
  void checkingNothingIsNotASuccess() {
    assertThat(run("", "--check", folder.toString())).isEqualTo(2);
    assertThat(err.toString()).contains("holds no check");
    assertThat(run("", "--check", "-")).isEqualTo(2);
    assertThat(run("")).isEqualTo(2);
  }
}
