package blindlap.screen.part;

import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Scene;
import org.jspecify.annotations.Nullable;

/**
 * Brings what has the focus into view, and keeps it where it is while the page above it grows or
 * shrinks: what is typed into must not wander off. Someone who has scrolled away is left alone.
 */
public final class FocusInView {
  private final PageGrid page;
  private final Runnable pulse = this::settled;
  private @Nullable Scene scene;
  private @Nullable Node owner;
  private boolean seen;
  private double above;
  private double height;

  public FocusInView(PageGrid page) {
    this.page = page;
  }

  /** The page has come into a scene, or left it. */
  public void watch(@Nullable Scene now) {
    if (scene != null) {
      scene.removePostLayoutPulseListener(pulse);
    }
    scene = now;
    if (now != null) {
      now.addPostLayoutPulseListener(pulse);
    }
  }

  /** Something else has the focus. */
  public void focus(@Nullable Node now) {
    owner = now != null && inside(now) ? now : null;
    if (owner != null && !inView(owner)) {
      scrollTo(place(owner).getMinY() - page.getViewportBounds().getHeight() / 3);
    }
    note();
  }

  /** After every layout: if the page has another height, what has the focus stays put. */
  private void settled() {
    Node node = owner;
    if (node == null || !inside(node)) {
      return;
    }
    double now = page.getContent().getBoundsInLocal().getHeight();
    if (now != height && seen) {
      scrollTo(place(node).getMinY() - above);
    }
    note();
  }

  private void note() {
    Node node = owner;
    height = page.getContent().getBoundsInLocal().getHeight();
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
