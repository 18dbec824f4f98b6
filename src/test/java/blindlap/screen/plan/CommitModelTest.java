package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.desk.SetClock;
import blindlap.screen.Models;
import blindlap.screen.book.NotebookModel;
import blindlap.screen.cover.HelperCover;
import blindlap.screen.cover.Idling;
import blindlap.screen.part.Background;
import blindlap.screen.part.Shell;
import blindlap.screen.ride.RideModel;
import blindlap.wording.PlanSummary;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The helper's pages of a commit are covered as the Swap page is. */
class CommitModelTest {
  private static final Path SAMPLE = Path.of("sample-sessions/shocks-on-quarry-loop/plan.yaml");
  private static final String PIN = "4711";

  @TempDir Path folder;
  private final SetClock clock = new SetClock(Instant.parse("2026-11-13T19:06:41Z"));
  private final Shell shell = new Shell();
  private Desk desk;
  private PlanModel model;
  private CommitModel commit;

  @BeforeEach
  void open() {
    desk = PlanDesk.open(folder, 1, clock);
    model = Models.plan(desk, shell, Background.immediate(), 0);
    model.startFromFile(SAMPLE);
    commit = model.commit();
    shell.go(Shell.Page.PLAN);
  }

  @AfterEach
  void close() {
    desk.close();
  }

  private HelperCover.State cover() {
    return commit.cover().stateProperty().get();
  }

  private void seal() {
    commit.begin();
    commit.handedOver(PIN);
    commit.signedProperty().set("R. Lind");
    commit.seal();
  }

  @Test
  void theWindowIsTheHelpersFromTheHandOverUntilTheMachineGoesBack() {
    assertThat(shell.helperProperty().get()).isFalse();
    commit.begin();
    assertThat(shell.helperProperty().get()).isTrue();
    shell.go(Shell.Page.NOTEBOOK);
    assertThat(shell.helperProperty().get()).isFalse();
    shell.go(Shell.Page.PLAN);
    assertThat(shell.helperProperty().get()).isTrue();
    commit.back();
    assertThat(shell.helperProperty().get()).isFalse();

    seal();
    commit.typedPhraseProperty().set(commit.phraseProperty().get());
    commit.phraseNoted();
    assertThat(shell.helperProperty().get()).isTrue();
    commit.finish();
    assertThat(shell.helperProperty().get()).isFalse();
  }

  @Test
  void nothingGoesOnBeforeTheHelperHasChosenAPin() {
    commit.begin();
    commit.handedOver("12");

    assertThat(commit.stepProperty().get()).isEqualTo(CommitModel.Step.HAND_OVER);
    assertThat(commit.cover().troubleProperty().get()).contains("four digits");
    commit.handedOver(PIN);
    assertThat(commit.stepProperty().get()).isEqualTo(CommitModel.Step.SIGNING);
  }

  @Test
  void thePagesGoBlankWhenIdleAndThePinBringsThemBack() {
    seal();
    clock.move(Idling.LIMIT.minusSeconds(1));
    commit.cover().tick();
    assertThat(cover()).isEqualTo(HelperCover.State.OPEN);
    assertThat(commit.cover().idleProperty().get()).isEqualTo("closes itself in 0:01");
    commit.cover().touch();
    clock.move(Idling.LIMIT.minusSeconds(1));
    commit.cover().tick();
    assertThat(cover()).isEqualTo(HelperCover.State.OPEN);
    clock.move(Duration.ofSeconds(1));
    commit.cover().tick();
    assertThat(cover()).isEqualTo(HelperCover.State.BLANK);
    assertThat(commit.cover().idleProperty().get()).isEmpty();

    commit.cover().reopen("0000");
    assertThat(cover()).isEqualTo(HelperCover.State.BLANK);
    assertThat(commit.cover().troubleProperty().get()).contains("Tries left: 4");
    commit.cover().reopen(PIN);
    assertThat(cover()).isEqualTo(HelperCover.State.OPEN);
    assertThat(commit.phraseProperty().get()).isNotEmpty();
  }

