package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Profiles by command: made, changed, listed, removed, and what is refused. */
class ProfileCommandTest {
  @TempDir Path folder;
  private CommandLineSession line;

  @BeforeEach
  void aNotebook() {
    line = new CommandLineSession(folder);
  }

  private String ok(String... args) {
    String[] all = new String[args.length + 1];
    all[0] = "profile";
    System.arraycopy(args, 0, all, 1, args.length);
    CommandLineSession.Ran ran = line.run(all);
    assertThat(ran.code()).as(ran.err()).isZero();
    return ran.out();
  }

  @Test
  void aProfileIsMadeChangedListedAndRemovedAndNothingIsOverwritten() {
    assertThat(ok()).startsWith("No profile is in the notebook.");
    assertThat(ok("Fast and steep: lap time , harshness"))
        .contains("\"Fast and steep\" is kept as version 1: lap time; harshness.");
    assertThat(ok("Long days: climbing time, mass")).contains("version 1");
    assertThat(ok("Fast and steep: lap time, harshness"))
        .contains("says just this already, as version 1; nothing was written");
    assertThat(ok("FAST AND STEEP: lap time"))
        .contains("\"FAST AND STEEP\" is kept as version 2: lap time.");
    assertThat(ok().lines())
        .satisfiesExactly(
            first -> assertThat(first).startsWith("FAST AND STEEP: lap time (version 2, made "),
            then ->
                assertThat(then).startsWith("Long days: climbing time; mass (version 1, made "));
    assertThat(ok("--remove", "long days")).contains("\"Long days\" is removed by version 2.");
    assertThat(ok()).doesNotContain("Long days");
    assertThat(ok("Long days").lines())
        .satisfiesExactly(
            first -> assertThat(first).startsWith("Long days: climbing time; mass (version 1,"),
            then -> assertThat(then).startsWith("Long days: removed (version 2,"));
    // What was removed can be made again, as the next version.
    assertThat(ok("Long days: climbing time, mass")).contains("version 3");
  }

  @Test
  void whereASemicolonStandsACommaBelongsToAName() {
    assertThat(ok("Heavy bikes: brake force, felt; mass"))
        .contains("version 1: brake force, felt; mass.");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Fast and steep | is no profile of the notebook, and to make one a colon is wanted",
        "': lap time' | A profile needs a name",
        "'Fast: ' | \"Fast\" names no measure. Nothing was kept",
        "'Fast: , ,' | \"Fast\" names no measure. Nothing was kept",
        "'Fast: a, b, A ' | \"Fast\" names \"A\" twice. Nothing was kept",
        "'Fast: a,b,c,d,e,f,g,h,i,j,k,l,m,n,o,p,q,r,s,t,u' | names 21 measures, and a profile has"
            + " 20 at most"
      })
  void whatCannotBeAProfileIsRefusedInOneSentence(String typed, String why) {
    refused(why, "profile", typed);
    assertThat(ok()).startsWith("No profile is in the notebook.");
  }

  @Test
  void namesThatCannotBePrintedAreRefused() {
    refused("is longer than 60 characters", "profile", "F".repeat(61) + ": lap time");
    refused("is longer than 60 characters", "profile", "Fast: " + "l".repeat(61));
    refused("control character", "profile", "Fast\u0007: lap time");
    refused("control character", "profile", "Fast: lap\u0007time");
    refused("line break", "profile", "Fast: lap\ntime");
  }

  @Test
  void aNotebookThatIsBroughtInBringsItsProfiles() throws Exception {
    ok("Fast: lap time");
    ok("Fast: lap time, dabs");
    CommandLineSession other =
        new CommandLineSession(Files.createDirectory(folder.resolve("other")), 2);
    CommandLineSession.Ran ran = other.run("bring-in", line.notebook.toString());
    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.out()).contains("2 new versions of profiles.");
    assertThat(other.run("profile").out()).startsWith("Fast: lap time; dabs (version 2, made ");
    assertThat(other.run("bring-in", line.notebook.toString()).out()).doesNotContain("profiles");
  }

  @Test
  void versionsThatAnotherProgramChangedAreCountedBesideTheList() throws Exception {
    ok("Fast: lap time");
    ok("Long days: mass");
    try (Connection notebook = DriverManager.getConnection("jdbc:sqlite:" + line.notebook);
        Statement statement = notebook.createStatement()) {
      statement.execute("UPDATE profile SET text = replace(text, 'mass', 'price')");
    }
    CommandLineSession.Ran ran = line.run("profile");
    assertThat(ran.out()).contains("Fast: lap time").doesNotContain("Long days");
    assertThat(ran.err())
        .startsWith("1 version of profiles was changed by another program and is left out;");
    assertThat(line.run("notebook", "--verify").code()).isEqualTo(ExitCode.CHECK_FAILED);
  }

  @Test
  void onlyWhatIsThereIsRemoved() {
    refused("There is no profile \"Long days\", nor any other", "profile", "--remove", "Long days");
    ok("Fast: lap time");
    refused(
        "There is no profile \"Long days\"; there are: Fast. Nothing was changed.",
        "profile",
        "--remove",
        "Long days");
    ok("--remove", "fast");
    refused("nor any other", "profile", "--remove", "Fast");
    refused("--remove needs the name", "profile", "--remove");
  }

  private void refused(String why, String... args) {
    CommandLineSession.Ran ran = line.run(args);
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err().strip()).contains(why).endsWith(".").doesNotContain("\n");
  }
}
