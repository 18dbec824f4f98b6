package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.desk.SetClock;
import blindlap.plan.BlindLevel;
import blindlap.screen.Models;
import blindlap.screen.book.NotebookModel;
import blindlap.screen.cover.HelperCover;
import blindlap.screen.cover.Idling;
import blindlap.screen.part.Background;
import blindlap.screen.part.Shell;
import blindlap.screen.ride.RideModel;
import blindlap.session.SessionState;
import blindlap.wording.PlanSummary;
import java.nio.file.Files;
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
  private String phrase = "";

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
    phrase = HelperTypes.seals(commit);
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
    commit.goOn();
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
    assertThat(commit.handOut().sealingProperty().get()).isPresent();
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
    commit.goOn();
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
    commit.cover().hide();
    guess();

    assertThat(commit.phrase().noted()).isEmpty();
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
  void anOpenSessionIsCommittedWithoutHandOverOrPhraseAndCalledUnblindedThroughout() {
    model.form().part("blinding").field("blinded").set("no");
    assertThat(model.hints()).anyMatch(hint -> hint.contains("unblinded"));
    commit.begin();

    assertThat(commit.stepProperty().get()).isEqualTo(CommitModel.Step.SIGNING);
    assertThat(commit.alone()).contains(BlindLevel.OPEN);
    assertThat(shell.helperProperty().get()).isFalse();
    assertThat(commit.summary().toString())
        .contains("Unblinded (open): the rider knows the whole order");
    commit.signedProperty().set("R. Lind");
    commit.sign();
    assertThat(commit.phrase().shownProperty().get()).isEmpty();
    assertThat(commit.stepProperty().get()).isEqualTo(CommitModel.Step.SEALED);
    assertThat(commit.handOut().sealingProperty().get()).isPresent();
    commit.finish();
    assertThat(commit.stepProperty().get()).isEqualTo(CommitModel.Step.EDITING);
    SessionState session = desk.sessions().all().get(0);
    assertThat(session.covered()).isTrue();
    assertThat(session.shown()).as("all of it is shown").hasSize(session.plan().stints() + 1);

    NotebookModel notebook = Models.notebook(desk, shell, Background.immediate());
    notebook.refresh();
    NotebookModel.Answer answer = notebook.answerProperty().get();
    assertThat(answer.about().orElseThrow().title()).endsWith("Shock L, unblinded (open)");
    assertThat(answer.lead()).contains("unblinded");
    RideModel ride =
        new RideModel(
            desk.riderDays(), desk::dataVersion, Background.immediate(), desk.clock(), () -> 0);
    ride.open(session.id());
    assertThat(ride.questions().place()).contains("unblinded");
    notebook.searchProperty().set("unblinded");
    assertThat(notebook.rows()).hasSize(1);
  }

  @Test
  void ofADrawnOrderNothingIsShownByTheCommit() {
    model.form().part("blinding").field("level").set("drawn");
    commit.begin();
    commit.signedProperty().set("R. Lind");
    commit.sign();
    assertThat(commit.alone()).contains(BlindLevel.DRAWN);
    assertThat(commit.stepProperty().get()).isEqualTo(CommitModel.Step.SEALED);
    SessionState session = desk.sessions().all().get(0);
    assertThat(session.covered()).isTrue();
    assertThat(session.shown()).isEmpty();
    assertThat(shell.questionProperty().get()).as("nothing is lost by leaving").isEmpty();
  }

  private void showPhrase() {
    commit.begin();
    commit.handedOver(PIN);
    commit.signedProperty().set("R. Lind");
    commit.sign();
  }

  @Test
  void nothingIsSealedBeforeTwoWordsOfThePhraseCameBack() {
    showPhrase();
    String shown = commit.phrase().shownProperty().get();
    assertThat(shown.split(" ")).hasSize(6);
    commit.phraseNoted();
    assertThat(commit.phrase().shownProperty().get()).isEmpty();

    commit.phrase().typedProperty().set("zebra zebra");
    commit.seal();
    assertThat(commit.stepProperty().get()).isEqualTo(CommitModel.Step.PHRASE);
    assertThat(commit.phrase().shownProperty().get()).isEqualTo(shown);
    assertThat(commit.messageProperty().get()).contains("are not the ones shown");
    assertThat(desk.sessions().all()).isEmpty();

    commit.phraseNoted();
    String words = HelperTypes.words(commit.phrase().questionProperty().get(), shown);
    commit.phrase().typedProperty().set("  " + words.toUpperCase(java.util.Locale.ROOT));
    commit.seal();
    assertThat(commit.stepProperty().get()).isEqualTo(CommitModel.Step.SEALED);
    assertThat(desk.keys().helper(desk.sessions().all().get(0), shown))
        .isInstanceOf(blindlap.desk.Keys.Result.Open.class);
  }

  @Test
  void leavingBeforeSealingIsAskedAndDropsThePhraseAndTheNextCommitShowsAnother() {
    showPhrase();
    String dropped = commit.phrase().shownProperty().get();
    shell.go(Shell.Page.NOTEBOOK);
    assertThat(shell.pageProperty().get()).isEqualTo(Shell.Page.PLAN);
    assertThat(shell.questionProperty().get().orElseThrow().words())
        .contains("Nothing is sealed yet", "the phrase is dropped");
    shell.stay();
    assertThat(shell.questionProperty().get()).isEmpty();
    assertThat(commit.phrase().shownProperty().get()).isEqualTo(dropped);

    commit.phraseNoted();
    shell.go(Shell.Page.NOTEBOOK);
    shell.leave();
    assertThat(shell.pageProperty().get()).isEqualTo(Shell.Page.NOTEBOOK);
    assertThat(commit.stepProperty().get()).isEqualTo(CommitModel.Step.EDITING);
    assertThat(desk.sessions().all()).isEmpty();
    shell.go(Shell.Page.PLAN);
    showPhrase();
    assertThat(commit.phrase().shownProperty().get()).isNotEmpty().isNotEqualTo(dropped);
  }

  @Test
  void closingTheWindowIsAskedUntilTheSheetIsWrittenOrWaived() {
    boolean[] closed = new boolean[1];
    Runnable close = () -> closed[0] = true;
    showPhrase();
    shell.close(close);
    assertThat(closed[0]).isFalse();
    shell.stay();
    phrase = commit.phrase().shownProperty().get();
    commit.phraseNoted();
    commit
        .phrase()
        .typedProperty()
        .set(HelperTypes.words(commit.phrase().questionProperty().get(), phrase));
    shell.close(close);
    commit.seal();
    // What is lost is another thing now, so it is asked again.
    shell.leave();
    assertThat(closed[0]).isFalse();
    assertThat(shell.questionProperty().get().orElseThrow().words())
        .contains("The session is sealed", "sheets SESSION --helper");
    shell.stay();
    commit.goOn();
    commit.writeSheet(folder, "A4");
    assertThat(commit.messageProperty().get()).contains("The sheet was written to");
    shell.close(close);
    assertThat(closed[0]).isTrue();
    assertThat(shell.questionProperty().get()).isEmpty();
  }

  @Test
  void theQuickStartLiesInTheFolderOnceAndIsNoHelpersSheet() throws Exception {
    seal();
    commit.goOn();
    commit.handOut().writeQuickStart(folder, "LETTER");
    assertThat(commit.messageProperty().get()).contains("quick-start-letter.pdf");
    assertThat(folder.resolve("quick-start-letter.pdf")).isNotEmptyFile();
    assertThat(commit.handOut().sheetWritten()).isFalse();
    commit.handOut().writeQuickStart(folder, "LETTER");
    assertThat(commit.messageProperty().get()).contains("is there already and was kept");
  }

  @Test
  void aSheetThatCannotBeWrittenLeavesTheSessionAndSaysHowToMakeItAgain() throws Exception {
    seal();
    commit.goOn();
    Path file = Files.writeString(folder.resolve("a file"), "no folder");
    commit.writeSheet(file, "A4");

    assertThat(commit.messageProperty().get())
        .contains("The session stands", "sheets SESSION --helper");
    assertThat(desk.sessions().all()).hasSize(1);
    shell.go(Shell.Page.NOTEBOOK);
    assertThat(shell.pageProperty().get()).isEqualTo(Shell.Page.PLAN);
    shell.leave();
    assertThat(shell.pageProperty().get()).isEqualTo(Shell.Page.NOTEBOOK);
    assertThat(commit.phrase().noted()).isEmpty();
  }

  @Test
  void aBlankPageIsLeftWithoutSayingWhetherAnythingIsSealed() {
    showPhrase();
    commit.cover().hide();
    shell.go(Shell.Page.NOTEBOOK);
    String before = shell.questionProperty().get().orElseThrow().words();
    shell.leave();
    shell.go(Shell.Page.PLAN);
    seal();
    commit.cover().hide();
    shell.go(Shell.Page.NOTEBOOK);

    assertThat(shell.questionProperty().get().orElseThrow().words())
        .isEqualTo(before)
        .doesNotContain("sealed");
  }
}