  @Test
  void whatWasAskedBeforeIsReadWithThePlanBeforeAnythingIsDrawn() {
    commit.begin();
    assertThat(commit.summary())
        .last()
        .isEqualTo(
            new PlanSummary.Part(
                "Asked before", List.of("No other session of this question is in this notebook.")));
    commit.back();
    seal();
    commit.typedPhraseProperty().set(commit.phraseProperty().get());
    commit.phraseNoted();
    commit.finish();

    shell.go(Shell.Page.PLAN);
    model.startFromFile(SAMPLE);
    commit.begin();
    assertThat(commit.summary().get(commit.summary().size() - 1).lines())
        .hasSize(2)
        .last()
        .asString()
        .endsWith("committed; primary measure lap time; still sealed.");
    assertThat(desk.sessions().all()).hasSize(1);
  }

  @Test
  void aClockSetBackDoesNotKeepThePagesOpen() {
    seal();
    clock.move(Duration.ofHours(-1));
    commit.cover().tick();

    assertThat(cover()).isEqualTo(HelperCover.State.BLANK);
  }

  @Test
  void tooManyWrongPinsBeforeSealingLeadBackToTheDraft() {
    commit.begin();
    commit.handedOver(PIN);
    commit.concealNullRun(1);
    commit.cover().hide();
    guess();

    assertThat(commit.stepProperty().get()).isEqualTo(CommitModel.Step.EDITING);
    assertThat(model.troubleProperty().get()).contains("Nothing was sealed");
    assertThat(model.form().field("question").get()).isNotEmpty();
    assertThat(desk.sessions().all()).isEmpty();
  }

  @Test
  void tooManyWrongPinsAfterSealingTakeThePhraseAwayForGood() {
    seal();
    String phrase = commit.phraseProperty().get();
    commit.cover().hide();
    guess();

    assertThat(commit.phraseProperty().get()).isEmpty();
    assertThat(commit.stepProperty().get()).isEqualTo(CommitModel.Step.EDITING);
    assertThat(model.troubleProperty().get())
        .contains("abandon the session")
        .doesNotContain(phrase);
    assertThat(desk.sessions().all()).hasSize(1);
  }

  private void guess() {
    for (int i = 0; i < 5; i++) {
      commit.cover().reopen("0000");
    }
  }

  @Test
  void anUnblindedSessionIsCommittedWithoutHandOverAndCalledUnblindedThroughout() {
    model.form().part("blinding").field("blinded").set("no");
    assertThat(model.hints()).anyMatch(hint -> hint.contains("unblinded"));
    commit.begin();

    assertThat(commit.stepProperty().get()).isEqualTo(CommitModel.Step.SIGNING);
    assertThat(commit.unblinded()).isTrue();
    assertThat(shell.helperProperty().get()).isFalse();
    assertThat(commit.summary().toString()).contains("Unblinded: the rider knows what is fitted");
    commit.signedProperty().set("R. Lind");
    commit.seal();
    assertThat(commit.stepProperty().get()).isEqualTo(CommitModel.Step.SEALED);
    assertThat(commit.phraseProperty().get()).isNotEmpty();
    commit.typedPhraseProperty().set(commit.phraseProperty().get());
    commit.phraseNoted();
    commit.finish();

    NotebookModel notebook = Models.notebook(desk, shell, Background.immediate());
    notebook.refresh();
    NotebookModel.Answer answer = notebook.answerProperty().get();
    assertThat(answer.about().orElseThrow().title()).endsWith("Shock L, unblinded");
    assertThat(answer.lead()).contains("unblinded");
    RideModel ride =
        new RideModel(
            desk.riderDays(), desk::dataVersion, Background.immediate(), desk.clock(), () -> 0);
    ride.open(desk.sessions().all().get(0).id());
    assertThat(ride.questions().place()).contains("unblinded");
    notebook.searchProperty().set("unblinded");
    assertThat(notebook.rows()).hasSize(1);
  }
}
