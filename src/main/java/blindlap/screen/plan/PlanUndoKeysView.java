package blindlap.screen.plan;

import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.event.EventHandler;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import org.jspecify.annotations.Nullable;

/**
 * Ctrl Z, and Ctrl Shift Z or Ctrl Y. A text that is being typed has its own undo until it is as it
 * was when the field was entered; from then on they are the plan's.
 */
final class PlanUndoKeysView {
  private final Supplier<Boolean> listens;
  private final Consumer<Runnable> inField;
  private final Runnable back;
  private final Runnable again;
  private final EventHandler<KeyEvent> keys = this::key;
  private @Nullable Scene scene;
  private @Nullable TextInputControl field;
  private String entered = "";
  private int own;

  /**
   * @param listens false while the page shows something else
   * @param inField runs what a text takes back by itself
   */
  PlanUndoKeysView(
      Supplier<Boolean> listens, Consumer<Runnable> inField, Runnable back, Runnable again) {
    this.listens = listens;
    this.inField = inField;
    this.back = back;
    this.again = again;
  }

  /** The page has come into a scene, or left it. */
  void watch(@Nullable Scene now) {
    if (scene != null) {
      scene.removeEventFilter(KeyEvent.KEY_PRESSED, keys);
    }
    scene = now;
    if (now != null) {
      now.addEventFilter(KeyEvent.KEY_PRESSED, keys);
    }
  }

  /** Something else has the focus. */
  void focus(@Nullable Node now) {
    field = now instanceof TextInputControl text ? text : null;
    enter();
  }

  private void enter() {
    entered = field == null ? "" : String.valueOf(field.getText());
    own = 0;
  }

  private void key(KeyEvent event) {
    if (!event.isShortcutDown() || event.isAltDown() || !listens.get()) {
      return;
    }
    if (event.getCode() == KeyCode.Y || event.getCode() == KeyCode.Z && event.isShiftDown()) {
      redo(event);
    } else if (event.getCode() == KeyCode.Z) {
      undo(event);
    }
  }

  private void undo(KeyEvent event) {
    TextInputControl text = field;
    event.consume();
    if (text != null && text.isUndoable() && !entered.equals(text.getText())) {
      inField.accept(text::undo);
      own++;
      return;
    }
    back.run();
    enter();
  }

  private void redo(KeyEvent event) {
    TextInputControl text = field;
    event.consume();
    if (text != null && text.isRedoable() && own > 0) {
      text.redo();
      own--;
      return;
    }
    again.run();
    enter();
  }
}
