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
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Orders;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Words and numbers of three setups agree, over random sessions. */
class ManySentencesTest {
  private static final Rule RULE = Rule.blocks(3, 12, 3);
  private static final int DAYS = 120;

  /** Four tests read the same days: working one out takes far longer than reading it. */
  private static final List<Finding> SECONDARY =
      IntStream.range(0, DAYS)
          .mapToObj(seed -> day(new Random(seed), Measure.Better.HIGHER, Measure.Role.SECONDARY))
          .toList();

  private static Finding day(Random random, Measure.Better better, Measure.Role role) {
    Measure primary = Days.lapTime();
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
    for (Finding finding : SECONDARY) {
      ManyComparison many = finding.many().get(0);
      List<String> lines = new ManyWords(finding.day().plan(), many, false).pairs();
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
    for (Finding finding : SECONDARY) {
      ManyComparison many = finding.many().get(0);
      String headline = new ManyWords(finding.day().plan(), many, false).headline();
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

  /** A harm is shown only if the interval lies beyond the declared size, in its direction. */
  @Test
  void whoDidHarmInAWatchedMeasureFollowsItsDirectionAndTheDeclaredSize() {
    int harmful = 0;
    int differentOnly = 0;
    for (int seed = 0; seed < DAYS; seed++) {
      Measure.Better better = seed % 2 == 0 ? Measure.Better.HIGHER : Measure.Better.LOWER;
      Finding finding = day(new Random(seed), better, Measure.Role.WATCH_FOR_HARM);
      ManyComparison feel = finding.many().get(1);
      List<String> lines = new FindingText(finding).circumstances();
      for (ManySetups.Pair pair : feel.result().pairs()) {
        boolean secondWorse = (pair.estimate() > 0) == (better == Measure.Better.LOWER);
        int bad = secondWorse ? pair.second() : pair.first();
        int good = pair.first() + pair.second() - bad;
        String start =
            name(bad) + " against " + name(good) + ", feel: harm of 8 points or more shown";
        Interval interval = feel.shifts(pair).orElseThrow();
        boolean beyond = interval.low() > 8 || interval.high() < -8;
        harmful += beyond ? 1 : 0;
        differentOnly += feel.separated(pair) && !beyond ? 1 : 0;
        assertThat(lines.stream().anyMatch(l -> l.startsWith(start))).as(start).isEqualTo(beyond);
      }
      assertThat(lines.stream().filter(l -> l.contains("harm of")))
          .hasSize(feel.shownHarms().size());
    }
    assertThat(harmful).isGreaterThan(30);
    assertThat(differentOnly).as("told apart, yet no harm as large as declared").isPositive();
  }

  @Test
  void whatIsNotToldApartHasItsIntervalAndTheHeadlineIsOneSentence() {
    Pattern interval = Pattern.compile("approximate 95 % interval [^)]*\\d");
    for (Finding finding : SECONDARY) {
      FindingText text = new FindingText(finding);
      assertThat(text.evidence().stream().filter(l -> l.contains("adjusted for 3 pairs")))
          .hasSize(3)
          .allMatch(l -> interval.matcher(l).find())
          .allMatch(l -> l.contains("0.5 s you said would matter"));
      String headline = text.headline().text();
      assertThat(headline.replaceAll("\\d\\.\\d", "").chars().filter(c -> c == '.').count())
          .as(headline)
          .isEqualTo(1);
      assertThat(headline.length()).isLessThan(220);
      if (headline.contains("not told apart") || headline.startsWith("No setup")) {
        assertThat(headline).containsPattern("up to \\d");
      }
    }
  }

  @Test
  void beyondAndWithinAreSaidOnlyWhereTheIntervalLiesThere() {
    int beyond = 0;
    for (Finding finding : SECONDARY) {
      ManyComparison many = finding.many().get(0);
      List<String> lines = new ManyWords(finding.day().plan(), many, false).pairs();
      for (int i = 0; i < lines.size(); i++) {
        Interval interval = many.shifts(many.result().pairs().get(i)).orElseThrow();
        boolean far = interval.low() > 0.5 || interval.high() < -0.5;
        boolean near = interval.low() > -0.5 && interval.high() < 0.5;
        beyond += far ? 1 : 0;
        assertThat(lines.get(i).contains("lies beyond the 0.5 s")).isEqualTo(far);
        assertThat(lines.get(i).contains("lies within the 0.5 s")).isEqualTo(near);
      }
    }
    assertThat(beyond).isGreaterThan(30);
  }
}
