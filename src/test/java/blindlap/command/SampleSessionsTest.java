package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What somebody finds who opens the folder of sample sessions and tries one. */
class SampleSessionsTest {
  private static final Path SAMPLES = Path.of("sample-sessions");
  private static final Pattern ROW = Pattern.compile("(?m)^\\| `([a-z-]+)` \\| (.+) \\|$");

  @TempDir private Path folder;

  static List<String> samples() throws IOException {
    try (Stream<Path> found = Files.list(SAMPLES)) {
      return found
          .filter(Files::isDirectory)
          .map(each -> each.getFileName().toString())
          .sorted()
          .toList();
    }
  }

  @Test
  void everyFolderIsListedWithOneLine() throws IOException {
    Matcher row = ROW.matcher(Files.readString(SAMPLES.resolve("README.md")));
    List<String> listed = row.results().map(found -> found.group(1)).toList();
    assertThat(samples()).hasSizeGreaterThan(20);
    assertThat(listed).containsExactlyElementsOf(samples());
  }

  @ParameterizedTest
  @MethodSource("samples")
  void codesAreDrawnSoNoLapsNameAny(String name) throws IOException {
    String head = Files.readAllLines(SAMPLES.resolve(name).resolve("laps.csv")).get(0);
    assertThat(head.split("[;,\t]")).doesNotContain("code", "lap_in_stint").contains("lap");
  }

  @ParameterizedTest
  @MethodSource("samples")
  void aSampleIsCommittedAndItsLapsAreRecordedUnderWhateverOrderIsDrawn(String name) {
    CommandLineSession session = new CommandLineSession(folder, 11);
    Path sample = SAMPLES.resolve(name);
    if (Files.exists(sample.resolve("scouting.gpx"))) {
      CommandLineSession.Ran trail =
          session.run(
              "trail",
              "Juniper chute",
              "--from=" + sample.resolve("scouting.gpx"),
              "--lap=48,132",
              "--start=Stile=60",
              "--split=Cairn=190",
              "--split=Culvert=340",
              "--finish=Barn=460");
      assertThat(trail.code()).as(trail.err()).isZero();
    }
    CommandLineSession.Ran committed =
        session.run("commit", sample.resolve("plan.yaml").toString());
    assertThat(committed.code()).as(committed.err()).isZero();
    CommandLineSession.Ran ran =
        session.run("record", "latest", sample.resolve("laps.csv").toString());
    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.out()).contains("are recorded");
  }
}
