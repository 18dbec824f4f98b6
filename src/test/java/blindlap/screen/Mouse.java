package blindlap.screen;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import javafx.event.EventHandler;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.robot.Robot;

/** Someone who has only a mouse, in front of a window that shows. */
final class Mouse {
  private static final int MOST_TURNS = 200;

  private final Scene scene;
  private int clicks;

  Mouse(Scene scene) {
    this.scene = scene;
  }

  /** How often it clicked; turns of the wheel are no clicks. */
  int clicks() {
    return clicks;
  }

  /** Clicks into the middle of what has these words; turns the wheel until it is in view. */
  void click(String words) {
    Node node = Window.call(() -> find(words));
    for (int turn = 0; turn < MOST_TURNS && !Window.call(() -> inView(node)); turn++) {
      Window.run(() -> turn(node));
      settle();
    }
    CountDownLatch up = new CountDownLatch(1);
    EventHandler<MouseEvent> released = event -> up.countDown();
    Window.run(
        () -> {
          scene.addEventFilter(MouseEvent.MOUSE_RELEASED, released);
          scene.getRoot().applyCss();
          scene.getRoot().layout();
          Bounds at = node.localToScreen(node.getLayoutBounds());
          Robot robot = new Robot();
          robot.mouseMove(at.getCenterX(), at.getCenterY());
          robot.mouseClick(MouseButton.PRIMARY);
        });
    clicks++;
    arrived(up, words);
    Window.run(() -> scene.removeEventFilter(MouseEvent.MOUSE_RELEASED, released));
    settle();
  }

  /** On a busy machine a click takes its time to come from outside. */
  private static void arrived(CountDownLatch up, String words) {
    try {
      if (!up.await(10, TimeUnit.SECONDS)) {
        throw new IllegalStateException("no click came to " + words);
      }
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private Node find(String words) {
    return scene.getRoot().lookupAll("*").stream()
        .filter(Node::isFocusTraversable)
        .filter(Mouse::shown)
        .filter(node -> words(node).contains(words))
        .findFirst()
        .orElseThrow(() -> new AssertionError("there is no " + words));
  }

  private static boolean shown(Node node) {
    for (Node at = node; at != null; at = at.getParent()) {
      if (!at.isVisible() || at.isDisabled()) {
        return false;
      }
    }
    return true;
  }

  private static String words(Node node) {
    return node.getAccessibleText() + "|" + (node instanceof Labeled label ? label.getText() : "");
  }

  private static ScrollPane scrolls(Node node) {
    for (Node at = node; at != null; at = at.getParent()) {
      if (at instanceof ScrollPane scroll) {
        return scroll;
      }
    }
    throw new AssertionError("out of view, and nothing scrolls it: " + words(node));
  }

  private boolean inView(Node node) {
    Bounds at = node.localToScene(node.getLayoutBounds());
    double y = at.getCenterY();
    for (Node up = node; up != null; up = up.getParent()) {
      Bounds view = up.localToScene(up.getLayoutBounds());
      boolean clips = up instanceof ScrollPane || up == scene.getRoot();
      if (clips && (y < view.getMinY() + 4 || y > view.getMaxY() - 4)) {
        return false;
      }
    }
    return true;
  }

  private static void turn(Node node) {
    Bounds view = scrolls(node).localToScreen(scrolls(node).getLayoutBounds());
    boolean below = node.localToScreen(node.getLayoutBounds()).getCenterY() > view.getCenterY();
    Robot robot = new Robot();
    // Beside what is in the middle: a line that is to be marked hears the wheel, too.
    robot.mouseMove(view.getMinX() + 8, view.getCenterY());
    robot.mouseWheel(below ? 1 : -1);
  }

  /** Input events come from outside: two rounds through the window, and what they did is there. */
  private static void settle() {
    for (int i = 0; i < 2; i++) {
      try {
        Thread.sleep(40);
      } catch (InterruptedException e) {
        throw new IllegalStateException(e);
      }
      Window.run(() -> {});
    }
  }
}
