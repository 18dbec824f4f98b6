package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class BadInputTest {
  @TempDir Path folder;

  static Stream<Arguments> brokenPlans() {
    return Stream.of(
        Arguments.of("eight-stints", "by-moonlight", "No protocol is called \"by-moonlight\""),
        Arguments.of(
            "protocol: eight-stints\nstints: 8",
            "protocol: blocks-of-four\nstints: 14",
            "14 stints are not a multiple of the block of 4"),
        Arguments.of(
            "protocol: eight-stints\nstints: 8",
            "rule: {stints: 8, block: 8, max_run: 1, min_trend_efficiency: 1}\nstints: 8",
            "No order satisfies this rule"),
        Arguments.of("name: Shock L", "name: Shock K", "Two setups are called \"Shock K\""),
        Arguments.of("role: primary, ", "", "No measure is primary"),
        Arguments.of(
            "kind: line scale, unit",
            "role: primary, worthwhile: 5, kind: line scale, unit",
            "More than one measure is primary: lap time, grip"),
        Arguments.of("worthwhile: 0.5", "worthwhile: 0", "is 0; it must be above 0"),
        Arguments.of("worthwhile: 0.5", "worthwhile: -1", "is -1; it must be above 0"),
        Arguments.of(
            "worthwhile: 0.5",
            "worthwhile: \"1,234.5\"",
            "\"1,234.5\", but this field takes a number with one decimal sign"),
        Arguments.of("unit: s, ", "", "\"lap time\" has no unit"),
        Arguments.of("rider: R. Lind", "riders: R. Lind", "line 2, column"),
        Arguments.of("day: 2026-11-14", "day: tomorrow", "a date such as"),
        Arguments.of("trail: Quarry loop", "trail: [", "cannot be read as YAML"),
        Arguments.of("stints: 8", "stints: 8\nlaps: {scored: 0}", "0 laps cannot be planned"));
  }

  @ParameterizedTest
  @MethodSource("brokenPlans")
  void aBrokenPlanIsRefusedInASentenceAndNothingIsWritten(String from, String to, String says) {
    CommandLineSession day = new CommandLineSession(folder);
    String broken = Plans.SMALL.replace(from, to);
    assertThat(broken).isNotEqualTo(Plans.SMALL);
    Path plan = day.file("broken.yaml", broken);

    CommandLineSession.Ran planned = day.run("plan", plan.toString());
    CommandLineSession.Ran committed = day.run("commit", plan.toString());

    assertThat(planned.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(planned.err()).contains(says);
    assertThat(committed.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(committed.err()).contains(says).doesNotContain("Exception");
    assertThat(day.run("notebook").out()).contains("empty");
  }

  @ParameterizedTest
  @org.junit.jupiter.params.provider.ValueSource(strings = {"0", "-5", "100001", "2147483647"})
  void daysBeyondReasonAreRefusedBeforeAnyIsSimulated(String days) {
    CommandLineSession day = new CommandLineSession(folder);
    Path plan = day.file("plan.yaml", Plans.SMALL);

    CommandLineSession.Ran ran = day.run("plan", "--days", days, plan.toString());

    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err()).contains("--days", days, "give 1 to 100,000");
    assertThat(ran.out()).isEmpty();
  }

  @Test
  void aNumberAfterACommandIsWholeAndMayHaveAnyMinus() {
    CommandLineSession day = new CommandLineSession(folder);
    Path plan = day.file("plan.yaml", Plans.SMALL);

    assertThat(day.run("plan", "--days", "1,5", plan.toString()).err())
        .contains("'1,5' is not a whole number", "Nothing was done");
    assertThat(day.run("plan", "--days", "−5", plan.toString()).err())
        .contains("-5", "give 1 to 100,000");
  }

  @Test
  void aPlanThatCannotShowAnythingNeedsAnOverrideAndSaysSoInTheEnd() {
    CommandLineSession day = new CommandLineSession(folder);
    String hopeless = Plans.SMALL.replace("eight-stints", "there-and-back");
    Path plan = day.file("hopeless.yaml", hopeless);
    assertThat(day.run("commit", plan.toString()).err()).contains("can never show anything");

    String session = day.commit(hopeless + "override: A rehearsal of the swaps.\n");
    day.run("record", session, day.file("laps.csv", Plans.laps(8)).toString());
    day.run("close-day", session);
    day.run("close-review", session);
    day.run("unseal", session);

    assertThat(day.run("review", session).out()).contains("this plan could not show anything");
  }

  @Test
  void anUnblindedSessionIsCalledSoAndConcealsNoNullRun() {
    CommandLineSession day = new CommandLineSession(folder);
    Path plan = day.file("open.yaml", Plans.SMALL + "blinding: {blinded: no}\n");

    CommandLineSession.Ran concealed = day.run("commit", "--null-run", plan.toString());
    assertThat(concealed.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(concealed.err()).contains("--null-run", "unblinded");
    assertThat(day.run("notebook").out()).contains("empty");

    assertThat(day.run("plan", "--days", "20", plan.toString()).out()).contains("unblinded");
    assertThat(day.run("commit", plan.toString()).out())
        .contains("Unblinded (open): the rider knows");
    assertThat(day.run("notebook").out()).contains("Shock K against Shock L, unblinded (open)");
  }

  static Stream<Arguments> brokenLaps() {
    return Stream.of(
        Arguments.of("lap;lap time\n1;90\n1;91\n", "Line 3: Lap 1 stands twice"),
        Arguments.of("code;lap time\n99;90\n", "Line 2: \"99\" is not a code of this session"),
        Arguments.of(
            "lap;grip\n1;101\n", "column 2: \"grip\" is 101, outside its scale of 0 to 100"),
        Arguments.of("lap;speed\n1;3\n", "Line 1: The column \"speed\" is not known"),
        Arguments.of("lap;lap time\n1;1:75.0\n", "Line 2, column 2: \"1:75.0\" is not a time"),
        Arguments.of("lap;lap time;void\n1;90;slow\n", "\"slow\" is not an event"),
        Arguments.of("lap;lap time\n9;90\n", "\"9\" is not a lap; laps are numbered 1 to 8"),
        Arguments.of(
            "lap;grip\n1;10.5\n2;11,5\n", "Line 3, column 2: \"11,5\" uses another decimal sign"),
        Arguments.of("lap,grip\n1,many\n", "\"many\" is not a number"),
        Arguments.of(
            "lap;grip\n1;5,5\n2;1,234.5\n",
            "Line 3, column 2: \"1,234.5\" for \"grip\" has both a point and a comma"),
        Arguments.of("lap;lap time\n", "has no rows"),
        Arguments.of("lap;lap time;lap time\n1;90;91\n", "stands twice"),
        Arguments.of("lap time\n90\n", "neither a column \"lap\" nor a column \"code\""),
        Arguments.of("lap;lap time\n1;-4\n", "not a time above 0"),
        Arguments.of(
            "lap;lap time\n1;90;7\n2;91\n", "Line 2: This row has 3 cells, the header has 2"));
  }

  @ParameterizedTest
  @MethodSource("brokenLaps")
  void aBadRowRefusesTheWholeFile(String csv, String says) {
    CommandLineSession day = new CommandLineSession(folder);
    String session = day.commit(Plans.SMALL);

    CommandLineSession.Ran ran = day.run("record", session, day.file("laps.csv", csv).toString());

    assertThat(ran.code()).as(ran.out() + ran.err()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err()).contains(says).doesNotContain("Exception");
    assertThat(day.run("close-day", session).err()).contains("No lap has been recorded");
  }

  @Test
  void aRecordedLapIsKeptUnlessItIsCorrectedWithAReason() {
    CommandLineSession day = new CommandLineSession(folder);
    String session = day.commit(Plans.SMALL);
    String first = day.file("first.csv", "lap;lap time\n1;90\n").toString();
    String second = day.file("second.csv", "lap;lap time\n1;91\n").toString();
    day.run("record", session, first);

    assertThat(day.run("record", session, second).err()).contains("Lap 1 is already recorded");
    assertThat(day.run("record", session, second, "--correct").err())
        .contains("A reason is missing");
    assertThat(day.run("record", session, second, "--correct", "--reason", "typing error").out())
        .contains("Saved 1 entries");
  }

  @Test
  void stepsOutOfOrderAreRefusedAndChangeNothing() {
    CommandLineSession day = new CommandLineSession(folder);
    String session = day.commit(Plans.SMALL);
    String laps = day.file("laps.csv", Plans.laps(7)).toString();
    String last = day.file("last.csv", "lap;lap time\n8;90\n").toString();
    day.run("record", session, laps);
    assertThat(day.run("close-review", session).err())
        .contains("stands at \"riding\"", "close the day first");
    assertThat(day.run("unseal", session).err())
        .contains("The order is opened once the review is closed", "\"riding\"");
    assertThat(day.run("void", session, "2", "--reason", "felt slow").err())
        .contains("not an event");
    day.run("close-day", session);
    assertThat(day.run("record", session, last).err()).contains("The day is over");
    day.run("close-review", session);
    assertThat(day.run("record", session, last).err()).contains("The review is closed");
    assertThat(day.run("void", session, "2", "--reason", "crash").err())
        .contains("review is closed");
    day.run("unseal", session);
    assertThat(day.run("void", session, "2", "--reason", "crash").err()).contains("order is open");
  }

  @Test
  void aWrongPhraseOpensNothing() {
    CommandLineSession day = new CommandLineSession(folder);
    String session = day.commit(Plans.SMALL);
    day.types("one two three");
    assertThat(day.run("helper", session).code()).isEqualTo(ExitCode.BAD_INPUT);
    CommandLineSession other = new CommandLineSession(folder, 43);
    other.run("plan", other.file("p.yaml", Plans.SMALL).toString());
    String foreign = other.commit(Plans.SMALL.replace("Quarry loop", "Beech descent"));
    CommandLineSession.Ran ran = other.run("helper", session);
    assertThat(foreign).isNotEqualTo(session);
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err()).contains("does not open the key").doesNotContain("Exception");
  }

  @Test
  void aFileThatIsNotANotebookIsLeftAlone() throws IOException {
    CommandLineSession day = new CommandLineSession(folder);
    Files.writeString(
        day.notebook,
        "just a text that is a little longer than a header would be, " + "x".repeat(80));
    byte[] before = Files.readAllBytes(day.notebook);

    CommandLineSession.Ran ran = day.run("notebook");

    assertThat(ran.code()).isEqualTo(ExitCode.FILE_TROUBLE);
    assertThat(ran.err()).contains("is not a Blindlap notebook").doesNotContain("Exception");
    assertThat(Files.readAllBytes(day.notebook)).isEqualTo(before);
  }

  @Test
  void unknownSessionsAndMissingFilesAreNamed() {
    CommandLineSession day = new CommandLineSession(folder);
    assertThat(day.run("review", "abc").err()).contains("No session begins with \"abc\"");
    CommandLineSession.Ran missing = day.run("commit", folder.resolve("nowhere.yaml").toString());
    assertThat(missing.code()).isEqualTo(ExitCode.FILE_TROUBLE);
    assertThat(missing.err()).contains("There is no file");
    assertThat(day.run("juggle").code()).isEqualTo(ExitCode.BAD_INPUT);
  }

  @Test
  void theWindowOpensOnTheNotebookThatWasNamed() {
    CommandLineSession day = new CommandLineSession(folder);
    day.display = true;
    Path other = folder.resolve("other.blindlap");
    assertThat(day.run("--notebook", other.toString(), "--new").code()).isZero();
    assertThat(day.windows).containsExactly(other);
  }

  @Test
  void aNotebookNamedBeforeTheCommandIsNotPassedOverInSilence() {
    CommandLineSession day = new CommandLineSession(folder);
    day.display = true;
    Path other = folder.resolve("other.blindlap");
    CommandLineSession.Ran ran = day.run("--notebook", other.toString(), "notebook");
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err()).contains("blindlap notebook --notebook FILE. Nothing was done.");
    assertThat(day.windows).isEmpty();
    assertThat(other).doesNotExist();
  }
}
