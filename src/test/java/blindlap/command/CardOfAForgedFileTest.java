package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.session.Hash;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A notebook in whose file somebody changed a lap time after the review was closed, with every hash
 * of the chain made right again, asked for its card.
 */
class CardOfAForgedFileTest {
  private static final String CHANGED =
      "The file was changed: its fingerprint of the review does not match it.";

  private static final Pattern PREVIOUS = Pattern.compile("\"previous\":\"([0-9a-f]*)\"");

  @TempDir Path folder;

  private CommandLineSession day;
  private String id = "";

  @BeforeEach
  void unseal() {
    day = new CommandLineSession(folder);
    id = day.commit(Plans.SMALL);
    day.run("record", id, day.file("laps.csv", Plans.laps(8)).toString());
    for (String step : List.of("close-day", "close-review", "unseal")) {
      assertThat(day.run(step, id).code()).as(step).isZero();
    }
  }

  /** The chain of the session, each entry first as somebody wants it. */
  private List<String> chain(UnaryOperator<String> wanted) throws Exception {
    Path packed = folder.resolve("packed");
    assertThat(day.run("export", id, "--out", packed.toString()).code()).isZero();
    List<String> entries =
        HostileSessions.entries(Files.readString(packed.resolve("session.txt"))).stream()
            .map(wanted)
            .toList();
    return HostileSessions.entries(HostileSessions.rewritten(entries, false));
  }

  /** Puts another chain in place of the one in the notebook's file. */
  private void rewrite(List<String> chain) throws Exception {
    try (Connection notebook = DriverManager.getConnection("jdbc:sqlite:" + day.notebook);
        Statement statement = notebook.createStatement()) {
      String trigger;
      try (ResultSet found =
          statement.executeQuery(
              "SELECT sql FROM sqlite_master WHERE name = 'entry_is_not_changed'")) {
        trigger = found.getString(1);
      }
      statement.execute("DROP TRIGGER entry_is_not_changed");
      try (PreparedStatement update =
          notebook.prepareStatement(
              "UPDATE entry SET text = ?, previous = ?, hash = ? WHERE number = ?")) {
        for (int i = 0; i < chain.size(); i++) {
          Matcher previous = PREVIOUS.matcher(chain.get(i));
          assertThat(previous.find()).isTrue();
          update.setString(1, chain.get(i));
          update.setString(2, previous.group(1));
          update.setString(3, Hash.of(chain.get(i)).hex());
          update.setInt(4, i + 1);
          assertThat(update.executeUpdate()).isEqualTo(1);
        }
      }
      statement.execute(trigger);
    }
  }

  private String card() throws Exception {
    Path into = folder.resolve("cards");
    CommandLineSession.Ran ran = day.run("card", id, "--out", into.toString());
    assertThat(ran.code()).as(ran.err()).isZero();
    try (var files = Files.list(into)) {
      return Files.readString(
          files.filter(f -> f.toString().endsWith(".txt")).findFirst().orElseThrow());
    }
  }

  @Test
  void itsCardSaysSoInTheLargestCaptionAndClaimsNoSeal() throws Exception {
    rewrite(chain(entry -> entry.replaceFirst("\"value\":\"9", "\"value\":\"6")));
    String card = card();
    assertThat(card.lines().toList().get(2)).isEqualTo(CHANGED);
    assertThat(card)
        .doesNotContain("drawn by lot and sealed")
        .contains("Order drawn by lot, says the file; but it was changed.")
        .containsPattern("fingerprint of the review.* …, does not match");
  }

  @Test
  void theSameEntriesWrittenAgainAreNoChange() throws Exception {
    rewrite(chain(entry -> entry));
    assertThat(card()).doesNotContain("was changed").contains("order drawn by lot and sealed");
  }

  /** What was changed so is no longer taken in from a file. */
  @Test
  void anotherNotebookDoesNotTakeIt() throws Exception {
    List<String> chain = chain(entry -> entry.replaceFirst("\"value\":\"9", "\"value\":\"6"));
    CommandLineSession reader =
        new CommandLineSession(Files.createDirectory(folder.resolve("reader")));
    Path file = reader.file("moved.txt", HostileSessions.rewritten(chain, false));
    CommandLineSession.Ran ran = reader.run("bring-in", file.toString());
    assertThat(ran.code()).isEqualTo(ExitCode.CHECK_FAILED);
    assertThat(ran.err()).contains("do not give the fingerprint of the review");
  }
}
