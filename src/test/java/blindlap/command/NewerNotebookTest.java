package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.session.Hash;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a program does with a file of a later one: a sentence, and nothing else. */
class NewerNotebookTest {
  @TempDir Path folder;
  private CommandLineSession session;
  private String id = "";

  @BeforeEach
  void aSessionOfToday() {
    session = new CommandLineSession(folder);
    id = session.commit(Plans.SMALL);
  }

  /** Makes the notebook one of the next version. */
  private void raise() throws Exception {
    try (Connection notebook = DriverManager.getConnection("jdbc:sqlite:" + session.notebook);
        Statement statement = notebook.createStatement()) {
      int version;
      try (ResultSet row = statement.executeQuery("PRAGMA user_version")) {
        version = row.getInt(1);
      }
      statement.execute("PRAGMA user_version = " + (version + 1));
      statement.execute("PRAGMA wal_checkpoint(TRUNCATE)");
    }
  }

  private static void refusedInOneSentence(CommandLineSession.Ran ran, int code, String words) {
    assertThat(ran.code()).isEqualTo(code);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err().strip()).contains(words).endsWith(".").doesNotContain("\n");
  }

  @Test
  void everyCommandRefusesANotebookOfALaterVersionAndChangesNothing() throws Exception {
    raise();
    byte[] before = Files.readAllBytes(session.notebook);
    for (List<String> command :
        List.of(
            List.of("notebook"),
            List.of("notebook", "--verify"),
            List.of("noise"),
            List.of("profile", "Fast and steep: lap time"),
            List.of("review", id),
            List.of("void", id, "1", "--reason", "puncture"),
            List.of("export", id, "--session-file", folder.resolve("out").toString()))) {
      refusedInOneSentence(
          session.run(command.toArray(String[]::new)), 3, "was written by a newer Blindlap");
      assertThat(Files.readAllBytes(session.notebook)).as("%s", command).isEqualTo(before);
    }
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @Test
  void aSessionFileWithAKindOrAValueOfALaterVersionIsRefusedAndNothingIsAdded() throws Exception {
    Path file = folder.resolve("moved.session.txt");
    Path laps = session.file("laps.csv", "lap;lap time;grip\n1;91.4;\n");
    assertThat(session.run("record", id, laps.toString()).code()).isZero();
    assertThat(session.run("export", id, "--session-file", file.toString()).code()).isZero();
    String text = Files.readString(file);
    assertThat(text).contains("\"kind\":\"ScoreGiven\"", "\"source\":\"file\"");
    CommandLineSession other =
        new CommandLineSession(Files.createDirectory(folder.resolve("o")), 2);
    Map<String, String> sentences =
        Map.of(
            text.replace("\"kind\":\"ScoreGiven\"", "\"kind\":\"MoonSeen\""),
            "This entry is of the kind \"MoonSeen\", which is not known here, so a newer",
            text.replaceFirst("\"source\":\"file\"", "\"source\":\"dreamt\""),
            "the field \"source\" holds \"dreamt\", which is not known here, so a newer");
    for (String later : sentences.keySet()) {
      String above = later.substring(0, later.lastIndexOf("{\"entries\""));
      String closing = later.substring(above.length());
      Files.writeString(
          file,
          above
              + closing.replaceFirst(
                  "\"sha256\":\"[0-9a-f]+\"", "\"sha256\":\"" + Hash.of(above).hex() + "\""),
          StandardCharsets.UTF_8);
      refusedInOneSentence(
          other.run("bring-in", file.toString()),
          1,
          java.util.Objects.requireNonNull(sentences.get(later)));
      assertThat(other.run("notebook").out()).doesNotContain(id.substring(0, 8));
    }
  }
}
