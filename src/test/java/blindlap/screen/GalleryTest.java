package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.desk.TestDay;
import blindlap.plot.MoreSamples;
import blindlap.plot.Samples;
import blindlap.plot.surface.Drawing;
import blindlap.screen.part.AnswerSentence;
import blindlap.screen.part.ChoiceRow;
import blindlap.screen.part.Counter;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.LineScale;
import blindlap.screen.part.Look;
import blindlap.screen.part.MarginNote;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.PlotView;
import blindlap.screen.part.Theme;
import blindlap.screen.swap.SwapModel;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import javafx.event.ActionEvent;
import javafx.scene.AccessibleAttribute;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.PickResult;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.text.Font;
import javafx.stage.Stage;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GalleryTest {
  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @Test
  void picturesOfAllPartsAreTakenInEveryTheme() {
    for (Theme theme : Theme.values()) {
      String name = theme.name().toLowerCase(Locale.ROOT);
      Window.run(
          () -> {
            Look look = new Look();
            look.themeProperty().set(theme);
            LineScale touched = Gallery.scale(look, "Grip in the rocks");
            touched.show(55.0);
            take(look, Gallery.review(look), 1280, 1750, "review-" + name);
            take(look, Gallery.ride(look, touched), 1280, 900, "ride-" + name);
            take(look, Gallery.helper(look, false), 1280, 900, "helper-" + name);
            take(look, Gallery.helper(look, true), 1280, 500, "helper-blank-" + name);
            take(look, Gallery.controls(look), 900, 950, "controls-" + name);
            take(look, drawings(look, Samples.all()), 800, 5200, "drawings-" + name);
            take(look, drawings(look, MoreSamples.all()), 800, 4600, "more-drawings-" + name);
          });
    }
  }

  @Test
  void theHelpersPageWhileTheBikeIsOutAndWhatIsSaidLaterAreTakenInEveryTheme(@TempDir Path folder) {
    for (Theme theme : Theme.values()) {
      try (TestDay day = new TestDay(folder, TestDay.EIGHT, 1 + theme.ordinal())) {
        Window.run(
            () -> {
              Look look = new Look();
              look.themeProperty().set(theme);
              String name = theme.name().toLowerCase(Locale.ROOT);
              SwapModel model = Gallery.handed(day);
              Scene safe = take(look, Gallery.safe(look, model), 1366, 768, "safe-" + name);
              assertThat(SceneText.of(safe)).contains("safe, warm-up", "The bike is back");
              Scene later = Gallery.later(look, model);
              Window.picture(later, "later-" + name);
              assertThat(SceneText.of(later)).contains("What was really on?", "Record it");
            });
      }
    }
  }

  @Test
  void looksBeforeTheEndAreTakenInEveryTheme(@TempDir Path folder) {
    for (Theme theme : Theme.values()) {
      try (TestDay day = new TestDay(folder, Gallery.LOOKS, 1 + theme.ordinal())) {
        Window.run(
            () -> {
              Look look = new Look();
              look.themeProperty().set(theme);
              String name = theme.name().toLowerCase(Locale.ROOT);
              SwapModel model = Gallery.lookDue(day);
              Scene due = take(look, Gallery.safe(look, model), 1366, 768, "look-due-" + name);
              assertThat(SceneText.of(due)).contains("Look after stint 16", "Look now");
              model.looks().look();
              Scene told = take(look, Gallery.safe(look, model), 1366, 768, "look-told-" + name);
              assertThat(SceneText.of(told)).contains("You may stop", "it is settled");
            });
      }
    }
  }

  @Test
  void picturesAreTakenWithTextAtTwiceItsSize() {
    Window.run(
        () -> {
          Look look = new Look();
          look.textScaleProperty().set(2);
          take(look, Gallery.review(look), 1280, 2900, "review-200");
          take(
              look,
              Gallery.ride(look, Gallery.scale(look, "Grip in the rocks")),
              1280,
              1300,
              "ride-200");
          look.textScaleProperty().set(1);
          take(look, Gallery.review(look), 900, 2000, "review-narrow");
        });
  }

  private static Parent drawings(Look look, Map<String, Drawing> all) {
    VBox column = new VBox(24);
    column.setStyle("-fx-padding: 28;");
    new TreeMap<>(all)
        .forEach(
            (name, drawing) -> {
              PlotView view = new PlotView(look, drawing);
              if (name.startsWith("small") || name.startsWith("noise") || name.equals("qr")) {
                view.setMaxWidth(256);
              }
              column.getChildren().add(view);
            });
    ScrollPane pane = new ScrollPane(column);
    pane.setFitToWidth(true);
    return pane;
  }

  private static Scene take(Look look, Parent root, double width, double height, String name) {
    Scene scene = new Scene(root, width, height);
    look.dress(scene);
    Window.picture(scene, name);
    return scene;
  }

  private static Scene lay(Look look, Parent root, double width, double height) {
    Scene scene = new Scene(root, width, height);
    look.dress(scene);
    root.applyCss();
    root.layout();
    return scene;
  }

  @Test
  void theBundledFamiliesAreUsedUnderTheNamesTheStyleSheetsGive() {
    List<String> families = Window.call(Font::getFamilies);
    assertThat(families)
        .contains("Source Sans 3", "Source Sans 3 SemiBold", "Source Serif 4 SemiBold");
    assertThat(Window.call(() -> new Font("Source Sans 3 SemiBold", 15).getName()))
        .isEqualTo("Source Sans 3 SemiBold");
  }

  @Test
  void everythingToTouchOnRideIsLargeEnoughForGloves() {
    Window.run(
        () -> {
          Look look = new Look();
          Parent page = Gallery.ride(look, Gallery.scale(look, "Grip in the rocks"));
          lay(look, page, 1280, 900);
          double least = look.touch().get();
          assertThat(least).isGreaterThanOrEqualTo(64);
          List<Node> targets = new ArrayList<>();
          collect(page, targets);
          assertThat(targets).hasSizeGreaterThan(9);
          for (Node target : targets) {
            assertThat(target.getLayoutBounds().getHeight())
                .as(target.toString())
                .isGreaterThanOrEqualTo(63.5);
            assertThat(target.getLayoutBounds().getWidth()).isGreaterThanOrEqualTo(64);
          }
        });
  }

  private static void collect(Node node, List<Node> targets) {
    if (node instanceof ButtonBase || node instanceof TextField || isTouchZone(node)) {
      targets.add(node);
    } else if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(child -> collect(child, targets));
    }
  }

  private static boolean isTouchZone(Node node) {
    return node.getStyleClass().contains("frame");
  }

  @Test
  void choicesAreEqualInSizeWhateverTheirWords() {
    Window.run(
        () -> {
          Look look = new Look();
          ChoiceRow<Integer> row =
              new ChoiceRow<>(
                  look,
                  "Your guess",
                  List.of(
                      new ChoiceRow.Option<>(1, "K"),
                      new ChoiceRow.Option<>(2, "Shock L with a long name"),
                      new ChoiceRow.Option<>(3, "?")),
                  3,
                  value -> {});
          lay(look, new VBox(row), 700, 300);
          List<Node> boxes = new ArrayList<>();
          collect(row, boxes);
          assertThat(boxes).extracting(box -> ((Region) box).getWidth()).hasSize(3);
          double width = ((Region) boxes.get(0)).getWidth();
          assertThat(boxes)
              .allSatisfy(
                  box -> assertThat(((Region) box).getWidth()).isCloseTo(width, within(1.0)));
          assertThat(boxes).noneMatch(box -> ((ToggleButton) box).isSelected());
        });
  }

  @Test
  void aChoiceTouchedAgainStaysAndIsToldOnce() {
    Window.run(
        () -> {
          List<Integer> told = new ArrayList<>();
          ChoiceRow<Integer> row =
              new ChoiceRow<>(
                  new Look(), "", List.of(new ChoiceRow.Option<>(1, "keep")), 1, told::add);
          List<Node> boxes = new ArrayList<>();
          collect(row, boxes);
          ToggleButton box = (ToggleButton) boxes.get(0);
          box.fire();
          box.fire();
          assertThat(box.isSelected()).isTrue();
          assertThat(told).containsExactly(1);
        });
  }

  @Test
  void aCounterStartsNotGivenAndTheFirstFewerGivesZeroTheFirstMoreOne() {
    Window.run(
        () -> {
          List<Integer> told = new ArrayList<>();
          Counter down = counter(told);
          assertThat(down.valueProperty().get()).isNull();
          button(down, "−").fireEvent(new ActionEvent());
          assertThat(down.valueProperty().get()).isZero();
          button(down, "−").fireEvent(new ActionEvent());
          assertThat(told).as("0 is told once, nothing goes below").containsExactly(0);
          Counter up = counter(told);
          button(up, "+").fireEvent(new ActionEvent());
          assertThat(up.valueProperty().get()).isOne();
        });
  }

  private static Counter counter(List<Integer> told) {
    Counter.Words words = new Counter.Words("Feet off", "fewer", "more", "not given");
    return new Counter(new Look(), words, told::add);
  }

  private static Button button(Parent parent, String sign) {
    List<Node> buttons = new ArrayList<>();
    collect(parent, buttons);
    return buttons.stream()
        .map(Button.class::cast)
        .filter(each -> each.getText().equals(sign))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void aLineScaleHasNoStrokeAndNoValueUntilItIsTouched() {
    Window.run(
        () -> {
          Look look = new Look();
          List<Double> told = new ArrayList<>();
          LineScale scale = new LineScale(look, Gallery.scaleWords("Grip"), told::add);
          lay(look, new VBox(scale), 600, 200);
          assertThat(scale.lookup(".stroke").isVisible()).isFalse();
          assertThat(scale.valueProperty().get()).isNull();
          assertThat(scale.getAccessibleRole()).isEqualTo(AccessibleRole.SLIDER);
          assertThat(scale.queryAccessibleAttribute(AccessibleAttribute.VALUE)).isNull();
          assertThat(scale.getAccessibleText()).isEqualTo("Grip: not marked");
          assertThat(told).isEmpty();
        });
  }

  @Test
  void theFirstArrowPlacesTheStrokeAtThatEndAndItIsSavedWhenSettled() {
    Window.run(
        () -> {
          List<Double> told = new ArrayList<>();
          LineScale scale = new LineScale(new Look(), Gallery.scaleWords("Grip"), told::add);
          press(scale, KeyCode.RIGHT);
          assertThat(scale.valueProperty().get()).isEqualTo(100.0);
          assertThat(scale.getAccessibleText()).endsWith("at or near all I could ask for");
          press(scale, KeyCode.LEFT);
          press(scale, KeyCode.PAGE_DOWN);
          assertThat(scale.valueProperty().get()).isEqualTo(89.0);
          assertThat(told).as("not at each step").isEmpty();
          press(scale, KeyCode.ENTER);
          press(scale, KeyCode.ENTER);
          assertThat(told).containsExactly(89.0);
          assertThat(scale.queryAccessibleAttribute(AccessibleAttribute.VALUE)).isNull();
        });
  }

  private static void press(Node node, KeyCode code) {
    node.fireEvent(new KeyEvent(KeyEvent.KEY_PRESSED, "", "", code, false, false, false, false));
  }

  @Test
  void aFingerPlacesTheStrokeWhereItIsAndLiftingItSettles() {
    Window.run(
        () -> {
          Look look = new Look();
          List<Double> told = new ArrayList<>();
          LineScale scale = new LineScale(look, Gallery.scaleWords("Grip"), told::add);
          lay(look, new VBox(scale), 600, 200);
          Node zone = scale.lookup(".frame");
          zone.fireEvent(mouse(zone, MouseEvent.MOUSE_PRESSED, 150));
          zone.fireEvent(mouse(zone, MouseEvent.MOUSE_DRAGGED, 300));
          assertThat(told).isEmpty();
          zone.fireEvent(mouse(zone, MouseEvent.MOUSE_RELEASED, 300));
          assertThat(told).hasSize(1);
          assertThat(told.get(0)).isCloseTo(50, within(0.01));
          scale.getParent().layout();
          double stroke = scale.lookup(".stroke").getBoundsInParent().getCenterX();
          assertThat(stroke).isCloseTo(300, within(1.0));
          zone.fireEvent(mouse(zone, MouseEvent.MOUSE_DRAGGED, 9000));
          assertThat(scale.valueProperty().get()).isEqualTo(100.0);
        });
  }

  private static MouseEvent mouse(Node node, javafx.event.EventType<MouseEvent> type, double x) {
    return new MouseEvent(
        type,
        x,
        10,
        x,
        10,
        MouseButton.PRIMARY,
        1,
        false,
        false,
        false,
        false,
        true,
        false,
        false,
        true,
        false,
        true,
        new PickResult(node, x, 10));
  }

  @Test
  void anAnswerThatChangesMovesNothingBelowIt() {
    Window.run(
        () -> {
          Look look = new Look();
          AnswerSentence answer = new AnswerSentence(look, "What can this day show?");
          Label below = new Label("below");
          VBox page = new VBox(answer, below);
          answer.say("Short", "", ".");
          lay(look, page, 744, 600);
          double first = below.getLayoutY();
          answer.say("16 stints can show a difference of ", "1.0 s a lap", " or more.");
          page.layout();
          assertThat(below.getLayoutY()).isEqualTo(first);
          look.textScaleProperty().set(2);
          answer.say("Shock K and Shock L: ", "no worthwhile difference", ".");
          page.applyCss();
          page.layout();
          page.layout();
          assertThat(answer.lookupAll(".highlit"))
              .as("words that do not fit on one line are broken, not cut")
              .allSatisfy(
                  stroke ->
                      assertThat(stroke.getBoundsInParent().getMaxX()).isLessThanOrEqualTo(760));
        });
  }

  @Test
  void notesFallUnderTheirSectionOnANarrowWindowAndWithLargeText() {
    Window.run(
        () -> {
          Look look = new Look();
          PageGrid page = new PageGrid(look);
          page.add(new VBox(new Label("section")), new MarginNote("note", "words"));
          Scene scene = lay(look, page, 1096, 600);
          assertThat(page.narrow()).isFalse();
          look.textScaleProperty().set(1.4);
          assertThat(page.narrow()).isTrue();
          look.textScaleProperty().set(1);
          assertThat(page.narrow()).isFalse();
          page.resize(900, 600);
          assertThat(page.narrow()).isTrue();
          assertThat(scene.getRoot()).isSameAs(page);
        });
  }

  @Test
  void aBlankHelperPageHoldsNothingOfTheKeyAndItsFrameIsDarkInEveryTheme() {
    Window.run(
        () -> {
          Look look = new Look();
          Parent frame = Gallery.helper(look, true);
          Scene scene = lay(look, frame, 1280, 800);
          assertThat(words(frame)).noneMatch(words -> words.contains("Shock"));
          for (Theme theme : Theme.values()) {
            look.themeProperty().set(theme);
            var picture = scene.snapshot(null).getPixelReader();
            for (int[] at : new int[][] {{3, 400}, {1276, 400}, {640, 796}, {500, 10}}) {
              assertThat(picture.getColor(at[0], at[1]).getBrightness())
                  .as(theme + " " + at[0])
                  .isLessThan(0.2);
            }
          }
        });
  }

  private static List<String> words(Node node) {
    List<String> words = new ArrayList<>();
    if (node instanceof Label label) {
      words.add(label.getText());
    }
    if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(child -> words.addAll(words(child)));
    }
    return words;
  }

  @Test
  void theFocusIsADoubleFrameThatCanBeSeenInEveryTheme() {
    Window.run(
        () -> {
          Stage stage = new Stage();
          Look look = new Look();
          Button button = new Button("Save data package");
          Button other = new Button("other");
          VBox box = new VBox(40, button, other);
          box.setStyle("-fx-padding: 40;");
          stage.setScene(new Scene(new VBox(box), 500, 250));
          look.dress(stage.getScene());
          stage.show();
          button.requestFocus();
          for (Theme theme : Theme.values()) {
            look.themeProperty().set(theme);
            Window.picture(stage.getScene(), "focus-" + theme.name().toLowerCase(Locale.ROOT));
            var bounds = button.localToScene(button.getLayoutBounds());
            var pixels = stage.getScene().snapshot(null).getPixelReader();
            int y = (int) bounds.getCenterY();
            double outer = pixels.getColor((int) bounds.getMinX() - 5, y).getBrightness();
            double inner = pixels.getColor((int) bounds.getMinX() - 2, y).getBrightness();
            assertThat(Math.abs(outer - inner)).as(theme.toString()).isGreaterThan(0.6);
          }
          stage.close();
        });
  }

  @Test
  void aPlotFitsItsViewAndSpeaks() {
    Window.run(
        () -> {
          Look look = new Look();
          PlotView view = new PlotView(look, Samples.difference());
          lay(look, new VBox(view), 744, 600);
          double usual = view.getHeight();
          assertThat(usual).isCloseTo(Samples.difference().heightFor(744, 1), within(1.0));
          assertThat(view.getAccessibleText()).startsWith("16 stints; Shock L was quicker");
          look.textScaleProperty().set(2);
          view.getParent().layout();
          assertThat(view.getHeight()).isGreaterThan(1.3 * usual);
        });
  }
}
