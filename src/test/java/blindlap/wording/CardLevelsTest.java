package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.SampleDays;
import blindlap.plan.BlindLevel;
import blindlap.review.Analysis;
import blindlap.review.Beside;
import blindlap.review.Finding;
import blindlap.session.SessionState;
import blindlap.stats.tell.GuessTest;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * "Ridden blind" stands on a card only where nothing speaks against it; else the mark says what.
 */
class CardLevelsTest {
  private static final int DAYS = 50;

  private final Map<String, Integer> seen = new TreeMap<>();

  @Test
  void theBlindLevelsOwnWordsStandInPlaceOfRiddenBlind() {
    SampleDays.ride(
        "bearings-on-clay-steps",
        (desk, state) -> {
          for (BlindLevel level : BlindLevel.values()) {
            for (long seed = 0; seed < DAYS; seed++) {
              look(state, level, seed);
            }
          }
        });
    assertThat(seen)
        .containsKeys("blind HELPER", "blind PREPARED", "broken", "wrong", "cut", "guessed");
  }

  private void look(SessionState state, BlindLevel level, long seed) {
    int setups = seed % 4 == 3 ? 3 : 2;
    Finding finding = Analysis.of(DoubtfulDays.day(new Random(seed), setups, Optional.of(level)));
    CardText text = CardWords.of(state, finding, Beside.NOTHING);
    String all = text.mark() + " " + text.parts();
    boolean blind = all.contains("Ridden blind");
    assertThat(blind).as("%s %s", level, all).isEqualTo(level.blind() && text.mark().isEmpty());
    if (blind) {
      count("blind " + level);
      assertThat(all.contains("prepared beforehand")).isEqualTo(level == BlindLevel.PREPARED);
    }
    String knew =
        switch (level) {
          case OPEN -> "Unblinded: the rider knew, or could know, what was fitted.";
          case DRAWN -> "Unblinded: the rider knew what was on, and not what came.";
          case MASKED -> "Masked labels: the rider knew which label was on";
          case PREPARED, HELPER -> "";
        };
    assertThat(text.mark()).contains(knew);
    if (!finding.day().blindBroken().isEmpty()) {
      count("broken");
      assertThat(text.mark())
          .contains(level == BlindLevel.MASKED ? "it came out which part is which" : "broken in");
    }
    if (!finding.day().wrongFits().isEmpty()) {
      count("wrong");
      assertThat(text.mark()).contains("Another setup than drawn was on in ");
      assertThat(all).doesNotContain("stands below");
    }
    if (finding.day().cutShort()) {
      count("cut");
      assertThat(text.mark()).contains("Cut short: the day ended after stint ");
    }
    if (finding.guesses().test().filter(GuessTest::flagged).isPresent()) {
      count("guessed");
      assertThat(text.mark()).contains("The guesses beat chance");
    }
    assertThat(text.headline().text()).isEqualTo(new FindingText(finding).headline().text());
  }

  private void count(String what) {
    seen.merge(what, 1, Integer::sum);
  }
}
