package blindlap.screen.book;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Commits;
import blindlap.desk.Desk;
import blindlap.desk.LapFiles;
import blindlap.desk.PlainDays;
import blindlap.desk.PlanPreview;
import blindlap.plan.Measure;
import blindlap.sample.Demo;
import blindlap.screen.Models;
import blindlap.screen.SceneText;
import blindlap.screen.ShellView;
import blindlap.screen.Window;
import blindlap.screen.Within;
import blindlap.screen.part.Background;
import blindlap.screen.part.Dialogs;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.screen.part.Theme;
import blindlap.screen.plan.PlanDesk;
import blindlap.seal.SealParameters;
import blindlap.seal.SessionKind;
import blindlap.session.LifeCommands;
import blindlap.session.SessionState;
import blindlap.session.SessionSummary;
import blindlap.session.day.SessionId;
import blindlap.session.day.Step;
import blindlap.store.SqliteNotebook;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import javafx.event.Event;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NotebookPageTest {
  private static final Path SAMPLE = Path.of("sample-sessions/shocks-on-quarry-loop/plan.yaml");

  @TempDir static Path shared;

  @TempDir Path folder;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private Path notebook() {
    return folder.resolve("quarry.blindlap");
  }

  /** The sample sessions, four old days and a session of which six stints are ridden. */
  private Desk filled() throws Exception {
    return copyOf(filledOnce());
  }

  /** The same with every verdict in its list. */
  private Desk told() throws Exception {
    return copyOf(toldOnce());
  }

  private Desk copyOf(Path notebook) throws Exception {
    Files.copy(notebook, notebook());
    return PlanDesk.open(folder, 7);
  }

  /** It is ridden once; every test has a copy of its own. */
  private static Path filledOnce() throws Exception {
    Path once = shared.resolve("quarry.blindlap");
    if (!Files.exists(once)) {
      new Demo(
              (file, clock, sources, ids) ->
                  new Desk(
                      SqliteNotebook.open(file, ids.exactly(16), clock.instant()),
                      clock,
                      sources,
                      new SealParameters(1_000),
                      ids),
              line -> {})
          .run(once, shared);
      try (Desk desk = PlanDesk.open(shared, 7, PlanDesk.CLOCK, 22)) {
        String[] days = {"2025-05-10", "2025-06-21", "2025-08-02", "2025-10-11"};
        for (int i = 0; i < days.length; i++) {
          oldDay(desk, LocalDate.parse(days[i]), 1.3 - 0.25 * i, i);
        }
        commit(desk);
      }
    }
    return once;
  }

  private static Path toldOnce() throws Exception {
    Path told = shared.resolve("told");
    Path once = told.resolve("quarry.blindlap");
    if (!Files.exists(once)) {
      Files.createDirectory(told);
      Files.copy(filledOnce(), once);
      try (Desk desk = PlanDesk.open(told, 7)) {
        while (desk.sessionList().keepVerdicts(10)) {
          // every verdict is in the list afterwards
        }
      }
    }
    return once;
  }

  private static void oldDay(Desk desk, LocalDate day, double sd, long seed) {
    Random random = new Random(seed);
    StringBuilder csv = new StringBuilder("t\n");
    for (int lap = 0; lap < 14; lap++) {
      csv.append(
          String.format(Locale.ROOT, "%.2f%n", 96 - 0.05 * lap + sd * random.nextGaussian()));
    }
    PlainDays.Result result =
        desk.plainDays()
            .bring(
                new PlainDays.Day("old.csv", "R. Lind", "Quarry loop", day),
                csv.toString().getBytes(StandardCharsets.UTF_8),
                new PlainDays.Mapping(
                    List.of(new PlainDays.Wanted("lap time", "t", Measure.Kind.LAP_TIME, "s")),
                    "",
                    ""));
    assertThat(result).isInstanceOf(PlainDays.Result.Brought.class);
  }

  private static SessionState commit(Desk desk) throws Exception {
    PlanPreview preview = PlanPreview.of(Files.readString(SAMPLE), desk.protocols());
    SessionState state =
        Commits.commit(
                desk, preview.plan().orElseThrow(), SessionKind.comparison(), List.of("R. Lind"))
            .state();
    StringBuilder csv = new StringBuilder("lap;lap time\n");
    for (int lap = 1; lap <= 6; lap++) {
      csv.append(lap).append(";9").append(lap % 4).append(".5\n");
    }
    new LapFiles(desk.sessions()).record(state, csv.toString().getBytes(StandardCharsets.UTF_8));
    return state;
  }

  private static NotebookModel model(Desk desk) {
    NotebookModel model = Models.notebook(desk, new Shell(), Background.immediate());
    model.refresh();
    return model;
  }

  @Test
  void theSessionInHandComesFirstWithItsNextStintAndNothingOfItsKey() throws Exception {
    try (Desk desk = told()) {
      NotebookModel model = model(desk);
      NotebookModel.Answer answer = model.answerProperty().get();
      assertThat(answer.before() + answer.marked() + answer.after())
          .isEqualTo("Stint 7 of 16 is next.");
      assertThat(answer.ridden()).isEqualTo(6);
      assertThat(model.rows()).noneMatch(r -> r.id().equals(answer.about().orElseThrow().id()));
      assertThat(
              model.rows().stream()
                  .filter(r -> r.step().sealed() && r.step() != Step.REVIEW_CLOSED))
          .isEmpty();
      assertThat(model.noiseProperty().get().title()).isEqualTo("R. Lind's noise on Quarry loop");
      assertThat(model.noiseProperty().get().picture()).isPresent();
      assertThat(model.noiseProperty().get().shows()).hasSize(4);
    }
  }

  @Test
  void searchFindsByVerdictSetupAndRiderAndSaysWhenNothingIsFound() throws Exception {
    try (Desk desk = filled()) {
      NotebookModel model = model(desk);
      int all = desk.notebook().summaries().size();
      while (desk.sessionList().keepVerdicts(10)) {
        // every verdict is in the list afterwards
      }
      model.searchProperty().set("800 mm settled");
      assertThat(model.rows()).hasSize(1);
      assertThat(model.rows().get(0).outcome()).isEqualTo("not settled");
      assertThat(model.rows().get(0).detail()).contains("mm bar").contains("to");
      assertThat(model.foundProperty().get()).isEqualTo("1 of " + all + " sessions");
      model.searchProperty().set("nobody here");
      assertThat(model.rows()).isEmpty();
      assertThat(model.foundProperty().get()).startsWith("No session holds all these words.");
      model.searchProperty().set("");
      assertThat(model.rows()).hasSize(all - 1);
    }
  }

  @Test
  void abandoningNeedsAReasonAndWhatAnotherWindowWritesIsSeenAtTheNextLook() throws Exception {
    try (Desk desk = told();
        Desk other = PlanDesk.open(folder, 8)) {
      NotebookModel model = model(desk);
      NotebookModel.Row hand = model.answerProperty().get().about().orElseThrow();
      model.abandon(hand, " ", "");
      assertThat(model.troubleProperty().get()).contains("reason");
      other.sessionList().abandon(hand.id(), "the trail was closed", "");
      model.look();
      assertThat(model.answerProperty().get().stints()).isZero();
      assertThat(
              model.rows().stream()
                  .filter(r -> r.id().equals(hand.id()))
                  .findFirst()
                  .orElseThrow()
                  .step())
          .isEqualTo(Step.ABANDONED);
    }
  }

  @Test
  void aCopiedPlanIsADraftOfThePlanPage() throws Exception {
    try (Desk desk = told()) {
      Shell shell = new Shell();
      NotebookModel model = Models.notebook(desk, shell, Background.immediate());
      model.refresh();
      int before = desk.planning().drafts().size();
      model.copyAsPlan(model.answerProperty().get().about().orElseThrow().id());
      assertThat(desk.planning().drafts()).hasSize(before + 1);
      assertThat(shell.pageProperty().get()).isEqualTo(Shell.Page.PLAN);
    }
  }

  @Test
  void anEmptyNotebookTeachesWhatToDoFirst() {
    try (Desk desk = PlanDesk.open(folder, 1)) {
      NotebookModel model = model(desk);
      assertThat(model.emptyProperty().get()).isTrue();
      assertThat(model.answerProperty().get().marked()).isEqualTo("Nothing has been ridden yet.");
      assertThat(model.answerProperty().get().lead())
          .contains("noise run", "comparison", "a notebook of their own");
      Window.run(() -> take(desk, Theme.PAPER, 1, 1280, "notebook-empty"));
    }
  }

  @Test
  void sampleDaysComeInANotebookOfTheirOwnAndLeaveAnEmptyOneEmpty() {
    try (Desk desk = PlanDesk.open(folder, 1)) {
      Path samples = folder.resolve("samples.blindlap");
      List<Path> opened = new ArrayList<>();
      SampleDaysModel days =
          new SampleDaysModel(() -> made(samples), opened::add, Background.immediate());
      NotebookModel model = model(desk);
      Window.run(() -> press(empty(desk, model, days), "Look at sample days"));
      assertThat(opened).containsExactly(samples);
      assertThat(days.saidProperty().get()).contains(samples.toString(), "never come into this");
      assertThat(desk.notebook().summaries()).isEmpty();
      try (SqliteNotebook there =
          SqliteNotebook.open(samples, new byte[16], PlanDesk.CLOCK.instant())) {
        assertThat(there.summaries()).hasSize(3);
      }
    }
  }

  @Test
  void sampleDaysThatCannotBeMadeAreSaidInOneSentenceAndCanBeAskedForAgain() {
    try (Desk desk = PlanDesk.open(folder, 1)) {
      SampleDaysModel days =
          new SampleDaysModel(
              () -> made(folder.resolve("nowhere/samples.blindlap")),
              file -> {},
              Background.immediate());
      NotebookModel model = model(desk);
      Window.run(() -> press(empty(desk, model, days), "Look at sample days"));
      assertThat(days.saidProperty().get())
          .startsWith("The sample days could not be shown: ")
          .endsWith("This notebook is as it was.");
      assertThat(days.workingProperty().get()).isFalse();
    }
  }

  private NotebookPage empty(Desk desk, NotebookModel model, SampleDaysModel days) {
    NotebookPage page =
        new NotebookPage(
            new Look(),
            model,
            PlanDesk.keeping(desk, notebook()),
            Optional.of(days),
            new Chosen(List.of()),
            new FlowPane());
    Scene scene = new Scene(page, 1280, 980);
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    return page;
  }

  private static Path made(Path samples) {
    new Demo(
            (file, clock, sources, ids) ->
                new Desk(
                    SqliteNotebook.open(file, ids.exactly(16), clock.instant()),
                    clock,
                    sources,
                    new SealParameters(1_000),
                    ids),
            line -> {})
        .days(samples);
    return samples;
  }

  @Test
  void thePageIsPhotographedInEveryThemeNarrowAndAtTwiceTheTextSize() throws Exception {
    try (Desk desk = told()) {
      for (Theme theme : Theme.values()) {
        String name = "notebook-" + theme.name().toLowerCase(Locale.ROOT);
        Window.run(() -> take(desk, theme, 1, 1280, name));
      }
      Window.run(() -> take(desk, Theme.PAPER, 1, 1000, "notebook-paper-narrow"));
      Window.run(() -> take(desk, Theme.PAPER, 2, 1280, "notebook-paper-200"));
      assertThat(Path.of("target", "pictures", "notebook-dark.png")).exists();
    }
  }

  /** Someone who chooses these files, and saves where he is asked in the folder of the first. */
  private record Chosen(List<Path> files) implements Dialogs {
    @Override
    public Optional<Path> openFile(String title) {
      return files.stream().findFirst();
    }

    @Override
    public List<Path> openFiles(String title) {
      return files;
    }

    @Override
    public Optional<Path> saveFile(String title, String name) {
      return files.stream().findFirst().map(file -> file.resolveSibling(name));
    }

    @Override
    public Optional<Path> folder(String title) {
      return Optional.empty();
    }
  }

  private static ButtonBase button(Parent page, String words) {
    return Stream.concat(page.lookupAll(".button").stream(), page.lookupAll(".hyperlink").stream())
        .map(ButtonBase.class::cast)
        .filter(b -> b.getText().equals(words))
        .findFirst()
        .orElseThrow();
  }

  private static void press(Parent page, String words) {
    ButtonBase button = button(page, words);
    assertThat(button.isDisabled()).as(words).isFalse();
    button.fire();
  }

  private NotebookPage page(Desk desk, NotebookModel model, KeepingModel keeping, Path chosen) {
    NotebookPage page = new NotebookPage(new Look(), model, keeping, new Chosen(List.of(chosen)));
    Scene scene = new Scene(page, 1280, 980);
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    return page;
  }

  @Test
  void aSessionIsSavedOnOneMachineAndBroughtInOnAnotherByButtons() throws Exception {
    Path elsewhere = Files.createDirectory(folder.resolve("elsewhere"));
    try (Desk here = told();
        Desk there = PlanDesk.open(elsewhere, 8)) {
      NotebookModel model = model(here);
      NotebookModel.Row hand = model.answerProperty().get().about().orElseThrow();
      KeepingModel keeping = PlanDesk.keeping(here, notebook());
      Path file = folder.resolve(KeepingModel.fileName(hand));
      Window.run(() -> press(page(here, model, keeping, file), "Save as a session file …"));
      assertThat(keeping.saidProperty().get()).startsWith("Saved ").contains(file.toString());
      KeepingModel other = PlanDesk.keeping(there, elsewhere.resolve("quarry.blindlap"));
      NotebookModel empty = model(there);
      Window.run(() -> press(page(there, empty, other, file), "Bring in sessions …"));
      assertThat(other.saidProperty().get()).contains("is new here", "the key still sealed");
      empty.look();
      assertThat(empty.answerProperty().get().about().orElseThrow().id()).isEqualTo(hand.id());
      Window.run(() -> press(page(there, empty, other, notebook()), "Bring in sessions …"));
      assertThat(other.saidProperty().get())
          .isEqualTo("quarry.blindlap: 7 sessions new, 0 with new entries, 1 here already.");
      Files.writeString(file, Files.readString(file).replace("\"9", "\"8"));
      Window.run(() -> press(page(there, empty, other, file), "Bring in sessions …"));
      assertThat(other.saidProperty().get()).contains("was changed after it was written");
      Window.run(() -> press(page(there, empty, other, file), "Back up now"));
      assertThat(other.saidProperty().get()).startsWith("Backup made and checked: quarry-2026");
      assertThat(there.notebook().verify().problems()).isEmpty();
    }
  }

  @Test
  void theListSaysWhyASessionWasAbandoned() throws Exception {
    try (Desk desk = told()) {
      NotebookModel model = model(desk);
      NotebookModel.Row hand = model.answerProperty().get().about().orElseThrow();
      Window.run(
          () -> {
            NotebookPage page = page(desk, model, PlanDesk.keeping(desk, notebook()), notebook());
            model.searchProperty().set("riding");
            ListView<?> list = (ListView<?>) page.lookup(".sessions");
            list.getSelectionModel().select(0);
            press(page, "Abandon …");
            reason(page).setText("the trail was closed");
            press(page, "Abandon it");
            model.searchProperty().set("trail closed abandoned");
          });
      assertThat(model.rows()).hasSize(1);
      NotebookModel.Row row = model.rows().get(0);
      assertThat(row.id()).isEqualTo(hand.id());
      assertThat(row.outcome()).isEqualTo("abandoned");
      assertThat(row.detail()).isEqualTo("the trail was closed");
    }
  }

  @Test
  void theSessionInHandIsAbandonedWithoutASearchAndThePageSaysWhichOneItIs() throws Exception {
    try (Desk desk = told()) {
      NotebookModel model = model(desk);
      NotebookModel.Row hand = model.answerProperty().get().about().orElseThrow();
      int all = model.rows().size();
      Window.run(
          () -> {
            NotebookPage page = page(desk, model, PlanDesk.keeping(desk, notebook()), notebook());
            ListView<?> list = (ListView<?>) page.lookup(".sessions");
            list.getSelectionModel().select(0);
            Event.fireEvent(
                list,
                new KeyEvent(
                    KeyEvent.KEY_PRESSED, "", "", KeyCode.ESCAPE, false, false, false, false));
            press(page, "Abandon …");
            assertThat(SceneText.of(page.getScene()))
                .contains(
                    "Shock K against Shock L, " + hand.facts() + ", 14 Nov 2026: it ends without");
            assertThat(button(page, "Abandon it").isDisabled()).as("without a reason").isTrue();
            page.layout();
            assertThat(list.getWidth()).as("the margin stays beside it").isLessThan(830);
            reason(page).setText("the trail was closed");
            press(page, "Abandon it");
          });
      assertThat(model.rows()).hasSize(all + 1);
      assertThat(model.rows().stream().filter(row -> row.step() == Step.ABANDONED))
          .extracting(NotebookModel.Row::id)
          .containsExactly(hand.id());
      Window.run(
          () -> {
            NotebookPage page = page(desk, model, PlanDesk.keeping(desk, notebook()), notebook());
            assertThat(button(page, "Abandon …").isDisabled()).as("none is in hand").isTrue();
          });
    }
  }

  private static TextField reason(Parent page) {
    return page.lookupAll(".text-field").stream()
        .map(TextField.class::cast)
        .filter(f -> "Why is it abandoned?".equals(f.getPromptText()))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void fiveSessionsAreInViewAt768PixelsAndThreeWithTextOfTwiceTheSize() throws Exception {
    try (Desk desk = told()) {
      assertThat(inView(desk, 1366, 1, "notebook-768")).isGreaterThanOrEqualTo(5);
      assertThat(inView(desk, 900, 1, "notebook-900x768")).isGreaterThanOrEqualTo(5);
      assertThat(inView(desk, 1366, 2, "notebook-768-200")).isGreaterThanOrEqualTo(3);
      // Both at once: the page scrolls as one, and three are seen before it does.
      assertThat(inView(desk, 900, 2, "notebook-900x768-200")).isGreaterThanOrEqualTo(3);
    }
  }

  /** Sessions of the list that are seen as a whole in a window of this width, 768 px high. */
  private long inView(Desk desk, int width, double scale, String name) {
    NotebookModel model = model(desk);
    return Window.call(
        () -> {
          Look look = new Look();
          look.textScaleProperty().set(scale);
          NotebookPage page =
              new NotebookPage(
                  look, model, PlanDesk.keeping(desk, notebook()), new Chosen(List.of()));
          ShellView view =
              new ShellView(
                  look,
                  new Shell(),
                  Map.of(Shell.Page.NOTEBOOK, () -> page),
                  List.of("quarry.blindlap"));
          Scene scene = new Scene(view, width, 768);
          look.dress(scene);
          Window.picture(scene, name);
          Window.picture(scene, name);
          assertThat(Within.of(page, name).wrong()).isEmpty();
          Node list = page.lookup(".sessions");
          double end = list.localToScene(list.getBoundsInLocal()).getMaxY();
          double bottom = Math.min(768, end);
          return page.lookupAll(".session-cell").stream()
              .filter(cell -> ((ListCell<?>) cell).getItem() != null)
              .filter(cell -> cell.localToScene(cell.getBoundsInLocal()).getMaxY() <= bottom)
              .count();
        });
  }

  @Test
  void anAnswerOfTwoLinesStandsAboveItsLeadInALowWindowAndInAHighOne() throws Exception {
    try (Desk desk = told()) {
      NotebookModel model = model(desk);
      model.abandon(model.answerProperty().get().about().orElseThrow(), "rain", "");
      assertThat(model.answerProperty().get().marked()).isEqualTo("real and worthwhile");
      for (int height : new int[] {694, 768, 980}) {
        Window.run(
            () -> {
              NotebookPage page = page(desk, model, PlanDesk.keeping(desk, notebook()), notebook());
              Scene scene = page.getScene();
              Look look = new Look();
              look.dress(scene);
              page.resize(1060, height);
              page.applyCss();
              page.layout();
              page.layout();
              double above = bottom(page.lookup(".answer .words"), page.lookup(".answer .highlit"));
              Node lead = page.lookup(".lead");
              assertThat(lead.localToScene(lead.getBoundsInLocal()).getMinY())
                  .as("%d px", height)
                  .isGreaterThanOrEqualTo(above - 1);
            });
      }
    }
  }

  private static double bottom(Node... nodes) {
    return Stream.of(nodes)
        .mapToDouble(node -> node.localToScene(node.getLayoutBounds()).getMaxY())
        .max()
        .orElseThrow();
  }

  @Test
  void theNextStepOfTheSessionInHandIsOfferedUntilItsSealIsOpened() throws Exception {
    try (Desk desk = told()) {
      NotebookModel model = model(desk);
      SessionId id = model.answerProperty().get().about().orElseThrow().id();
      assertThat(model.answerProperty().get().next()).isEqualTo("Ride stint 7");
      desk.riderDays().cutShort(id, 6, "rain", "R. Lind", false);
      model.refresh();
      assertThat(model.answerProperty().get().next()).isEqualTo("Close the day …");
      desk.riderDays().closeDay(id);
      model.refresh();
      assertThat(model.answerProperty().get().next()).isEqualTo("Review it blind");
      SessionState closed = desk.sessions().state(id).orElseThrow();
      desk.sessions().act(id, latest -> new LifeCommands(latest).closeReview());
      model.refresh();
      assertThat(closed.step()).isEqualTo(Step.DAY_CLOSED);
      assertThat(model.answerProperty().get().next()).isEqualTo("Unseal …");
    }
  }

  @Test
  void theSessionOfTodayIsInHandBeforeOneOfNextWeekAndTheListShowsTheLatestDayFirst()
      throws Exception {
    try (Desk desk = told()) {
      SessionId today = model(desk).answerProperty().get().about().orElseThrow().id();
      LocalDate day = desk.sessions().state(today).orElseThrow().plan().day();
      PlanPreview later =
          PlanPreview.of(
              Files.readString(SAMPLE).replace(day.toString(), day.plusDays(7).toString()),
              desk.protocols());
      Commits.commit(
          desk, later.plan().orElseThrow(), SessionKind.comparison(), List.of("R. Lind"));
      NotebookModel model = model(desk);
      assertThat(model.answerProperty().get().about().orElseThrow().id()).isEqualTo(today);
      assertThat(model.rows().get(0).day()).isEqualTo(day.plusDays(7));
      assertThat(desk.sessionList().find(""))
          .extracting(SessionSummary::day)
          .isSortedAccordingTo(Comparator.reverseOrder());
    }
  }

  private void take(Desk desk, Theme theme, double scale, int width, String name) {
    Shell shell = new Shell();
    Look look = new Look();
    look.themeProperty().set(theme);
    look.textScaleProperty().set(scale);
    NotebookModel model = Models.notebook(desk, shell, Background.immediate());
    model.refresh();
    KeepingModel keeping = PlanDesk.keeping(desk, folder.resolve("quarry.blindlap"));
    NotebookPage page = new NotebookPage(look, model, keeping, new Chosen(List.of()));
    ShellView view =
        new ShellView(
            look, shell, Map.of(Shell.Page.NOTEBOOK, () -> page), List.of("quarry.blindlap"));
    Scene scene = new Scene(view, width, 980);
    look.dress(scene);
    Window.picture(scene, name);
    Window.picture(scene, name);
  }
}
