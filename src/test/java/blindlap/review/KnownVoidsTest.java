package blindlap.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.stats.compare.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Whoever voids laps or ends a day knowing what is on makes no verdict by it. */
class KnownVoidsTest {
  private static final Rule RULE = Rule.blocks(2, 12, 4);
  private static final String ORDER = "ABBABAABABAB";

  private static DayRecord day(BlindLevel level, double[][] times, boolean[][] voids) {
    Plan plan = Days.at(level, Days.plan(RULE, List.of(Days.lapTime()), times[0].length));
    return Days.laps(plan, ORDER, Map.of("lap time", times), voids);
  }

  private static double[][] times(long seed, int laps) {
    Random random = new Random(seed);
    double[][] times = new double[12][laps];
    for (int stint = 0; stint < 12; stint++) {
      for (int lap = 0; lap < laps; lap++) {
        times[stint][lap] = 90 + Math.round(100 * random.nextGaussian()) / 100.0;
      }
    }
    return times;
  }

  /** The slowest laps of setup B. */
  private static boolean[][] worst(double[][] times, int many) {
    boolean[][] voids = new boolean[12][times[0].length];
    for (int each = 0; each < many; each++) {
      int slowest = -1;
      for (int stint = 0; stint < 12; stint++) {
        boolean candidate = ORDER.charAt(stint) == 'B' && !voids[stint][0];
        if (candidate && (slowest < 0 || times[stint][0] > times[slowest][0])) {
          slowest = stint;
        }
      }
      voids[slowest][0] = true;
    }
    return voids;
  }

  @ParameterizedTest
  @EnumSource(BlindLevel.class)
  void belowPreparedAllRiddenLapsCarryTheVerdictAndTheOthersStandBeside(BlindLevel level) {
    for (long seed = 0; seed < 12; seed++) {
      for (int laps : new int[] {1, 2}) {
        double[][] times = times(seed, laps);
        Finding found = Analysis.of(day(level, times, worst(times, 3)));
        Finding all = Analysis.of(day(BlindLevel.HELPER, times, new boolean[12][laps]));
        Finding without = Analysis.of(day(BlindLevel.HELPER, times, worst(times, 3)));
        Comparison primary = found.primary().orElseThrow();
        Comparison expected = (level.blind() ? without : all).primary().orElseThrow();
        assertThat(primary.p()).isEqualTo(expected.p());
        assertThat(primary.estimate()).isEqualTo(expected.estimate());
        assertThat(primary.verdict()).isEqualTo(expected.verdict());
        Sensitivity beside = found.sensitivities().get(0);
        assertThat(beside.kind())
            .isEqualTo(
                level.blind() ? Sensitivity.Kind.ALL_RIDDEN : Sensitivity.Kind.VOIDS_LEFT_OUT);
        assertThat(beside.result().orElseThrow().curve().p(0))
            .isEqualTo((level.blind() ? all : without).primary().orElseThrow().p());
      }
    }
  }

  @Test
  void whatWasVoidIsCountedAllTheSame() {
    double[][] times = times(3, 1);
    Finding found = Analysis.of(day(BlindLevel.OPEN, times, worst(times, 2)));
    assertThat(found.voids().voids()).containsExactly(0, 2);
    assertThat(found.primary().orElseThrow().stints().used()).isEqualTo(12);
    assertThat(found.primary().orElseThrow().stints().missingShare()).isZero();
  }

  private static DayRecord ended(BlindLevel level, Optional<String> reason, int last) {
    DayRecord whole = day(level, times(5, 1), new boolean[12][1]);
    List<DayRecord.Lap> ridden = new ArrayList<>(whole.laps().subList(0, last));
    List<Remark> remarks =
        reason
            .map(why -> new Remark(Remark.Kind.CUT_SHORT, last, 0, "", "R. Lind", "", "", why))
            .stream()
            .toList();
    return new DayRecord(
        whole.session(),
        whole.plan(),
        whole.key(),
        ridden,
        whole.guesses(),
        whole.blindBroken(),
        reason.isPresent() ? last : 12,
        whole.fits(),
        remarks);
  }

  @ParameterizedTest
  @EnumSource(BlindLevel.class)
  void aDayThatSomeoneEndedWhoKnewHasNoVerdictAndNoTest(BlindLevel level) {
    for (Optional<String> why : List.of(Optional.of("tired"), Optional.<String>empty())) {
      Comparison primary = Analysis.of(ended(level, why, 10)).primary().orElseThrow();
      assertThat(primary.verdict().isPresent()).isEqualTo(level.blind());
      assertThat(primary.tested()).isEqualTo(level.blind());
      assertThat(primary.caveats().contains(Caveat.ENDED_FREELY)).isEqualTo(!level.blind());
      assertThat(RecordedFinding.today(ended(level, why, 10)).figure("p").isPresent())
          .isEqualTo(level.blind());
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "dark",
        "Darkness fell",
        " injury",
        "Injured hand",
        "damage to the rim",
        "Damaged"
      })
  void darkInjuryAndDamageEndADayThatKeepsItsVerdict(String reason) {
    for (BlindLevel level : BlindLevel.values()) {
      Comparison primary =
          Analysis.of(ended(level, Optional.of(reason), 10)).primary().orElseThrow();
      assertThat(primary.verdict()).isPresent();
    }
  }

  @Test
  void threeSetupsFollowTheSameRule() {
    Rule rule = Rule.blocks(3, 12, 3);
    Plan plan = Days.at(BlindLevel.DRAWN, Days.plan(rule, List.of(Days.lapTime())));
    String order = "ABCBCACABABC";
    double[][] times = times(9, 1);
    boolean[][] voids = new boolean[12][1];
    voids[1][0] = true;
    Finding found = Analysis.of(Days.laps(plan, order, Map.of("lap time", times), voids));
    assertThat(found.many().get(0).stints().used()).isEqualTo(12);
    assertThat(found.sensitivities().get(0).kind()).isEqualTo(Sensitivity.Kind.VOIDS_LEFT_OUT);
    DayRecord whole = Days.laps(plan, order, Map.of("lap time", times), new boolean[12][1]);
    DayRecord cut =
        new DayRecord(
            whole.session(),
            plan,
            whole.key(),
            whole.laps().subList(0, 9),
            whole.guesses(),
            whole.blindBroken(),
            9,
            whole.fits(),
            List.of());
    assertThat(Analysis.of(cut).many().get(0).tested()).isFalse();
  }

  @Test
  void theFirstEditionIsWorkedOutByItsOwnRule() {
    double[][] times = times(11, 1);
    boolean[][] voids = worst(times, 3);
    Optional<Comparison> first = Analysis.earlierVerdictOnly(day(BlindLevel.OPEN, times, voids));
    Optional<Comparison> blind = Analysis.verdictOnly(day(BlindLevel.HELPER, times, voids));
    assertThat(first.orElseThrow().p()).isEqualTo(blind.orElseThrow().p());
    assertThat(first.flatMap(Comparison::verdict)).isNotEqualTo(Optional.<Verdict>empty());
  }
}
