package blindlap.screen.swap;

import blindlap.desk.LapWaits;
import blindlap.screen.part.ChoiceRow;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.PhonesDoor;
import blindlap.wording.SwapWords;
import java.util.LinkedHashMap;
import java.util.Map;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** Below the columns, always in view: what is waited for, and the gate. */
final class SwapFootView {
  private static final double GATE = 250;
  private static final double SIDE = 128;

  /** Width of a box where there are two setups, and where there are more. */
  private static final double TWO = 158;

  private static final double FEW = 112;

  /** The same for more than four, which are levels: numbers, with room beside them for words. */
  private static final double MANY = 76;

  private static final int MANY_FROM = 5;

  /** Characters of a name that stand on one line. */
  private static final int SHORT = 14;

  private final Look look;
  private final SwapWork work;
  private final Label waits = new Label();
  private final Label trouble = new Label();
  private final SwapChoiceView<Integer> fitted;
  private final ChoiceRow<Integer> wide;
  private final Button go = new Button();

  SwapFootView(Look look, SwapWork work, SwapSheet now) {
    this.look = look;
    this.work = work;
    Map<Integer, String> setups = setups(now);
    wide =
        new ChoiceRow<>(
            look,
            SwapWords.say("fitted"),
            setups.entrySet().stream()
                .map(each -> new ChoiceRow.Option<>(each.getKey(), each.getValue()))
                .toList(),
            2,
            work::fitted);
    double width = width(now.setups().size());
    fitted =
        new SwapChoiceView<>(
            look,
            SwapWords.say("fitted.brief"),
            SwapWords.say("fitted"),
            setups,
            width,
            work::fitted);
    fitted.getStyleClass().add("swap-fitted");
    if (now.setups().stream().anyMatch(name -> name.length() > SHORT)) {
      fitted.getStyleClass().add("long");
    }
    words();
    go.setText(now.stint() == 0 ? SwapWords.say("go.warm.up") : SwapWords.say("go", now.called()));
    go.getStyleClass().add("next");
    Fields.holdsWords(go, look.touch());
    go.minWidthProperty().bind(look.px(GATE));
    go.setOnAction(e -> work.handOver());
    show(now);
    waits(work.waitsProperty().get());
  }

  private static Map<Integer, String> setups(SwapSheet now) {
    Map<Integer, String> setups = new LinkedHashMap<>();
    for (int i = 0; i < now.setups().size(); i++) {
      setups.put(i, now.setups().get(i));
    }
    return setups;
  }

  private void words() {
    waits.getStyleClass().add("note");
    waits.setWrapText(true);
    waits.setMinWidth(0);
    waits.prefWidthProperty().bind(look.px(SIDE));
    waits.setMinHeight(Region.USE_PREF_SIZE);
    waits.setMaxWidth(Double.MAX_VALUE);
    waits.setAlignment(Pos.CENTER_RIGHT);
    waits.setTextAlignment(javafx.scene.text.TextAlignment.RIGHT);
    HBox.setHgrow(waits, Priority.ALWAYS);
    trouble.getStyleClass().addAll("strong", "note");
    trouble.setWrapText(true);
    trouble.setMinHeight(Region.USE_PREF_SIZE);
    trouble.setMaxWidth(Double.MAX_VALUE);
    trouble.textProperty().bind(work.troubleProperty());
    trouble.managedProperty().bind(trouble.textProperty().isNotEmpty());
  }

  /** Shows what was really fitted. */
  void show(SwapSheet now) {
    fitted.show(now.fitted());
    wide.show(now.fitted());
  }

  /** The same choice where there is room below but not beside. */
  ChoiceRow<Integer> wide() {
    return wide;
  }

  private static double width(int setups) {
    return setups >= MANY_FROM ? MANY : setups > 2 ? FEW : TWO;
  }

  /** Shows what is waited for. */
  void waits(LapWaits now) {
    waits.setText(now.brief());
    waits.setAccessibleText(now.whole());
    go.setDisable(!now.none());
  }

  /** A button at the left of the row. */
  Button side(String words, Runnable action) {
    Button button = new Button(words);
    button.setWrapText(true);
    button.minHeightProperty().bind(look.touch());
    button.minWidthProperty().bind(look.px(SIDE));
    button.prefWidthProperty().bind(look.px(SIDE));
    button.getStyleClass().add("swap-side");
    button.setOnAction(e -> action.run());
    return button;
  }

  /**
   * Buttons side by side where the page scrolls; the band has no room for the way to the phones
   * then.
   *
   * @param phones null where no phone comes
   */
  FlowPane beside(@Nullable PhonesDoor phones, Button... buttons) {
    FlowPane row = new FlowPane(16, 12, buttons);
    if (phones != null) {
      row.getChildren().add(phones.button(look));
    }
    return row;
  }

  /** What was really fitted. */
  SwapChoiceView<Integer> fitted() {
    return fitted;
  }

  /** The gate. */
  Button gate() {
    return go;
  }

  /**
   * The row, and above it why something was refused.
   *
   * @param left what stands at its left
   */
  VBox row(Region... left) {
    HBox row = new HBox(16, left);
    row.getChildren().addAll(waits, go);
    row.setAlignment(Pos.CENTER_LEFT);
    Region line = new Region();
    line.getStyleClass().add("strong-rule");
    return Fields.wide(new VBox(4, trouble, line, row));
  }
}
