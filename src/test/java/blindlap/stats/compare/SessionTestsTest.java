package blindlap.stats.compare;

import static blindlap.stats.Refusals.refused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.SmallSets;
import blindlap.stats.distribution.Interval;
import blindlap.stats.noise.RiderNoise;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Orders;
import blindlap.stats.tell.GuessTest;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** Guesses, voids and the noise floor. */
class SessionTestsTest {
  private final UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(10L);

  private static boolean[] all(int n) {
    boolean[] use = new boolean[n];
    Arrays.fill(use, true);
    return use;
  }

  private static int rightLessWrong(String order, String guesses) {
    int t = 0;
    for (int i = 0; i < order.length(); i++) {
      char guess = guesses.charAt(i);
      t += guess == 'A' || guess == 'B' ? (guess == order.charAt(i) ? 1 : -1) : 0;
    }
    return t;
  }

  @Test
  void guessesAreCountedAsByGoingThroughAllOrders() {
    for (SmallSets.Plain rule : SmallSets.twoSetups()) {
      List<String> orders = SmallSets.filtered(rule);
      for (int trial = 0; trial < 10; trial++) {
        String ridden = orders.get(random.nextInt(orders.size()));
        StringBuilder guesses = new StringBuilder();
        for (int i = 0; i < rule.stints(); i++) {
          guesses.append("AABB-.".charAt(random.nextInt(6)));
        }
        int t = rightLessWrong(ridden, guesses.toString());
        long more = orders.stream().filter(o -> rightLessWrong(o, guesses.toString()) > t).count();
        long same = orders.stream().filter(o -> rightLessWrong(o, guesses.toString()) == t).count();
        if (guesses.chars().allMatch(c -> c == '.')) {
          continue;
        }
        GuessTest found =
            GuessTest.of(
                rule.assignments(),
                Orders.parse(ridden),
                guesses.toString(),
                all(rule.stints()),
                rule.block());
        assertThat(found.t()).isEqualTo(t);
        assertThat(found.p()).isCloseTo((more + same) / (double) orders.size(), within(1e-15));
        assertThat(found.midP()).isCloseTo((more + same / 2.0) / orders.size(), within(1e-15));
      }
    }
  }

  @Test
  void aRiderWhoAlwaysSaysBKnowsNothing() {
    GuessTest found =
        GuessTest.of(
            SmallSets.BLOCK4_12.assignments(),
            Orders.parse("ABBABABAABAB"),
            "B".repeat(12),
            all(12),
            4);
    assertThat(found.indexB()).isEqualTo(1);
    assertThat(found.indexA()).isEqualTo(-1);
    assertThat(found.p()).isEqualTo(1);
    assertThat(found.midP()).isEqualTo(0.5);
    assertThat(found.flagged()).isFalse();
  }

  @Test
  void aRiderWhoKnowsEveryStintIsFlaggedAndHasAnIntervalWithoutWidth() {
    GuessTest found =
        GuessTest.of(
            SmallSets.BLOCK4_12.assignments(),
            Orders.parse("ABBABABAABAB"),
            "ABBABABAABAB",
            all(12),
            4);
    assertThat(found.p()).isEqualTo(1 / 216.0);
    assertThat(found.flagged()).isTrue();
    assertThat(found.meanInterval95().orElseThrow()).isEqualTo(new Interval(1, 1));
  }

  @Test
  void aMissingGuessIsNotADontKnow() {
    Assignments set = SmallSets.COMPLETE_8.assignments();
    int[] order = Orders.parse("ABBABAAB");
    GuessTest unsure = GuessTest.of(set, order, "A-BA----", all(8), 8);
    GuessTest missing = GuessTest.of(set, order, "A.BA....", all(8), 8);
    assertThat(unsure.indexA()).isEqualTo(0.5);
    assertThat(missing.indexA()).isEqualTo(1);
    assertThat(missing.p()).isEqualTo(unsure.p());
    boolean[] valid = all(8);
    valid[0] = false;
    assertThat(GuessTest.of(set, order, "A.BA....", valid, 8).t()).isEqualTo(2);
  }

  @Test
  void guessesThatDoNotFitAreRefused() {
    Assignments set = SmallSets.COMPLETE_8.assignments();
    int[] order = Orders.parse("ABBABAAB");
    refused("guesses", () -> GuessTest.of(set, order, "ABBA", all(8), 8));
    refused("guesses", () -> GuessTest.of(set, order, "ABBAxAAB", all(8), 8));
    refused("guesses", () -> GuessTest.of(set, order, "........", all(8), 8));
    refused("order", () -> GuessTest.of(set, Orders.parse("AAAAAAAB"), "ABBAABBA", all(8), 8));
  }

