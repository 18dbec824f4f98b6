package blindlap.screen.part;

import blindlap.plot.surface.CanvasSurface;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Surface;
import javafx.beans.InvalidationListener;
import javafx.geometry.Orientation;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;

/** Shows a drawing as wide as it is given room, in the theme and text scale of the window. */
public final class PlotView extends Region {
  private static final double USUAL_WIDTH = 744;

  private final Look look;
  private final Drawing drawing;
  private final Canvas canvas = new Canvas();

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach this view
  private final InvalidationListener watch;

  /** A view of the drawing. */
  public PlotView(Look look, Drawing drawing) {
    this.look = look;
    this.drawing = drawing;
    getStyleClass().add("plot");
    getChildren().add(canvas);
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    setAccessibleText(drawing.spoken().all());
    watch =
        look.watch(
            () -> {
              requestLayout();
              draw();
            });
  }

  @Override
  public Orientation getContentBias() {
    return Orientation.HORIZONTAL;
  }

  @Override
  protected double computeMinWidth(double height) {
    return 0;
  }

  @Override
  protected double computePrefWidth(double height) {
    return USUAL_WIDTH;
  }

  @Override
  protected double computeMaxWidth(double height) {
    return Double.MAX_VALUE;
  }

  @Override
  protected double computeMinHeight(double width) {
    return computePrefHeight(width);
  }

  @Override
  protected double computePrefHeight(double width) {
    double given = width > 0 ? width : USUAL_WIDTH;
    return Math.ceil(drawing.heightFor(given, look.textScale()));
  }

  @Override
  protected void layoutChildren() {
    canvas.setWidth(getWidth());
    canvas.setHeight(getHeight());
    draw();
  }

  private void draw() {
    if (canvas.getWidth() < 1) {
      return;
    }
    GraphicsContext context = canvas.getGraphicsContext2D();
    context.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
    drawOn(
        CanvasSurface.on(context, look.themeProperty().get().palette()),
        canvas.getWidth(),
        look.textScale());
  }

  /** Draws what this view shows on another surface. */
  public void drawOn(Surface surface, double width, double textScale) {
    drawing.draw(new ShownSurface(surface), width, textScale);
  }
}
