package blindlap.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.plan.Rule;
import blindlap.plan.TellingTask;
import blindlap.stats.order.Orders;
import blindlap.stats.tell.TrialsPower;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class TrialsDrawTest {
  /** As in DrawTest: the seeds are fixed, a fair draw exceeds the bound once in a million sets. */
  private static final double ODDS = 1e-6;

  private static byte[] seed(int number) {
    return Fingerprint.digest(("trials " + number).getBytes(StandardCharsets.UTF_8));
  }

  private static List<String> parts(String order, int laps) {
    return List.of(order.split("(?<=\\G.{" + laps + "})"));
  }

  @ParameterizedTest
  @EnumSource
  void everySequenceIsEquallyLikelyInEveryTrialWhateverWentBefore(TellingTask task) {
    int trials = 100;
    int runs = 200;
    Map<String, Integer> alone = new TreeMap<>();
    Map<String, Integer> after = new TreeMap<>();
    Map<String, Integer> last = new TreeMap<>();
    for (int run = 0; run < runs; run++) {
      String order = Draw.order(Rule.trials(task, trials), seed(run));
      List<String> drawn = parts(order, task.laps());
      assertThat(drawn).hasSize(trials);
      for (int i = 0; i < trials; i++) {
        alone.merge(drawn.get(i), 1, Integer::sum);
        if (i > 0) {
          after.merge(drawn.get(i - 1) + " " + drawn.get(i), 1, Integer::sum);
        }
      }
      last.merge(drawn.get(trials - 1), 1, Integer::sum);
    }
    int kinds = task.sequences().size();
    assertThat(alone.keySet()).containsExactlyElementsOf(task.sequences());
    assertThat(after).hasSize(kinds * kinds);
    even(alone, runs * trials);
    even(after, runs * (trials - 1));
    even(last, runs);
  }

  private static void even(Map<String, Integer> seen, int all) {
    double expected = (double) all / seen.size();
    double chiSquare =
        seen.values().stream().mapToDouble(n -> (n - expected) * (n - expected) / expected).sum();
    assertThat(chiSquare)
        .isLessThan(ChiSquaredDistribution.of(seen.size() - 1).inverseSurvivalProbability(ODDS));
  }

  @ParameterizedTest
  @EnumSource
  void trialsAreCountedWithoutBeingListed(TellingTask task) {
    Rule rule = Rule.trials(task, 100);
    assertThat(rule.assignments().count())
        .isEqualTo(BigInteger.valueOf(task.sequences().size()).pow(100));
    assertThat(rule.assignments().closedUnderRenaming()).isTrue();
    assertThat(rule.assignments().balanced()).isEqualTo(task == TellingTask.TWO_CHOICE);
    String order = Draw.order(rule, seed(1));
    assertThat(rule.assignments().contains(Orders.parse(order))).isTrue();
    assertThat(rule.assignments().contains(Orders.parse("A".repeat(order.length())))).isFalse();
  }

  /** What an answer is worth: the place of the lap that is named, from 0, in a drawn trial. */
  private static boolean right(TellingTask task, String trial, int named) {
    return switch (task) {
      case TRIANGLE -> trial.chars().filter(lap -> lap == trial.charAt(named)).count() == 1;
      case DUO_TRIO -> trial.charAt(1 + named) == trial.charAt(0);
      case TWO_CHOICE -> trial.charAt(named) == 'B';
    };
  }

  /** A rider who feels nothing: names a place from the trial's number and all earlier answers. */
  private interface Habit {
    int names(int trial, int places, int last, boolean lastRight);
  }

  /**
   * However somebody guesses who feels nothing, at most one run in twenty tells. The count is the
   * same binomial for all habits, so that each may exceed the exact share by chance alone: by four
   * standard errors here, and seeds are fixed. The last habit even hears whether it was right.
   */
  @ParameterizedTest
  @EnumSource
  void whateverAGuessersHabitsOneRunInTwentyTellsAtMost(TellingTask task) {
    List<Habit> habits =
        List.of(
            (trial, places, last, was) -> 0,
            (trial, places, last, was) -> places - 1,
            (trial, places, last, was) -> trial % places,
            (trial, places, last, was) -> last,
            (trial, places, last, was) -> (last + 1) % places,
            (trial, places, last, was) -> trial < 8 ? 0 : 1,
            (trial, places, last, was) -> was ? last : (last + 1) % places);
    int trials = task.usualTrials();
    int runs = 4000;
    double chance = task.discrimination().chance();
    TrialsPower shows = TrialsPower.of(trials, chance, 0.5);
    int least = shows.least().orElseThrow();
    double exact = BinomialDistribution.of(trials, chance).survivalProbability(least - 1);
    int places = task == TellingTask.TRIANGLE ? 3 : 2;
    int[] told = new int[habits.size()];
    for (int run = 0; run < runs; run++) {
      List<String> drawn = parts(Draw.order(Rule.trials(task, trials), seed(run)), task.laps());
      for (int h = 0; h < told.length; h++) {
        int last = 0;
        boolean was = false;
        int count = 0;
        for (int i = 0; i < trials; i++) {
          last = habits.get(h).names(i, places, last, was);
          was = right(task, drawn.get(i), last);
          count += was ? 1 : 0;
        }
        told[h] += count >= least ? 1 : 0;
      }
    }
    assertThat(exact).isLessThanOrEqualTo(0.05);
    double error = Math.sqrt(exact * (1 - exact) / runs);
    for (int h = 0; h < told.length; h++) {
      assertThat((double) told[h] / runs)
          .as("habit %s", h)
          .isCloseTo(exact, org.assertj.core.api.Assertions.within(4 * error));
    }
  }

  @Test
  void aHundredTrianglesAreSealedWithCodesOfTheirOwnAndComeBackFromPaper() {
    Rule rule = Rule.trials(TellingTask.TRIANGLE, 100);
    OpenKey key = Golden.key(rule);
    assertThat(key.algorithm()).isEqualTo("blindlap-trials-1");
    assertThat(OpenKey.knows(key.algorithm())).isTrue();
    assertThat(key.codes()).hasSize(300).doesNotHaveDuplicates().allMatch(c -> c > 99 && c < 1000);
    Sealed sealed = Golden.sealed(rule);
    assertThat(Sealing.verified(Golden.PLAN, rule, key, sealed.fingerprint()))
        .isEqualTo(Verification.MATCHES);
    assertThat(
            Golden.sealing()
                .openFromSheet(KeySheet.of(key).text(), Golden.PLAN, sealed.fingerprint()))
        .isEqualTo(new SheetReading.Opened(key));
  }

  @Test
  void aKeyUnderTheNameOfTheOtherDrawDoesNotMatch() {
    for (Rule rule : List.of(Golden.FIVE_TRIANGLES, Golden.BLOCKS_OF_FOUR)) {
      OpenKey key = Golden.key(rule);
      String other = rule.trials() ? Draw.ALGORITHM : Draw.TRIALS;
      OpenKey renamed =
          OpenKey.of(other, key.order(), key.codes(), key.seed(), nonce(key), key.sealedPart());
      Fingerprint print = PlanFingerprint.of(Golden.PLAN, renamed);
      assertThat(Sealing.verified(Golden.PLAN, rule, renamed, print))
          .isEqualTo(Verification.NOT_THE_DRAW);
    }
  }

  private static byte[] nonce(OpenKey key) {
    String text = key.text();
    int at = text.indexOf("nonce=") + "nonce=".length();
    return java.util.HexFormat.of().parseHex(text.substring(at, at + 64));
  }

  @Test
  void aSequenceOfAnotherLengthOrSetupIsRefused() {
    assertThatThrownBy(() -> rule("AB").assignments()).hasMessageContaining("\"AB\"");
    assertThatThrownBy(() -> rule("ABC").assignments()).hasMessageContaining("\"ABC\"");
  }

  private static Rule rule(String sequence) {
    return new Rule(2, 9, 3, List.of("AAB", sequence), null, null, true);
  }
}
