package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A commit that is killed, or whose output is closed, leaves no session without its phrase. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "there is no SIGKILL")
class CommitKillTest {
  /** As many as a build has time for; more with {@code -Dkills=25}. */
  private static final int KILLS = Integer.getInteger("kills", 9);

  @TempDir private Path folder;

  @Test
  void afterKillsEverySealedSessionHasAPhraseThatWasOutAndOpensIt() throws Exception {
    CommitKills kills = new CommitKills(folder, 20_261_126);
    for (int i = 0; i < KILLS; i++) {
      kills.killOnce(i % 2 == 0);
    }
    assertThat(kills.withoutPhrase()).as(kills.counts()).isZero();
    assertThat(kills.sealed()).isGreaterThanOrEqualTo(KILLS);
    assertThat(kills.untold()).as("killed before it was told, or this shows nothing").isPositive();
  }

  /** The whole program in a shell: its exit code, and what it said on standard error. */
  private String shell(String script, String... program) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of("sh", "-c", script, "sh"));
    command.addAll(CommitKills.command(blindlap.Main.class, program));
    Path err = folder.resolve("err");
    Process process =
        new ProcessBuilder(command)
            .redirectInput(new java.io.File("/dev/null"))
            .redirectError(err.toFile())
            .start();
    process.getInputStream().readAllBytes();
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    return process.exitValue() + " " + Files.readString(err, StandardCharsets.UTF_8).strip();
  }

  @Test
  @EnabledOnOs(OS.LINUX)
  void aFullOrClosedStandardOutputSealsNothingAndEndsWithExitCode3() throws Exception {
    String plan = Files.writeString(folder.resolve("plan.yaml"), Plans.SMALL).toString();
    String notebook = folder.resolve("n.blindlap").toString();
    String unwritten = "3 The helper phrase could not be written";
    for (String way : List.of("\"$@\" > /dev/full", "exec \"$@\" >&-")) {
      assertThat(shell(way, "commit", "--new", "--yes", plan, "--notebook", notebook))
          .as(way)
          .startsWith(unwritten)
          .contains("nothing sealed");
    }
    String pipe = "{ \"$@\"; echo $? > \"" + folder + "/code\"; } | exec true";
    assertThat(shell(pipe, "commit", "--new", "--yes", plan, "--notebook", notebook))
        .startsWith("0 " + unwritten.substring(2));
    assertThat(folder.resolve("code")).hasContent("3");
    assertThat(shell("\"$@\"", "commit", "--new", plan, "--notebook", notebook))
        .startsWith("2 There is no terminal");
    assertThat(shell("\"$@\" > /dev/full", "notebook", "--notebook", notebook))
        .isEqualTo("3 " + Done.NOTHING.untold());
    assertThat(shell("\"$@\" | grep -c empty >&2", "notebook", "--notebook", notebook))
        .isEqualTo("0 1");
  }
}
