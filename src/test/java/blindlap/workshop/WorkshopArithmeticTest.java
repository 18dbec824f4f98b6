package blindlap.workshop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Sag, springs, leverage, clicks and ballast: each formula with its way back. */
class WorkshopArithmeticTest {
  @Nested
  class SagOfAStroke {
    @Test
    void percentAndMillimetresAreEachOthersWayBack() {
      assertThat(Sag.percent(65, 19.5)).isEqualTo(30);
      for (double percent : new double[] {0, 12.5, 31, 100}) {
        assertThat(Sag.percent(62.5, Sag.millimetres(62.5, percent)))
            .isCloseTo(percent, within(1e-13));
      }
    }

    @Test
    void moreThanTheStrokeIsRefused() {
      assertThatThrownBy(() -> Sag.percent(60, 61))
          .hasMessage("sag_mm: must lie between 0.0 and 60.0, but is 61.0.");
      assertThatThrownBy(() -> Sag.millimetres(60, 101)).hasMessageStartingWith("sag_percent:");
      assertThatThrownBy(() -> Sag.percent(0, 0))
          .hasMessageStartingWith("stroke_mm: must be above");
      assertThatThrownBy(() -> Sag.millimetres(Double.NaN, 3)).hasMessageStartingWith("stroke_mm:");
    }
  }

  @Nested
  class StepOfASpring {
    @Test
    void sagFromAnotherRateCommonPracticeNoSource() {
      // Common practice, no source: 28 % on 400 lbf/in is about 29 % on 388 lbf/in.
      assertThat(SpringStep.sagPercent(400, 388, 28)).isCloseTo(29, within(0.5));
    }

    @Test
    void theLoadStaysTheSameAndTheRateForASagIsTheWayBack() {
      double sag = SpringStep.sagPercent(525, 475, 27);
      assertThat(sag * 475).isCloseTo(27 * 525, within(1e-10));
      assertThat(SpringStep.rateFor(525, 27, sag)).isCloseTo(475, within(1e-12));
    }

    @Test
    void aSpringThatTheLoadWouldFlattenIsRefused() {
      assertThatThrownBy(() -> SpringStep.sagPercent(500, 100, 30))
          .hasMessageStartingWith("new_rate:");
      assertThatThrownBy(() -> SpringStep.sagPercent(0, 100, 30)).hasMessageStartingWith("rate:");
      assertThatThrownBy(() -> SpringStep.rateFor(500, 30, 0))
          .hasMessageStartingWith("wanted_percent:");
    }
  }

  @Nested
  class Leverage {
    @Test
    void meanLeverageRatioCommonPracticeNoSource() {
      // Common practice, no source: a 210 x 55 mm damper on 150 mm of travel has 2.73.
      assertThat(LeverageRatio.mean(150, 55)).isCloseTo(2.73, within(0.005));
    }

    @Test
    void travelAndStrokeAreItsWaysBack() {
      double ratio = LeverageRatio.mean(163, 61);
      assertThat(LeverageRatio.wheelTravelMm(ratio, 61)).isCloseTo(163, within(1e-12));
      assertThat(LeverageRatio.strokeMm(ratio, 163)).isCloseTo(61, within(1e-12));
      assertThatThrownBy(() -> LeverageRatio.mean(163, 0)).hasMessageStartingWith("stroke_mm:");
    }
  }

  @Nested
  class CoilWithARamp {
    private final ProgressiveCoil coil = new ProgressiveCoil(380, 470, 0.4);

    @Test
    void progressiveCoilFromHalfStrokeCommonPracticeNoSource() {
      // Common practice, no source: 400 lbf/in up to half stroke, rising to 488 at the end.
      ProgressiveCoil half = new ProgressiveCoil(400, 488, 0.5);
      assertThat(half.rateAt(0)).isEqualTo(400);
      assertThat(half.rateAt(0.5)).isEqualTo(400);
      assertThat(half.rateAt(0.75)).isCloseTo(444, within(1e-12));
      assertThat(half.rateAt(1)).isEqualTo(488);
    }

