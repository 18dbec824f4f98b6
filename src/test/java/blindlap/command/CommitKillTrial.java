package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * The long version of {@link CommitKillTest}: {@code mvn test -Dtest=CommitKillTrial -Dkills=500}.
 */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "there is no SIGKILL")
class CommitKillTrial {
  @TempDir private Path folder;

  @Test
  void no_session_is_sealed_without_a_phrase_that_was_out() throws Exception {
    CommitKills kills = new CommitKills(folder, 20_261_127);
    int wanted = Integer.getInteger("kills", 500);
    for (int i = 0; i < wanted; i++) {
      kills.killOnce(i % 2 == 0);
    }
    System.out.println(kills.counts());
    assertThat(kills.withoutPhrase()).isZero();
  }

  @Test
  void nor_with_an_output_that_fails_at_any_byte() throws Exception {
    Random random = new Random(20_261_128);
    int wanted = Integer.getInteger("kills", 500);
    int sealed = 0;
    int without = 0;
    for (int i = 0; i < wanted; i++) {
      Path own = Files.createDirectory(folder.resolve("full-" + i));
      CommandLineSession day = new CommandLineSession(own, i);
      String plan = day.file("plan.yaml", Plans.SMALL).toString();
      FullOutput out = new FullOutput(random.nextInt(600));
      day.run(out.writer(), new PrintWriter(new StringWriter()), "commit", "--yes", plan);
      if (!day.run("notebook").out().contains("empty")) {
        sealed++;
        day.types(CommandLineSession.shownPhrase(out.text()));
        without += day.run("helper", "latest").code() == 0 ? 0 : 1;
      }
    }
    System.out.printf(
        "%d outputs that fail: %d sessions sealed, without a phrase that was out: %d%n",
        wanted, sealed, without);
    assertThat(without).isZero();
  }
}
