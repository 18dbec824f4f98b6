package blindlap.recording;

import static blindlap.stats.Refusals.refused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Gates beside closed forms in the plane, a hundred-thousandth of a degree as the unit. */
class GateTest {
  private static final double UNIT = 1e-5;

  private static Position at(double north, double east) {
    return new Position(north * UNIT, east * UNIT);
  }

  /** North and south of the equator, five units each. */
  private static Gate gate() {
    return new Gate(at(-5, 0), at(5, 0));
  }

  /** Points a second apart. */
  private static List<Fix> track(double[]... points) {
    List<Fix> track = new ArrayList<>();
    for (double[] point : points) {
      track.add(new Fix(at(point[0], point[1]), track.size()));
    }
    return track;
  }

  @Test
  void aCrossingIsBetweenThePointsAsTheirDistancesAre() {
    List<Crossing> found = gate().crossings(track(new double[] {0, -1}, new double[] {0, 3}));
    assertThat(found).hasSize(1);
    assertThat(found.get(0).seconds()).isCloseTo(0.25, within(1e-9));
    assertThat(found.get(0).direction()).isEqualTo(1);
    List<Crossing> back = gate().crossings(track(new double[] {0, 3}, new double[] {0, -1}));
    assertThat(back).extracting(Crossing::direction).containsExactly(-1);
  }

  @Test
  void pastATipIsNoCrossingAndOverItIsOne() {
    assertThat(gate().crossings(track(new double[] {5.1, -1}, new double[] {5.1, 1}))).isEmpty();
    assertThat(gate().crossings(track(new double[] {5, -1}, new double[] {5, 1}))).hasSize(1);
  }

  @Test
  void whoTurnsBackOnTheLineOrRidesAlongItDoesNotCross() {
    assertThat(
            gate()
                .crossings(track(new double[] {0, -1}, new double[] {0, 0}, new double[] {0, -1})))
        .isEmpty();
    assertThat(
            gate().crossings(track(new double[] {-9, 0}, new double[] {0, 0}, new double[] {9, 0})))
        .isEmpty();
  }

  @Test
  void whoRestsOnTheLineCrossesWhenItWasReached() {
    List<Crossing> found =
        gate()
            .crossings(
                track(
                    new double[] {0, -1},
                    new double[] {1, 0},
                    new double[] {2, 0},
                    new double[] {2, 1}));
    assertThat(found).hasSize(1);
    assertThat(found.get(0).seconds()).isEqualTo(1);
  }

  @Test
  void whoComesOntoTheLinePastTheTipDoesNotCrossThere() {
    assertThat(
            gate().crossings(track(new double[] {8, -1}, new double[] {8, 0}, new double[] {0, 1})))
        .isEmpty();
  }

  @Test
  void theDateLineIsALineLikeAnyOther() {
    Gate gate = new Gate(new Position(-UNIT, 180), new Position(UNIT, -180));
    List<Fix> track =
        List.of(new Fix(new Position(0, 179.99999), 0), new Fix(new Position(0, -179.99997), 4));
    List<Crossing> found = gate.crossings(track);
    assertThat(found).hasSize(1);
    assertThat(found.get(0).seconds()).isCloseTo(1, within(1e-6));
    assertThat(gate.width()).isCloseTo(2.211, within(0.001));
  }

  @Test
  void behindTheGlobeNothingIsCrossed() {
    List<Fix> track =
        List.of(new Fix(new Position(0, 179.9), 0), new Fix(new Position(0, -179.9), 1));
    assertThat(gate().crossings(track)).isEmpty();
  }

  @Test
  void theWidthIsThatOfTheGeodesic() {
    Position first = new Position(47.1, 11.3);
    Position second = new Position(47.1001, 11.3002);
    assertThat(new Gate(first, second).width()).isCloseTo(first.to(second).metres(), within(1e-4));
  }

  @Test
  void aTimeThatFallsAGateWithoutWidthAndAPlaceOffTheGlobeAreRefused() {
    List<Fix> back = List.of(new Fix(at(0, -1), 5), new Fix(at(0, 1), 4));
    refused("track[1]", () -> gate().crossings(back));
    refused("gate", () -> new Gate(at(1, 1), at(1, 1)));
    refused("latitude", () -> new Position(90.1, 0));
    refused("longitude", () -> new Position(0, Double.NaN));
  }
}
