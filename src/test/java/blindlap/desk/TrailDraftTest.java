package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.exchange.QuarryTrail;
import blindlap.exchange.TrailFile;
import blindlap.fault.Unreadable;
import blindlap.plan.Trail;
import blindlap.recording.Passes;
import blindlap.recording.Track;
import blindlap.recording.TrackReader;
import blindlap.sample.ScoutingLap;
import blindlap.wording.day.Problems;
import java.util.List;
import org.junit.jupiter.api.Test;

class TrailDraftTest {
  private static final Track LAP = TrackReader.read(ScoutingLap.alone());

  private static TrailDraft lap() {
    return TrailBook.draft("Quarry loop", LAP, 0, Double.POSITIVE_INFINITY);
  }

  @Test
  void secondsBehindTheEndAreSaidAsTheyWereTyped() {
    assertThatThrownBy(() -> TrailBook.draft("Quarry loop", LAP, 99_990, 99_999))
        .isInstanceOfSatisfying(
            Unreadable.class,
            refused ->
                assertThat(Problems.sentence(refused.problem()))
                    .startsWith("Between second 99990 and second 99999 the recording holds no"));
  }

  @Test
  void aRecordedLapBecomesATrailWhoseGatesTheLapGoesThrough() {
    Trail trail =
        lap()
            .with(
                List.of(
                    new TrailDraft.Across("Ford", 760, 24),
                    new TrailDraft.Across("Gate post", 60, 24),
                    new TrailDraft.Across("Bridge", 400, 12)))
            .trail();
    assertThat(trail.gates())
        .extracting(g -> g.name())
        .containsExactly("Gate post", "Bridge", "Ford");
    Passes passes = Passes.of(LAP, trail.gates().stream().map(TrailDraft::gate).toList());
    assertThat(passes.laps()).hasSize(1);
    // The line's own seconds at the gates are those of the lap that it came from.
    List<blindlap.wording.TrailWords.Said> said = TrailShape.of(TrailDraft.of(trail)).said();
    assertThat(said.get(2).seconds() - said.get(0).seconds())
        .isCloseTo(passes.laps().get(0).total(), within(0.05));
    // 1.96 times the usual recorder's standard deviation at some 6 m/s, twice:
    // docs/method.md#gates.
    double speed = passes.passes().get(0).speed();
    assertThat(said.get(0).uncertainty())
        .isCloseTo(Math.hypot(3 / (2.45 * speed), 1 / (8 * speed)), within(0.02));
  }

  @Test
  void gatesThatAreNotMovedStayWhereTheyWereWhateverTheirAngle() {
    Trail trail = QuarryTrail.trail();
    assertThat(TrailDraft.of(trail).trail()).isEqualTo(trail);
    TrailDraft draft = TrailDraft.of(trail);
    assertThat(draft.gates())
        .extracting(g -> Math.round(g.along()))
        .containsExactly(10L, 200L, 420L, 690L);
    assertThat(TrailDraft.of(draft.named("Ridge").trail()).trail().gates())
        .isEqualTo(trail.gates());
  }

  @Test
  void distancesAreHeldToTheLine() {
    TrailDraft draft = TrailDraft.of(QuarryTrail.trail());
    assertThat(draft.held(-5)).isEqualTo(1);
    assertThat(draft.held(12.34)).isEqualTo(12.3);
    assertThat(draft.held(9000)).isLessThanOrEqualTo(draft.length() - 1).isGreaterThan(690);
  }

  @Test
  void aTrailThatCannotTimeALapIsRefused() {
    assertThatThrownBy(() -> lap().trail())
        .isInstanceOf(Unreadable.class)
        .hasMessageContaining("GATES");
    assertThatThrownBy(
            () ->
                lap()
                    .with(
                        List.of(
                            new TrailDraft.Across("Ford", 60, 24),
                            new TrailDraft.Across("Ford", 700, 24)))
                    .trail())
        .hasMessageContaining("SAME_NAME");
  }

  @Test
  void theShapeIsTheTrailInMetres() {
    TrailShape shape = TrailShape.of(TrailDraft.of(QuarryTrail.trail()));
    assertThat(shape.length()).isCloseTo(700, within(3.0));
    assertThat(shape.spots()).hasSize(141);
    TrailShape.Spot a = shape.spots().get(3);
    TrailShape.Spot b = shape.spots().get(4);
    assertThat(Math.hypot(b.east() - a.east(), b.north() - a.north())).isCloseTo(5, within(0.05));
    assertThat(b.height()).isCloseTo(240 - 20 / 9.0 + 3 * Math.sin(0.5), within(0.06));
    assertThat(shape.speedAt(350)).isCloseTo(6.5, within(2.0));
    TrailShape.Mark bridge = shape.marks().get(2);
    assertThat(Math.hypot(bridge.ends()[0] - bridge.ends()[2], bridge.ends()[1] - bridge.ends()[3]))
        .isCloseTo(12, within(0.05));
    assertThat(TrailFile.text(QuarryTrail.trail())).contains("\"seconds\":[0,");
  }

  /** Drawn anew at every press of an arrow key: the longest line may not be felt. */
  @Test
  void theLongestLineIsShapedInATwinkling() {
    List<Trail.Place> places = new java.util.ArrayList<>();
    for (int i = 0; i < 20_000; i++) {
      places.add(
          new Trail.Place(
              new blindlap.plan.TrailGate.Point(
                  java.math.BigDecimal.valueOf(110_000_000 + 100L * i, 7),
                  java.math.BigDecimal.valueOf(-38)),
              null,
              java.math.BigDecimal.valueOf(i, 1)));
    }
    TrailDraft draft =
        new TrailDraft("Long", places, List.of(new TrailDraft.Across("Start", 100, 24)));
    long start = System.nanoTime();
    TrailShape shape = TrailShape.of(draft);
    double sum = shape.spots().stream().mapToDouble(spot -> shape.speedAt(spot.along())).sum();
    assertThat((System.nanoTime() - start) / 1e9).isLessThan(1.0);
    assertThat(sum / 20_000).isCloseTo(11.06, within(0.1));
  }
}
