package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.seal.Cover;
import blindlap.session.NotebookReport;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Kills a recording process again and again (SIGKILL) and looks at the notebook after each. */
final class Kills {
  private final Path folder;
  private final Class<?> recorder;
  private final Random moments;
  private final Set<String> acknowledged = new LinkedHashSet<>();
  private Path file;
  private int kills;
  private int duringOpening;
  private int journalsLeft;
  private int shown;

  /** Of days with a helper. */
  Kills(Path folder, long seed) {
    this(folder, seed, RecordingChild.class);
  }

  /** Of what that child records. */
  Kills(Path folder, long seed, Class<?> recorder) {
    this.folder = folder;
    this.recorder = recorder;
    this.moments = new Random(seed);
    this.file = folder.resolve("notebook-0.blindlap");
  }

  /** Starts a child, kills it at a random moment after an event, and checks what it left. */
  void killOnce(String after, int mostMilliseconds) throws IOException, InterruptedException {
    kills++;
    Process child =
        new ProcessBuilder(command(recorder, file.toString(), "" + kills))
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    List<String> lines = new ArrayList<>();
    try (BufferedReader reader =
        new BufferedReader(new InputStreamReader(child.getInputStream(), StandardCharsets.UTF_8))) {
      String line = reader.readLine();
      while (line != null && !line.startsWith(after)) {
        lines.add(line);
        line = reader.readLine();
      }
      assertThat(line).as("the child came to \"%s\"", after).isNotNull();
      lines.add(line);
      TimeUnit.MICROSECONDS.sleep(1 + moments.nextInt(1000 * mostMilliseconds));
      child.toHandle().destroyForcibly(); // Process.destroyForcibly would close our end of the pipe
      lines.addAll(wholeLines(reader));
    }
    assertThat(child.waitFor(20, TimeUnit.SECONDS)).isTrue();
    assertThat(child.exitValue()).as("killed, not ended").isEqualTo(128 + 9);
    look(lines);
  }

  /** Lines that were printed to their end; a line cut by the kill says nothing. */
  private static List<String> wholeLines(BufferedReader reader) throws IOException {
    StringBuilder rest = new StringBuilder();
    for (int c = reader.read(); c >= 0; c = reader.read()) {
      rest.append((char) c);
    }
    int end = rest.lastIndexOf("\n");
    return end < 0 ? List.of() : rest.substring(0, end).lines().toList();
  }

  /** The command that starts a class of the tests with few costs. */
  static List<String> command(Class<?> main, String... args) {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                classPath(),
                main.getName()));
    command.addAll(List.of(args));
    return command;
  }

  /** Where the few classes come from that a recording process needs; a short path starts fast. */
  private static String classPath() {
    return Stream.of(
            Kills.class,
            SqliteNotebook.class,
            org.sqlite.JDBC.class,
            com.fasterxml.jackson.databind.ObjectMapper.class,
            com.fasterxml.jackson.core.JsonFactory.class,
            com.fasterxml.jackson.annotation.JsonInclude.class,
            com.fasterxml.jackson.dataformat.yaml.YAMLFactory.class,
            org.yaml.snakeyaml.Yaml.class,
            org.jspecify.annotations.Nullable.class)
        .map(
            type -> URI.create(type.getProtectionDomain().getCodeSource().getLocation().toString()))
        .map(place -> Path.of(place).toString())
        .distinct()
        .collect(Collectors.joining(File.pathSeparator));
  }

  private void look(List<String> lines) throws IOException {
    Set<String> before = Set.copyOf(acknowledged);
    lines.stream()
        .filter(line -> line.startsWith("saved "))
        .map(line -> line.substring("saved ".length()))
        .forEach(acknowledged::add);
    duringOpening += acknowledged.size() == before.size() ? 1 : 0;
    Path journal = file.resolveSibling(file.getFileName() + "-journal");
    journalsLeft += Files.exists(journal) && Files.size(journal) > 0 ? 1 : 0;
    try (SqliteNotebook notebook = Books.open(file)) {
      NotebookReport report = notebook.verify();
      assertThat(report.problems()).as("kill %d", kills).isEmpty();
      Set<String> found = new HashSet<>();
      for (SessionId session : notebook.sessions()) {
        covered(notebook, session);
        notebook
            .entries(session)
            .forEach(entry -> found.add(session.text() + " " + entry.hash().hex()));
      }
      assertThat(found).as("kill %d lost what was saved", kills).containsAll(acknowledged);
      assertThat(found.size() - acknowledged.size())
          .as("kill %d: at most one entry a kill is there without having been acknowledged", kills)
          .isLessThanOrEqualTo(kills);
    }
  }

  /** The cover beside a chain opens by its last entry, whole, and is what was shown of it. */
  private void covered(SqliteNotebook notebook, SessionId session) {
    SessionState state = SessionState.of(notebook.entries(session));
    if (state.covered()) {
      Cover cover = notebook.cover(session).orElseThrow();
      assertThat(cover.key()).as("kill %d parted cover and chain", kills).isPresent();
      state.shown().forEach((stint, setup) -> assertThat(cover.setup(stint)).hasValue((int) setup));
      shown += state.shown().size();
    }
  }

  /** Stints that covers were held against. */
  int shown() {
    return shown;
  }

  /** Goes on with a new file. */
  void freshFile() {
    acknowledged.clear();
    file = folder.resolve("notebook-" + kills + ".blindlap");
  }

  /** What was seen, in a line. */
  String counts() {
    return "%d kills: %d before anything was saved, %d left a journal that was rolled back"
        .formatted(kills, duringOpening, journalsLeft);
  }

  int journalsLeft() {
    return journalsLeft;
  }
}
