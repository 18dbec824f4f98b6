package blindlap.screen.book;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.SeriesDays;
import blindlap.screen.part.Background;
import blindlap.screen.part.TypedForm;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OldDayModelTest {
  @TempDir Path folder;
  private SeriesDays days;
  private OldDayModel model;

  @BeforeEach
  void open() {
    days = new SeriesDays(folder, 1);
    model = new OldDayModel(days.desk().plainDays(), days.desk().history(), Background.immediate());
  }

  @AfterEach
  void close() {
    days.close();
  }

  private Path file(String text) throws Exception {
    return Files.write(folder.resolve("old.csv"), text.getBytes(StandardCharsets.UTF_8));
  }

  private String error(String field) {
    return model.form().field(field).errorProperty().get();
  }

  private void who() {
    model.form().field("rider").set("R. Lind");
    model.form().field("trail").set("Quarry loop");
    model.form().field("day").set("2025-05-10");
  }

  @Test
  void aFileThatCannotBeUsedIsSaidBesideItsFieldAndNothingIsWritten() throws Exception {
    model.open(folder.resolve("nowhere.csv"));
    assertThat(error("file")).contains("There is no file", "Nothing was changed");
    model.open(Files.write(folder.resolve("b.csv"), new byte[] {(byte) 0xff, 0, 1}));
    assertThat(error("file")).contains("not UTF-8");
    model.open(file("t;u\n95\n"));
    assertThat(error("file")).contains("Line 2", "1 cells, the header has 2");
    model.open(file("t\n"));
    assertThat(error("file")).contains("no rows");
    assertThat(model.previewProperty().get().days()).isZero();
    model.take();
    assertThat(days.desk().notebook().summaries()).isEmpty();
    model.open(file("t\n95\n94\n96\n"));
    assertThat(error("file")).isEmpty();
  }

  @Test
  void fieldsThatAreOpenSayWhatIsMissingAndWhatIsTakenIsShownBefore() throws Exception {
    model.open(file("Lap;Time;What\n1;95.0;K\n2;94,2;K\n3;96;L\n4;95.1;L\n"));
    assertThat(error("rider")).contains("Say who rode");
    assertThat(error("day")).contains("choose the column with the date");
    model.form().field("day").set("10.5.");
    assertThat(error("day")).contains("\"10.5.\" is not a day");
    who();
    assertThat(error("day")).isEmpty();
    assertThat(model.previewProperty().get().refused())
        .singleElement()
        .asString()
        .contains("10 May 2025", "Line 3, column 2", "another decimal sign than line 2");
    assertThat(model.previewProperty().get().days()).isZero();
    model.form().field("decimals").set("COMMA");
    assertThat(model.previewProperty().get().refused()).hasSize(2);
    model.open(file("Lap;Time;What\n1;95.0;K\n2;94.2;K\n3;96;L\n4;95.1;L\n"));
    assertThat(model.previewProperty().get().refused()).hasSize(3);
    model.form().field("decimals").set("POINT");
    OldDayPreview preview = model.previewProperty().get();
    assertThat(preview.refused()).isEmpty();
    assertThat(preview.taken()).containsExactly("10 May 2025: 4 laps, lines 2 to 5; 0 void.");
    assertThat(preview.rows().get(1)).containsExactly("3", "10 May 2025", "–", "1:34.2", "");
    assertThat(days.desk().notebook().summaries()).isEmpty();
    model.take();
    assertThat(days.desk().notebook().summaries()).hasSize(1);
    assertThat(model.previewProperty().get().refused())
        .singleElement()
        .asString()
        .contains("in the notebook already");
    model.take();
    assertThat(days.desk().notebook().summaries()).hasSize(1);
  }

  @Test
  void stintsOfSeveralLapsCountAsStintsInTheNoise() throws Exception {
    StringBuilder csv = new StringBuilder("stint;time\n");
    for (int stint = 1; stint <= 8; stint++) {
      csv.append(stint).append(";9").append(stint % 3).append(".5\n");
      csv.append(stint).append(";9").append(stint % 4).append(".1\n");
    }
    model.open(file(csv.toString()));
    who();
    assertThat(model.previewProperty().get().taken())
        .containsExactly("10 May 2025: 16 laps in stints of 2, lines 2 to 17; 0 void.");
    model.take();
    var record = days.desk().history().records("R. Lind", "Quarry loop").get(0);
    assertThat(record.scoredLaps()).isEqualTo(2);
    // Eight stints less a mean and a line.
    assertThat(record.pooled().orElseThrow().df()).isEqualTo(6);
    model.form().field("stint").set("");
    model.form().field("day").set("2025-05-11");
    assertThat(model.previewProperty().get().taken())
        .containsExactly("11 May 2025: 16 laps, lines 2 to 17; 0 void.");
  }

  @Test
  void aMeasureThatPlansKnowInAnotherUnitIsNotMixedWithIt() throws Exception {
    model.open(file("g\n5\n6\n7\n"));
    who();
    TypedForm grip = model.measures().get(0);
    grip.field("name").set("grip");
    grip.field("kind").set("line scale");
    grip.field("unit").set("points");
    model.take();
    assertThat(days.desk().notebook().summaries()).hasSize(1);
    model.form().field("day").set("2025-05-11");
    assertThat(model.previewProperty().get().days()).isEqualTo(1);
    grip.field("unit").set("hundredths");
    assertThat(model.previewProperty().get().refused())
        .singleElement()
        .asString()
        .contains("\"grip\" as line scale in \"points\"");
    grip.field("unit").set("points");
    grip.field("kind").set("count");
    assertThat(model.previewProperty().get().days()).isZero();
  }

  @Test
  void aSecondMeasureNeedsAColumnAndANameOfItsOwn() throws Exception {
    model.open(file("t;dabs\n95;1\n94;0\n96;2\n"));
    who();
    model.addMeasure();
    TypedForm second = model.measures().get(1);
    assertThat(second.field("column").errorProperty().get()).contains("Choose the column");
    assertThat(second.field("name").errorProperty().get()).contains("Name it");
    second.field("column").set("dabs");
    second.field("name").set("Lap time");
    assertThat(second.field("name").errorProperty().get()).contains("has this name already");
    second.field("name").set("dabs");
    second.field("kind").set("count");
    second.field("unit").set("a lap");
    assertThat(model.previewProperty().get().heads())
        .containsExactly("line", "day", "what was on", "lap time", "dabs", "void");
    model.remove(second);
    assertThat(model.previewProperty().get().heads()).doesNotContain("dabs");
  }

  @Test
  void aColumnOfLapNumbersIsNotProposedAsLapTimes() throws Exception {
    for (String head : new String[] {"Lap", "no", "Run", "Runde", "#", ""}) {
      model.open(file(head + ";secs\n1;95.0\n2;94.2\n3;96.1\n4;95.1\n"));
      assertThat(model.measures().get(0).field("column").get()).as(head).isEqualTo("secs");
    }
    model.open(file("Lap time;u\n1;95.0\n2;94.2\n3;96.1\n4;95.1\n"));
    assertThat(model.measures().get(0).field("column").get()).isEqualTo("u");
  }

  @Test
  void aValueThatCannotBeOfTheMeasureInItsUnitAsksForTheUnit() throws Exception {
    model.open(file("t\n95120\n94200\n96110\n"));
    who();
    TypedForm time = model.measures().get(0);
    assertThat(time.field("unit").get()).isEqualTo("s");
    assertThat(time.field("unit").errorProperty().get()).contains("95120", "s");
    model.take();
    assertThat(days.desk().notebook().summaries()).isEmpty();
    time.field("unit").set("ms");
    assertThat(time.field("unit").errorProperty().get()).isEmpty();
    model.take();
    assertThat(days.desk().notebook().summaries()).hasSize(1);
  }
}
