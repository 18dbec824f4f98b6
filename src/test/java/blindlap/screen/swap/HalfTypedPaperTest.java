package blindlap.screen.swap;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.HelperDraft;
import blindlap.desk.PaperForm;
import blindlap.desk.TestDay;
import blindlap.screen.Keyboard;
import blindlap.screen.Models;
import blindlap.screen.Window;
import blindlap.screen.part.Look;
import blindlap.screen.part.WholeInView;
import blindlap.session.SafetyCheck;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.stage.Stage;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A stint's paper that is typed half way is there again, and tells nobody anything. */
class HalfTypedPaperTest {
  private @TempDir(factory = RamFolder.class) Path folder;
  private SwapCatchUpView view;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
  }

  private static SwapModel opened(TestDay day) {
    SwapModel swap = Models.swap(day);
    swap.phrase(day.phrase());
    swap.choosePin("4711");
    return swap;
  }

  /** The form, as the page builds it whenever it is opened. */
  private void look(SwapModel swap) {
    Window.run(
        () -> {
          view = new SwapCatchUpView(new Look(), swap.later());
          Scene scene = new Scene(view, 900, 900);
          scene.getRoot().applyCss();
          scene.getRoot().layout();
        });
  }

  private <T extends Node> T part(Class<T> kind, String words) {
    return view.lookupAll("*").stream()
        .filter(kind::isInstance)
        .map(kind::cast)
        .filter(node -> words(node).contains(words))
        .findFirst()
        .orElseThrow(() -> new AssertionError("there is no " + words));
  }

  private static String words(Node node) {
    String text = node instanceof javafx.scene.control.Labeled labeled ? labeled.getText() : "";
    return text + "|" + node.getAccessibleText();
  }

  private void typeHalf() {
    Window.run(
        () -> {
          part(ToggleButton.class, "as scheduled").fire();
          part(CheckBox.class, "Brakes").fire();
          part(TextField.class, "Confirmed on paper by").setText("M. Oster");
          part(TextField.class, "sag").setText("25.");
          part(TextField.class, "Note on paper").setText("rivet lo");
        });
  }

  private void holdsWhatWasTyped(SwapModel swap) {
    look(swap);
    Window.run(
        () -> {
          assertThat(part(ToggleButton.class, "as scheduled").isSelected()).isTrue();
          assertThat(part(CheckBox.class, "Brakes").isSelected()).isTrue();
          assertThat(part(CheckBox.class, "Axles").isSelected()).isFalse();
          assertThat(part(TextField.class, "Confirmed on paper by").getText())
              .isEqualTo("M. Oster");
          assertThat(part(TextField.class, "sag").getText()).isEqualTo("25.");
          assertThat(part(TextField.class, "Note on paper").getText()).isEqualTo("rivet lo");
          assertThat(part(Button.class, "Record the warm-up").isDisabled()).isFalse();
        });
  }

  @Test
  void itIsThereAgainAfterAHideAnotherPageAndARestartAndBecomesTheRecord() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      SwapModel swap = opened(day);
      look(swap);
      Window.run(() -> assertThat(part(Button.class, "Record the warm-up").isDisabled()).isTrue());
      typeHalf();
      holdsWhatWasTyped(swap);
      swap.hide();
      swap.reopen("4711");
      holdsWhatWasTyped(swap);
      swap.open(day.id());
      holdsWhatWasTyped(swap);
      swap.closing();
      SwapModel again = opened(day);
      holdsWhatWasTyped(again);
      Window.run(() -> part(TextField.class, "sag").setText("25.5"));
      Window.run(() -> part(Button.class, "Record the warm-up").fire());
      assertThat(again.later().troubleProperty().get()).isEmpty();
      assertThat(day.state().helperRecords()).containsOnlyKeys(0);
      assertThat(day.desk().notebook().drafts()).isEmpty();
      Window.run(
          () -> {
            assertThat(part(ToggleButton.class, "as scheduled").isSelected()).isFalse();
            assertThat(part(TextField.class, "Note on paper").getText()).isEmpty();
            assertThat(part(CheckBox.class, "Brakes").isSelected()).isFalse();
          });
    }
  }

  @Test
  void itIsWrittenByTheClockUnreadableAndOfTheLengthThatEveryDraftHas() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      SwapModel swap = opened(day);
      Set<Integer> lengths = new TreeSet<>();
      keep(day, swap, lengths);
      String before = day.desk().notebook().drafts().toString();
      look(swap);
      typeHalf();
      assertThat(day.desk().notebook().drafts()).as("never by the touch").hasToString(before);
      keep(day, swap, lengths);
      assertThat(day.desk().notebook().drafts().toString())
          .isNotEqualTo(before)
          .doesNotContain("rivet", "Oster");
      assertThat(lengths).hasSize(1);
      HelperDraft draft = day.helper().unfinished(0).orElseThrow();
      assertThat(draft.paper().orElseThrow().note()).isEqualTo("rivet lo");
      assertThat(draft.paper().orElseThrow()).hasToString("PaperForm[stint 0]");
    }
  }

  private static void keep(TestDay day, SwapModel swap, Set<Integer> lengths) {
    day.clock().move(SwapDrafts.EVERY);
    swap.beat();
    day.desk().notebook().drafts().values().forEach(text -> lengths.add(text.length()));
  }

  @Test
  void paperWithoutRoomBesideTheEntryIsRefusedInWordsAndTheEntryIsKept() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      SwapModel swap = opened(day);
      swap.work().note("rivet found loose");
      swap.later()
          .typing(
              new PaperForm(0, null, "", Set.of(SafetyCheck.BRAKES), Map.of(), "x".repeat(9000)));
      assertThat(swap.later().troubleProperty().get()).isNotEmpty();
      swap.closing();
      HelperDraft draft = day.helper().unfinished(0).orElseThrow();
      assertThat(draft.entry().note()).isEqualTo("rivet found loose");
      assertThat(draft.paper()).isEmpty();
    }
  }

  @Test
  void whyItWasNotRecordedStandsInViewBelowTheButtonThatWasPressed() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      SwapModel swap = opened(day);
      Stage stage = Window.call(() -> window(swap));
      Keyboard keys = new Keyboard(stage.getScene());
      keys.choose("Catch up from paper");
      keys.choose("as scheduled");
      keys.choose("Brakes firm");
      keys.choose("Record the warm-up");
      Window.run(
          () -> {
            Label refused = (Label) stage.getScene().getRoot().lookup(".waits");
            assertThat(refused.getText()).contains("nobody is named who made them");
            Bounds at = refused.localToScene(refused.getLayoutBounds());
            assertThat(at.getMinY()).isPositive();
            assertThat(at.getMaxY()).isLessThanOrEqualTo(stage.getScene().getHeight());
            Node pressed = stage.getScene().getFocusOwner();
            assertThat(at.getMinY())
                .isGreaterThanOrEqualTo(pressed.localToScene(pressed.getLayoutBounds()).getMaxY());
          });
      assertThat(day.state().helperRecords()).isEmpty();
      Window.run(stage::close);
    }
  }

  /** So low that the form is longer than the window. */
  private static Stage window(SwapModel swap) {
    Look look = new Look();
    ScrollPane scroll = new ScrollPane(new SwapLaterView(look, swap));
    scroll.setFitToWidth(true);
    WholeInView.keep(scroll, () -> {});
    Scene scene = new Scene(scroll, 900, 500);
    look.dress(scene);
    Stage stage = new Stage();
    stage.setScene(scene);
    stage.show();
    stage.requestFocus();
    return stage;
  }
}
