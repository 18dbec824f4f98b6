package blindlap.screen.trail;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.desk.TrailDraft;
import blindlap.exchange.QuarryTrail;
import blindlap.exchange.TrailFile;
import blindlap.sample.ScoutingLap;
import blindlap.screen.part.Background;
import blindlap.screen.plan.PlanDesk;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The Trail page without a window. */
class TrailModelTest {
  @TempDir Path folder;
  private Desk desk;
  private TrailModel model;

  @BeforeEach
  void open() {
    desk = PlanDesk.open(folder, 1);
    model = new TrailModel(desk.trails(), Background.immediate());
    model.refresh();
  }

  @AfterEach
  void close() {
    desk.close();
  }

  private Path file(String name, byte[] bytes) throws IOException {
    return Files.write(folder.resolve(name), bytes);
  }

  private void lap() throws IOException {
    model.readRecording(file("lap.gpx", ScoutingLap.alone()));
  }

  private List<String> names() {
    return model.hand().sightProperty().get().draft().orElseThrow().gates().stream()
        .map(TrailDraft.Across::name)
        .toList();
  }

  private double along() {
    return model.hand().sightProperty().get().gate().orElseThrow().along();
  }

  @Test
  void fromARecordedLapToAVersionThatAPlanCanName() throws IOException {
    assertThat(model.hand().sightProperty().get().draft()).isEmpty();
    lap();
    assertThat(names()).isEmpty();
    model.hand().press(60.4);
    model.hand().press(740);
    model.hand().press(400);
    assertThat(names()).containsExactly("Start", "Split 1", "Finish");
    model.hand().choose(0);
    model.form().field("gate").set("Gate post");
    model.form().field("width").set("30");
    model.hand().apply();
    model.form().field("name").set("Quarry loop");
    model.keep();
    assertThat(model.noticeProperty().get())
        .contains("Quarry loop, version 1, is kept")
        .contains("trail_version: {number: 1}");
    assertThat(desk.trails().latest("Quarry loop").orElseThrow().trail().gates().get(0).name())
        .isEqualTo("Gate post");
    assertThat(model.titles()).hasSize(1);
    assertThat(model.hand().sightProperty().get().changed()).isFalse();
    assertThat(model.hand().sightProperty().get().uses().toString()).contains("No plan is timed");
    model.keep();
    assertThat(model.noticeProperty().get()).contains("has the same text");
  }

  @Test
  void theFinishIsNamedForWhatItIsThoughTheStartHasANameOfItsOwn() throws IOException {
    lap();
    model.hand().press(60);
    model.form().field("gate").set("Gate post");
    model.hand().apply();
    model.hand().press(740);
    assertThat(names()).containsExactly("Gate post", "Finish");
    model.hand().choose(0);
    model.hand().remove();
    model.hand().press(60);
    assertThat(names()).containsExactly("Start", "Finish");
  }

  @Test
  void whatIsChangedCanBeTakenBackStepByStep() throws IOException {
    lap();
    model.hand().press(60);
    model.hand().press(740);
    model.hand().choose(0);
    double before = along();
    model.hand().move(1);
    model.hand().move(1);
    assertThat(along()).isEqualTo(before + 2);
    assertThat(model.hand().undoProperty().get()).isEqualTo("Start moved");
    model.hand().remove();
    assertThat(names()).containsExactly("Finish");
    assertThat(model.hand().undoProperty().get()).isEqualTo("Start taken away");
    model.hand().takeBack();
    model.hand().takeBack();
    assertThat(along()).isEqualTo(before + 1);
    model.hand().takeBack();
    model.hand().takeBack();
    model.hand().takeBack();
    assertThat(names()).isEmpty();
    assertThat(model.hand().undoProperty().get()).isEmpty();
    model.hand().takeBack();
    assertThat(names()).isEmpty();
  }

  @Test
  void aPressOnAGateTakesItInHandAndSetsNone() throws IOException {
    lap();
    model.hand().press(60);
    model.hand().press(740);
    model.hand().press(61.5);
    assertThat(names()).hasSize(2);
    assertThat(model.hand().sightProperty().get().chosen()).isZero();
  }

