package blindlap.screen.swap;

import blindlap.screen.part.Deaf;
import blindlap.screen.part.Look;
import blindlap.screen.part.PhonesDoor;
import blindlap.wording.SwapWords;
import java.util.function.LongSupplier;
import javafx.beans.InvalidationListener;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import org.jspecify.annotations.Nullable;

/**
 * After the hand-over: what to say, and one button. The same pixels whatever is fitted; nothing
 * here opens anything, and only the button takes the focus.
 */
final class SwapSafeView extends VBox {
  private static final double EDGE = 28;
  private static final double LOWER_EDGE = 46;
  private static final double MOST = 236;
  private static final String FACE = "Source Sans 3 Bold";

  private final Look look;
  private final Label code = new Label();
  private final Button back = new Button(SwapWords.say("safe.back"));

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach this view
  private final InvalidationListener watch;

  /**
   * @param monotonic nanoseconds that only ever grow
   * @param words such as "safe, 883"
   * @param returned the bike is back
   * @param ride leads to the rider's page
   * @param phones null where no phone comes
   */
  SwapSafeView(
      Look look,
      LongSupplier monotonic,
      String words,
      Runnable returned,
      Runnable ride,
      @Nullable PhonesDoor phones) {
    this.look = look;
    getStyleClass().add("helper");
    Label say = new Label(SwapWords.say("safe.say"));
    say.getStyleClass().add("safe-say");
    code.setText(words);
    code.setMinWidth(0);
    code.getStyleClass().add("safe-code");
    back.getStyleClass().add("safe-back");
    back.minHeightProperty().bind(look.touch(98));
    back.minWidthProperty().bind(look.px(336));
    Deaf deaf = new Deaf(monotonic);
    deaf.begin(); // the key that handed the bike over must not say that it is back
    deaf.guard(this);
    back.setOnAction(e -> deaf.hear(returned));
    Region above = grown();
    Region below = grown();
    HBox place = new HBox(back);
    // With large text the button that handed over reaches to the middle.
    place.setAlignment(look.stacked() ? Pos.CENTER_LEFT : Pos.CENTER);
    VBox page = new VBox(above, say, code, below, place);
    page.setAlignment(Pos.CENTER);
    page.setPadding(new Insets(24, 24, 44, 24));
    getChildren().setAll(framed(page), edge(deaf, ride, phones));
    widthProperty().addListener(o -> fit());
    heightProperty().addListener(o -> fit());
    watch = look.watch(this::fit);
    fit();
  }

  private static VBox framed(VBox page) {
    StackPane paper = new StackPane(page);
    paper.getStyleClass().addAll("helper-page", "safe");
    VBox.setVgrow(paper, javafx.scene.layout.Priority.ALWAYS);
    VBox frame = new VBox(paper);
    frame.setPadding(new Insets(EDGE, EDGE, 0, EDGE));
    VBox.setVgrow(frame, javafx.scene.layout.Priority.ALWAYS);
    return frame;
  }

  private static Region grown() {
    Region space = new Region();
    VBox.setVgrow(space, javafx.scene.layout.Priority.ALWAYS);
    return space;
  }

  /** In the edge, for a hand with a mouse: one machine serves both, and the rider has to start. */
  private static HBox edge(Deaf deaf, Runnable ride, @Nullable PhonesDoor phones) {
    Region between = new Region();
    HBox.setHgrow(between, javafx.scene.layout.Priority.ALWAYS);
    HBox edge = new HBox(between, way(SwapWords.say("safe.ride"), () -> deaf.hear(ride)));
    if (phones != null) {
      Label state = way("", () -> deaf.hear(phones.opens()));
      state.textProperty().bind(phones.state());
      edge.getChildren().add(0, state);
    }
    edge.setPadding(new Insets(0, EDGE, 0, EDGE));
    edge.setMinHeight(LOWER_EDGE);
    edge.setMaxHeight(LOWER_EDGE);
    return edge;
  }

  private static Label way(String words, Runnable leads) {
    Label way = new Label(words);
    way.getStyleClass().add("safe-ride");
    way.setMinHeight(LOWER_EDGE);
    way.setOnMouseClicked(e -> leads.run());
    return way;
  }

  private void fit() {
    double wide = getWidth() <= 0 ? 1280 : getWidth();
    double high = getHeight() <= 0 ? 800 : getHeight();
    Text measured = new Text(code.getText());
    measured.setFont(new Font(FACE, MOST));
    double room = wide - 2 * EDGE - 80;
    double share = Math.min(1, room / measured.getLayoutBounds().getWidth());
    double size = Math.min(MOST * share, high * 0.3);
    code.setFont(new Font(FACE, size));
  }

  /** The only thing that takes the focus. */
  void focus() {
    back.requestFocus();
  }
}
