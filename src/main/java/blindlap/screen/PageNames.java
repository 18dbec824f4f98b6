package blindlap.screen;

import blindlap.screen.part.Look;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import javafx.beans.InvalidationListener;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/**
 * The names of the pages at the left edge; the open one has an ink bar.
 *
 * @param <P> what tells pages apart
 */
public final class PageNames<P> extends VBox {
  private static final double WIDTH = 184;
  private static final double GROWS = 0.55;

  private final ToggleGroup group = new ToggleGroup();
  private final Map<P, ToggleButton> names = new LinkedHashMap<>();
  private final VBox foot = new VBox(4);
  private @Nullable P open;

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach the names
  private final InvalidationListener watch;

  /**
   * The names.
   *
   * @param program name of the program
   * @param pages pages in order, each with its name
   * @param onGo told which page is asked for; the caller opens it and then calls {@link #open}
   */
  public PageNames(Look look, String program, Map<P, String> pages, Consumer<P> onGo) {
    getStyleClass().add("page-names");
    // Names grow less than the text: the page needs the room.
    prefWidthProperty().bind(look.px(WIDTH * GROWS).add(WIDTH * (1 - GROWS)));
    setMinWidth(0); // a scroll bar takes its width from the names, and covers nothing of them
    watch = look.watch(() -> large(look.stacked()));
    large(look.stacked());
    Label head = new Label(program);
    head.getStyleClass().add("program");
    getChildren().add(head);
    pages.forEach((page, name) -> getChildren().add(button(page, name, onGo)));
    foot.getStyleClass().add("foot");
    getChildren().add(foot);
  }

  /** Large names stand closer together. */
  private void large(boolean now) {
    getStyleClass().remove("large");
    if (now) {
      getStyleClass().add("large");
    }
  }

  private ToggleButton button(P page, String name, Consumer<P> onGo) {
    ToggleButton button = new ToggleButton(name);
    button.setToggleGroup(group);
    button.setMaxWidth(Double.MAX_VALUE);
    button.setOnAction(
        event -> {
          // The bar follows the page, not the click: the page may refuse to open.
          group.selectToggle(names.get(open));
          onGo.accept(page);
        });
    names.put(page, button);
    return button;
  }

  /** Puts something between the names and the foot. */
  void under(Node node) {
    getChildren().add(getChildren().indexOf(foot), node);
  }

  /** Tells which name, or which part under the names, has got the focus. */
  void whenFocused(Consumer<Node> seen) {
    for (Node child : getChildren()) {
      child
          .focusWithinProperty()
          .addListener(
              (o, before, now) -> {
                if (now) {
                  seen.accept(child);
                }
              });
    }
  }

  /** Shows which page is open. */
  public void open(P page) {
    open = page;
    group.selectToggle(names.get(page));
  }

  /** Lines at the foot: the notebook, what is saved, what is sealed. */
  public void foot(List<String> lines) {
    foot.getChildren().setAll(lines.stream().map(PageNames::line).toList());
  }

  private static Label line(String words) {
    Label label = new Label(words);
    label.setWrapText(true);
    label.getStyleClass().add("second");
    return label;
  }
}
