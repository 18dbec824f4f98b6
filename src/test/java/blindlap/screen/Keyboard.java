package blindlap.screen;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;
import javafx.event.EventHandler;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Labeled;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.robot.Robot;
import org.jspecify.annotations.Nullable;

/** Someone who has only a keyboard, in front of a window that shows. */
public final class Keyboard {
  private static final int MOST_TABS = 120;

  /** Where the focus is while no control has it. */
  private static final String NOTHING = "nothing";

  private final Scene scene;
  private int struck;

  public Keyboard(Scene scene) {
    this.scene = scene;
  }

  /** Presses and releases a key, and waits until the window has dealt with it. */
  public void press(KeyCode... together) {
    strike(together);
    awaitFrame();
  }

  /** Presses and releases a key without waiting for the window to draw: for text and for Tab. */
  public void strike(KeyCode... together) {
    struck++;
    Window.run(
        () -> {
          Robot robot = new Robot();
          for (KeyCode key : together) {
            robot.keyPress(key);
          }
          for (int i = together.length - 1; i >= 0; i--) {
            robot.keyRelease(together[i]);
          }
        });
  }

  /** How often a key was pressed; keys that are held together count once. */
  public int struck() {
    return struck;
  }

  /** Holds a key down while something goes on, lets it go, and waits until that was dealt with. */
  public void hold(KeyCode key, Runnable meanwhile) {
    Window.run(() -> new Robot().keyPress(key));
    Window.run(meanwhile);
    Window.run(() -> new Robot().keyRelease(key));
    awaitFrame();
  }

  /**
   * Waits until the window has drawn once more. What had the focus and left the window gives it up
   * only then; nobody types faster than that.
   */
  private void awaitFrame() {
    CountDownLatch drawn = new CountDownLatch(1);
    Runnable listener = drawn::countDown;
    Window.run(
        () -> {
          scene.addPostLayoutPulseListener(listener);
          Platform.requestNextPulse();
        });
    await(drawn, "the window draws no more");
    Window.run(() -> scene.removePostLayoutPulseListener(listener));
  }

  /** Types letters, digits, blanks, points and hyphens. */
  public void type(String text) {
    for (char each : text.toCharArray()) {
      KeyCode key =
          switch (each) {
            case ' ' -> KeyCode.SPACE;
            case '.' -> KeyCode.PERIOD;
            case '-' -> KeyCode.MINUS;
            default ->
                Character.isDigit(each)
                    ? KeyCode.valueOf("DIGIT" + each)
                    : KeyCode.valueOf(String.valueOf(each).toUpperCase(Locale.ROOT));
          };
      if (Character.isUpperCase(each)) {
        strike(KeyCode.SHIFT, key);
      } else {
        strike(key);
      }
    }
    awaitFrame();
  }

  /**
   * Goes with Tab to the control whose words hold these. Where the focus is on it already, it may
   * have come this moment: a control hears no key before it was drawn once, and nobody can press
   * what was not drawn yet. Nor does Tab go anywhere in a window that was not.
   */
  public void goTo(String words) {
    List<String> met = new ArrayList<>();
    String first = here();
    if (first.contains(words) || first.equals(NOTHING)) {
      awaitFrame();
    }
    for (int i = 0; i < MOST_TABS; i++) {
      String here = here();
      if (here.contains(words)) {
        if (i > 0) {
          awaitFrame();
        }
        return;
      }
      met.add(here);
      tab();
    }
    throw new AssertionError(
        "Tab never comes to '" + words + "', only to " + met.stream().distinct().toList());
  }

  /** On the way to somewhere nothing has to be drawn; but the key has to have come. */
  private void tab() {
    CountDownLatch up = new CountDownLatch(1);
    EventHandler<KeyEvent> released = event -> up.countDown();
    Window.run(() -> scene.addEventFilter(KeyEvent.KEY_RELEASED, released));
    strike(KeyCode.TAB);
    await(up, "no Tab came to the window");
    Window.run(() -> scene.removeEventFilter(KeyEvent.KEY_RELEASED, released));
  }

  private static void await(CountDownLatch latch, String otherwise) {
    try {
      if (!latch.await(30, TimeUnit.SECONDS)) {
        throw new IllegalStateException(otherwise);
      }
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Goes to a button or box and presses it. */
  public void choose(String words) {
    goTo(words);
    press(KeyCode.SPACE);
  }

  /** The words of what has the focus. */
  public String here() {
    return Window.call(() -> words(scene.getFocusOwner()));
  }

  private static String words(@Nullable Node node) {
    if (node == null) {
      return NOTHING;
    }
    String accessible = node.getAccessibleText();
    String text = node instanceof Labeled labeled ? labeled.getText() : "";
    return (accessible == null ? "" : accessible) + "|" + text;
  }
}
