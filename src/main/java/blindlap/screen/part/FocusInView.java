package blindlap.screen.part;

import javafx.application.Platform;
import javafx.event.EventHandler;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.input.MouseEvent;
import org.jspecify.annotations.Nullable;

/**
 * Brings what has the focus into view, and keeps it where it is while the page above it grows or
 * shrinks: what is typed into must not wander off. Someone who has scrolled away is left alone, and
 * nothing moves under a finger: what is pressed while it is half in view is scrolled once the
 * finger is up again.
 */
public final class FocusInView {
  private static final double FREE = 16;

  private final PageGrid page;
  private final Runnable pulse = this::settled;
  private final EventHandler<MouseEvent> finger = this::finger;
  private @Nullable Scene scene;
  private @Nullable Node owner;
  private boolean seen;
  private double above;
  private double height;
  private double view;
  private boolean pressed;
  private boolean wanted;

  public FocusInView(PageGrid page) {
    this.page = page;
  }

  /** The page has come into a scene, or left it. */
  public void watch(@Nullable Scene now) {
    if (scene != null) {
      scene.removePostLayoutPulseListener(pulse);
      scene.removeEventFilter(MouseEvent.MOUSE_PRESSED, finger);
      scene.removeEventFilter(MouseEvent.MOUSE_RELEASED, finger);
    }
    scene = now;
    pressed = false;
    if (now != null) {
      now.addPostLayoutPulseListener(pulse);
      now.addEventFilter(MouseEvent.MOUSE_PRESSED, finger);
      now.addEventFilter(MouseEvent.MOUSE_RELEASED, finger);
    }
  }

  private void finger(MouseEvent event) {
    pressed = event.getEventType() == MouseEvent.MOUSE_PRESSED;
    if (!pressed && wanted) {
      Platform.requestNextPulse();
    }
  }

  /** Something else has the focus. */
  public void focus(@Nullable Node now) {
    owner = now != null && inside(now) ? now : null;
    wanted = owner != null && !inView(owner);
    if (wanted && !pressed) {
      wanted = false;
      bring(page.getViewportBounds().getHeight() / 3);
    }
    note();
  }

  /** Scrolls what has the focus into view, so far below the upper edge. */
  private void bring(double below) {
    Node node = owner;
    if (node != null) {
      scrollTo(place(node).getMinY() - below);
    }
  }

  /** Scrolls no farther than is needed to see what was pressed as a whole. */
  private void bringAll() {
    Node node = owner;
    if (node != null && !inView(node)) {
      Bounds place = place(node);
      double view = page.getViewportBounds().getHeight();
      double least = place.getMaxY() + FREE - view;
      scrollTo(place.getMinY() - FREE < top() ? place.getMinY() - FREE : least);
    }
  }

  /** After every layout: if the page has another height, what has the focus stays put. */
  private void settled() {
    Node node = owner;
    if (node == null || !inside(node)) {
      return;
    }
    if (wanted && !pressed) {
      wanted = false;
      bringAll();
      note();
      return;
    }
    double now = page.getContent().getBoundsInLocal().getHeight();
    if (now != height && (seen || pressed)) {
      scrollTo(place(node).getMinY() - above);
    }
    double room = page.getViewportBounds().getHeight();
    if (room < view && seen) {
      // What stands below the page has grown over it, and may have done so while the page grew.
      bringAll();
    }
    note();
  }

  private void note() {
    Node node = owner;
    height = page.getContent().getBoundsInLocal().getHeight();
    view = page.getViewportBounds().getHeight();
    if (node != null) {
      seen = inView(node);
      above = place(node).getMinY() - top();
    }
  }

  private Bounds place(Node node) {
    return page.getContent().sceneToLocal(node.localToScene(node.getBoundsInLocal()));
  }

  private boolean inView(Node node) {
    Bounds place = place(node);
    double top = top();
    return place.getMinY() >= top && place.getMaxY() <= top + page.getViewportBounds().getHeight();
  }

  private double hidden() {
    return page.getContent().getBoundsInLocal().getHeight() - page.getViewportBounds().getHeight();
  }

  private double top() {
    return page.getVvalue() * Math.max(0, hidden());
  }

  private void scrollTo(double top) {
    if (hidden() > 0) {
      page.setVvalue(Math.max(0, Math.min(1, top / hidden())));
    }
  }

  private boolean inside(Node node) {
    for (Node at = node; at != null; at = at.getParent()) {
      if (at == page.getContent()) {
        return true;
      }
    }
    return false;
  }
}
