package blindlap.screen.part;

import blindlap.wording.day.Words;
import java.util.function.Function;
import javafx.beans.binding.Bindings;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import org.jspecify.annotations.Nullable;

/**
 * A room behind the Notebook page: the way back and what to choose on top, the page below. Where
 * long names or large text would leave too little of the page in view, the bar goes with it as it
 * scrolls: nothing is cut, and nothing is out of reach.
 */
public final class RoomFrame extends BorderPane {
  private static final Words WORDS = Words.of("rooms");

  /** How much of what is seen a page key goes on by. */
  private static final double TURN = 0.85;

  /** A bar that takes more of the room than this goes with the page. */
  private static final double MOST = 0.5;

  private final PageGrid page;
  private final FlowPane bar = new FlowPane();

  /** Where the bar stands while it does not go with the page; Tab comes here before the page. */
  private final VBox above = new VBox(bar);

  private final Button back = new Button(WORDS.say("back"));

  /**
   * @param page what the room shows
   * @param away goes back to the notebook; Escape does, too
   * @param choices what to choose, beside the way back
   */
  public RoomFrame(PageGrid page, Runnable away, Region... choices) {
    this.page = page;
    back.getStyleClass().add("quiet");
    back.setOnAction(e -> away.run());
    bar.getStyleClass().add("room-bar");
    bar.setMinWidth(0);
    bar.setRowValignment(VPos.BOTTOM);
    bar.getChildren().add(back);
    bar.getChildren().addAll(choices);
    // A long name takes another line rather than push the page beyond the window.
    for (Region choice : choices) {
      choice
          .maxWidthProperty()
          .bind(
              Bindings.createDoubleBinding(
                  () -> getWidth() - bar.getInsets().getLeft() - bar.getInsets().getRight(),
                  widthProperty(),
                  bar.insetsProperty()));
    }
    setTop(above);
    setCenter(page);
    // What stands between the bar and the last button has nothing that takes the focus.
    addEventFilter(
        KeyEvent.KEY_PRESSED,
        e -> {
          if (e.getCode() == KeyCode.PAGE_DOWN || e.getCode() == KeyCode.PAGE_UP) {
            e.consume();
            turn(page, e.getCode() == KeyCode.PAGE_DOWN ? 1 : -1);
          }
        });
    setOnKeyPressed(
        e -> {
          if (e.getCode() == KeyCode.ESCAPE) {
            e.consume();
            away.run();
          }
        });
  }

  @Override
  protected void layoutChildren() {
    if (getWidth() > 0 && getHeight() > 0) {
      boolean goes = bar.prefHeight(getWidth()) > MOST * getHeight();
      if (goes != above.getChildren().isEmpty()) {
        move(goes);
      }
    }
    super.layoutChildren();
  }

  /** Moves the bar; what has the focus in it keeps it. */
  private void move(boolean goes) {
    Node focus = getScene() == null ? null : getScene().getFocusOwner();
    boolean within = focus != null && bar.lookupAll("*").contains(focus);
    if (goes) {
      above.getChildren().clear();
      page.above(bar);
    } else {
      page.nothingAbove();
      above.getChildren().setAll(bar);
    }
    if (within && focus != null) {
      focus.requestFocus();
    }
  }

  /** A page up or down, less a little that stays in view. */
  private static void turn(PageGrid page, int way) {
    double seen = page.getViewportBounds().getHeight();
    double hidden = page.getContent().getLayoutBounds().getHeight() - seen;
    if (hidden > 0) {
      page.setVvalue(Math.max(0, Math.min(1, page.getVvalue() + way * TURN * seen / hidden)));
    }
  }

  /** Puts the focus on the way back, so that keys work at once. */
  public void enter() {
    back.requestFocus();
  }

  /** A box to choose from, with its name above it. */
  public static <T> VBox choice(String title, ComboBox<T> box, Function<T, String> words) {
    box.setConverter(
        new StringConverter<T>() {
          @Override
          public String toString(@Nullable T value) {
            return value == null ? "" : words.apply(value);
          }

          @Override
          public @Nullable T fromString(String text) {
            return null;
          }
        });
    box.setAccessibleText(title);
    box.setMaxWidth(Double.MAX_VALUE);
    Label label = new Label(title);
    label.getStyleClass().add("note");
    label.setLabelFor(box);
    box.setMinWidth(0);
    VBox both = new VBox(2, label, box);
    both.setMinWidth(0);
    return both;
  }
}
