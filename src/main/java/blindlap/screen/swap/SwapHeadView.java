package blindlap.screen.swap;

import blindlap.plot.LoneMark;
import blindlap.plot.SetupMark;
import blindlap.plot.surface.Spoken;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.PlotView;
import blindlap.wording.SwapWords;
import java.util.List;
import java.util.function.Supplier;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** What to fit in big type, and at the right the countdown, which nothing ever covers. */
final class SwapHeadView {
  private static final double MARK = 64;
  private static final double FACTS = 270;

  private final Look look;
  private final SwapModel model;
  private final Label left = new Label();
  private final ProgressBar bar = new ProgressBar(0);
  private final Label call = new Label();
  private final Label line = new Label();
  private final Label stint = new Label();
  private final VBox facts = new VBox();
  private @Nullable Node begin;
  private boolean offered;

  SwapHeadView(Look look, SwapModel model) {
    this.look = look;
    this.model = model;
    left.getStyleClass().add("swap-clock");
    left.setMinWidth(Label.USE_PREF_SIZE);
    bar.setMaxWidth(Double.MAX_VALUE);
    call.setWrapText(true);
    call.getStyleClass().add("note");
    line.setWrapText(true);
    line.setMinHeight(Label.USE_PREF_SIZE);
    stint.getStyleClass().add("strong");
    stint.setWrapText(true);
    // Here the focus rests while nothing is needed: no key presses words.
    facts.setFocusTraversable(true);
    facts.setAlignment(Pos.CENTER_LEFT);
    facts.getStyleClass().add("swap-facts");
  }

  /** Shows the time. */
  void time(SwapClock.Time now) {
    left.setText(now.left());
    left.setManaged(!now.left().isEmpty());
    bar.setProgress(now.share());
    bar.setVisible(!now.left().isEmpty());
    bar.setManaged(bar.isVisible());
    call.setText(model.words().call());
    line.setText(now.line());
  }

  /** Where the focus rests. */
  Node rest() {
    offered = false;
    return facts;
  }

  /**
   * Where Tab leads from there: to the beginning, once, wherever it stands; to the gate once it is
   * open, past all that is done.
   *
   * @param gate the gate; null while something is needed first
   */
  void leadsTo(Supplier<@Nullable Node> gate) {
    facts.addEventHandler(
        KeyEvent.KEY_PRESSED,
        e -> {
          if (e.getCode() != KeyCode.TAB || e.isShiftDown()) {
            return;
          }
          Node there = begin != null && !offered ? begin : gate.get();
          offered = true;
          if (there != null && !there.isDisabled()) {
            there.requestFocus();
            e.consume();
          }
        });
  }

  /** Which stint, real or dummy, when it is ridden. */
  VBox facts(SwapSheet now) {
    stint.setText(now.head());
    Label swap = new Label(now.brief());
    swap.setWrapText(true);
    swap.setMinHeight(Label.USE_PREF_SIZE);
    facts.getChildren().setAll(stint, swap, line);
    facts.setAccessibleText(now.head() + ". " + now.swap());
    for (var width : List.of(facts.minWidthProperty(), facts.prefWidthProperty())) {
      width.bind(look.px(look.stacked() ? 0 : FACTS));
    }
    return facts;
  }

  /** The name with its mark, and the facts beside it. */
  HBox what(SwapSheet now) {
    SwapNameView name = new SwapNameView(look, now.name());
    facts(now);
    HBox.setHgrow(facts, Priority.ALWAYS);
    HBox what = new HBox(22, name, facts);
    if (now.setup() != SwapSheet.NO_MARK) {
      what.getChildren().add(1, mark(now));
    }
    what.setAlignment(Pos.CENTER_LEFT);
    what.setMinWidth(0);
    return what;
  }

  private PlotView mark(SwapSheet now) {
    PlotView mark =
        new PlotView(look, LoneMark.of(SetupMark.of(now.setup()), new Spoken(now.name(), "")));
    mark.minWidthProperty().bind(look.px(MARK));
    mark.prefWidthProperty().bind(look.px(MARK));
    mark.maxWidthProperty().bind(look.px(MARK));
    mark.maxHeightProperty().bind(look.px(MARK));
    mark.setAccessibleText("");
    return mark;
  }

  /**
   * The countdown, and beside it the beginning, the question after a mishap, or what it counts.
   *
   * @param beside the question; null while it is not asked
   */
  HBox countdown(SwapSheet now, @Nullable Node beside) {
    Node right;
    Button first = now.begun() ? null : beginning();
    begin = first;
    if (first != null) {
      call.setMinHeight(Label.USE_PREF_SIZE);
      right = new VBox(4, first, call);
    } else if (beside != null) {
      right = beside;
    } else {
      call.setMinHeight(Label.USE_PREF_SIZE);
      right = new VBox(6, bar, call);
    }
    if (right instanceof VBox box) {
      box.setAlignment(Pos.CENTER_LEFT);
      box.setFillWidth(true);
    }
    HBox.setHgrow(right, Priority.ALWAYS);
    HBox countdown = new HBox(24, left, right);
    countdown.setAlignment(Pos.CENTER_LEFT);
    countdown.getStyleClass().add("swap-countdown");
    return countdown;
  }

  private Button beginning() {
    Button button = Fields.wide(new Button(SwapWords.say("begin")));
    button.getStyleClass().add("next");
    button.setWrapText(true);
    button.minHeightProperty().bind(look.touch(60));
    button.setOnAction(e -> model.work().begin());
    return button;
  }
}
