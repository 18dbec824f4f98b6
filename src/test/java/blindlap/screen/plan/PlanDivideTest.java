package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.plan.DayAnswer;
import blindlap.plan.Division;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.Shell;
import blindlap.screen.part.Theme;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Map;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.RadioButton;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How the day on the Plan page can be divided, and how one press takes a division. */
class PlanDivideTest {
  @TempDir Path folder;
  private Desk desk;
  private PlanModel model;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @BeforeEach
  void open() {
    desk = PlanDesk.open(folder, 1);
    model = opened(Background.immediate(), 0);
  }

  private PlanModel opened(Background background, int days) {
    PlanModel made = Models.plan(desk, new Shell(), background, days);
    made.startFromFile(PlanStates.SAMPLE);
    made.form().part("noise").fill(Map.of("usual_difference", "0.72"));
    made.form()
        .part("timetable")
        .fill(
            Map.ofEntries(
                Map.entry("start", "09:00"),
                Map.entry("daylight_end", "15:00"),
                Map.entry("lap", "2"),
                Map.entry("climb", "4"),
                Map.entry("swap", "5"),
                Map.entry("scoring", "1"),
                Map.entry("rest_every", "8"),
                Map.entry("rest", "20"),
                Map.entry("lap_budget", "42")));
    return made;
  }

  @AfterEach
  void close() {
    desk.close();
  }

  private PlanDivisions shown() {
    return model.divide().shownProperty().get();
  }

