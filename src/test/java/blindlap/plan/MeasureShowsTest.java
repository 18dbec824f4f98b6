package blindlap.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.compare.ConfidenceCurve;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Sampling;
import blindlap.wording.MeasureAnswers;
import java.math.BigInteger;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** What a day can show in measures beside the primary, against days simulated here. */
class MeasureShowsTest {
  private static Plan plan(int watched, int secondary, String more) {
    String others =
        IntStream.range(0, watched + secondary)
            .mapToObj(
                i ->
                    "{name: dabs %d, kind: count, unit: a lap, role: %s, worthwhile: 2}"
                        .formatted(i, i < watched ? "watch for harm" : "secondary"))
            .collect(Collectors.joining(", "));
    return Plans.with(
        "timetable: null\nnoise: {sd: 0.35}\nmeasures: [{name: lap time, kind: lap time, unit: s,"
            + " role: primary, worthwhile: 0.5}"
            + (others.isEmpty() ? "" : ", " + others)
            + "]\n"
            + more);
  }

  private static DayAnswer answer(Plan plan) {
    return new DayAnswers().quick(plan).orElseThrow();
  }

  /**
   * Share of days on which a shift of B, noise 1, is shown beyond a margin at a two-sided level.
   */
  private static double found(Plan plan, double shift, double margin, double level) {
    Assignments set = plan.rule().assignments();
    var source = RandomSource.XO_RO_SHI_RO_128_PP.create(15);
    Random noise = new Random(16);
    boolean[] valid = new boolean[plan.stints()];
    Arrays.fill(valid, true);
    int trials = 1500;
    int found = 0;
    for (int trial = 0; trial < trials; trial++) {
      int[] order = set.random(source);
      double[] y = new double[order.length];
      for (int i = 0; i < y.length; i++) {
        y[i] = order[i] * shift + noise.nextGaussian();
      }
      ConfidenceCurve curve =
          TwoSetups.compare(set, order, y, valid, Drift.LINE, Sampling.PREFERRED).curve();
      boolean shown = margin > 0 ? curve.exceeds(margin, level / 2) : curve.p(0) <= level + 1e-12;
      found += shown ? 1 : 0;
    }
    return (double) found / trials;
  }

  @Test
  void aWatchedHarmIsShownOnEightOfTenAsSaid() {
    for (int watched : new int[] {1, 3}) {
      Plan plan = plan(watched, 0, "");
      MeasureShows shows = answer(plan).measures().get(0);

      assertThat(shows.tested()).isEqualTo(watched);
      // Three standard errors of 1 500 days and the slack of the formula.
      assertThat(found(plan, 2 + shows.units(), 2, 0.05 / watched)).isCloseTo(0.8, within(0.05));
    }
  }

  @Test
  void aSecondaryMeasureIsShownOnEightOfTenAsSaid() {
    Plan plan = plan(0, 2, "");

    assertThat(found(plan, answer(plan).measures().get(1).units(), 0, 0.025))
        .isCloseTo(0.8, within(0.05));
  }

  @Test
  void theOrdersCarryAsManyWatchedMeasuresAsTheMethodSays() {
    // 2M/K at most .05: one on the eight-stint set, five at 12 stints in blocks of four.
    assertThat(MeasureShows.mostWatched(BigInteger.valueOf(50))).isEqualTo(1);
    assertThat(MeasureShows.mostWatched(BigInteger.valueOf(216))).isEqualTo(5);
    for (int watched = 1; watched <= 6; watched++) {
      Plan twelve = plan(watched, 0, "stints: 12\n");
      assertThat(answer(twelve).measures())
          .hasSize(watched)
          .allMatch(m -> Double.isNaN(m.units()) == (m.tested() > 5));
    }
    Plan eight = plan(2, 0, "protocol: eight-stints\nstints: 8\n");
    assertThat(answer(eight).measures()).allMatch(m -> Double.isNaN(m.units()));
  }

  @Test
  void theTableHasARowForEveryMeasureAndWarnsAboveThree() {
    for (int watched = 0; watched <= 6; watched++) {
      Plan plan = plan(watched, 1, "stints: 12\n");
      MeasureAnswers words = new MeasureAnswers(plan, Optional.of(answer(plan)), EarlierNoise.NONE);
      List<List<String>> rows = words.rows();
      String notes = String.join(" ", words.notes());

      assertThat(rows).hasSize(watched + 2).allMatch(row -> row.size() == 3);
      assertThat(rows.get(0).get(0)).isEqualTo("lap time");
      assertThat(rows.get(0).get(2)).matches("0\\.\\d+\\P{Alnum}s or more");
      assertThat(notes.contains("Above three")).isEqualTo(watched > 3);
      assertThat(notes.contains("no harm can be shown")).isEqualTo(watched > 5);
      assertThat(notes.contains("can watch 5")).isEqualTo(watched > 0);
      String harms = rows.toString();
      assertThat(harms.contains("a harm that exceeds 2 a lap by "))
          .isEqualTo(watched > 0 && watched <= 5);
      assertThat(harms.contains("nothing, however large")).isEqualTo(watched > 5);
    }
  }

  @Test
  void aPlanOfOneMeasureHasNoTable() {
    Plan plan = plan(0, 0, "");

    assertThat(new MeasureAnswers(plan, Optional.of(answer(plan)), EarlierNoise.NONE).rows())
        .isEmpty();
  }
}
