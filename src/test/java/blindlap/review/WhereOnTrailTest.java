package blindlap.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.fault.DayFault;
import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.session.day.LapId;
import blindlap.stats.compare.SeveralMeasures;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Where on the trail a known gain lies, and what is masked, withheld or refused. */
class WhereOnTrailTest {
  private static final Rule SIXTEEN = Rule.blocks(2, 16, 4);
  private static final String ORDER = "ABBABAABABBABAAB";

  private static WhereOnTrail found(DayRecord day) {
    return Analysis.of(day).where().orElseThrow();
  }

  private static DayRecord gaining(boolean declared) {
    return WhereDays.day(
        WhereDays.plan(SIXTEEN, declared), ORDER, WhereDays.gain(195, 420, 2), 0.02, new Random(7));
  }

  @Test
  void aGainIsFoundInTheSectorItLiesInAndNowhereElse() {
    WhereOnTrail where = found(gaining(true));
    WhereOnTrail.Sectors sectors = where.sectors().orElseThrow();
    assertThat(sectors.each()).hasSize(3);
    assertThat(sectors.shown())
        .singleElement()
        .satisfies(
            s -> {
              assertThat(s.sector()).isEqualTo(1);
              assertThat(s.estimate()).isCloseTo(-2, within(0.1));
              assertThat(s.interval().orElseThrow().low()).isBetween(-2.3, -2.0);
              assertThat(s.interval().orElseThrow().high()).isBetween(-2.0, -1.7);
              assertThat(s.faster()).isEqualTo(1);
              assertThat(s.laps()).isEqualTo(16);
              assertThat(s.recorder()).isCloseTo(1.96 * 0.14 * 0.5, within(1e-9));
            });
    assertThat(sectors.method()).isEqualTo(SeveralMeasures.Method.STEP_DOWN_MAXIMUM);
    assertThat(sectors.together()).isTrue();
    assertThat(where.declared()).isTrue();
    assertThat(where.tested()).isTrue();
  }

  @Test
  void theRunningSumFollowsTheTruthAndEndsAtTheLap() {
    DayRecord day = gaining(true);
    Finding finding = Analysis.of(day);
    WhereOnTrail.Line line = finding.where().orElseThrow().line().orElseThrow();
    assertThat(line.total()).isCloseTo(finding.primary().orElseThrow().estimate(), within(1e-9));
    double[] truth = WhereDays.byPiece(WhereDays.gain(195, 420, 2));
    double[] halves = line.along().cumulative().halfWidths();
    double sum = 0;
    for (int piece = 0; piece < truth.length; piece++) {
      sum += truth[piece];
      assertThat(line.along().cumulative().estimates()[piece])
          .isCloseTo(sum, within(halves[piece]));
    }
    assertThat(line.at(0)).isZero();
    assertThat(line.at(690)).isEqualTo(line.total());
    assertThat(line.at(405)).isCloseTo((line.at(390) + line.at(420)) / 2, within(1e-9));
  }

  /** A second way: an ordinary regression on setup and drift gives each piece's difference. */
  @Test
  void everyPieceIsWhatARegressionGives() {
    DayRecord day = gaining(true);
    WhereOnTrail.Line line = found(day).line().orElseThrow();
    int[] order = Orders.parse(ORDER);
    for (int piece = 0; piece < WhereDays.pieces(); piece++) {
      double[] y = new double[order.length];
      double[][] x = new double[order.length][];
      for (int i = 0; i < y.length; i++) {
        y[i] = line.values()[i][piece];
        x[i] = new double[] {order[i], i};
      }
      OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression();
      regression.newSampleData(y, x);
      assertThat(line.along().pieces().estimates()[piece])
          .isCloseTo(regression.estimateRegressionParameters()[1], within(1e-9));
    }
  }

