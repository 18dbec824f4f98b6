package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The questions of docs/file-format.md, asked of a notebook. */
class SqlExamplesTest {
  @TempDir Path folder;

  private static List<String> examples() throws IOException {
    return Pattern.compile("```sql\n(.*?)```", Pattern.DOTALL)
        .matcher(Files.readString(Path.of("docs", "file-format.md")))
        .results()
        .map(found -> found.group(1))
        .toList();
  }

  private List<List<String>> ask(Path notebook, String question) throws SQLException {
    List<List<String>> rows = new ArrayList<>();
    try (Connection open = DriverManager.getConnection("jdbc:sqlite:" + notebook);
        Statement statement = open.createStatement();
        ResultSet answer = statement.executeQuery(question)) {
      while (answer.next()) {
        List<String> row = new ArrayList<>();
        for (int i = 1; i <= answer.getMetaData().getColumnCount(); i++) {
          row.add(String.valueOf(answer.getString(i)));
        }
        rows.add(row);
      }
    }
    return rows;
  }

  @Test
  void eachAnswersWhatThePageSays() throws Exception {
    CommandLineSession day = new CommandLineSession(folder);
    String sealed = day.commit(Plans.SMALL);
    day.later(60);
    String id = day.commit(Plans.SMALL);
    ok(day, "record", id, day.file("laps.csv", Plans.laps(8)).toString());
    String second = day.file("second.csv", "lap;grip\n2;55\n").toString();
    ok(day, "record", id, second, "--correct", "--reason", "typing error");
    ok(day, "close-day", id);
    ok(day, "close-review", id);
    ok(day, "fingerprint", id, "--given-to", "M. Oster");
    ok(day, "unseal", id);
    List<String> examples = examples();
    assertThat(examples).hasSize(3);
    String brief = id.substring(0, 8);

    List<List<String>> sessions = ask(day.notebook, examples.get(0));
    assertThat(sessions).hasSize(2);
    assertThat(sessions.get(0))
        .containsExactly(
            sealed.substring(0, 8), "R. Lind", "Quarry loop", "null", "null", "null", "null");
    assertThat(sessions.get(1)).startsWith(brief, "R. Lind", "Quarry loop").doesNotContain("null");

    List<List<String>> given = ask(day.notebook, examples.get(1));
    assertThat(given).hasSize(1);
    assertThat(given.get(0)).startsWith(brief, "2", "1", "grip");
    assertThat(given.get(0).get(4)).matches("\\d+, then 55");

    List<List<String>> between = ask(day.notebook, examples.get(2));
    assertThat(between)
        .extracting(row -> row.get(2))
        .containsExactly("ReviewClosed", "FingerprintGiven", "SealOpened");
  }

  private static void ok(CommandLineSession day, String... typed) {
    CommandLineSession.Ran ran = day.run(typed);
    assertThat(ran.code()).as(ran.err()).isZero();
  }
}
