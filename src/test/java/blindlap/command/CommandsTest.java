package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CommandsTest {
  @TempDir private Path folder;

  @Test
  void every_name_makes_the_command_that_bears_it() throws Exception {
    assertThat(Blindlap.line(new CommandLineSession(folder).setting()).getSubcommands().keySet())
        .containsExactlyElementsOf(Commands.NAMES);
  }

  @Test
  void a_line_that_begins_with_a_command_makes_that_one_alone() {
    assertThat(Commands.meant("notebook", "--search", "review")).isEqualTo(List.of("notebook"));
  }

  @Test
  void any_other_line_can_mean_every_command() {
    for (String first : List.of("--help", "--notebook", "noteboook", "")) {
      assertThat(Commands.meant(first, "review")).as(first).isEqualTo(Commands.NAMES);
    }
    assertThat(Commands.meant()).isEqualTo(Commands.NAMES);
  }

  @Test
  void a_mistyped_command_is_still_told_what_it_may_have_meant() throws Exception {
    StringWriter err = new StringWriter();
    int code =
        Blindlap.run(
            new CommandLineSession(folder).setting(),
            new PrintWriter(new StringWriter()),
            new PrintWriter(err),
            "notebok");
    assertThat(code).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(err.toString()).contains("notebook");
  }
}
