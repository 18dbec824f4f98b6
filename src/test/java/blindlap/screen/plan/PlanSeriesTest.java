package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Commits;
import blindlap.desk.Desk;
import blindlap.plan.Plan;
import blindlap.screen.Models;
import blindlap.screen.book.NextSession;
import blindlap.screen.book.NotebookModel;
import blindlap.screen.book.SeriesModel;
import blindlap.screen.part.Background;
import blindlap.screen.part.Shell;
import blindlap.seal.SessionKind;
import blindlap.session.SessionState;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The pages hold a plan to what its series declared. */
class PlanSeriesTest {
  private static final String PLAN =
      """
      question: Is Shock L quicker than Shock K?
      rider: R. Lind
      trail: Quarry loop
      day: 2026-11-14
      setups: [{name: Shock K}, {name: Shock L}]
      measures: [{name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 0.5}]
      protocol: eight-stints
      stints: 8
      series: k-or-l
      series_sessions: 3
      """;

  @TempDir Path folder;
  private Desk desk;
  private Shell shell;
  private PlanModel model;
  private SessionState first;

  @BeforeEach
  void aSeriesIsUnderWay() {
    desk = PlanDesk.open(folder, 1);
    Plan plan = desk.planning().preview(PLAN).plan().orElseThrow();
    first = Commits.commit(desk, plan, SessionKind.comparison(), List.of("R. Lind")).state();
    shell = new Shell();
    model = Models.plan(desk, shell, Background.immediate(), 0);
  }

  @AfterEach
  void close() {
    desk.close();
  }

  private NotebookModel notebook() {
    NotebookModel notebook = Models.notebook(desk, shell, Background.immediate());
    notebook.refresh();
    return notebook;
  }

  @Test
  void theNotebookPlansTheNextSessionOfASeries() {
    NotebookModel notebook = notebook();
    NotebookModel.Row row = notebook.answerProperty().get().about().orElseThrow();
    assertThat(row.series()).isEqualTo("k-or-l");
    notebook.nextOfSeries(row.series());

    assertThat(shell.pageProperty().get()).isEqualTo(Shell.Page.PLAN);
    assertThat(model.copies().placeProperty().get())
        .isEqualTo("Session 2 of 3 of the series \"k-or-l\".");
    assertThat(model.copies().questionProperty().get()).isEmpty();
    assertThat(model.form().field("day").get()).isEmpty();
    model.form().field("day").set("2026-11-21");
    assertThat(model.completeProperty().get()).as("%s", model.problems()).isTrue();
  }

  @Test
  void theSeriesPageOffersTheNextSessionByItsNumberUntilAllAreCommitted() {
    SeriesModel series =
        new SeriesModel(
            desk.series(),
            desk.seriesReports(),
            new NextSession(desk.anotherDay(), shell, Background.immediate()),
            Background.immediate());
    series.refresh();
    assertThat(series.viewProperty().get().next()).isEqualTo("Plan session 2 of 3 \u2026");
    series.planNext();
    assertThat(model.form().field("series").get()).isEqualTo("k-or-l");
    for (String day : List.of("2026-11-21", "2026-11-28")) {
      Plan plan = desk.planning().preview(PLAN.replace("2026-11-14", day)).plan().orElseThrow();
      Commits.commit(desk, plan, SessionKind.comparison(), List.of("R. Lind"));
    }
    series.refresh();
    assertThat(series.viewProperty().get().next()).isEmpty();
    series.planNext();
    assertThat(series.noticeProperty().get()).contains("has all 3 declared sessions");
  }

  @Test
  void aCopyStaysInTheSeriesAndThePageAsks() {
    notebook().copyAsPlan(first.id());
    assertThat(model.copies().questionProperty().get())
        .isEqualTo(
            "Session 2 of 3 of the series \"k-or-l\"."
                + " Keep this plan in the series, or plan a session of its own?");
    model.copies().keepInSeries();
    assertThat(model.copies().questionProperty().get()).isEmpty();
    assertThat(model.form().field("series").get()).isEqualTo("k-or-l");

    model.copies().startFrom(first.id());
    assertThat(model.copies().questionProperty().get()).isNotEmpty();
    model.copies().planOutside();
    assertThat(model.form().field("series").get()).isEmpty();
    assertThat(model.form().field("series_sessions").get()).isEmpty();
    assertThat(model.copies().placeProperty().get()).isEmpty();
    model.undo().takeBack();
    assertThat(model.form().field("series").get()).isEqualTo("k-or-l");
  }