  /** Gates stand where they were laid, though only times say so. */
  @Test
  void gatesAreFoundOnTheLineByTheTimesOfTheirPasses() {
    double[] gates = found(gaining(true)).line().orElseThrow().gates();
    for (int gate = 0; gate < gates.length; gate++) {
      assertThat(gates[gate]).isCloseTo(WhereDays.GATES[gate], within(1.0));
    }
  }

  @Test
  void aMissingPieceMasksItsStintInAllOfTheLineAndInNoSector() {
    DayRecord day = gaining(true);
    WhereOnTrail where = found(WhereDays.with(day, 3, WhereDays.gap(day, 3, 20)));
    assertThat(where.line().orElseThrow().used()).isEqualTo(15);
    assertThat(where.line().orElseThrow().values()[2]).containsOnly(Double.NaN);
    assertThat(where.sectors().orElseThrow().each()).allMatch(s -> s.used() == 16);
    double[][] left = where.line().orElseThrow().values();
    double[][] before = found(day).line().orElseThrow().values();
    for (int i = 0; i < left.length; i++) {
      if (i != 2) {
        assertThat(left[i]).isEqualTo(before[i]);
      }
    }
  }

  @Test
  void aVoidSectorMasksItsOwnTimeAndTheLineAndHolmAdjusts() {
    DayRecord day = gaining(true);
    WhereOnTrail where = found(WhereDays.with(day, 5, WhereDays.voided(day, 5, 0)));
    WhereOnTrail.Sectors sectors = where.sectors().orElseThrow();
    assertThat(sectors.each()).extracting(WhereOnTrail.OfSector::used).containsExactly(15, 16, 16);
    assertThat(where.line().orElseThrow().used()).isEqualTo(15);
    assertThat(sectors.method()).isEqualTo(SeveralMeasures.Method.HOLM);
    assertThat(sectors.together()).isFalse();
    // Each alone, by the confidence curve: the second way is the measure that secondaries have.
    WhereOnTrail.OfSector second = sectors.each().get(1);
    boolean[] all = new boolean[16];
    Arrays.fill(all, true);
    TwoSetups alone =
        TwoSetups.compare(
            SIXTEEN.assignments(),
            Orders.parse(ORDER),
            second.values(),
            all,
            Drift.LINE,
            Sampling.PREFERRED);
    assertThat(second.interval()).contains(alone.curve().interval(0.95).orElseThrow());
    assertThat(second.p().orElseThrow()).isCloseTo(3 * alone.curve().p(0), within(1e-12));
  }

  /** The step-down p of three sectors, counted once more over all orders that could be drawn. */
  @Test
  void theLargestSectorsPIsTheShareOfOrdersThatShowAsMuchInSomeSector() {
    DayRecord day =
        WhereDays.day(
            WhereDays.plan(Rule.blocks(2, 12, 4), true),
            "ABBAABABBAAB",
            WhereDays.gain(420, 690, 0.06),
            0.03,
            new Random(3));
    WhereOnTrail.Sectors sectors = found(day).sectors().orElseThrow();
    double most = 0;
    double[] observed = statistics(Orders.parse(day.order()), sectors);
    for (double each : observed) {
      most = Math.max(most, each);
    }
    int asMuch = 0;
    List<String> orders = new ArrayList<>(Rule.blocks(2, 12, 4).assignments().list());
    for (String order : orders) {
      double largest = Arrays.stream(statistics(Orders.parse(order), sectors)).max().orElseThrow();
      asMuch += largest >= most - 1e-9 ? 1 : 0;
    }
    double smallest =
        sectors.each().stream().mapToDouble(s -> s.p().orElseThrow()).min().orElseThrow();
    assertThat(orders).hasSize(216);
    assertThat(smallest).isBetween(0.02, 0.9);
    assertThat(smallest).isCloseTo(asMuch / 216.0, within(1e-12));
  }

