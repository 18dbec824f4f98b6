package blindlap.stats.tell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class DiscriminationTest {
  /** Plays the task with random percepts: is the answer right? */
  private static boolean right(Discrimination task, double d, Random random) {
    double a1 = random.nextGaussian();
    double a2 = random.nextGaussian();
    double b = d + random.nextGaussian();
    return switch (task) {
      case TWO_CHOICE -> b > a1;
      case THREE_CHOICE -> b > Math.max(a1, a2);
      case DUO_TRIO -> Math.abs(a1 - a2) < Math.abs(a1 - b);
      case TRIANGLE -> Math.abs(a1 - a2) < Math.abs(a1 - b) && Math.abs(a1 - a2) < Math.abs(a2 - b);
    };
  }

  @ParameterizedTest
  @EnumSource(Discrimination.class)
  void theCurveIsTheShareOfRightAnswersWhenTheTaskIsPlayed(Discrimination task) {
    Random random = new Random(5);
    int rounds = 200_000;
    int right = 0;
    for (int i = 0; i < rounds; i++) {
      right += right(task, 1.5, random) ? 1 : 0;
    }
    double p = task.proportion(1.5);
    double error = Math.sqrt(p * (1 - p) / rounds);
    assertThat((double) right / rounds).isCloseTo(p, within(4 * error));
  }

  @ParameterizedTest
  @EnumSource(Discrimination.class)
  void theCurveIsChancePlusTheIntegralOfItsSlope(Discrimination task) {
    for (double d : new double[] {0.3, 1, 2.5, 6}) {
      int steps = 2000;
      double sum = task.slope(0) + task.slope(d);
      for (int i = 1; i < steps; i++) {
        sum += (i % 2 == 1 ? 4 : 2) * task.slope(d * i / steps);
      }
      double simpson = sum * d / steps / 3;
      assertThat(task.proportion(d)).isCloseTo(task.chance() + simpson, within(1e-12));
    }
  }

  @ParameterizedTest
  @EnumSource(Discrimination.class)
  void theInverseGivesTheDistanceBack(Discrimination task) {
    for (double d : new double[] {0.05, 0.4, 1, 2, 3.5}) {
      assertThat(task.dPrime(task.proportion(d))).isCloseTo(d, within(1e-11));
    }
    assertThat(task.dPrime(task.chance())).isZero();
    assertThat(task.dPrime(task.chance() / 2)).isZero();
    assertThat(task.dPrime(1)).isNaN();
    assertThat(task.dPrime(1 - 1e-9)).isBetween(5.0, 30.0);
    assertThat(task.proportion(0)).isEqualTo(task.chance());
    assertThat(task.proportion(50)).isCloseTo(1, within(1e-14));
  }

  @Test
  void impossibleValuesAreRefused() {
    assertThatThrownBy(() -> Discrimination.TRIANGLE.proportion(-1))
        .hasMessageStartingWith("d_prime: must not be negative");
    assertThatThrownBy(() -> Discrimination.TRIANGLE.dPrime(1.2))
        .hasMessageStartingWith("proportion: must lie between 0 and 1");
  }
}