    @Test
    void forceIsTheIntegralOfTheRate() {
      int steps = 200_000;
      double sum = 0;
      for (int i = 0; i < steps; i++) {
        sum += coil.rateAt((i + 0.5) / steps) / steps;
      }
      assertThat(coil.forceAt(1, 2.5)).isCloseTo(2.5 * sum, within(1e-6));
      assertThat(coil.forceAt(0.3, 2)).isCloseTo(2 * 0.3 * 380, within(1e-12));
    }

    @Test
    void placesOfARateAndOfAForceAreTheWaysBack() {
      for (double share : new double[] {0.41, 0.6, 0.99, 1}) {
        assertThat(coil.shareAtRate(coil.rateAt(share))).isCloseTo(share, within(1e-13));
      }
      for (double share : new double[] {0, 0.2, 0.4, 0.55, 1}) {
        assertThat(coil.shareAtForce(coil.forceAt(share, 2.2), 2.2))
            .isCloseTo(share, within(1e-13));
      }
      ProgressiveCoil linear = new ProgressiveCoil(400, 400, 0.2);
      assertThat(linear.shareAtForce(linear.forceAt(0.7, 3), 3)).isCloseTo(0.7, within(1e-14));
    }

    @Test
    void impossibleCoilsAndPlacesAreRefused() {
      assertThatThrownBy(() -> new ProgressiveCoil(470, 380, 0.4))
          .hasMessageStartingWith("last_rate:");
      assertThatThrownBy(() -> new ProgressiveCoil(380, 470, 1)).hasMessageStartingWith("from:");
      assertThatThrownBy(() -> coil.rateAt(1.1)).hasMessageStartingWith("share:");
      assertThatThrownBy(() -> coil.shareAtRate(380))
          .hasMessageStartingWith("rate: is the rate of");
      assertThatThrownBy(() -> coil.shareAtForce(1e6, 2)).hasMessageStartingWith("force:");
    }
  }

  @Nested
  class Clicks {
    @Test
    void fromClosedAndFromOpenAddUpToTheRange() {
      ClickRange range = new ClickRange(14);
      assertThat(range.fromOpen(0)).isEqualTo(14);
      assertThat(range.fromOpen(5)).isEqualTo(9);
      for (int click = 0; click <= 14; click++) {
        assertThat(range.fromClosed(range.fromOpen(click))).isEqualTo(click);
      }
    }

    @Test
    void positionsBeyondTheStopsAreRefused() {
      assertThatThrownBy(() -> new ClickRange(14).fromOpen(15))
          .hasMessage("from_closed: must lie between 0 and 14, but is 15.");
      assertThatThrownBy(() -> new ClickRange(14).fromClosed(-1))
          .hasMessageStartingWith("from_open:");
      assertThatThrownBy(() -> new ClickRange(0)).hasMessageStartingWith("clicks:");
    }
  }

  @Nested
  class BallastOfSetups {
    @Test
    void everySetupIsBroughtToTheHeaviest() {
      double[] masses = {0.5, 0.75, 0.625};
      double[] ballast = Ballast.hiding(masses);
      assertThat(ballast).containsExactly(0.25, 0, 0.125);
      assertThat(Ballast.difference(masses[0], ballast[0], masses[2], ballast[2])).isZero();
      assertThat(Ballast.difference(0.5, 0, 0.75, 0)).isEqualTo(-0.25);
    }

    @Test
    void impossibleMassesAreRefused() {
      assertThatThrownBy(() -> Ballast.hiding(0.5, -1)).hasMessageStartingWith("masses[1]:");
      assertThatThrownBy(() -> Ballast.hiding()).hasMessageStartingWith("masses: is empty");
      assertThatThrownBy(() -> Ballast.difference(1, -1, 1, 0)).hasMessageStartingWith("ballast:");
    }
  }
}
