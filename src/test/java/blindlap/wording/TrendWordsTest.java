package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.plan.Plan;
import blindlap.review.Analysis;
import blindlap.review.Finding;
import blindlap.review.StepsDays;
import blindlap.stats.compare.LevelMeans;
import blindlap.stats.compare.Trend;
import blindlap.stats.distribution.Interval;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What is said of a trend is what was worked out, and nothing lies outside typed limits. */
class TrendWordsTest {
  private static final Pattern NUMBER = Pattern.compile("\\d+(?:\\.\\d+)?");

  private static TrendWords words(Finding finding) {
    return TrendWords.of(finding).orElseThrow();
  }

  private static Finding finding(Plan plan, Random random, double noise, double... effects) {
    return Analysis.of(StepsDays.day(plan, effects, noise, random));
  }

  private static List<Double> numbers(String said) {
    return NUMBER.matcher(said).results().map(m -> Double.valueOf(m.group())).toList();
  }

  @Test
  void overRandomDaysEveryFigureIsThatOfTheTrend() {
    Random random = new Random(5);
    Plan plan =
        StepsDays.plan("unit: clicks, levels: [3, 6, 9, 14], least: 1, most: 16", 4, 12, "lower");
    Set<String> answers = new TreeSet<>();
    for (int i = 0; i < 40; i++) {
      double slope = 3 * random.nextDouble();
      double dip = i % 2 == 0 ? 0 : 2 * random.nextDouble();
      Finding finding = finding(plan, random, 0.5, 0, slope / 3 - dip, slope * 2 / 3 - dip, slope);
      Trend trend = finding.trend().orElseThrow();
      TrendWords words = words(finding);

      double each = Math.abs(trend.estimate() / 11);
      String size = NUMBER.matcher(words.perUnit()).results().findFirst().orElseThrow().group();
      assertThat(Double.parseDouble(size))
          .isCloseTo(each, within(0.51 * Math.pow(10, -decimals(size))));
      assertThat(words.perUnit()).contains(" s for every click");
      assertThat(words.perUnit().startsWith("best estimate")).isEqualTo(!trend.real());

      LevelMeans means = trend.means().orElseThrow();
      for (int pair = 0; pair < means.pairs().size(); pair++) {
        Interval interval = means.interval(means.pairs().get(pair), 0.95);
        boolean apart = interval.low() > 0 || interval.high() < 0;
        assertThat(words.pairs().get(pair).shown()).isEqualTo(apart);
        assertThat(words.pairs().get(pair).said().equals("not told apart")).isEqualTo(!apart);
      }
      assertThat(words.bend().startsWith("Yes: ")).isEqualTo(trend.middleBetter(true).isPresent());
      assertThat(words.bend().contains("but the line bends"))
          .isEqualTo(trend.bend().orElseThrow().real() && trend.middleBetter(true).isEmpty());
      assertThat(words.beyond().isPresent()).isEqualTo(trend.stillBetter(true).isPresent());
      answers.add(words.bend().substring(0, 10));
    }
    assertThat(answers).hasSizeGreaterThan(1);
  }

  private static int decimals(String number) {
    return number.contains(".") ? number.length() - number.indexOf('.') - 1 : 0;
  }

  @Test
  void beyondTheLastLevelNothingIsNamedButTheTypedLimits() {
    Random random = new Random(6);
    Finding typed =
        finding(
            StepsDays.plan(
                "unit: clicks, levels: [3, 6, 9, 12], least: 1, most: 14, source: p. 9",
                4,
                12,
                "lower"),
            random,
            0.2,
            0,
            1,
            2,
            3);
    assertThat(words(typed).beyondTitle()).contains("Still getting better at the last step ridden");
    assertThat(words(typed).beyond().orElseThrow())
        .contains("The best level ridden, 3 clicks, is an end")
        .contains("as you typed them: 1 to 14 clicks (p. 9)")
        .contains("a trained mechanic decide");
    assertThat(numbers(words(typed).beyond().orElseThrow()))
        .containsExactlyInAnyOrder(3.0, 1.0, 14.0, 9.0);

    Finding reached =
        finding(
            StepsDays.plan("unit: clicks, levels: [3, 6, 9, 12], least: 3", 4, 12, "lower"),
            random,
            0.2,
            0,
            1,
            2,
            3);
    assertThat(words(reached).beyond().orElseThrow()).contains("nothing beyond may be set");

    Finding unknown =
        finding(
            StepsDays.plan("unit: clicks, levels: [3, 6, 9, 12], most: 20", 4, 12, "lower"),
            random,
            0.2,
            0,
            1,
            2,
            3);
    assertThat(words(unknown).beyond().orElseThrow())
        .contains("No limit of the maker was typed in on that side, so nothing is proposed");
    assertThat(numbers(words(unknown).beyond().orElseThrow())).containsExactly(3.0);
  }

  @Test
  void whereNoDirectionIsBetterNothingIsCalledBetter() {
    Finding finding =
        finding(
            StepsDays.plan("unit: clicks, levels: [3, 6, 9], least: 1", 3, 12, "neither"),
            new Random(7),
            0.2,
            1,
            0,
            3);
    TrendWords words = words(finding);
    assertThat(words.bendTitle()).isEqualTo("Does the line bend?");
    assertThat(words.bend()).doesNotContain("better");
    assertThat(words.beyond()).isEmpty();
    assertThat(String.join(" ", words.lines())).doesNotContain("better");
  }

  @Test
  void theUnitIsSaidOfOne() {
    Random random = new Random(8);
    for (String[] each :
        new String[][] {
          {"clicks from closed", "click from closed"},
          {"psi", "psi"},
          {"lbs/in", "lb/in"},
          {"spacers", "spacer"},
          {"s", "s"}
        }) {
      String unit = "unit: \"" + each[0] + "\", levels: [3, 6, 9]";
      TrendWords words = words(finding(StepsDays.plan(unit, 3, 12, "lower"), random, 0.5, 0, 1, 2));
      Matcher said = Pattern.compile("for every (.+?)(?: \\(|$)").matcher(words.perUnit());
      assertThat(said.find()).as(words.perUnit()).isTrue();
      assertThat(said.group(1)).isEqualTo(each[1]);
    }
  }
}
