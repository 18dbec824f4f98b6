package blindlap.stats.noise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class AgreementTest {
  private static final double[] FIRST = {10, 12.5, 9, 14};
  private static final double[] SECOND = {9, 13, 8.5, 12};

  @Test
  void biasAndLimitsFollowFromTheDifferences() {
    Agreement found = Agreement.of(FIRST, SECOND);
    Spread differences = Spread.of(1, -0.5, 0.5, 2);
    assertThat(found.bias()).isEqualTo(differences.mean());
    assertThat(found.sd()).isEqualTo(differences.sd());
    assertThat(found.limits().high() - found.limits().low())
        .isCloseTo(2 * 1.959963984540054 * found.sd(), within(1e-14));
  }

  @Test
  void swappingTheTwoMirrorsTheLimits() {
    Agreement there = Agreement.of(FIRST, SECOND);
    Agreement back = Agreement.of(SECOND, FIRST);
    assertThat(back.bias()).isEqualTo(-there.bias());
    assertThat(back.limits().low()).isEqualTo(-there.limits().high());
  }

  @Test
  void listsOfDifferentLengthAreRefused() {
    assertThatThrownBy(() -> Agreement.of(FIRST, new double[] {1, 2}))
        .hasMessage("second: has 2 values, but \"first\" has 4.");
    assertThatThrownBy(() -> Agreement.of(new double[] {1}, new double[] {2}))
        .hasMessageStartingWith("first: has 1 values");
  }
}