  @Test
  void guessesOverAVeryLargeSetAreCountedExactly() {
    Assignments set = SmallSets.Plain.blocks(2, 60, 4).assignments();
    GuessTest found =
        GuessTest.of(set, Orders.parse("ABBA".repeat(15)), "ABBA".repeat(15), all(60), 4);
    assertThat(found.p()).isCloseTo(Math.pow(6, -15), within(1e-24));
  }

  @Test
  void unevenVoidsAreCountedAsByGoingThroughAllOrders() {
    for (SmallSets.Plain rule : SmallSets.all()) {
      List<String> orders = SmallSets.filtered(rule);
      for (int trial = 0; trial < 10; trial++) {
        boolean[] isVoid = new boolean[rule.stints()];
        for (int i = 0; i < isVoid.length; i++) {
          isVoid[i] = random.nextInt(4) == 0;
        }
        String ridden = orders.get(random.nextInt(orders.size()));
        double observed = uneven(ridden, isVoid, rule.setups());
        long more =
            orders.stream()
                .filter(o -> uneven(o, isVoid, rule.setups()) >= observed - 1e-9)
                .count();
        VoidBalance found = VoidBalance.of(rule.assignments(), Orders.parse(ridden), isVoid);
        assertThat(found.p()).isCloseTo(more / (double) orders.size(), within(1e-15));
      }
    }
  }

  /** Two setups: |z'm|; more: spread of the numbers of voids. */
  private static double uneven(String order, boolean[] isVoid, int setups) {
    double[] voids = new double[setups];
    for (int i = 0; i < isVoid.length; i++) {
      voids[order.charAt(i) - 'A'] += isVoid[i] ? 1 : 0;
    }
    if (setups == 2) {
      return Math.abs(voids[1] - voids[0]);
    }
    double mean = Arrays.stream(voids).sum() / setups;
    return Arrays.stream(voids).map(v -> (v - mean) * (v - mean)).sum();
  }

  @Test
  void voidsOnOneSetupOnlyAreFlagged() {
    Assignments set = SmallSets.Plain.blocks(2, 16, 4).assignments();
    String ridden = "ABBABABAABABBAAB";
    boolean[] isVoid = new boolean[16];
    for (int i = 0; i < 11; i++) {
      isVoid[i] = ridden.charAt(i) == 'B';
    }
    VoidBalance found = VoidBalance.of(set, Orders.parse(ridden), isVoid);
    assertThat(found.voids()).containsExactly(0, 5);
    assertThat(found.flagged()).isTrue();
    assertThat(VoidBalance.of(set, Orders.parse(ridden), new boolean[16]).p()).isEqualTo(1);
  }

  @Test
  void theNoiseFloorIsThatOfTheSessionAndPoolsByDegreesOfFreedom() {
    RiderNoise one = new RiderNoise(1, 9);
    RiderNoise two = new RiderNoise(2, 13);
    RiderNoise pooled = RiderNoise.pooled(List.of(one, two));
    assertThat(pooled.df()).isEqualTo(22);
    assertThat(pooled.sd()).isCloseTo(Math.sqrt((9 + 13 * 4.0) / 22), within(1e-14));
    assertThat(one.coefficient()).isCloseTo(2.7718, within(1e-4));
    // docs/method.md#figures-of-the-noise: N = 12, 9 degrees of freedom, .69 to 1.83
    assertThat(one.interval95IfNormal().low()).isCloseTo(0.69, within(0.005));
    assertThat(one.interval95IfNormal().high()).isCloseTo(1.83, within(0.005));
    assertThat(new RiderNoise(1, 5).interval95IfNormal().high()).isCloseTo(2.45, within(0.005));
    assertThat(new RiderNoise(1, 21).interval95IfNormal().high()).isCloseTo(1.43, within(0.005));
    refused("sd", () -> new RiderNoise(-1, 3));
    refused("sd", () -> new RiderNoise(Double.NaN, 3));
    refused("df", () -> new RiderNoise(1, 0));
    refused("sds", () -> RiderNoise.pooled(List.of()));
  }

  @Test
  void aUsualDifferenceBetweenTwoStintsGivesTheSd() {
    double sum = 0;
    int n = 200_000;
    org.apache.commons.rng.sampling.distribution.ZigguratSampler.NormalizedGaussian normal =
        org.apache.commons.rng.sampling.distribution.ZigguratSampler.NormalizedGaussian.of(random);
    for (int i = 0; i < n; i++) {
      double first = normal.sample();
      double second = normal.sample();
      sum += Math.abs(first - second);
    }
    assertThat(RiderNoise.sdFromUsualDifference(sum / n)).isCloseTo(1, within(0.01));
    assertThat(RiderNoise.sdFromUsualDifference(1.13)).isCloseTo(1, within(0.003));
  }
}
