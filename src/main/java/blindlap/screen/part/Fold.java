package blindlap.screen.part;

import javafx.scene.Node;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.TitledPane;

/**
 * Something behind its title, which takes as many lines as it needs: the title that the platform
 * draws knows one line and is cut where that is too long.
 */
public final class Fold extends TitledPane {
  /** The arrow before a title and the room about it, in heights of the text. */
  private static final double ARROW = 2.2;

  /** Closed at first. */
  public Fold(String title, Node inside) {
    super(title, inside);
    setExpanded(false);
    setAnimated(false);
    setMinWidth(0);
    setContentDisplay(ContentDisplay.GRAPHIC_ONLY);
    setGraphic(new Title());
  }

  private final class Title extends Label {
    Title() {
      textProperty().bind(Fold.this.textProperty());
      setWrapText(true);
      setMinWidth(0);
      Fold.this.widthProperty().addListener((o, before, now) -> requestLayout());
    }

    private double room() {
      double room = Fold.this.getWidth() - ARROW * getFont().getSize();
      return room > 0 ? room : USE_COMPUTED_SIZE;
    }

    @Override
    protected double computePrefWidth(double height) {
      double whole = super.computePrefWidth(height);
      return room() > 0 ? Math.min(whole, room()) : whole;
    }

    @Override
    protected double computePrefHeight(double width) {
      // The title's own layout asks for a height before it has a width.
      return super.computePrefHeight(width < 0 ? room() : width);
    }
  }
}
