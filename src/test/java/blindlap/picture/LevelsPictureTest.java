package blindlap.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.plan.Plan;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Palette;
import blindlap.plot.surface.SvgSurface;
import blindlap.review.Analysis;
import blindlap.review.Comparison;
import blindlap.review.DayRecord;
import blindlap.review.Days;
import blindlap.review.Finding;
import blindlap.review.StepsDays;
import blindlap.session.day.Guess;
import blindlap.session.day.LapState;
import blindlap.session.day.VoidEvent;
import blindlap.stats.compare.LevelMeans;
import blindlap.stats.order.Orders;
import blindlap.wording.TrendWords;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The pictures of a steps day show what was worked out, whatever the drift. */
class LevelsPictureTest {
  private static final Plan PLAN =
      StepsDays.plan("unit: clicks, levels: [3, 6, 9, 14], least: 1, most: 16", 4, 16, "lower");

  private static DayRecord day(long seed) {
    return StepsDays.day(PLAN, new double[] {0, 0.7, 1.1, 2.4}, 0.5, new Random(seed));
  }

  /** The same with the first laps of the day void. */
  private static DayRecord without(DayRecord day, int gone) {
    List<DayRecord.Lap> laps = new ArrayList<>();
    for (DayRecord.Lap lap : day.laps()) {
      Optional<LapState.Voided> voided =
          lap.id().stint() <= gone
              ? Optional.of(new LapState.Voided(VoidEvent.TRAFFIC, "", false))
              : Optional.empty();
      laps.add(
          new DayRecord.Lap(
              lap.id(),
              lap.ridden(),
              lap.values(),
              voided,
              lap.note(),
              lap.setAside(),
              lap.timed()));
    }
    return new DayRecord(
        day.session(),
        day.plan(),
        day.key(),
        laps,
        day.guesses(),
        day.blindBroken(),
        day.lastStint(),
        day.fits(),
        List.of());
  }

  private static double sum(double[] values) {
    return Arrays.stream(values).filter(value -> !Double.isNaN(value)).sum();
  }

  @Test
  void theDotsOfEveryLevelLieAboutItsMean() {
    for (long seed = 1; seed < 20; seed++) {
      int gone = (int) seed % 3;
      DayRecord day = without(day(seed), gone);
      Comparison comparison = Analysis.of(day).primary().orElseThrow();
      LevelMeans means = comparison.trend().orElseThrow().means().orElseThrow();
      double[] above = means.means().stream().mapToDouble(LevelMeans.Mean::mean).toArray();

      double[] removed =
          new FittedDrift(day, comparison.measure(), comparison.stints(), above).removed();

      for (LevelMeans.Mean mean : means.means()) {
        double average =
            IntStream.range(0, removed.length)
                .filter(i -> day.setup(i + 1) == mean.setup() && !Double.isNaN(removed[i]))
                .mapToDouble(i -> removed[i])
                .average()
                .orElseThrow();
        assertThat(average).isCloseTo(mean.mean(), within(1e-9));
      }
      assertThat(comparison.stints().used()).isEqualTo(16 - gone);
      assertThat(sum(removed)).isCloseTo(sum(comparison.stints().values()), within(1e-9));
    }
  }

  @Test
  void aLevelsShareOfTheTrendIsItsPlaceBetweenTheEnds() {
    double[] shares = LevelsPicture.shares(PLAN, 2.2);

    assertThat(shares[3] - shares[0]).isCloseTo(2.2, within(1e-12));
    assertThat(shares[1] - shares[0]).isCloseTo(2.2 * 3 / 11, within(1e-12));
    assertThat(Arrays.stream(shares).sum()).isCloseTo(0, within(1e-12));
  }

  @Test
  void everyPictureIsDrawnAndSaysWhatItShows() {
    Finding finding = Analysis.of(day(2));
    FindingPictures pictures = new FindingPictures(finding);
    String drawn =
        SvgSurface.svg(pictures.difference().orElseThrow(), 744, 1, Palette.PAPER, "trend");

    assertThat(drawn)
        .contains("rebound, clicks; all 16 stints, the day")
        .contains("3 to 14 clicks")
        .contains("flatter than 0.8 s")
        .contains("slower");
    assertThat(pictures.difference().orElseThrow().spoken().sentence())
        .startsWith("16 of 16 stints used; ");
    assertThat(pictures.difference().orElseThrow().spoken().all())
        .contains("14 clicks: mean 1:")
        .contains(TrendWords.of(finding).orElseThrow().bend());
    Comparison primary = finding.primary().orElseThrow();
    assertThat(pictures.small(primary.measure(), primary.stints())).isPresent();
    assertThat(SvgSurface.svg(pictures.riddenOrder().orElseThrow(), 744, 1, Palette.PAPER, "order"))
        .contains("a stint: the drift");
    assertThat(SvgSurface.svg(pictures.curve().orElseThrow(), 744, 1, Palette.PAPER, "curve"))
        .contains("(14 clicks less 3)");
    assertThat(GuessPicture.of(finding)).isEmpty();
  }

