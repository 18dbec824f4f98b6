package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.PlanText;
import blindlap.exchange.QuarryTrail;
import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.plan.PlanHint;
import blindlap.plan.Trail;
import blindlap.plan.TrailGate;
import blindlap.session.KeptTrail;
import blindlap.wording.day.Problems;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Gates of plans from the trail book, and what a recorder can show at them. */
class PlanGatesTest {
  @TempDir Path folder;
  private TestDay other;
  private Desk desk;

  @BeforeEach
  void aNotebookWithOneTrailInTwoVersions() {
    other = new TestDay(folder, TestDay.EIGHT, 1);
    desk = other.desk();
  }

  @AfterEach
  void done() {
    other.close();
  }

  private KeptTrail keep(double... along) {
    return desk.notebook()
        .trails()
        .keep(QuarryTrail.trail("Quarry loop", along), other.clock().instant());
  }

  private static String plan(String version, String lapWorth, String halfWorth) {
    return RecordedDay.plan("recording", "recording")
        .replace("trail_version: " + RecordedDay.TRAIL, "trail_version: " + version)
        .replace("worthwhile: 0.5", "worthwhile: " + lapWorth)
        .replace(
            "from_gate: Top, to_gate: Bridge",
            "from_gate: Gate post, to_gate: Rock garden" + halfWorth);
  }

  private static String said(PlanPreview preview) {
    return String.join("\n", Problems.sentences(preview.problems()));
  }

  @Test
  void theNumberIsEnoughAndTheCommittedPlanHoldsTheGates() {
    KeptTrail kept = keep(10, 200, 420, 690);
    PlanPreview preview = desk.planning().preview(plan("{number: 1}", "0.5", ""));
    assertThat(said(preview)).isEmpty();
    Plan plan = preview.plan().orElseThrow();
    assertThat(plan.trailVersion()).isEqualTo(kept.version());

    Map<String, Object> fields = PlanText.read(plan("{number: 1}", "0.5", "")).fields();
    Committing.Begun.Phrase phrase = (Committing.Begun.Phrase) desk.planning().begin(fields);
    Committing.Result.Committed committed =
        (Committing.Result.Committed)
            desk.planning().seal(fields, Optional.empty(), List.of(), phrase.asked().unasked());
    assertThat(committed.state().plan().trailVersion()).isEqualTo(kept.version());
    // Another plan like it names the version; a file of it stands alone.
    Map<String, Object> copy = desk.planning().copyOf(committed.state().id()).orElseThrow();
    assertThat(copy.get("trail_version")).isEqualTo(Map.of("number", "1"));
    assertThat(desk.planning().fileOf(committed.state()))
        .contains(kept.title().sha256())
        .contains("name: Rock garden");
  }

  @Test
  void whatTheTrailBookDoesNotHaveIsSaidWithWhatItHas() {
    assertThat(said(desk.planning().preview(plan("{number: 1}", "0.5", ""))))
        .contains("The trail book holds no trail yet");
    keep(10, 200, 690);
    keep(10, 210, 690);
    assertThat(said(desk.planning().preview(plan("{number: 3}", "0.5", ""))))
        .isEqualTo(
            "trail_version.number: The trail book holds no version 3 of the trail \"Quarry loop\"."
                + " It holds: 1, 2. Choose one of them.");
    assertThat(
            said(
                desk.planning()
                    .preview(
                        plan("{number: 3}", "0.5", "")
                            .replace("trail: Quarry loop", "trail: Fen"))))
        .contains("holds no trail called \"Fen\". It holds: Quarry loop.");
  }

  @Test
  void gatesThatAreTypedAreThoseOfTheTrailBookOrOfNoTrailOfIt() {
    String own = RecordedDay.PLAN;
    assertThat(said(desk.planning().preview(own))).isEmpty(); // the book is empty
    assertThat(PlanPreview.of(own).problems()).isEmpty();
    keep(10, 200, 690);
    keep(10, 210, 690);
    assertThat(said(desk.planning().preview(own)))
        .contains("The plan holds other gates than version 2 of the trail \"Quarry loop\"");
  }

  @Test
  void withoutATrailBookTheGatesAreMissing() {
    assertThat(said(PlanPreview.of(plan("{number: 1}", "0.5", ""))))
        .contains("The gates of version 1 of the trail \"Quarry loop\" are not known here");
  }

  private List<Problem> hints(String plan) {
    return desk.planning().preview(plan).hints().stream()
        .filter(
            hint ->
                hint.fault() == PlanHint.RECORDER_HIDES || hint.fault() == PlanHint.RECORDER_LEAVES)
        .toList();
  }

  @Test
  void whatAUsualRecorderCannotShowIsSaidBeforeRiding() {
    keep(10, 200, 420, 690);
    List<Problem> hints = hints(plan("{number: 1}", "0.5", ", worthwhile: 0.05"));
    assertThat(hints)
        .extracting(Problem::fault)
        .containsExactly(PlanHint.RECORDER_LEAVES, PlanHint.RECORDER_HIDES);
    // The line takes about 6.5 m/s: u of a pass is √((3/(2.45·6.5))² + (1/(8·6.5))²) = 0.19 s, of a
    // time √2 of that, ± 0.52 s; between two setups of eight laps each ± 0.52·√(2/8) = 0.26 s.
    assertThat(Double.parseDouble(hints.get(0).details().get(1).toString())).isBetween(0.45, 0.6);
    assertThat(Double.parseDouble(hints.get(0).details().get(2).toString())).isBetween(0.22, 0.3);
    assertThat(Problems.sentence(hints.get(1)))
        .contains("Times of \"upper half\" cannot show 0.05 s with a usual recorder")
        .contains("a place a second, within 3 m (common practice, no source), at 6.");
  }

  @Test
  void aDrawnLineTakesTheTimeOfTheTimetable() {
    Trail recorded = QuarryTrail.trail("Quarry loop", 10, 200, 420, 690);
    Trail drawn =
        new Trail(
            recorded.name(),
            recorded.line().stream().map(place -> Trail.Place.of(place.at())).toList(),
            recorded.gates());
    desk.notebook().trails().keep(drawn, other.clock().instant());
    List<Problem> hints = hints(plan("{number: 1}", "0.5", ""));
    // 680 m in the two minutes of a lap.
    assertThat(Problems.sentence(hints.get(0))).contains("at 5.7 m/s");
    assertThat(hints(plan("{number: 1}", "0.5", "").replaceAll("timetable: \\{.*\\}\n", "")))
        .isEmpty();
    assertThat(recorded.gates()).extracting(TrailGate::name).contains("Ford");
  }
}
