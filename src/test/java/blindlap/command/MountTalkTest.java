package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One wrong answer is asked again by itself; where nobody answers, nothing is half written. */
class MountTalkTest {
  private static final String SETUPS =
      "setups:\n  - {name: Shock K, settings: [{name: sag, value: 16, unit: mm, tolerance: 1}]}\n"
          + "  - {name: Shock L, settings: [{name: sag, value: 16, unit: mm, tolerance: 1}]}\n";
  private static final String PLAN =
      Plans.SMALL.replace("setups:\n  - name: Shock K\n  - name: Shock L\n", SETUPS);

  @TempDir Path folder;
  private CommandLineSession day;

  @BeforeEach
  void begin() {
    assertThat(PLAN).contains("sag");
    day = new CommandLineSession(folder);
  }

  private String drawn() {
    return day.commit(PLAN + "blinding: {level: drawn, guesses: false}\n");
  }

  private String prepared() {
    return day.commit(
        PLAN
            + "blinding: {level: prepared, guesses: false, prepared_by: M. Oster, prepared_on:"
            + " 2026-11-13}\n");
  }

  private CommandLineSession.Ran ran(int code, String... words) {
    CommandLineSession.Ran ran = day.run(words);
    assertThat(ran.code()).as(ran.err()).isEqualTo(code);
    assertThat(day.answers).as("every answer was asked for").isEmpty();
    assertThat(day.handsOver).as("every yes or no was asked for").isEmpty();
    return ran;
  }

  @Test
  void aWrongAnswerIsAskedAgainAndWhatWasTypedBeforeIsKept() {
    String id = drawn();
    day.answers.addAll(
        List.of("Shock M", "", "sixteen", "", "19.0", "", "No time to set it.\u0007", "No time."));
    CommandLineSession.Ran ran = ran(0, "mount", id);
    assertThat(ran.out()).contains("The warm-up is recorded as mounted");
    assertThat(ran.err().lines())
        .hasSize(5)
        .allMatch(line -> line.endsWith("is kept; this is asked again."));
    assertThat(ran.err())
        .contains("\"Shock M\" is none of the setups", "to be measured: sag", "outside its")
        .contains("U+0007");
    String next = day.run("mount", id, "--paper").out();
    assertThat(next).as("the warm-up is mounted once").startsWith("Stint 1, as it stands");
  }

  @Test
  void whatIsNotSeenToIsAskedAgainOrLeft() {
    String id = drawn();
    day.answers.addAll(List.of("", "16"));
    day.handsOver.addAll(List.of("yes", "no", "yes", "", "yes", "yes", "yes", "yes", "yes", "no"));
    CommandLineSession.Ran left = ran(2, "mount", id);
    assertThat(left.err().lines().toList().get(1))
        .isEqualTo("Waits for the safety list; still to check: 1.");
    day.answers.addAll(List.of("", "16"));
    day.handsOver.addAll(
        List.of("yes", "no", "yes", "yes", "yes", "yes", "yes", "yes", "yes", "yes"));
    assertThat(ran(0, "mount", id).out()).contains("recorded as mounted");
  }

  @Test
  void whereNobodyAnswersNothingIsHalfWritten() {
    String id = drawn();
    for (List<String> answers :
        List.of(
            List.of(CommandLineSession.NOBODY),
            List.of("", CommandLineSession.NOBODY),
            List.of("", "19", CommandLineSession.NOBODY))) {
      day.answers.addAll(answers);
      assertThat(ran(2, "mount", id).err())
          .startsWith("Nobody answered, so none of these answers was written.");
    }
    for (int asked = 1; asked <= 7; asked++) {
      day.answers.addAll(List.of("", "16"));
      day.handsOver.addAll(Collections.nCopies(asked, "yes"));
      day.handsOver.add(CommandLineSession.NOBODY);
      assertThat(ran(2, "mount", id).err()).startsWith("Nobody answered");
    }
    day.answers.addAll(List.of("", "16"));
    assertThat(ran(0, "mount", id).out()).contains("Warm-up: mount", "recorded as mounted");
  }

  @Test
  void aSlipInACorrectionIsAskedAgain() {
    String id = drawn();
    day.answers.add("");
    assertThat(ran(2, "mount", id, "--correct").err().lines()).hasSize(1);
    day.answers.addAll(List.of("", "16"));
    String on = ran(0, "mount", id).out().contains("mount Shock K") ? "Shock K" : "Shock L";
    String other = on.equals("Shock K") ? "Shock L" : "Shock K";
    day.answers.addAll(List.of("one", "5", "0", "Shock", on, other, "The spare was on."));
    CommandLineSession.Ran ran = ran(0, "mount", id, "--correct");
    assertThat(ran.out()).contains("Corrected: what was on in stint 0.");
    assertThat(ran.err().lines()).hasSize(4);
    day.answers.addAll(List.of("0", on, CommandLineSession.NOBODY));
    assertThat(ran(2, "mount", id, "--correct").err()).startsWith("Nobody answered");
  }

  @Test
  void oneSlipOfAFriendLosesNoUnit() {
    String id = prepared();
    for (int unit = 0; unit <= 8; unit++) {
      day.answers.add("16");
    }
    day.answers.removeLast();
    day.answers.addAll(List.of("1 6", "1,6.0", "16"));
    CommandLineSession.Ran ran = ran(0, "prepare", id);
    assertThat(ran.out()).contains("Recorded: 9 units");
    assertThat(ran.err().lines()).hasSize(2);
  }

  @Test
  void aFriendWhoIsCalledAwayLeavesNoUnitHalfWritten() {
    String id = prepared();
    for (int unit = 0; unit < 8; unit++) {
      day.answers.add("16");
    }
    day.answers.add(CommandLineSession.NOBODY);
    assertThat(ran(2, "prepare", id).err()).startsWith("Nobody answered");
    for (int unit = 0; unit <= 8; unit++) {
      day.answers.add("16");
    }
    assertThat(ran(0, "prepare", id).out()).contains("Recorded: 9 units");
  }

  @Test
  void aWrongCodeAndACoverThatWasCalledOpenByASlipAreAskedAgain() {
    String id = prepared();
    for (int unit = 0; unit <= 8; unit++) {
      day.answers.add("16");
    }
    ran(0, "prepare", id);
    day.answers.add("16");
    ran(0, "mount", id);
    day.answers.addAll(List.of("16", "1", "", ""));
    day.handsOver.addAll(
        List.of("yes", "yes", "yes", "yes", "yes", "yes", "yes", "yes", "yes", "no", "yes"));
    CommandLineSession.Ran ran = ran(0, "mount", id);
    assertThat(ran.out()).contains("Stint 1 is recorded as mounted");
    assertThat(ran.err().lines()).hasSize(2);
    assertThat(ran.err()).contains("\"1\" is the code of no stint", "what was open");
  }
}
