package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.review.Analysis;
import blindlap.review.Days;
import blindlap.review.Finding;
import blindlap.review.ManyComparison;
import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.Scale;
import blindlap.stats.order.Orders;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Words and numbers of three setups agree, over random sessions. */
class ManySentencesTest {
  private static final Rule RULE = Rule.blocks(3, 12, 3);
  private static final int DAYS = 120;

  private static Finding day(Random random, Measure.Better better, Measure.Role role) {
    Measure primary =
        Days.measure(
            "lap time",
            Measure.Kind.LAP_TIME,
            Measure.Role.PRIMARY,
            Measure.Better.LOWER,
            "0.5",
            Scale.RAW);
    Measure feel = Days.measure("feel", Measure.Kind.LINE_SCALE, role, better, "8", Scale.RAW);
    Plan plan = Days.plan(RULE, List.of(primary, feel));
    String order = Days.order(RULE, random);
    double[] effects = {0, 3 * random.nextGaussian(), 3 * random.nextGaussian()};
    double[] feels = {0, 20 * random.nextGaussian(), 20 * random.nextGaussian()};
    int[] setups = Orders.parse(order);
    return Analysis.of(
        Days.day(
            plan,
            order,
            Map.of(
                "lap time", Days.values(setups, 90, effects, 0.8, 2, random),
                "feel", Days.values(setups, 50, feels, 6, 1, random))));
  }

  private static String name(int setup) {
    return "Shock " + (char) ('K' + setup);
  }

  @Test
  void aPairIsNamedFasterOnlyIfItIsAndToldApartOnlyIfItsAdjustedPSaysSo() {
    int shown = 0;
    int open = 0;
    for (int seed = 0; seed < DAYS; seed++) {
      Finding finding = day(new Random(seed), Measure.Better.HIGHER, Measure.Role.SECONDARY);
      ManyComparison many = finding.many().get(0);
      List<String> lines = new ManyWords(finding.day().plan(), many).pairs();
      for (int i = 0; i < lines.size(); i++) {
        ManySetups.Pair pair = many.result().pairs().get(i);
        boolean apart = pair.pAdjusted() <= 0.05;
        shown += apart ? 1 : 0;
        open += apart ? 0 : 1;
        assertThat(lines.get(i).contains("not told apart")).as(lines.get(i)).isEqualTo(!apart);
        int faster = pair.estimate() < 0 ? pair.second() : pair.first();
        int slower = pair.first() + pair.second() - faster;
        assertThat(lines.get(i))
            .containsPattern(name(faster) + " was [0-9.]+ s a lap faster than " + name(slower));
      }
    }
    assertThat(shown).isGreaterThan(50);
    assertThat(open).isGreaterThan(50);
  }

  @Test
  void anOrderIsSaidOnlyIfEveryNeighbouringPairDiffers() {
    int ordered = 0;
    for (int seed = 0; seed < DAYS; seed++) {
      Finding finding = day(new Random(seed), Measure.Better.HIGHER, Measure.Role.SECONDARY);
      ManyComparison many = finding.many().get(0);
      String headline = new ManyWords(finding.day().plan(), many).headline();
      boolean all = many.separatedPairs().size() == 3;
      if (headline.contains("best first")) {
        ordered++;
        assertThat(many.ordered()).isTrue();
        int best = many.ranked().get(0);
        assertThat(headline).contains("best first: " + name(best));
      } else {
        assertThat(all && many.ordered()).as(headline).isFalse();
      }
    }
    assertThat(ordered).isBetween(1, DAYS - 1);
  }

  @Test
  void whoDidWorseInAWatchedMeasureFollowsItsDirectionAndItsAdjustedP() {
    int worse = 0;
    for (int seed = 0; seed < DAYS; seed++) {
      Measure.Better better = seed % 2 == 0 ? Measure.Better.HIGHER : Measure.Better.LOWER;
      Finding finding = day(new Random(seed), better, Measure.Role.WATCH_FOR_HARM);
      ManyComparison feel = finding.many().get(1);
      List<String> lines = new FindingText(finding).circumstances();
      for (ManySetups.Pair pair : feel.result().pairs()) {
        boolean secondWorse = (pair.estimate() > 0) == (better == Measure.Better.LOWER);
        int bad = secondWorse ? pair.second() : pair.first();
        int good = pair.first() + pair.second() - bad;
        String start = name(bad) + " did worse than " + name(good) + " in feel";
        boolean apart = pair.pAdjusted() <= 0.05;
        worse += apart ? 1 : 0;
        assertThat(lines.stream().anyMatch(l -> l.startsWith(start))).as(start).isEqualTo(apart);
      }
      assertThat(lines.stream().filter(l -> l.contains(" did worse than ")))
          .hasSize(feel.separatedPairs().size());
    }
    assertThat(worse).isGreaterThan(30);
  }
}
