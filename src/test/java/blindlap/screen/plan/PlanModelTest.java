package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.screen.Models;
import blindlap.screen.part.Background;
import blindlap.screen.part.Shell;
import blindlap.screen.part.TypedForm;
import blindlap.session.SessionState;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlanModelTest {
  private static final Path SAMPLE = Path.of("sample-sessions/shocks-on-quarry-loop/plan.yaml");

  @TempDir Path folder;
  private Desk desk;
  private PlanModel model;

  @BeforeEach
  void open() {
    desk = PlanDesk.open(folder, 1);
    model = Models.plan(desk, new Shell(), Background.immediate(), 0);
  }

  @AfterEach
  void close() {
    desk.close();
  }

  @Test
  void severalDraftsAreKeptAsTypedMistakesIncluded() {
    model.form().field("stints").set("about 16");
    model.keep();
    model.start(Shell.Beginning.COMPARISON);
    model.form().field("trail").set("Mill track");
    model.keep();

    PlanModel later = Models.plan(desk, new Shell(), Background.immediate(), 0);
    assertThat(later.drafts()).hasSize(2);
    later.open(later.drafts().get(0));
    assertThat(later.form().field("stints").get()).isEqualTo("about 16");
    assertThat(later.form().field("stints").errorProperty().get()).contains("about 16");
    assertThat(later.completeProperty().get()).isFalse();
  }

  @Test
  void aDraftIsCalledSavedOnlyOnceItIsOnDisk() {
    model.form().field("trail").set("M");
    assertThat(model.savedProperty().get()).isEmpty();
    model.keep();

    assertThat(model.savedProperty().get()).isEqualTo("Saved 20:06:41");
    assertThat(desk.planning().drafts().values())
        .anySatisfy(d -> assertThat(d).containsEntry("trail", "M"));
  }

  @Test
  void aFileThatCannotBeReadLeavesTheDraftAlone() throws IOException {
    Path bad = Files.writeString(folder.resolve("bad.yaml"), "question: [1\n");
    model.form().field("trail").set("Mill track");

    model.startFromFile(bad);
    assertThat(model.troubleProperty().get()).contains("cannot be read");
    model.startFromFile(folder.resolve("absent.yaml"));
    assertThat(model.troubleProperty().get()).contains("absent.yaml");
    assertThat(model.form().field("trail").get()).isEqualTo("Mill track");
  }

  @Test
  void aPlanFileGoesInAndOutUnchanged() {
    model.startFromFile(SAMPLE);
    model.writeFile(folder.resolve("out.yaml"));
    PlanModel other = Models.plan(desk, new Shell(), Background.immediate(), 0);
    other.startFromFile(folder.resolve("out.yaml"));

    assertThat(other.planProperty().get()).isPresent().isEqualTo(model.planProperty().get());
  }

  @Test
  void aCommittedPlanCanBeTheStartOfAnother() {
    model.startFromFile(SAMPLE);
    model.commit().begin();
    model.commit().handedOver("4711");
    model.commit().sign();
    assertThat(model.commit().stepProperty().get()).isEqualTo(CommitModel.Step.SIGNING);
    assertThat(model.commit().messageProperty().get()).contains("at least one name");
    model.commit().signedProperty().set("R. Lind");
    HelperTypes.seals(model.commit());
    assertThat(model.commit().stepProperty().get()).isEqualTo(CommitModel.Step.SEALED);
    model.copies().startFrom(desk.sessions().all().get(0).id());

    assertThat(model.form().field("question").get()).startsWith("Is Shock L quicker");
    assertThat(model.form().field("day").get()).isEmpty();
    assertThat(model.form().part("expectations").field("tester").get()).isEmpty();
  }

  @Test
  void aPlanThatCannotShowAnythingSaysSoAndNeedsAReason() {
    model.startFromFile(SAMPLE);
    TypedForm.Entry override = model.form().field("override");
    model.form().field("stints").set("8");

    assertThat(model.answer().shownProperty().get().sentence().text())
        .contains("cannot show anything");
    assertThat(model.completeProperty().get()).isFalse();
    assertThat(override.errorProperty().get()).contains("never show", "possible p is .056,");
    override.set("practice for the helper");
    assertThat(model.completeProperty().get()).isTrue();
    assertThat(model.hints()).anyMatch(hint -> hint.contains("practice for the helper"));
  }

  @Test
  void turningAKnobDropsTheSimulationThatIsUnderWay() {
    Deque<Runnable> waiting = new ArrayDeque<>();
    PlanModel slow = Models.plan(desk, new Shell(), Background.by(waiting::add));
    slow.answer().simulate(300);
    slow.startFromFile(SAMPLE);
    run(waiting, 12);
    slow.form().field("stints").set("12");
    String formula = slow.answer().shownProperty().get().oddsSource();
    assertThat(formula).startsWith("By formula");
    while (!waiting.isEmpty()) {
      waiting.poll().run();
    }

    PlanAnswerModel.Shown shown = slow.answer().shownProperty().get();
    assertThat(shown.sentence().text()).startsWith("12 stints");
    assertThat(shown.oddsSource()).startsWith("By simulating 300 days");
    assertThat(shown.left()).isNotEmpty();
    assertThat(slow.answer().progressProperty().get()).isEmpty();
  }

  @Test
  void threeSetupsAreAnsweredByTheTestOfTheirPairsAndDroppedOnTheNextTurn() {
    Deque<Runnable> waiting = new ArrayDeque<>();
    PlanModel slow = Models.plan(desk, new Shell(), Background.by(waiting::add));
    slow.answer().simulate(200);
    slow.startFromFile(SAMPLE);
    run(waiting, Integer.MAX_VALUE);
    slow.form().add("setups").field("name").set("Shock M");
    slow.rules().chooseProtocol("three-setups");
    slow.form().field("stints").set("12");
    run(waiting, 8);
    slow.form().field("stints").set("15");
    assertThat(slow.answer().shownProperty().get().odds()).isEmpty();
    assertThat(slow.answer().shownProperty().get().lead().toString()).contains("approximation");
    while (!waiting.isEmpty()) {
      waiting.poll().run();
    }

    PlanAnswerModel.Shown shown = slow.answer().shownProperty().get();
    assertThat(shown.sentence().text())
        .startsWith("15 stints")
        .contains("between two named setups of 3");
    assertThat(shown.lead().toString()).doesNotContain("approximation");
    assertThat(shown.simulated()).startsWith("By simulating 200 days");
    assertThat(shown.heads()).hasSize(6);
    assertThat(shown.odds()).hasSize(4).allMatch(row -> row.size() == 6);
    assertThat(shown.oddsSource()).startsWith("By simulating 200 days");
  }

  @Test
  void everyRuleIsAnsweredToTheEnd() {
    for (String protocol : model.rules().protocols().keySet()) {
      if (protocol.endsWith("-levels")) {
        continue; // of a steps day: PlanStepsDayTest
      }
      PlanModel page = Models.plan(desk, new Shell(), Background.immediate(), 0);
      page.startFromFile(SAMPLE);
      while (page.form().list("setups").size()
          < (protocol.startsWith("three") ? 3 : protocol.startsWith("four-s") ? 4 : 2)) {
        page.form().add("setups").field("name").set("Shock " + page.form().list("setups").size());
      }
      page.rules().chooseProtocol(protocol);
      page.form().field("stints").set(protocol.equals("eight-stints") ? "8" : "24");
      page.answer().simulate(100);
      page.form().field("trail").set("Mill track");

      PlanAnswerModel.Shown shown = page.answer().shownProperty().get();
      assertThat(page.answer().progressProperty().get()).as(protocol).isEmpty();
      assertThat(shown.left()).as(protocol).isNotEmpty();
      assertThat(shown.oddsSource()).as(protocol).startsWith("By simulating 100 days");
    }
  }

  private static void run(Deque<Runnable> waiting, int times) {
    for (int i = 0; i < times && !waiting.isEmpty(); i++) {
      waiting.poll().run();
    }
  }

  @Test
  void differencesAreMarkedAndParityIsSaid() {
    model.startFromFile(SAMPLE);
    List<PlanDiffers.Row> rows = model.answer().shownProperty().get().differences();

    assertThat(rows)
        .extracting(PlanDiffers.Row::name, PlanDiffers.Row::differs)
        .contains(
            org.assertj.core.api.Assertions.tuple("spring rate", false),
            org.assertj.core.api.Assertions.tuple("compression", true));
  }

  @Test
  void componentAndMassStandBesideTheSettings() {
    model.startFromFile(SAMPLE);
    assertThat(row("component").note()).isEqualTo("same");
    assertThat(row("mass on the bike").values()).containsExactly("742 g", "882 g");
    assertThat(row("mass on the bike").note()).isEqualTo("140 g apart");
    model.form().list("setups").get(0).field("ballast_g").set("140");
    model.form().list("setups").get(1).field("component").set("rear shock, air");
    assertThat(row("component").differs()).isTrue();
    assertThat(row("mass on the bike").values())
        .containsExactly("742 g + 140 g of ballast", "882 g");
    assertThat(row("mass on the bike").note()).isEqualTo("same");
    model.form().list("setups").get(1).field("mass").set("");
    assertThat(row("mass on the bike").values()).endsWith("–");
    assertThat(row("mass on the bike").note()).isEqualTo("not known of every setup");
  }

  private PlanDiffers.Row row(String name) {
    return model.answer().shownProperty().get().differences().stream()
        .filter(each -> each.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void anOpenNoiseRunIsCommittedWithoutPhraseOrKey() throws IOException {
    String noiseRun =
        """
        kind: noise run
        question: How much do two laps on the same setup differ?
        rider: R. Lind
        trail: Mill track
        day: 2026-11-14
        stints: 8
        setups: [{name: Shock K}]
        measures: [{name: lap time, kind: lap time, unit: s, role: primary}]
        """;
    model.startFromFile(Files.writeString(folder.resolve("noise.yaml"), noiseRun));
    assertThat(model.problems()).isEmpty();
    model.commit().begin();
    assertThat(model.commit().stepProperty().get()).isEqualTo(CommitModel.Step.SIGNING);
    assertThat(model.commit().secret()).isFalse();
    model.commit().signedProperty().set("R. Lind");
    model.commit().sign();

    assertThat(model.commit().messageProperty().get()).isEmpty();
    assertThat(model.commit().stepProperty().get()).isEqualTo(CommitModel.Step.EDITING);
    assertThat(model.commit().phrase().shownProperty().get()).isEmpty();
    assertThat(desk.sessions().all()).hasSize(1).noneMatch(SessionState::hasKey);
  }

  @Test
  void aSeriesIsDeclaredOnThePage() {
    model.startFromFile(SAMPLE);
    model.form().field("series").set("quarry-autumn");
    model.form().field("series_sessions").set("3");
    model.writeFile(folder.resolve("series.yaml"));

    assertThat(folder.resolve("series.yaml"))
        .content()
        .contains("quarry-autumn")
        .containsPattern("series_sessions: \"?3");
  }
}
