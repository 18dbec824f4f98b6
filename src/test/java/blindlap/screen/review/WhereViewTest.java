package blindlap.screen.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.review.Analysis;
import blindlap.review.DayRecord;
import blindlap.review.RecordedTimes;
import blindlap.review.WhereDays;
import blindlap.screen.Window;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.PlotView;
import blindlap.screen.part.Theme;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.text.Text;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Where on the trail, as the Review page shows it; its picture goes into the manual. */
class WhereViewTest {
  private static final String ORDER = "ABBABAABABBABAAB";

  @BeforeAll
  static void start() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static DayRecord day() {
    Plan plan = WhereDays.plan(Rule.blocks(2, 16, 4), true);
    return WhereDays.day(plan, ORDER, WhereDays.gain(195, 690, 2), 0.06, new Random(6));
  }

  private static PageGrid page(Look look, DayRecord day) {
    PageGrid page = new PageGrid(look);
    new WhereView(look, WhereReview.of(Analysis.of(day)).orElseThrow()).addTo(page);
    look.dress(new Scene(page, 1182, 1000));
    page.applyCss();
    page.layout();
    return page;
  }

  @Test
  void theSentenceComesFirstAndEverySectorHasItsRowInEveryTheme() {
    Window.run(
        () -> {
          Look look = new Look();
          PageGrid page = page(look, day());
          Scene scene = page.getScene();
          for (Theme theme : Theme.values()) {
            look.themeProperty().set(theme);
            Window.picture(scene, "where-" + theme.name().toLowerCase(Locale.ROOT));
          }
          manual();
          List<String> texts = texts(page);
          int title = texts.indexOf("Where on the trail");
          int sentence =
              texts.indexOf(
                  "Shock L gains from Rock garden to Ford; elsewhere no difference is shown.");
          assertThat(title).isBetween(0, sentence - 1);
          assertThat(texts)
              .contains(
                  "Time gained or lost by the way, Shock L less Shock K, in seconds",
                  "How to read it",
                  "What it is worth",
                  "The recorder",
                  "Gate post to Rock garden",
                  "Not told apart.",
                  "Shock L faster.")
              .anyMatch(text -> text.endsWith("orders show as much in some sector (p = .0015)."));
        });
  }

  /** With -Dblindlap.write=true the picture goes into the manual. */
  private static void manual() {
    if (Boolean.getBoolean("blindlap.write")) {
      String folder = System.getProperty("blindlap.pictures", "target/pictures");
      try {
        Files.copy(
            Path.of(folder, "where-paper.png"),
            Path.of("docs", "pictures", "where.png"),
            StandardCopyOption.REPLACE_EXISTING);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  /** Whoever cannot see the picture hears the sentence, and the sum at every gate. */
  @Test
  void aReaderOfTheScreenHearsThePicture() {
    Window.run(
        () -> {
          List<PlotView> plots = all(page(new Look(), day()), PlotView.class);
          assertThat(plots).hasSize(4);
          String heard = plots.get(0).getAccessibleText();
          assertThat(heard + plots.get(0).getAccessibleHelp())
              .contains("Shock L gains from Rock garden to Ford")
              .contains("At Rock garden, 194 m: ")
              .contains("At Ford, 690 m: ");
          assertThat(plots.get(2).getAccessibleText()).startsWith("Rock garden to Bridge: −");
        });
  }

  @Test
  void atTwiceTheTextSizeNothingIsCutOrLeavesTheWindow() {
    Window.run(
        () -> {
          Look look = new Look();
          look.textScaleProperty().set(2);
          PageGrid page = page(look, day());
          Scene scene = page.getScene();
          look.themeProperty().set(Theme.DARK);
          Window.picture(scene, "where-200");
          List<Label> labels = all(page, Label.class);
          assertThat(labels).hasSizeGreaterThan(20);
          for (Label label : labels) {
            double right = label.localToScene(label.getBoundsInLocal()).getMaxX();
            assertThat(right).as(label.getText()).isLessThanOrEqualTo(1182);
            assertThat(((Text) label.lookup(".text")).getText())
                .as("not cut")
                .doesNotContain(label.getEllipsisString());
          }
        });
  }

  @Test
  void withoutALineTheTableStandsAlone() {
    Window.run(
        () -> {
          DayRecord day = day();
          java.util.TreeMap<blindlap.session.day.LapId, RecordedTimes.Lap> laps =
              new java.util.TreeMap<>();
          day.recorded()
              .laps()
              .forEach(
                  (id, lap) ->
                      laps.put(
                          id,
                          new RecordedTimes.Lap(
                              lap.sectors(), lap.uncertainties(), List.of(), lap.voided())));
          PageGrid page = page(new Look(), day.with(new RecordedTimes(List.of(), laps)));
          assertThat(all(page, PlotView.class)).hasSize(3);
          assertThat(texts(page)).noneMatch(text -> text.contains("A falling line"));
        });
  }

  private static List<String> texts(Parent page) {
    return all(page, Label.class).stream().map(Label::getText).toList();
  }

  private static <T> List<T> all(Parent parent, Class<T> type) {
    List<T> found = new ArrayList<>();
    for (Node node : parent.getChildrenUnmodifiable()) {
      if (type.isInstance(node)) {
        found.add(type.cast(node));
      }
      if (node instanceof ScrollPane scroll && scroll.getContent() instanceof Parent content) {
        found.addAll(all(content, type));
      } else if (node instanceof Parent inner) {
        found.addAll(all(inner, type));
      }
    }
    return found;
  }
}
