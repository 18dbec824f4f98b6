package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Files of sessions whose hashes are right and whose entries say what cannot be. */
class BroughtInMeaningTest {
  @TempDir Path folder;
  private List<String> entries = List.of();

  @BeforeEach
  void ride() throws IOException {
    CommandLineSession day =
        new CommandLineSession(Files.createDirectory(folder.resolve("sender")));
    String id = day.commit(Plans.SMALL);
    day.run("record", id, day.file("laps.csv", Plans.laps(8)).toString());
    Path packed = folder.resolve("packed");
    assertThat(day.run("export", id, "--out", packed.toString()).code()).isZero();
    entries = HostileSessions.entries(Files.readString(packed.resolve("session.txt")));
  }

  private static CommandLineSession.Ran bring(CommandLineSession to, List<String> entries) {
    Path file = to.file("moved.txt", HostileSessions.rewritten(entries, false));
    return to.run("bring-in", file.toString());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "LapRidden | \"lap\":\"1\" | \"lap\":\"99\" | is about lap 99 of stint 1, but the plan",
        "LapRidden | \"stint\":\"1\" | \"stint\":\"99\" | is about lap 1 of stint 99, but the plan",
        "ScoreGiven | \"measure\":\"lap time\" | \"measure\":\"dabs\" | is about \"dabs\", but the"
            + " measures of its session are: lap time, grip.",
        "ScoreGiven | \"value\":\" | \"value\":\"- | for \"lap time\", which cannot be.",
        "ScoreGiven | \"value\":\" | \"value\":\"12345678901234567890123456789012345678901234567890"
            + " | a number for \"lap time\" that has more than 27 digits.",
        "PlanCommitted | \"codes\":\\[\"(\\d+)\",\"\\d+\" | \"codes\":[\"$1\",\"$1\" | has the"
            + " code",
        "PlanCommitted | \"codes\":\\[\"\\d+\", | \"codes\":[ | has 7 codes, but its plan has 8"
            + " stints.",
        "PlanCommitted | \"codes\":\\[\"\\d+\" | \"codes\":[\"7\" | has the code 7, which is never"
            + " given.",
        "PlanCommitted | \"rounds\":\"\\d+\" | \"rounds\":\"1\" | puts the helper phrase through 1"
            + " rounds;",
        "PlanCommitted | \"rounds\":\"\\d+\" | \"rounds\":\"999999999\" | through 999999999"
            + " rounds;",
        "PlanCommitted | comparison | telling run | telling run has 8 stints, which are not the"
            + " laps of its trials.",
        "PlanCommitted | \"key\":\\{.*?\\} | \"key\":null | has no sealed key, so its order was"
            + " never fixed.",
      })
  void whatCannotBeIsRefusedByNameAndNothingIsAdded(
      String kind, String from, String to, String sentence) throws IOException {
    List<String> changed = new ArrayList<>(entries);
    int at = 0;
    while (!changed.get(at).contains("\"kind\":\"" + kind + "\"")) {
      at++;
    }
    changed.set(at, changed.get(at).replaceFirst(from, to));
    assertThat(changed.get(at)).isNotEqualTo(entries.get(at));
    CommandLineSession receiver =
        new CommandLineSession(Files.createDirectory(folder.resolve("receiver")), 7);
    receiver.run("notebook");
    byte[] before = Files.readAllBytes(receiver.notebook);

    CommandLineSession.Ran ran = bring(receiver, changed);

    assertThat(ran.code()).as(ran.err()).isEqualTo(ExitCode.CHECK_FAILED);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err()).contains(sentence).doesNotContain("Exception", "java", "null");
    assertThat(Files.readAllBytes(receiver.notebook)).isEqualTo(before);
    assertThat(bring(receiver, entries).code()).as("the file as it was written").isZero();
  }
}