  private static final List<String> MEASURES =
      List.of(
          "{name: lap time, kind: lap time, unit: s, role: primary, scale: ratio, worthwhile: 2}",
          "{name: calm, kind: line scale, unit: points, low_words: bucks, high_words: glides,"
              + " role: primary, worthwhile: 8}",
          "{name: dabs, kind: count, unit: a lap, role: primary, drift: none, worthwhile: 1}",
          "{name: upper, kind: sector time, unit: s, role: primary, better: neither,"
              + " drift: curve, worthwhile: 0.4}");

  /** Values of a primary measure, some missing, one level perhaps gone, or all alike. */
  private static DayRecord odd(Plan plan, Random random, int kind) {
    String order = Days.order(plan.rule(), random);
    int[] levels = Orders.parse(order);
    double[] values = new double[levels.length];
    for (int i = 0; i < values.length; i++) {
      boolean gone = kind == 1 && levels[i] == 1 || kind == 2 && random.nextInt(5) == 0;
      double value = kind == 3 ? 40 : 40 + levels[i] + random.nextInt(6);
      values[i] = gone ? Double.NaN : value;
    }
    return Days.day(plan, order, Map.of(plan.measures().get(0).name(), values));
  }

  @Test
  void whateverIsMeasuredAndHoweverLittleIsLeftItIsDrawnInFiniteNumbers() {
    Random random = new Random(8);
    int drawn = 0;
    for (String measure : MEASURES) {
      Plan plan = StepsDays.measured("unit: psi, levels: [-2.5, 0, 4]", 3, 12, measure);
      for (int kind = 0; kind < 4; kind++) {
        Finding finding = Analysis.of(odd(plan, random, kind));
        FindingPictures pictures = new FindingPictures(finding);
        List<Drawing> all = new ArrayList<>();
        pictures.difference().ifPresent(all::add);
        pictures.riddenOrder().ifPresent(all::add);
        pictures.curve().ifPresent(all::add);
        finding.primary().flatMap(p -> pictures.small(p.measure(), p.stints())).ifPresent(all::add);
        for (Drawing each : all) {
          for (double width : new double[] {316, 744}) {
            assertThat(SvgSurface.svg(each, width, 1, Palette.PAPER, "any"))
                .as("%s, %d", measure, kind)
                .doesNotContain("NaN")
                .doesNotContain("Infinity")
                .doesNotContain("\u221e");
          }
          drawn++;
        }
      }
    }
    assertThat(drawn).isGreaterThan(50);
  }

  @Test
  void ticksOfShortLapsOnTheRatioScaleAreToldApart() {
    Plan plan = StepsDays.measured("levels: [1, 2, 3]", 3, 12, MEASURES.get(0));
    Finding finding = Analysis.of(odd(plan, new Random(4), 0));
    String drawn =
        SvgSurface.svg(
            new FindingPictures(finding).difference().orElseThrow(),
            744,
            1,
            Palette.PAPER,
            "trend");

    List<String> ticks =
        Pattern.compile(">(0:\\d\\d(?:\\.\\d+)?)<")
            .matcher(drawn)
            .results()
            .map(m -> m.group(1))
            .toList();

    assertThat(ticks).hasSizeGreaterThan(3).doesNotHaveDuplicates();
  }

  @Test
  void whereNothingVariesNoBandIsDrawn() {
    Plan plan = StepsDays.measured("levels: [1, 2, 3]", 3, 12, MEASURES.get(1));
    String drawn =
        SvgSurface.svg(
            new FindingPictures(Analysis.of(odd(plan, new Random(4), 3)))
                .difference()
                .orElseThrow(),
            744,
            1,
            Palette.PAPER,
            "trend");

    assertThat(drawn).contains("nothing varied").doesNotContain("95 %").contains("rebound; all 12");
  }

  @Test
  void theStripOfGuessesJoinsExactlyTheRightOnes() {
    Random random = new Random(6);
    for (long seed = 1; seed < 12; seed++) {
      DayRecord day = day(seed);
      TreeMap<Integer, Guess> guesses = new TreeMap<>();
      for (int stint = 1; stint <= PLAN.stints(); stint++) {
        int said = random.nextInt(4);
        if (said < 3) {
          guesses.put(stint, new Guess(said == 2 ? null : said, Guess.Sureness.HUNCH, ""));
        }
      }
      Finding finding =
          Analysis.of(
              new DayRecord(
                  day.session(),
                  PLAN,
                  day.key(),
                  day.laps(),
                  guesses,
                  day.blindBroken(),
                  day.lastStint(),
                  day.fits(),
                  List.of()));

      String drawn =
          SvgSurface.svg(GuessPicture.of(finding).orElseThrow(), 744, 1, Palette.PAPER, "guesses");

      long ends = guesses.values().stream().filter(guess -> guess.setup() != null).count();
      long strong = Pattern.compile("stroke-width=\"2\"").matcher(drawn).results().count();
      // An arrow is a shaft and a head.
      assertThat(strong).isEqualTo(2 * ends + finding.guesses().right());
      assertThat(Pattern.compile(">\\?<").matcher(drawn).results().count())
          .isEqualTo(guesses.size() - ends);
    }
  }
}
