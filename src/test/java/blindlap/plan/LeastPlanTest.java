package blindlap.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.fault.Unusable;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.power.DayPower;
import blindlap.stats.power.PairsDetectable;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The recommended plan is the least that does what was asked: every smaller one is tried here. */
class LeastPlanTest {
  private static final List<Protocol> PROTOCOLS = List.copyOf(Plans.protocols().all());
  private static final DayAnswers ANSWERS = new DayAnswers(() -> PROTOCOLS);

  /** Simulated afresh with another seed: so many standard errors of 3 000 days either way. */
  private static final double SIMULATION = 0.035;

  private static DayAnswer answer(String yaml) {
    return ANSWERS.quick(Plans.with("timetable: null\n" + yaml)).orElseThrow();
  }

  /** What such a day shows on 8 of 10, in units of noise; NaN if nothing. */
  private static double unit(Protocol protocol, int setups, int stints) {
    try {
      Assignments set = protocol.rule(setups, stints).assignments();
      if (set.count().signum() == 0) {
        return Double.NaN;
      }
      if (setups > 2) {
        return PairsDetectable.of(set, Drift.LINE).difference(1, 0.8);
      }
      return DayPower.of(set, Drift.LINE).difference(1, 0.8, 3000, 99, () -> false).difference();
    } catch (Unusable none) {
      return Double.NaN;
    }
  }

  private static boolean small(Protocol protocol, int setups, int stints) {
    return setups == 2 && protocol.rule(2, stints).assignments().count().bitLength() < 8;
  }

  private static void isLeast(DayAnswer day, int setups, double wanted) {
    List<String> smaller = new ArrayList<>();
    int found = day.least().map(DayAnswer.Least::stints).orElse(Rule.MOST_STINTS + 1);
    for (Protocol protocol : PROTOCOLS) {
      boolean made = protocol.setups().isEmpty() || protocol.setups().contains(setups);
      Integer block = protocol.block();
      int step = block == null ? setups : block;
      for (int stints = step; made && stints < found && stints <= 24; stints += step) {
        double unit = unit(protocol, setups, stints);
        double slack = small(protocol, setups, stints) ? 1 - SIMULATION : 1;
        if (unit <= slack * wanted) {
          smaller.add(protocol.name() + " " + stints + " shows " + unit);
        }
      }
    }
    assertThat(smaller).as("smaller plans that show " + wanted).isEmpty();
    day.least()
        .ifPresent(
            least ->
                assertThat(unit(least.protocol(), setups, least.stints()))
                    .isLessThanOrEqualTo(
                        wanted
                            * (small(least.protocol(), setups, least.stints())
                                ? 1 + SIMULATION
                                : 1)));
  }

  @Test
  void noSmallerPlanShowsWhatWasAskedOverRandomPlansOfTwoSetups() {
    Random random = new Random(14);
    String[] rules = {"blocks-of-four", "pairs", "whole-day", "limited-runs"};
    for (int i = 0; i < 12; i++) {
      double wanted = Math.exp(Math.log(1.2) + random.nextDouble() * Math.log(2.5 / 1.2));
      DayAnswer day =
          answer(
              "protocol: %s\nstints: 16\nnoise: {sd: %.6f}\n"
                  .formatted(rules[i % rules.length], 0.5 / wanted));
      isLeast(day, 2, 0.5 / Double.parseDouble("%.6f".formatted(0.5 / wanted)));
    }
  }

  @Test
  void noSmallerPlanShowsWhatWasAskedOfThreeAndFourSetups() {
    for (double wanted : new double[] {1.6, 2.2, 3}) {
      String noise = "noise: {sd: %.9f}\n".formatted(0.5 / wanted);
      isLeast(
          answer(
              "setups: [{name: A}, {name: B}, {name: C}]\nprotocol: three-setups\nstints: 18\n"
                  + noise),
          3,
          wanted * (1 + 1e-6));
      isLeast(
          answer(
              "setups: [{name: A}, {name: B}, {name: C}, {name: D}]\nprotocol: four-setups\n"
                  + "stints: 24\n"
                  + noise),
          4,
          wanted * (1 + 1e-6));
    }
  }

  @Test
  void anotherRuleIsNamedOnlyWhereItNeedsFewerStints() {
    // docs/method.md#figures-of-rules: blocks of four with 16 stints show 1.54, pairs 1.68.
    DayAnswer day = answer("protocol: pairs\nstints: 16\nnoise: {sd: 0.32}\n");

    DayAnswer.Least least = day.least().orElseThrow();
    assertThat(least.protocol().name()).isNotEqualTo("pairs");
    assertThat(least.stints()).isLessThanOrEqualTo(16);
    assertThat(least.difference()).isLessThanOrEqualTo(0.5);
  }

  @Test
  void threeSetupsAreNeverSentToASeries() {
    for (double sd : new double[] {0.1, 0.5, 2}) {
      DayAnswer day =
          answer(
              "setups: [{name: A}, {name: B}, {name: C}]\nprotocol: three-setups\nstints: 18\n"
                  + "noise: {sd: "
                  + sd
                  + "}\n");
      assertThat(day.days()).isEmpty();
    }
  }

  @Test
  void aSeriesHasJustAsManyDaysAsItNeeds() {
    DayAnswer day = answer("noise: {sd: 0.64}\n");
    int days = day.days().getAsInt();
    DayPower power = DayPower.of(Rule.blocks(2, 16, 4).assignments(), Drift.LINE);

    assertThat(power.formula().days(days).difference(0.64, 0.8)).isLessThanOrEqualTo(0.5);
    assertThat(power.formula().days(days - 1).difference(0.64, 0.8)).isGreaterThan(0.5);
    assertThat(power.formula().days(1)).isEqualTo(power.formula());
    // Pooled days are a little better than the mean of as many days.
    assertThat(power.formula().days(4).difference(1, 0.8))
        .isCloseTo(power.formula().difference(1, 0.8) / 2, within(0.06))
        .isLessThan(power.formula().difference(1, 0.8) / 2);
  }
}
