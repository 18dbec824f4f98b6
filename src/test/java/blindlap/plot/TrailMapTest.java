package blindlap.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.plot.surface.Spoken;
import java.util.List;
import org.junit.jupiter.api.Test;

class TrailMapTest {
  private static TrailMap square() {
    return TrailMap.of(
        new TrailMap.Content(
            new double[] {0, 0, 100},
            new double[] {0, 100, 100},
            new double[] {0, 100, 200},
            List.of(),
            -1,
            "N",
            metres -> metres + " m",
            new Spoken("A corner.", "")));
  }

  /** North is up, east is right, both to one scale: the corner is the upper left one. */
  @Test
  void aPressIsThePlaceOfTheWayUnderIt() {
    TrailMap map = square();
    double width = 600;
    double high = map.heightFor(width, 1);
    double corner = Double.NaN;
    double cornerY = 0;
    for (double y = 0; y < high && Double.isNaN(corner); y++) {
      for (double x = 0; x < width; x++) {
        double along = map.along(x, y, width, 1);
        if (Math.abs(along - 100) < 0.6 && Double.isFinite(along)) {
          corner = x;
          cornerY = y;
          break;
        }
      }
    }
    assertThat(corner).isBetween(60.0, 300.0);
    assertThat(map.along(corner + 60, cornerY + 10, width, 1)).isBetween(105.0, 160.0);
    assertThat(map.along(1, high - 1, width, 1)).isNaN();
  }

  @Test
  void aPressOnTheProfileIsADistanceHeldToTheLine() {
    AlongProfile profile = TrailSamples.profile(true, 2);
    double left = profile.along(0, 700, 1);
    double right = profile.along(700, 700, 1);
    assertThat(left).isZero();
    assertThat(right).isCloseTo(700, within(1e-9));
    assertThat(profile.along(360, 700, 1)).isBetween(300.0, 380.0);
  }

  @Test
  void aWayOfOnePlaceIsNone() {
    assertThatThrownBy(
            () ->
                TrailMap.of(
                    new TrailMap.Content(
                        new double[] {0},
                        new double[] {0},
                        new double[] {0},
                        List.of(),
                        -1,
                        "N",
                        metres -> "",
                        new Spoken("Nothing.", ""))))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
