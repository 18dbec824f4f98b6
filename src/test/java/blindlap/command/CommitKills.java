package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.desk.Keys;
import blindlap.seal.SealParameters;
import blindlap.seal.SealingSources;
import blindlap.seal.SecureBytes;
import blindlap.session.SessionState;
import blindlap.store.SqliteNotebook;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;

/** Kills a committing process (SIGKILL) and looks for sessions whose phrase was not out. */
final class CommitKills {
  private static final int LONGEST = 60_000;

  private final Path folder;
  private final Path plan;
  private final Random moments;
  private int kills;
  private int sealed;
  private int withoutPhrase;
  private int untold;
  private int unsealed;

  CommitKills(Path folder, long seed) throws IOException {
    this.folder = folder;
    this.plan = Files.writeString(folder.resolve("plan.yaml"), Plans.SMALL);
    this.moments = new Random(seed);
  }

  /** Kills right after a session came on disk, or within a moment in which others follow. */
  void killOnce(boolean atOnce) throws IOException, InterruptedException {
    kills++;
    Path notebook = folder.resolve("killed-" + kills + ".blindlap");
    Path out = folder.resolve("out-" + kills);
    Process child =
        new ProcessBuilder(command(CommittingChild.class, notebook.toString(), plan.toString()))
            .redirectOutput(out.toFile())
            .start();
    try (BufferedReader err = child.errorReader(StandardCharsets.UTF_8)) {
      String line = err.readLine();
      while (line != null && !line.equals("appended")) {
        line = err.readLine();
      }
      assertThat(line).as("the child committed").isNotNull();
      if (!atOnce) {
        TimeUnit.MICROSECONDS.sleep(1 + moments.nextInt(LONGEST));
      }
      child.toHandle().destroyForcibly();
      assertThat(child.waitFor(20, TimeUnit.SECONDS)).isTrue();
    }
    assertThat(child.exitValue()).as("killed, not ended").isEqualTo(128 + 9);
    look(notebook, out);
    Files.delete(out);
  }

  /** The command that starts a class of the tests. */
  static List<String> command(Class<?> main, String... args) {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty(
                    "surefire.test.class.path", System.getProperty("java.class.path")),
                main.getName()));
    command.addAll(List.of(args));
    return command;
  }

  private void look(Path notebook, Path out) throws IOException {
    String text = Files.readString(out);
    List<String> lines = text.substring(0, text.lastIndexOf('\n') + 1).lines().toList();
    List<String> phrases = new ArrayList<>();
    for (int i = 1; i < lines.size(); i++) {
      if (lines.get(i - 1).endsWith("shown this once:")) {
        phrases.add(lines.get(i).strip());
      }
    }
    SecureBytes none = byte[]::new;
    try (Desk desk =
        new Desk(
            SqliteNotebook.open(notebook, new byte[16], Clock.systemUTC().instant()),
            Clock.systemUTC(),
            SealingSources.allFrom(none),
            new SealParameters(1),
            none)) {
      assertThat(desk.notebook().verify().problems()).isEmpty();
      List<SessionState> sessions = desk.sessions().all();
      for (SessionState session : sessions) {
        sealed++;
        untold += text.contains(session.id().text()) ? 0 : 1;
        boolean opens =
            phrases.stream()
                .anyMatch(p -> desk.keys().helper(session, p) instanceof Keys.Result.Open);
        withoutPhrase += opens ? 0 : 1;
      }
      unsealed += phrases.size() > sessions.size() ? 1 : 0;
    }
  }

  /** Sessions that no phrase opens which was out. */
  int withoutPhrase() {
    return withoutPhrase;
  }

  /** Sessions on disk whose process died before it could say so. */
  int untold() {
    return untold;
  }

  int sealed() {
    return sealed;
  }

  /** What was seen, in a line. */
  String counts() {
    return "%d kills: %d sessions sealed, %d of them not yet told; %d phrases out and nothing sealed; sessions without a phrase that was out: %d"
        .formatted(kills, sealed, untold, unsealed, withoutPhrase);
  }
}
