package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.screen.Models;
import blindlap.screen.part.Background;
import blindlap.screen.part.Shell;
import blindlap.screen.part.TypedForm;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlanUndoTest {
  @TempDir Path folder;
  private Desk desk;
  private PlanModel model;

  @BeforeEach
  void open() {
    desk = PlanDesk.open(folder, 1);
    model = Models.plan(desk, new Shell(), Background.immediate(), 0);
    model.startFromFile(PlanStates.SAMPLE);
  }

  @AfterEach
  void close() {
    desk.close();
  }

  private void type(TypedForm.Entry entry, String text) {
    for (int i = 1; i <= text.length(); i++) {
      entry.set(text.substring(0, i));
    }
  }

  @Test
  void whatIsTypedIntoOneFieldIsOneStepAndNamesItsField() {
    String before = model.form().field("rider").get();
    type(model.form().field("rider"), "M. Oster");
    type(model.form().field("trail"), "Mill track");
    assertThat(model.undo().backProperty().get()).isEqualTo("Trail");
    model.undo().takeBack();
    assertThat(model.form().field("trail").get()).isEqualTo("Quarry loop");
    assertThat(model.undo().backProperty().get()).isEqualTo("Rider");
    assertThat(model.undo().takeBack()).contains("rider");
    assertThat(model.form().field("rider").get()).isEqualTo(before);
    assertThat(model.undo().takeBack()).isEmpty();
    model.undo().doAgain();
    assertThat(model.form().field("rider").get()).isEqualTo("M. Oster");
    assertThat(model.undo().againProperty().get()).isEqualTo("Trail");
  }

  @Test
  void aSetupThatWasRemovedComesBackWithAllThatWasTypedIntoIt() {
    Map<String, Object> before = model.form().tree();
    TypedForm first = model.form().list("setups").get(0);
    TypedForm second = model.form().list("setups").get(1);
    model.form().list("setups").remove(first);
    assertThat(model.undo().backProperty().get()).isEqualTo("Setup 1 (Shock K) removed");
    model.undo().takeBack();
    assertThat(model.form().tree()).isEqualTo(before);
    assertThat(model.form().list("setups").get(1)).isSameAs(second);
  }

  @Test
  void aStartingSetIsOneStep() {
    Map<String, Object> before = model.form().tree();
    model.starters().addStartingSet(model.form().list("setups").get(0), "fork");
    assertThat(model.form().tree()).isNotEqualTo(before);
    model.undo().takeBack();
    assertThat(model.form().tree()).isEqualTo(before);
  }

  @Test
  void fiftyStepsAndMoreAreTakenBackAfterOtherPagesAndDraftsWereOpen() {
    List<Map<String, Object>> passed = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      passed.add(0, model.form().tree());
      model.form().field(i % 2 == 0 ? "rider" : "trail").set("step " + i);
    }
    PlanDrafts.Draft own =
        model.drafts().stream()
            .filter(d -> d.name().equals(model.draft()))
            .findFirst()
            .orElseThrow();
    model.start(Shell.Beginning.COMPARISON);
    model.form().field("rider").set("another draft");
    model.open(own);
    for (Map<String, Object> each : passed) {
      model.undo().takeBack();
      assertThat(model.form().tree()).isEqualTo(each);
    }
  }

  @Test
  void aDraftThatWasDeletedComesBack() {
    Map<String, Object> before = model.form().tree();
    String name = model.draft();
    model.delete();
    assertThat(desk.planning().drafts()).doesNotContainKey(name);
    model.bringBack();
    assertThat(model.form().tree()).isEqualTo(before);
    assertThat(desk.planning().drafts()).containsKey(name);
  }

  @Test
  void everyFieldThatIsStillToMendIsNamedInTheOrderOfThePage() {
    model.start(Shell.Beginning.COMPARISON);
    assertThat(model.mends()).extracting(PlanMend::path).startsWith("question", "rider", "trail");
    assertThat(model.mends())
        .extracting(PlanMend::path)
        .endsWith("measures[1].worthwhile", "timetable.lap");
  }
}
