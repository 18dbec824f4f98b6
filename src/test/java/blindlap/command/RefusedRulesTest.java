package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rules of one's own that give no orders to draw from, as the tester reads of them. */
class RefusedRulesTest {
  @TempDir Path folder;

  private CommandLineSession.Ran plan(String command, String rule) {
    CommandLineSession typed = new CommandLineSession(folder);
    String plan = Plans.SMALL.replace("protocol: eight-stints\nstints: 8\n", rule);
    return typed.run(command, typed.file("plan.yaml", plan).toString());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "block: 5, stints: 15 | stints: 15 | The rule contradicts itself: a block of 5 stints cannot"
            + " hold 2 setups equally often. Choose a block that is a multiple of 2.",
        "block: 0 | stints: 16 | The rule contradicts itself: 16 stints are not a multiple of its"
            + " block of 0. Plan a multiple, or change the block.",
        "block: 4, max_run: -1 | stints: 16 | The rule contradicts itself: its longest run is below"
            + " 1, so no stint could be ridden. Choose 1 or more, or leave it out.",
        "block: 4, min_trend_efficiency: 1.5 | stints: 16 | The rule contradicts itself: a least"
            + " trend efficiency lies between 0 and 1. Correct it, or leave it out.",
        "block: 4, patterns: [ABBA, abba] | stints: 16 | The pattern \"abba\" is not written with"
            + " the capital letters of the setups: look at place 1.",
        "block: 4, patterns: [ABBA, AABA] | stints: 16 | The rule contradicts itself: its pattern"
            + " \"AABA\" is not a block of 4 stints with every setup equally often. Correct the"
            + " pattern, or the block.",
        "block: 4, patterns: [ABBA, AABB] | stints: 16 | The rule contradicts itself: it treats the"
            + " setups unlike, for if they swap names, some of its orders are no longer allowed."
            + " List each pattern with the setups swapped as well.",
      })
  void aContradictionIsToldInAWholeSentence(String rule, String stints, String sentence) {
    CommandLineSession.Ran ran = plan("plan", "rule: {" + rule + "}\n" + stints + "\n");
    assertThat(ran.out() + ran.err()).contains("protocol: " + sentence.strip() + "\n");
    assertThat(ran.code()).isNotZero();
  }

  @Test
  void aRuleThatAlmostNoShuffleMeetsIsNotCommitted() {
    CommandLineSession.Ran ran =
        plan(
            "commit",
            "rule: {stints: 60, max_run: 1}\nstints: 60\noverride: To see what happens.\n");
    assertThat(ran.err().strip())
        .isEqualTo(
            "Only 2 of 118264581564861424 shuffles satisfy the rule, too few to draw one by trying."
                + " Nothing was committed; list the blocks that are wanted as patterns, or loosen"
                + " the limits of the rule.");
    assertThat(ran.code()).isNotZero();
  }
}
