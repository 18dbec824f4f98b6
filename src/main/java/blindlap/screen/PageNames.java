package blindlap.screen;

import blindlap.screen.part.Look;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
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

  private final ToggleGroup group = new ToggleGroup();
  private final Map<P, ToggleButton> names = new LinkedHashMap<>();
  private final VBox foot = new VBox(4);
  private @Nullable P open;

  /**
   * The names.
   *
   * @param program name of the program
   * @param pages pages in order, each with its name
   * @param onGo told which page is asked for; the caller opens it and then calls {@link #open}
   */
  public PageNames(Look look, String program, Map<P, String> pages, Consumer<P> onGo) {
    getStyleClass().add("page-names");
    minWidthProperty().bind(look.px(WIDTH));
    prefWidthProperty().bind(look.px(WIDTH));
    Label head = new Label(program);
    head.getStyleClass().add("program");
    getChildren().add(head);
    pages.forEach((page, name) -> getChildren().add(button(page, name, onGo)));
    foot.getStyleClass().add("foot");
    getChildren().add(foot);
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
