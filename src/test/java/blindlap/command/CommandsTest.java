package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
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
  void the_list_of_commands_holds_a_whole_sentence_of_each() {
    Blindlap.line(new CommandLineSession(folder).setting())
        .getSubcommands()
        .forEach(
            (name, command) ->
                assertThat(command.getCommandSpec().usageMessage().description()[0])
                    .as(name)
                    .endsWith("."));
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

  /** Every place of a command where a session is named, with what its help says there. */
  private Map<String, String> sessionsTaken() {
    Map<String, String> taken = new TreeMap<>();
    Blindlap.line(new CommandLineSession(folder).setting())
        .getSubcommands()
        .forEach(
            (name, command) ->
                command.getCommandSpec().args().stream()
                    .filter(arg -> arg.paramLabel().matches("SESSION.*"))
                    .forEach(
                        arg ->
                            taken.put(
                                name + " " + command.getCommandSpec().args().indexOf(arg),
                                String.join(" ", arg.description()))));
    return taken;
  }

  @Test
  void whatLatestMeansIsSaidWhereverASessionIsNamed() {
    assertThat(SessionCommand.WHICH)
        .contains("latest: the session last committed that is not an old day");
    Map<String, String> taken = sessionsTaken();
    assertThat(taken).hasSizeGreaterThanOrEqualTo(28);
    taken.forEach((place, said) -> assertThat(said).as(place).endsWith(SessionCommand.WHICH));
  }

  @Test
  void nothingElseOfAHelpSpeaksOfLatestInWordsOfItsOwn() {
    Blindlap.line(new CommandLineSession(folder).setting())
        .getSubcommands()
        .forEach(
            (name, command) ->
                assertThat(
                        command
                            .getUsageMessage()
                            .replaceAll("\\s+", " ")
                            .replace(SessionCommand.WHICH, ""))
                    .as(name)
                    .doesNotContain("or latest"));
  }

  private String latest(CommandLineSession session) {
    return session.desk().sessions().find(" Latest ").state().orElseThrow().id().text();
  }

  @Test
  void theLatestIsTheOneLastCommittedAndNoOldDay() throws Exception {
    CommandLineSession session = new CommandLineSession(folder);
    CommandLineSession.Ran none = session.run("review", "latest");
    assertThat(none.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(none.err()).contains("There is no latest session");
    session.commit(Plans.SMALL);
    session.later(60);
    String second = session.commit(Plans.SMALL);
    session.later(60);
    CommandLineSession.Ran old =
        session.run(
            "import-day",
            session.file("old.csv", "Zeit;Fahrwerk\n95;K\n94;K\n95.5;K\n94.4;K\n96;K\n").toString(),
            "--time=Zeit",
            "--setup=Fahrwerk");
    assertThat(latest(session)).as(old.err()).isEqualTo(second);
  }

  @Test
  void whatComesFromAnotherMachineIsTheLatestOnlyIfItWasCommittedLast() throws Exception {
    CommandLineSession there =
        new CommandLineSession(Files.createDirectory(folder.resolve("a")), 7);
    String before = there.commit(Plans.SMALL);
    there.later(120);
    String after = there.commit(Plans.SMALL);
    CommandLineSession here = new CommandLineSession(Files.createDirectory(folder.resolve("b")), 8);
    here.later(60);
    String own = here.commit(Plans.SMALL);
    for (String each : List.of(before, after)) {
      String file = folder.resolve(each).toString();
      assertThat(there.run("export", each, "--session-file", file).code()).isZero();
    }
    assertThat(here.run("bring-in", folder.resolve(before).toString()).code()).isZero();
    assertThat(latest(here)).isEqualTo(own);
    assertThat(here.run("bring-in", folder.resolve(after).toString()).code()).isZero();
    assertThat(latest(here)).isEqualTo(after);
  }
}
