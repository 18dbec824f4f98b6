package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * The order of writes, syncs and "saved", as the operating system saw them: a recording process is
 * traced, where strace is installed. {@link PowerLossTest} runs everywhere.
 */
@EnabledOnOs(OS.LINUX)
class SyncTest {
  private static final Pattern CALL =
      Pattern.compile("(pwrite64|write|ftruncate|fsync|fdatasync)\\(\\d+<([^>]*)>(.*)");

  @TempDir private Path folder;

  @Test
  void when_saved_is_said_nothing_that_was_written_waits_for_its_sync() throws Exception {
    Path file = folder.resolve("notebook.blindlap");
    List<String> trace = trace(file);
    Set<String> waiting = new TreeSet<>();
    int saved = 0;
    int syncs = 0;
    for (String line : trace) {
      Matcher call = CALL.matcher(line);
      if (!call.find()) {
        continue;
      }
      String place = call.group(2);
      if (place.startsWith(file.toString())) {
        if (call.group(1).endsWith("sync")) {
          syncs++;
          waiting.remove(place);
        } else {
          boolean isNotebook = place.equals(file.toString());
          assertThat(isNotebook && waiting.contains(place + "-journal"))
              .as("the notebook is not touched before its journal is synced: %s", line)
              .isFalse();
          waiting.add(place);
        }
      } else if (call.group(1).equals("write") && call.group(3).contains("\"saved ")) {
        saved++;
        assertThat(waiting).as("written and not synced when \"saved\" was said").isEmpty();
      }
    }
    assertThat(saved).isGreaterThan(200);
    assertThat(syncs).isGreaterThan(3 * 150);
  }

  private List<String> trace(Path file) throws IOException, InterruptedException {
    Path out = folder.resolve("trace.txt");
    List<String> command =
        new ArrayList<>(
            List.of(
                "strace",
                "-f",
                "-y",
                "-s",
                "16",
                "-o",
                out.toString(),
                "-e",
                "trace=write,pwrite64,ftruncate,fsync,fdatasync"));
    command.addAll(Kills.command(RecordingChild.class, file.toString(), "1", "1"));
    try {
      Process traced =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(folder.resolve("said.txt").toFile())
              .start();
      assertThat(traced.waitFor(120, TimeUnit.SECONDS)).isTrue();
    } catch (IOException notInstalled) {
      assumeTrue(false, "strace is not installed");
    }
    assumeTrue(
        Files.readString(folder.resolve("said.txt")).contains("done"), "tracing is not allowed");
    return Files.readAllLines(out, java.nio.charset.StandardCharsets.ISO_8859_1);
  }
}
