package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.exchange.QuarryTrail;
import blindlap.plan.Sector;
import blindlap.plan.TimedBy;
import blindlap.plan.Timing;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.Shell;
import blindlap.screen.part.TypedForm;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Control;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What times a measure, chosen on the Plan page. */
class PlanTimedTest {
  @TempDir Path folder;
  private Desk desk;
  private PlanModel model;
  private Scene scene;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @BeforeEach
  void open() {
    desk = PlanDesk.open(folder, 1);
    Window.run(
        () -> {
          model = Models.plan(desk, new Shell(), Background.immediate(), 0);
          model.startFromFile(PlanStates.SAMPLE);
          Look look = new Look();
          scene = new Scene(new PlanPage(look, model, new NoDialogs()), 1366, 768);
          look.dress(scene);
        });
  }

  @AfterEach
  void close() {
    desk.close();
  }

  private TypedForm measure(int at) {
    return model.form().list("measures").get(at);
  }

  private void keepTrail() {
    desk.notebook()
        .trails()
        .keep(QuarryTrail.trail("Quarry loop", 10, 200, 690), PlanDesk.CLOCK.instant());
  }

  /** A field that can be reached on the page, by what it is bound to. */
  private boolean shown(TypedForm.Entry entry) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    Control control = control(scene.getRoot(), entry);
    for (Node node = control; node != null; node = node.getParent()) {
      if (!node.isVisible()) {
        return false;
      }
    }
    return control != null;
  }

  private static @Nullable Control control(Node node, TypedForm.Entry entry) {
    if (node instanceof Control control
        && control.getProperties().get(TypedForm.Entry.class) == entry) {
      return control;
    }
    if (node instanceof javafx.scene.Parent parent) {
      for (Node child : parent.getChildrenUnmodifiable()) {
        Control found = control(child, entry);
        if (found != null) {
          return found;
        }
      }
    }
    return null;
  }

  @Test
  void onlyTimesAreAskedWhatTimesThemAndOnlyRecordedSectorsTheirGates() {
    Window.run(
        () -> {
          assertThat(shown(measure(0).field("timed_by"))).isTrue();
          assertThat(shown(measure(1).field("timed_by"))).isFalse(); // a scale
          assertThat(shown(measure(0).field("from_gate"))).isFalse();
          measure(0).field("kind").set("sector time");
          assertThat(shown(measure(0).field("from_gate"))).isFalse();
          measure(0).field("timed_by").set("recording");
          assertThat(shown(measure(0).field("from_gate"))).isTrue();
          assertThat(shown(model.timing().number())).isFalse(); // the trail book is empty
        });
  }

  @Test
  void whatARecordingNeedsIsSaidBesideTheField() {
    Window.run(
        () -> {
          measure(0).field("timed_by").set("recording");
          assertThat(measure(0).field("timed_by").errorProperty().get())
              .contains("A recording times \"lap time\" at gates, and the plan has none.");
          model.timing().number().set("1");
          assertThat(shown(model.timing().number())).isTrue();
          assertThat(model.timing().number().errorProperty().get())
              .contains("The trail book holds no trail yet");
          assertThat(model.completeProperty().get()).isFalse();
        });
  }

  @Test
  void theGatesOfTheVersionAreThereToChooseAndAChoiceIsTakenBackLikeAnyOther() {
    keepTrail();
    Window.run(
        () -> {
          model.form().field("conditions").set("dry");
          assertThat(model.timing().wordsProperty().get())
              .isEqualTo("The trail book has these versions of the trail: 1.");
          model.timing().number().set("1");
          assertThat(model.timing().wordsProperty().get())
              .endsWith("Gates of the one that is chosen: Gate post, Rock garden, Bridge.");
          model.form().add("measures");
          TypedForm sector = measure(3);
          sector.field("name").set("rocks");
          sector.field("kind").set("sector time");
          sector.field("unit").set("s");
          sector.field("timed_by").set("recording and watch");
          scene.getRoot().applyCss();
          scene.getRoot().layout();
          ComboBox<?> from =
              (ComboBox<?>)
                  Objects.requireNonNull(control(scene.getRoot(), sector.field("from_gate")));
          assertThat(List.copyOf(from.getItems()))
              .isEqualTo(List.of("", "Gate post", "Rock garden", "Bridge"));
          from.getSelectionModel().select(1);
          assertThat(sector.field("from_gate").get()).isEqualTo("Gate post");
          sector.field("to_gate").set("Rock garden");
          assertThat(model.problems()).isEmpty();
          assertThat(model.planProperty().get().orElseThrow().measures().get(3).timing())
              .isEqualTo(
                  new Timing(TimedBy.RECORDING_AND_WATCH, new Sector("Gate post", "Rock garden")));
          assertThat(model.hints()).anyMatch(h -> h.startsWith("A usual recorder alone leaves"));
          picture();

          model.undo().takeBack();
          assertThat(sector.field("to_gate").get()).isEmpty();
          model.undo().takeBack();
          assertThat(sector.field("from_gate").get()).isEmpty();
          model.undo().doAgain();
          assertThat(sector.field("from_gate").get()).isEqualTo("Gate post");
          // Another version has other gates; what was chosen stays, and is named if it is none.
          model.timing().number().set("2");
          assertThat(sector.field("from_gate").get()).isEqualTo("Gate post");
        });
  }

  private void picture() {
    PageGrid grid = (PageGrid) scene.getRoot().lookup(".scroll-pane");
    grid.setVvalue(0);
    Window.picture(scene, "plan-timed-trail");
    Node last = Objects.requireNonNull(control(scene.getRoot(), measure(3).field("timed_by")));
    double at = last.localToScene(last.getBoundsInLocal()).getMinY() - 400;
    grid.setVvalue(at / (grid.getContent().getBoundsInLocal().getHeight() - 768));
    scene.getRoot().layout();
    Window.picture(scene, "plan-timed-sector");
  }
}