  /** Share of each sector's variation beside drift that an order explains, by regression. */
  private static double[] statistics(int[] order, WhereOnTrail.Sectors sectors) {
    double[] shares = new double[sectors.each().size()];
    for (int s = 0; s < shares.length; s++) {
      double[] y = sectors.each().get(s).values();
      double[][] drift = new double[y.length][];
      double[][] both = new double[y.length][];
      for (int i = 0; i < y.length; i++) {
        drift[i] = new double[] {i};
        both[i] = new double[] {i, order[i]};
      }
      OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression();
      regression.newSampleData(y, drift);
      double without = regression.calculateResidualSumOfSquares();
      regression.newSampleData(y, both);
      shares[s] = 1 - regression.calculateResidualSumOfSquares() / without;
    }
    return shares;
  }

  @Test
  void withoutATrailAtCommitItIsExploratory() {
    WhereOnTrail where = found(gaining(false));
    assertThat(where.declared()).isFalse();
    assertThat(where.sectors().orElseThrow().shown()).hasSize(1);
  }

  @Test
  void fewOrdersGiveNoBandButTheSamePs() {
    DayRecord day =
        WhereDays.day(
            WhereDays.plan(new Rule(2, 12, 4, List.of("ABBA", "BAAB"), null, null), true),
            "ABBABAABABBA",
            WhereDays.gain(0, 195, 3),
            0.02,
            new Random(5));
    WhereOnTrail where = found(day);
    assertThat(where.line().orElseThrow().along().cumulative().halfWidths())
        .containsOnly(Double.NaN);
    assertThat(where.sectors().orElseThrow().together()).isFalse();
    assertThat(where.sectors().orElseThrow().each()).allMatch(s -> s.p().isPresent());
  }

  @Test
  void threeSetupsAreRefused() {
    DayRecord day =
        WhereDays.day(
            WhereDays.plan(Rule.blocks(3, 9, 3), true),
            "ABCBCACAB",
            WhereDays.gain(0, 195, 1),
            0.02,
            new Random(5));
    WhereOnTrail where = found(day);
    assertThat(where.compared()).isFalse();
    assertThat(where.why().orElseThrow().fault()).isEqualTo(DayFault.NOT_TWO_SETUPS);
  }

  @Test
  void whereTheRiderKnowsVoidsMaskNothing() {
    Plan plan =
        WhereDays.of(Days.at(BlindLevel.OPEN, Days.plan(SIXTEEN, List.of(Days.lapTime()))), true);
    DayRecord day = WhereDays.day(plan, ORDER, WhereDays.gain(195, 420, 2), 0.02, new Random(7));
    WhereOnTrail where = found(WhereDays.with(day, 5, WhereDays.voided(day, 5, 0)));
    assertThat(where.line().orElseThrow().used()).isEqualTo(16);
    assertThat(where.sectors().orElseThrow().each()).allMatch(s -> s.used() == 16);
  }

  @Test
  void aDayWithoutRecordingsSaysNothingOfTheWay() {
    DayRecord day =
        Days.day(WhereDays.plan(SIXTEEN, true), ORDER, Map.of("lap time", new double[16]));
    assertThat(Analysis.of(day).where()).isEmpty();
  }

  @Test
  void aSectorThatFewStintsHaveIsNotTestedAndTheOthersAre() {
    DayRecord day = gaining(true);
    for (int stint = 1; stint <= 16; stint++) {
      if (stint > 2) {
        RecordedTimes.Lap lap =
            Objects.requireNonNull(day.recorded().laps().get(new LapId(stint, 1)));
        List<@Nullable BigDecimal> sectors = new ArrayList<>(lap.sectors());
        sectors.set(2, null);
        day =
            WhereDays.with(
                day,
                stint,
                new RecordedTimes.Lap(sectors, lap.uncertainties(), lap.pieces(), lap.voided()));
      }
    }
    WhereOnTrail.Sectors sectors = found(day).sectors().orElseThrow();
    assertThat(sectors.each().get(2).estimate()).isNaN();
    assertThat(sectors.each().get(2).p()).isEmpty();
    assertThat(sectors.each().get(1).shown()).isTrue();
  }
}
