package blindlap.screen.swap;

import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.WholeInView;
import blindlap.wording.SwapWords;
import java.util.function.Supplier;
import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/**
 * What is said later than at the stint itself: buttons, and below them what the one that was
 * pressed last opens. What was recorded stands under the buttons, where what comes next begins; why
 * something was not, below the button that was pressed.
 */
final class SwapLaterView extends VBox {
  /** The mark of the focus lies so far below the last button. */
  private static final double MARK = 10;

  private final Look look;
  private final VBox opened = new VBox(12);

  SwapLaterView(Look look, SwapModel model) {
    super(12);
    this.look = look;
    SwapLater later = model.later();
    Button wrong = button("later.wrong", () -> new SwapCorrectionView(look, later));
    wrong.disableProperty().bind(later.stintsProperty().map(java.util.List::isEmpty));
    Button catchUp = button("later.catch.up", () -> new SwapCatchUpView(look, later));
    catchUp.visibleProperty().bind(later.paperProperty().isNotNull());
    catchUp.managedProperty().bind(catchUp.visibleProperty());
    Button over = Fields.wide(new Button(SwapWords.say("later.over")));
    over.minHeightProperty().bind(look.touch());
    over.setWrapText(true);
    over.visibleProperty().bind(later.closableProperty());
    over.managedProperty().bind(over.visibleProperty());
    over.setOnAction(e -> later.dayOver());
    Pane all = look.stacked() ? new VBox(12) : new HBox(12);
    all.getChildren().setAll(wrong, catchUp, over);
    all.getChildren().forEach(each -> HBox.setHgrow(each, Priority.ALWAYS));
    getChildren().setAll(all, said(later), opened, refused(later));
  }

  private Button button(String key, Supplier<Node> view) {
    Button button = Fields.wide(new Button(SwapWords.say(key)));
    button.minHeightProperty().bind(look.touch());
    button.setWrapText(true);
    button.setOnAction(
        e -> {
          opened.getChildren().setAll(view.get());
          opened.setPadding(new Insets(0, 0, MARK, 0));
          WholeInView.show(opened);
        });
    return button;
  }

  private static Node said(SwapLater later) {
    Label said = new Label();
    said.getStyleClass().add("strong");
    said.setWrapText(true);
    said.textProperty().bind(later.saidProperty());
    said.managedProperty().bind(said.textProperty().isNotEmpty());
    return said;
  }

  private static Node refused(SwapLater later) {
    Label trouble = new Label();
    trouble.getStyleClass().addAll("strong", "waits");
    trouble.setWrapText(true);
    trouble.setMinHeight(USE_PREF_SIZE);
    trouble.textProperty().bind(later.troubleProperty());
    trouble.managedProperty().bind(trouble.textProperty().isNotEmpty());
    trouble
        .textProperty()
        .addListener(
            (o, before, now) -> {
              if (!now.isEmpty()) {
                WholeInView.show(trouble);
              }
            });
    return trouble;
  }
}
