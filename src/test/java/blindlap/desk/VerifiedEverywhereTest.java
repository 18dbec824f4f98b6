package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import blindlap.exchange.SessionFile;
import blindlap.review.Edition;
import blindlap.review.QuestionHistory;
import blindlap.session.CausalOrder;
import blindlap.session.RandomSessions;
import blindlap.session.SessionState;
import blindlap.session.SessionSummary;
import blindlap.store.SqliteNotebook;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * {@code verify.py} was written after the documents alone; here it folds what the program folds.
 * Skipped where there is no python3; {@code .ci/run} fails without one.
 */
class VerifiedEverywhereTest {
  private static final int OLDER_NOTEBOOKS = 9;

  /** One process for all of them: to begin one takes longer than to check a package. */
  private static final String ALL =
      """
      import importlib.util, sys
      spec = importlib.util.spec_from_file_location("verify", sys.argv[1])
      verify = importlib.util.module_from_spec(spec)
      spec.loader.exec_module(verify)
      for folder in sys.argv[2:]:
          verify.failed.clear()
          print("ENDS", folder, verify.main([folder]))
      """;

  @TempDir Path folder;
  private final List<String> folders = new ArrayList<>();
  private int opened;

  /** The package of an opened session as the program makes it, of any other its file. */
  private void write(SessionState state) {
    try {
      Path to = Files.createDirectory(folder.resolve("s" + folders.size()));
      folders.add(to.toString());
      Map<String, byte[]> files =
          state.unsealed()
              ? Reviews.open(state, "{\"edition\":" + Edition.CURRENT + "}", QuestionHistory.NONE)
              : Map.of(
                  "session.txt",
                  SessionFile.text(state.id(), state.entries()).getBytes(StandardCharsets.UTF_8));
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        Files.write(to.resolve(file.getKey()), file.getValue());
      }
      opened += state.unsealed() ? 1 : 0;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private String verified() throws Exception {
    List<String> command =
        new ArrayList<>(
            List.of("python3", "-c", ALL, "src/main/resources/blindlap/exchange/verify.py"));
    command.addAll(folders);
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().put("PYTHONIOENCODING", "utf-8");
    builder.environment().put("PYTHONDONTWRITEBYTECODE", "1");
    Process python;
    try {
      python = builder.start();
    } catch (IOException absent) {
      assumeTrue(false, "python3 is not on this machine");
      return "";
    }
    String said = new String(python.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(python.waitFor(120, TimeUnit.SECONDS)).isTrue();
    assertThat(said.lines().filter(line -> line.startsWith("FAILED"))).isEmpty();
    assertThat(said.lines().filter(line -> line.matches("ENDS .* 0"))).hasSameSizeAs(folders);
    return said;
  }

  @Test
  void everySessionOfEveryOlderNotebook() throws Exception {
    for (int version = 1; version <= OLDER_NOTEBOOKS; version++) {
      Path file = folder.resolve(version + ".blindlap");
      try (InputStream in =
          SqliteNotebook.class.getResourceAsStream("notebook-" + version + ".blindlap")) {
        Files.copy(in, file);
      }
      try (SqliteNotebook notebook = SqliteNotebook.open(file, new byte[16], Instant.EPOCH)) {
        for (SessionSummary each : notebook.summaries()) {
          write(SessionState.of(CausalOrder.sort(notebook.entries(each.id()))));
        }
      }
    }
    assertThat(opened).isGreaterThan(10);
    assertThat(verified().lines().filter(line -> line.matches("ok +units.csv: .*")))
        .hasSize(opened);
  }

  /** Up to three notebooks that wrote apart, values that stand twice, null runs, cut short. */
  @Test
  void everyInventedSession() throws Exception {
    RandomSessions.all().forEach(this::write);
    assertThat(opened).isPositive();
    assertThat(verified().lines().filter(line -> line.matches("ok +units.csv: .*")))
        .hasSize(opened);
  }
}
