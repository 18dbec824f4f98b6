package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** In which order a notebook is listed. */
class NotebookListTest {
  /** The day of the plan, which is today by the clock of the commands. */
  private static final LocalDate TODAY = LocalDate.parse("2026-11-14");

  @TempDir Path folder;

  @Test
  void theSessionInHandStandsFirstAndThenTheLatestDay() {
    CommandLineSession day = new CommandLineSession(folder);
    String next = commit(day, TODAY.plusDays(7));
    String before = commit(day, TODAY.minusDays(30));
    String hand = commit(day, TODAY);
    String after = commit(day, TODAY.plusDays(14));
    assertThat(listed(day)).containsExactly(hand, after, next, before);
    assertThat(listed(day, "--search", "Quarry")).containsExactly(after, next, hand, before);
    assertThat(day.run("abandon", hand, "--reason", "rain").code()).isZero();
    assertThat(listed(day).get(0)).isEqualTo(before);
  }

  private static String commit(CommandLineSession session, LocalDate day) {
    return session.commit(Plans.SMALL.replace(TODAY.toString(), day.toString())).substring(0, 8);
  }

  private static List<String> listed(CommandLineSession session, String... more) {
    String[] all = new String[more.length + 1];
    all[0] = "notebook";
    System.arraycopy(more, 0, all, 1, more.length);
    return session
        .run(all)
        .out()
        .lines()
        .filter(line -> !line.startsWith(" "))
        .map(line -> line.substring(0, 8))
        .toList();
  }
}
