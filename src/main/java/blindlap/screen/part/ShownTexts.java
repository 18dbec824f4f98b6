package blindlap.screen.part;

import blindlap.wording.day.Shown;
import javafx.beans.property.Property;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.ObservableValue;
import javafx.collections.ListChangeListener;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Control;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextInputControl;
import javafx.scene.control.Tooltip;
import javafx.scene.text.Text;
import javafx.stage.Window;
import org.jspecify.annotations.Nullable;

/**
 * The one place where texts of the window are made safe for eyes: whatever comes into a scene is
 * shown as {@link Shown} shows it, whoever put it there and from wherever, now and at every change.
 * A page needs to do nothing for it and cannot go past it. Lists that drop down, tooltips and
 * dialogs are windows of their own and are kept so as well.
 *
 * <p>Fields hold what was typed, to the letter, and are left alone: what stands in them is looked
 * at when it is taken. What the eye is not to mistake is their title and what stands beside them.
 */
final class ShownTexts {
  // Each is one and the same listener for all nodes, so that adding it again changes nothing.
  @SuppressWarnings("unchecked") // it listens to nothing but properties of texts
  private static final ChangeListener<String> TEXT =
      (text, before, now) -> show((Property<String>) text);

  private static final ChangeListener<Parent> ROOT = (root, before, now) -> see(now);
  private static final ChangeListener<Scene> SCENE = (scene, before, now) -> keep(now);
  private static final ChangeListener<Tooltip> TIP = (tip, before, now) -> see(now);
  private static final ListChangeListener<Node> CHILDREN = ShownTexts::see;
  private static final ListChangeListener<Window> WINDOWS = ShownTexts::opened;

  private ShownTexts() {}

  /** Keeps a scene so, and every window that is opened beside it. */
  static void keep(@Nullable Scene scene) {
    Window.getWindows().removeListener(WINDOWS);
    Window.getWindows().addListener(WINDOWS);
    if (scene != null) {
      again(scene.rootProperty(), ROOT);
      see(scene.getRoot());
    }
  }

  private static void opened(ListChangeListener.Change<? extends Window> change) {
    while (change.next()) {
      for (Window window : change.getAddedSubList()) {
        again(window.sceneProperty(), SCENE);
        keep(window.getScene());
      }
    }
  }

  private static void see(ListChangeListener.Change<? extends Node> change) {
    while (change.next()) {
      change.getAddedSubList().forEach(ShownTexts::see);
    }
  }

  private static void see(Node node) {
    show(node.accessibleTextProperty());
    show(node.accessibleHelpProperty());
    if (node instanceof Text text) {
      show(text.textProperty());
    } else if (node instanceof Labeled labeled) {
      show(labeled.textProperty());
    } else if (node instanceof TextInputControl field) {
      show(field.promptTextProperty());
      return;
    }
    if (node instanceof Control control) {
      again(control.tooltipProperty(), TIP);
      see(control.getTooltip());
    }
    if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().removeListener(CHILDREN);
      parent.getChildrenUnmodifiable().addListener(CHILDREN);
      parent.getChildrenUnmodifiable().forEach(ShownTexts::see);
    }
  }

  private static void see(@Nullable Tooltip tip) {
    if (tip != null) {
      show(tip.textProperty());
    }
  }

  /** A text that is bound follows another: the letters that are drawn for it are seen to. */
  private static void show(Property<String> text) {
    if (text.isBound()) {
      return;
    }
    again(text, TEXT);
    String now = text.getValue();
    String shown = now == null ? null : Shown.text(now);
    if (shown != null && !shown.equals(now)) {
      text.setValue(shown);
    }
  }

  private static <T> void again(ObservableValue<T> value, ChangeListener<? super T> listener) {
    value.removeListener(listener);
    value.addListener(listener);
  }
}