  private PlanDivisions.Row row(int stints, int scored) {
    return shown().rows().stream()
        .filter(r -> r.division().stints() == stints && r.division().scored() == scored)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void nothingIsDividedBeforeSomebodyOpensIt() {
    assertThat(shown().rows()).isEmpty();
    model.divide().openProperty().set(true);
    assertThat(shown().rows()).isNotEmpty();
    assertThat(shown().rows().subList(0, shown().own()))
        .allMatch(row -> row.division().best() || row.rule().equals("Blocks of four"));
  }

  @Test
  void onePressTakesADivisionAndCtrlZTakesItBack() {
    model.divide().openProperty().set(true);
    Map<String, Object> before = model.form().tree();
    Division two =
        shown().rows().stream()
            .map(PlanDivisions.Row::division)
            .filter(d -> d.scored() == 2 && d.plan().protocol().name().equals("pairs"))
            .findFirst()
            .orElseThrow();
    model.divide().take(two);
    assertThat(model.form().field("stints").get()).isEqualTo(String.valueOf(two.stints()));
    assertThat(model.form().part("laps").field("scored").get()).isEqualTo("2");
    assertThat(model.form().field("protocol").get()).isEqualTo("pairs");
    assertThat(model.divide().wordsProperty().get()).startsWith("Taken: ");
    assertThat(shown().rows().stream().filter(PlanDivisions.Row::chosen).toList())
        .extracting(PlanDivisions.Row::rule)
        .containsExactly("Pairs");
    DayAnswer planned = model.answered().orElseThrow();
    assertThat(planned.chosen().difference()).isEqualTo(two.most());

    model.undo().takeBack();
    assertThat(model.form().tree()).isEqualTo(before);
  }

  @Test
  void theNumberOfScoredLapsChangesTheAnswerOfThePage() {
    String one = model.answer().shownProperty().get().sentence().text();
    assertThat(one).doesNotContain(" to ");
    model.form().part("laps").field("scored").set("3");
    String three = model.answer().shownProperty().get().sentence().text();
    assertThat(three).containsPattern("[0-9.]+ to [0-9.]+.s");
    assertThat(String.join(" ", model.answer().shownProperty().get().lead()))
        .contains("nobody knows yet how much of your noise lies in the lap");
    model.form().part("noise").field("stint_share").set("30");
    assertThat(model.answer().shownProperty().get().sentence().text())
        .doesNotContain(" to ")
        .isNotEqualTo(one);
  }

  @Test
  void noiseTypedForTheLapsPlannedStaysThatOfAsManyLaps() {
    model.form().part("noise").fill(Map.of("sd", "0.64"));
    model.divide().openProperty().set(true);
    Division two = row(16, 2).division();
    model.divide().take(two);
    assertThat(model.form().part("noise").field("laps").get()).isEqualTo("1");
    assertThat(model.answered().orElseThrow().chosen().difference()).isEqualTo(two.most());
  }

  @Test
  void whyADayCannotBeDividedIsSaidInItsPlace() {
    model.divide().openProperty().set(true);
    model.form().part("timetable").field("daylight_end").set("09:30");
    assertThat(shown().rows()).isEmpty();
    assertThat(model.divide().wordsProperty().get()).startsWith("No division that can show");
    model.form().part("timetable").field("daylight_end").set("15:00");
    assertThat(shown().rows()).isNotEmpty();
    model.form().part("timetable").fill(Map.of());
    assertThat(model.divide().wordsProperty().get()).contains("no timetable");
  }

  @Test
  void itIsWorkedOutBehindThePageAndAnotherPlanDropsIt() {
    Deque<Runnable> work = new ArrayDeque<>();
    model = opened(Background.by(work::add), 1);
    drain(work);
    model.divide().openProperty().set(true);
    assertThat(shown().rows()).as("not on the thread of the page").isEmpty();
    model.form().part("timetable").field("daylight_end").set("13:00");
    drain(work);
    assertThat(shown().rows())
        .isNotEmpty()
        .allMatch(row -> row.division().schedule().limit().getHour() == 13);
    assertThat(shown().rows())
        .as("days are simulated in the end")
        .noneMatch(row -> row.division().source() == DayAnswer.Source.ROUGH)
        .anyMatch(row -> row.division().source() == DayAnswer.Source.SIMULATION);
  }

  private static void drain(Deque<Runnable> work) {
    while (!work.isEmpty()) {
      work.remove().run();
    }
  }

  @Test
  void aRowIsTakenByItsButtonAtEveryWidthAndTextSize() {
    for (Theme theme : Theme.values()) {
      for (double width : new double[] {900, 1366, 1920}) {
        for (double scale : new double[] {1, 2}) {
          Window.run(() -> page(theme, width, scale));
        }
      }
    }
  }

  private void page(Theme theme, double width, double scale) {
    Look look = new Look();
    look.themeProperty().set(theme);
    look.textScaleProperty().set(scale);
    model = opened(Background.immediate(), 0);
    model.divide().openProperty().set(true);
    PlanPage page = new PlanPage(look, model, new NoDialogs());
    Scene scene = new Scene(page, width, 900);
    look.dress(scene);
    page.applyCss();
    page.layout();
    RadioButton button = (RadioButton) page.lookup("#divide-blocks-of-four-16-2");
    assertThat(button.getAccessibleText()).contains("16 stints of 2", "real swaps", "can show");
    button.requestFocus();
    button.fire();
    page.applyCss();
    page.layout();
    RadioButton taken = (RadioButton) page.lookup("#divide-blocks-of-four-16-2");
    assertThat(taken.isSelected()).isTrue();
    assertThat(scene.getFocusOwner()).as("the focus stays on the row").isSameAs(taken);
    assertThat(model.form().part("laps").field("scored").get()).isEqualTo("2");
    PageGrid grid = (PageGrid) page.lookup(".scroll-pane");
    Node pane = page.lookup("#divide");
    double at = pane.localToScene(0, 0).getY() - grid.localToScene(0, 0).getY() - 20;
    double all = grid.getContent().getLayoutBounds().getHeight();
    double now = grid.getVvalue() * (all - grid.getViewportBounds().getHeight());
    grid.setVvalue((now + at) / (all - grid.getViewportBounds().getHeight()));
    page.layout();
    Window.picture(
        scene,
        "divide-%s-%d-%d"
            .formatted(
                theme.name().toLowerCase(java.util.Locale.ROOT), (int) width, (int) (100 * scale)));
  }
}
