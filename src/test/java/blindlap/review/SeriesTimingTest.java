package blindlap.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Plan;
import blindlap.plan.Plans;
import blindlap.review.SeriesDeclaration.Difference;
import blindlap.review.SeriesDeclaration.Field;
import blindlap.wording.DeclaredWords;
import java.util.List;
import org.junit.jupiter.api.Test;

class SeriesTimingTest {
  private static final String GATE =
      "{name: %s, first: {latitude: %s, longitude: 8.1}, second: {latitude: %s, longitude: 8.2}}";

  private static Plan plan(int version, String barn, String timed) {
    return Plans.with(
        """
        {series: after-1, series_sessions: 3,
         trail_version: {number: %d, gates: [%s, %s], sha256: %s},
         measures: [{name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 0.5%s}]}
        """
            .formatted(
                version,
                GATE.formatted("Top", "47.0", "47.0"),
                GATE.formatted("Barn", barn, barn),
                String.valueOf(version).repeat(64),
                timed));
  }

  private static List<Difference> differences(Plan first, Plan other) {
    return new SeriesDeclaration("0123456789abcdef", first).differences(other);
  }

  @Test
  void aSeriesIsTimedByTheSameAtTheSameGates() {
    Plan first = plan(1, "47.2", ", timed_by: recording");
    assertThat(differences(first, plan(1, "47.2", ", timed_by: recording"))).isEmpty();
    assertThat(differences(first, plan(1, "47.2", "")))
        .containsExactly(new Difference(Field.TIMING, "measures[1].timed_by"));
    assertThat(differences(first, plan(2, "47.3", ", timed_by: recording")))
        .containsExactly(new Difference(Field.TRAIL, "trail_version.number"));
    assertThat(DeclaredWords.value(Field.TIMING, first)).isEqualTo("timed by a recording");
    assertThat(DeclaredWords.value(Field.TRAIL, first))
        .isEqualTo("version 1 of the trail (Top, Barn)");
  }

  @Test
  void aLineDrawnAnewOrGatesThatNothingIsTimedAtAreNoDifference() {
    Plan first = plan(1, "47.20", ", timed_by: recording");
    assertThat(differences(first, plan(2, "47.2", ", timed_by: recording"))).isEmpty();
    assertThat(differences(plan(1, "47.2", ""), plan(2, "47.3", ""))).isEmpty();
  }
}