  @Test
  void whatDiffersStandsBesideItsFieldWithBothValuesAndKeepsThePlanFromBeingCommitted() {
    model.copies().startFrom(first.id());
    model.form().field("day").set("2026-11-21");
    assertThat(model.completeProperty().get()).isTrue();
    model.primary().orElseThrow().field("worthwhile").set("0.3");
    assertThat(model.primary().orElseThrow().field("worthwhile").errorProperty().get())
        .startsWith("0.3 s here, 0.5 s declared by session 1 (" + first.id().brief() + ")");
    assertThat(model.completeProperty().get()).isFalse();
    model.primary().orElseThrow().field("worthwhile").set("0.50");
    assertThat(model.completeProperty().get()).isTrue();
    model.form().field("series_sessions").set("2");
    assertThat(model.form().field("series_sessions").errorProperty().get())
        .startsWith("2 sessions here, 3 sessions declared");
    model.form().field("series").set("another");
    assertThat(model.completeProperty().get()).isTrue();
  }

  @Test
  void aNullRunIsNotOfferedInASeries() {
    model.copies().startFrom(first.id());
    model.form().field("day").set("2026-11-21");
    assertThat(model.commit().nullRunRefused().orElseThrow())
        .contains("cannot be a concealed null run");
    model.copies().planOutside();
    assertThat(model.commit().nullRunRefused()).isEmpty();
  }

  @Test
  void untilASeriesIsWorkedOutItsPageDoesNotSayThatThereIsNone() {
    java.util.Deque<Runnable> work = new java.util.ArrayDeque<>();
    SeriesModel series =
        new SeriesModel(
            desk.series(),
            desk.seriesReports(),
            new NextSession(desk.anotherDay(), shell, Background.immediate()),
            Background.by(work::add));
    series.refresh();
    assertThat(series.viewProperty().get().headline().text())
        .isEqualTo("This is being worked out.");
    work.remove().run();
    assertThat(series.series()).hasSize(1);
    assertThat(series.viewProperty().get().headline().text())
        .isEqualTo("This is being worked out.");
    work.remove().run();
    assertThat(series.viewProperty().get().question())
        .isEqualTo("Is Shock L quicker than Shock K?");
    series.refresh();
    work.remove().run();
    assertThat(series.viewProperty().get().question())
        .as("what is in view stays while it is read anew")
        .isEqualTo("Is Shock L quicker than Shock K?");
  }

  @Test
  void aSeriesIsEndedEarlyOnItsPageWithAReasonAndAName() {
    SeriesModel series =
        new SeriesModel(
            desk.series(),
            desk.seriesReports(),
            new NextSession(desk.anotherDay(), shell, Background.immediate()),
            Background.immediate());
    series.refresh();
    assertThat(series.viewProperty().get().mayEnd()).isTrue();
    series.end("broken wrist", " ");
    assertThat(series.noticeProperty().get()).contains("who decided");
    assertThat(series.viewProperty().get().mayEnd()).isTrue();
    series.end("broken wrist", "A. Quill");
    assertThat(series.viewProperty().get().mayEnd()).isFalse();
    assertThat(series.viewProperty().get().next()).isEmpty();
    assertThat(series.viewProperty().get().circumstances())
        .anySatisfy(line -> assertThat(line).contains("by A. Quill: broken wrist"));
    series.end("again", "A. Quill");
    assertThat(series.noticeProperty().get()).contains("was ended early");
  }

  @Test
  void whereWasISaysHowTheSeriesStandsAndTheListNamesIt() {
    NotebookModel notebook = notebook();
    NotebookModel.Answer answer = notebook.answerProperty().get();
    assertThat(answer.about().orElseThrow().facts())
        .startsWith("R. Lind, Quarry loop; session 1 of ")
        .endsWith(" of series k-or-l, unfinished");
    assertThat(answer.lead())
        .contains("Series \"k-or-l\": Not opened yet, with 0 sessions ridden.");
  }
}