  @Test
  void noGateLeavesTheLineAndWhatCannotBeTypedIsSaidBesideItsField() throws IOException {
    lap();
    model.hand().press(60);
    model.hand().move(-5000);
    assertThat(along()).isEqualTo(1);
    model.form().field("along").set("9000");
    model.form().field("width").set("wide");
    model.form().field("gate").set(" ");
    model.hand().apply();
    assertThat(model.form().field("along").errorProperty().get()).contains("The line is 8");
    assertThat(model.form().field("width").errorProperty().get()).contains("\"wide\" is no number");
    assertThat(model.form().field("gate").errorProperty().get()).contains("1 to 60 characters");
    assertThat(along()).isEqualTo(1);
    model.form().field("new").set("-4");
    model.hand().addTyped();
    assertThat(model.form().field("new").errorProperty().get()).contains("at least 1 m");
    model.form().field("new").set("300.5");
    model.hand().addTyped();
    assertThat(along()).isEqualTo(300.5);
  }

  @Test
  void aTrailThatCannotTimeALapIsNotKept() throws IOException {
    lap();
    model.hand().press(60);
    model.form().field("name").set("Quarry loop");
    model.keep();
    assertThat(model.noticeProperty().get()).contains("There is 1 gate");
    model.hand().press(740);
    model.form().field("name").set("");
    model.keep();
    assertThat(model.noticeProperty().get()).contains("cannot be used");
    assertThat(desk.trails().titles()).isEmpty();
  }

  @Test
  void severalLapsAreNotDrawnUntilOneIsNamed() throws IOException {
    model.readRecording(file("two.gpx", ScoutingLap.twice(300)));
    assertThat(model.noticeProperty().get()).contains("the recorder rested").doesNotContain("300");
    assertThat(model.hand().sightProperty().get().draft()).isEmpty();
    assertThat(model.recordingProperty().get()).isTrue();
    model.form().field("to").set("130");
    model.takeLap();
    assertThat(model.hand().sightProperty().get().draft()).isPresent();
    model.form().field("from").set("x");
    model.takeLap();
    assertThat(model.form().field("from").errorProperty().get()).contains("no number of seconds");
  }

  @Test
  void filesOfTrailsAreReadAndWritten() throws IOException {
    model.readGeoJson(file("in.json", TrailFile.bytes(QuarryTrail.trail())));
    assertThat(names()).containsExactly("Gate post", "Rock garden", "Bridge", "Ford");
    Path out = folder.resolve("out.json");
    model.writeGeoJson(out);
    assertThat(Files.readAllBytes(out)).isEqualTo(TrailFile.bytes(QuarryTrail.trail()));
    model.readGeoJson(file("bad.json", new byte[] {'{'}));
    assertThat(model.noticeProperty().get()).contains("not JSON");
    assertThat(names()).hasSize(4);
    model.readRecording(folder.resolve("nowhere.gpx"));
    assertThat(model.noticeProperty().get()).contains("cannot be read");
    model.writeGeoJson(folder.resolve("no").resolve("such.json"));
    assertThat(model.noticeProperty().get()).contains("cannot be written");
  }

  @Test
  void anEarlierVersionIsOpenedAndChangedIntoANewOne() {
    desk.trails().keep(QuarryTrail.trail());
    desk.trails().keep(QuarryTrail.trail("Quarry loop", 20, 200, 420, 690));
    model.refresh();
    assertThat(model.titleProperty().get().number()).isEqualTo(2);
    model.titleProperty().set(model.titles().get(1));
    assertThat(along()).isEqualTo(10);
    model.hand().move(5);
    assertThat(model.hand().sightProperty().get().changed()).isTrue();
    model.keep();
    assertThat(model.noticeProperty().get()).contains("version 3, is kept");
    assertThat(model.titleProperty().get().number()).isEqualTo(3);
  }
}
