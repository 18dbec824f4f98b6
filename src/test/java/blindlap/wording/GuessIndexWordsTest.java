package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.picture.GuessPicture;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.review.Analysis;
import blindlap.review.DayRecord;
import blindlap.review.Days;
import blindlap.review.Finding;
import blindlap.session.day.Guess;
import blindlap.stats.order.Orders;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** What is said of the guess index, in the sentence and in the words of the picture. */
class GuessIndexWordsTest {
  private static final String ORDER = "ABBABABAABAB";

  private static Finding guessed(String guesses) {
    Measure time = Days.lapTime();
    Plan plan = Days.plan(Rule.blocks(2, 12, 4), List.of(time));
    double[] values =
        Days.values(Orders.parse(ORDER), 90, new double[] {0, 0}, 1, 2, new Random(1));
    DayRecord day = Days.day(plan, ORDER, Map.of("lap time", values));
    TreeMap<Integer, Guess> all = new TreeMap<>();
    for (int i = 0; i < guesses.length(); i++) {
      all.put(i + 1, new Guess(guesses.charAt(i) - 'A', null, ""));
    }
    return Analysis.of(
        new DayRecord(
            day.session(),
            plan,
            day.key(),
            day.laps(),
            all,
            day.blindBroken(),
            day.lastStint(),
            day.fits(),
            List.of()));
  }

  private static void said(Finding finding, String words) {
    assertThat(new FindingText(finding).guesses()).contains(words);
    assertThat(GuessPicture.of(finding).orElseThrow().spoken().sentence()).contains(words);
  }

  @Test
  void theIntervalEndsAtOne() {
    // Blocks of 1, 1 and .5: the t interval would reach 1.55.
    Finding finding = guessed("ABBABABAABAA");
    assertThat(finding.guesses().test().orElseThrow().meanInterval95().orElseThrow().high())
        .isGreaterThan(1.5);
    said(finding, "guess index 0.83, 95 % interval 0.1 to 1.0)");
  }

  @Test
  void theIntervalEndsAtMinusOne() {
    said(guessed("BAABABABBABB"), "guess index −0.83, 95 % interval −1.0 to −0.1)");
  }

  @Test
  void whereEveryBlockCameOutAlikeTheIndexStandsAlone() {
    Finding finding = guessed(ORDER);
    said(finding, "; guess index 1.00)");
    assertThat(new FindingText(finding).guesses()).doesNotContain("interval");
  }
}
