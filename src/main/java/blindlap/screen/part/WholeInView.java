package blindlap.screen.part;

import javafx.application.Platform;
import javafx.beans.value.ChangeListener;
import javafx.event.EventHandler;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.InputEvent;
import javafx.scene.input.MouseEvent;
import org.jspecify.annotations.Nullable;

/**
 * Brings what has the focus into view, whole with what belongs to it: a question with both its
 * buttons, a field with its title. It scrolls when the focus moves and when what belongs to it
 * grows, no farther than needed, never under a finger, and leaves whoever scrolled away alone.
 */
public final class WholeInView {
  private static final Object TOGETHER = new Object();
  private static final double FREE = 12;

  /** The mark of the focus lies so far around what has it, at most. */
  private static final double MARK = 10;

  private final ScrollPane page;
  private final Runnable moved;
  private final Runnable pulse = this::settled;
  private final EventHandler<InputEvent> input = this::input;
  private final ChangeListener<Node> focus = (o, before, now) -> focus(now);
  private @Nullable Scene scene;
  private @Nullable Node owner;
  private @Nullable Node opened;
  private boolean wanted;
  private boolean pressed;
  private boolean mouse;
  private double high;
  private double room;

  private WholeInView(ScrollPane page, Runnable moved) {
    this.page = page;
    this.moved = moved;
  }

  /** What is inside of this node is seen as a whole with it, where there is room. */
  public static <T extends Node> T together(T node) {
    node.getProperties().put(TOGETHER, true);
    return node;
  }

  /**
   * Keeps what has the focus in view as long as the page is in a scene.
   *
   * @param moved told when the page has scrolled after a press: something else is under the finger
   */
  public static void keep(ScrollPane page, Runnable moved) {
    WholeInView kept = new WholeInView(page, moved);
    page.getProperties().put(TOGETHER, kept);
    page.sceneProperty().addListener((o, before, now) -> kept.watch(now));
    kept.watch(page.getScene());
  }

  /** Brings what a press has opened into view, wherever the focus is. */
  public static void show(Node opened) {
    for (Node up = opened; up != null; up = up.getParent()) {
      if (up instanceof ScrollPane page
          && page.getProperties().get(TOGETHER) instanceof WholeInView kept) {
        kept.opened = opened;
        Platform.requestNextPulse();
      }
    }
  }

  private void watch(@Nullable Scene now) {
    if (scene != null) {
      scene.removePostLayoutPulseListener(pulse);
      scene.removeEventFilter(InputEvent.ANY, input);
      scene.focusOwnerProperty().removeListener(focus);
    }
    scene = now;
    pressed = false;
    owner = null;
    if (now != null) {
      now.addPostLayoutPulseListener(pulse);
      now.addEventFilter(InputEvent.ANY, input);
      now.focusOwnerProperty().addListener(focus);
      focus(now.getFocusOwner());
    }
  }

  private void input(InputEvent event) {
    if (event.getEventType() == MouseEvent.MOUSE_PRESSED) {
      pressed = true;
      mouse = true;
    } else if (event.getEventType() == MouseEvent.MOUSE_RELEASED) {
      pressed = false;
      Platform.requestNextPulse();
    } else if (!(event instanceof MouseEvent)) {
      mouse = false;
    }
  }

  private void focus(@Nullable Node now) {
    owner = now;
    wanted = now != null;
  }

  private void settled() {
    Node shown = opened;
    if (shown != null && !pressed) {
      opened = null;
      wanted = false;
      bring(place(shown));
      return;
    }
    Node node = owner;
    if (node == null || pressed || !inside(node)) {
      return;
    }
    Bounds whole = whole(node);
    double view = page.getViewportBounds().getHeight();
    if (wanted || whole.getHeight() > high + 1 || view < room - 1) {
      bring(whole);
    }
    wanted = false;
    high = whole.getHeight();
    room = view;
  }

  private void bring(Bounds whole) {
    double hidden = page.getContent().getLayoutBounds().getHeight() - room();
    double top = page.getVvalue() * Math.max(0, hidden);
    double wish = top;
    if (whole.getMaxY() + FREE > top + room()) {
      wish = whole.getMaxY() + FREE - room();
    }
    wish = Math.min(wish, whole.getMinY() - FREE);
    boolean above = whole.getMinY() - MARK < top && top > 0;
    boolean below = whole.getMaxY() + MARK > top + room() && top < hidden;
    if (!above && !below) {
      return;
    }
    page.setVvalue(Math.max(0, Math.min(1, wish / hidden)));
    if (mouse) {
      moved.run();
    }
  }

  private double room() {
    return page.getViewportBounds().getHeight();
  }

  /** The largest of what belongs together with the node that fits into the view. */
  private Bounds whole(Node node) {
    Bounds whole = place(node);
    for (Node up = node; up != null && up != page.getContent(); up = up.getParent()) {
      if (up.hasProperties() && Boolean.TRUE.equals(up.getProperties().get(TOGETHER))) {
        Bounds all = place(up);
        if (all.getHeight() + 2 * FREE > room()) {
          return whole;
        }
        whole = all;
      }
    }
    return whole;
  }

  private Bounds place(Node node) {
    return page.getContent().sceneToLocal(node.localToScene(node.getLayoutBounds()));
  }

  private boolean inside(Node node) {
    for (Node up = node; up != null; up = up.getParent()) {
      if (up == page) {
        return true;
      }
    }
    return false;
  }
}
