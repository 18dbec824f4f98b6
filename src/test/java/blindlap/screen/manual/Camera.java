package blindlap.screen.manual;

import blindlap.plot.surface.Palette;
import blindlap.plot.surface.Surface;
import blindlap.screen.ManualWindow;
import blindlap.screen.part.PlotView;
import blindlap.screen.part.Theme;
import java.awt.image.BufferedImage;
import java.lang.reflect.Proxy;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.embed.swing.SwingFXUtils;
import javafx.geometry.Bounds;
import javafx.geometry.Rectangle2D;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.SnapshotParameters;
import javafx.scene.control.Control;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.Region;
import javafx.scene.text.Text;

/** Takes a window's page, or a part of it, and reads what stands there. */
final class Camera {
  /** What is left around a part. */
  private static final double AROUND = 18;

  private final ManualWindow window;
  private final Node root;

  Camera(ManualWindow window) {
    this.window = window;
    this.root = window.scene().getRoot();
  }

  /** Nothing has to be scrolled to, and what is promised is there from its beginning to its end. */
  Photograph take(Promise promise, boolean drawn) {
    window.whole();
    Rectangle2D view = view(promise);
    List<String> texts = new ArrayList<>();
    read(root, view, texts);
    return new Photograph(drawn ? draw(view) : nothing(), texts);
  }

  private static BufferedImage nothing() {
    return new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB);
  }

  private BufferedImage draw(Rectangle2D view) {
    SnapshotParameters part = new SnapshotParameters();
    part.setViewport(view);
    return SwingFXUtils.fromFXImage(root.snapshot(part, null), null);
  }

  private Rectangle2D view(Promise promise) {
    double width = root.getLayoutBounds().getWidth();
    double height = root.getLayoutBounds().getHeight();
    if (promise.equals(Promise.whole())) {
      return new Rectangle2D(0, 0, width, height);
    }
    Optional<Bounds> first =
        promise.from().isEmpty() ? Optional.empty() : Optional.of(heading(promise.from(), 0));
    double top = first.map(at -> at.getMinY() - AROUND).orElse(0.0);
    double bottom =
        promise.to().isEmpty()
            ? Math.min(height, lowest(root, height) + AROUND)
            : heading(promise.to(), top + AROUND + 1).getMinY() - AROUND;
    if (bottom <= top) {
      throw new AssertionError("nothing stands " + promise.words());
    }
    double left = first.map(at -> Math.max(0, at.getMinX() - AROUND)).orElse(0.0);
    double right = first.isPresent() ? Math.min(width, furthest(top, bottom) + AROUND) : width;
    return new Rectangle2D(
        Math.floor(left), Math.floor(top), Math.ceil(right - left), Math.ceil(bottom - top));
  }

  /** Where a heading stands, below a height. */
  private Bounds heading(String words, double below) {
    return root.lookupAll(".text").stream()
        .filter(node -> node instanceof Text text && text.getText().equals(words))
        .filter(ManualWindow::shown)
        .map(node -> node.localToScene(node.getLayoutBounds()))
        .filter(at -> at.getMinY() >= below)
        .findFirst()
        .orElseThrow(() -> new AssertionError("no heading \"" + words + "\" is on the page"));
  }

  private double lowest(Node node, double window) {
    double[] lowest = {0};
    each(node, (leaf, at) -> lowest[0] = Math.max(lowest[0], Math.min(window, at.getMaxY())));
    return lowest[0];
  }

  private double furthest(double top, double bottom) {
    return root.lookupAll("*").stream()
        .filter(ManualWindow::shown)
        .filter(Camera::seen)
        .map(node -> node.localToScene(node.getLayoutBounds()))
        .filter(at -> at.getMaxY() > top && at.getMinY() < bottom)
        .mapToDouble(Bounds::getMaxX)
        .max()
        .orElseThrow();
  }

  /** Words, drawings, fields, and whatever has a frame; not what only holds them. */
  private static boolean seen(Node node) {
    return node instanceof Text text && !text.getText().isBlank()
        || node instanceof PlotView
        || node instanceof Control && !(node instanceof ScrollPane)
        || node instanceof Region box && box.getBorder() != null && !box.getBorder().isEmpty();
  }

  /** Is told of what is drawn. */
  private interface Met {
    void leaf(Node leaf, Bounds at);
  }

  private static void each(Node node, Met met) {
    if (!node.isVisible()) {
      return;
    }
    if (node instanceof Text text && !text.getText().isBlank() || node instanceof PlotView) {
      met.leaf(node, node.localToScene(node.getLayoutBounds()));
    } else if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(child -> each(child, met));
    }
  }

  private static void read(Node root, Rectangle2D view, List<String> texts) {
    each(
        root,
        (leaf, at) -> {
          if (view.contains(at.getCenterX(), at.getCenterY())) {
            if (leaf instanceof PlotView plot) {
              plot.drawOn(listening(texts), plot.getWidth(), 1);
            } else {
              add(texts, ((Text) leaf).getText());
            }
          }
        });
  }

  private static void add(List<String> texts, String words) {
    texts.add(words.replaceAll("\\s+", " ").strip());
  }

  /** A surface that keeps nothing but the words. */
  private static Surface listening(List<String> texts) {
    return (Surface)
        Proxy.newProxyInstance(
            Surface.class.getClassLoader(),
            new Class<?>[] {Surface.class},
            (proxy, method, given) -> {
              if (method.getName().equals("text")) {
                add(texts, (String) given[0]);
              } else if (method.isDefault()) {
                return java.lang.reflect.InvocationHandler.invokeDefault(proxy, method, given);
              }
              return method.getReturnType() == Palette.class ? Theme.PAPER.palette() : null;
            });
  }
}
