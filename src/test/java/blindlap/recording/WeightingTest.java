package blindlap.recording;

import static blindlap.stats.Refusals.refused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Weightings beside closed forms; the tables of the standards stand in the outside checks. */
class WeightingTest {
  private static final double HERTZ = 15.849;

  /** R.m.s. of a weighted sine of peak 1 m/s², worked out by hand from the transfer functions. */
  @Test
  void aSineIsFeltAsStronglyAsTheFormulaSays() {
    assertThat(Weighting.WK.factor(HERTZ) / Math.sqrt(2)).isCloseTo(.5475, within(5e-5));
    assertThat(Weighting.WD.factor(HERTZ) / Math.sqrt(2)).isCloseTo(.0895, within(5e-5));
    assertThat(Weighting.WH.factor(HERTZ) / Math.sqrt(2)).isCloseTo(.6334, within(5e-5));
  }

  @Test
  void farBelowAndFarAboveTheBandNothingIsFelt() {
    for (Weighting weighting : Weighting.values()) {
      assertThat(weighting.factor(1e-4)).isLessThan(1e-3);
      assertThat(weighting.factor(1e5)).isLessThan(1e-3);
    }
  }

  @Test
  void aFrequencyOfNoughtIsRefused() {
    refused("hz", () -> Weighting.WK.factor(0));
  }
}
