package blindlap.screen.swap;

import blindlap.screen.part.Caution;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.WholeInView;
import blindlap.wording.SwapWords;
import blindlap.wording.day.Words;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** The safety list, the same for real and dummy swaps, and whether the rider is fit to go on. */
final class SwapSafetyView extends VBox {
  private static final double ROW = 64;
  private static final double LOW = 48;

  private final Look look;
  private final SwapWork work;
  private final Runnable next;
  private final Map<String, CheckBox> ticks = new LinkedHashMap<>();
  private final Map<String, String> keys = new LinkedHashMap<>();
  private final @Nullable SwapChoiceView<Boolean> fit;

  /**
   * @param next goes on to what is needed next
   */
  SwapSafetyView(Look look, SwapWork work, SwapSheet now, Runnable next) {
    super(6);
    this.look = look;
    this.work = work;
    this.next = next;
    GridPane grid = new GridPane();
    grid.setHgap(14);
    for (int i = 0; i < 2; i++) {
      ColumnConstraints half = new ColumnConstraints();
      half.setPercentWidth(50);
      grid.getColumnConstraints().add(half);
    }
    int at = 0;
    for (SwapSheet.Check check : now.confirmed()) {
      grid.add(tick(check), at % 2, at / 2);
      at++;
    }
    fit = now.fitAsked() ? fit() : null;
    if (fit != null) {
      grid.add(row(fit), at % 2, at / 2);
    }
    getChildren()
        .setAll(
            new SwapHeadingView(SwapWords.say("safe")),
            grid,
            new Caution(SwapWords.say("caution"), Words.of("cautions").say("short")),
            new Caution(SwapWords.say("caution"), Words.of("cautions").say("emergency")));
    show(now);
  }

  private Region row(Region part) {
    part.prefHeightProperty().bind(look.touch(ROW));
    part.getStyleClass().add("swap-row");
    return part;
  }

  private Region tick(SwapSheet.Check check) {
    CheckBox box = Fields.wide(new CheckBox(check.words()));
    box.setWrapText(true);
    box.setAccessibleText(SwapWords.say("tick", check.words(), check.letter()));
    box.minHeightProperty()
        .bind(
            Bindings.createDoubleBinding(
                () -> Math.max(look.touch(LOW).get(), box.prefHeight(box.getWidth())),
                box.widthProperty(),
                box.fontProperty(),
                look.textScaleProperty()));
    box.setMinWidth(0);
    box.setOnAction(e -> work.confirm(check.key(), box.isSelected()));
    box.addEventHandler(
        KeyEvent.KEY_PRESSED,
        e -> {
          if (e.getCode() == KeyCode.ENTER) {
            tick(box);
            e.consume();
          }
        });
    ticks.put(check.key(), box);
    keys.put(check.letter(), check.key());
    Label letter = new Label(check.letter());
    letter.getStyleClass().add("key");
    letter.setMinWidth(USE_PREF_SIZE);
    HBox.setHgrow(box, Priority.ALWAYS);
    HBox line = new HBox(2, box, letter);
    line.setAlignment(Pos.CENTER_LEFT);
    return row(line);
  }

  /** Enter on a tick sets it, and goes on. */
  private void tick(CheckBox box) {
    if (!box.isSelected()) {
      box.fire();
    }
    next.run();
  }

  private SwapChoiceView<Boolean> fit() {
    Map<Boolean, String> options = new LinkedHashMap<>();
    options.put(true, SwapWords.say("rider.fit.yes"));
    options.put(false, SwapWords.say("rider.fit.no"));
    return new SwapChoiceView<>(
        look,
        SwapWords.say("rider.fit.brief"),
        SwapWords.say("rider.fit"),
        options,
        52,
        yes -> {
          work.riderFit(yes);
          next.run();
        });
  }

  /** Does what a letter stands for; false if it stands for nothing. */
  boolean key(String letter) {
    CheckBox box = ticks.get(keys.getOrDefault(letter, ""));
    if (box != null) {
      box.fire();
      WholeInView.show(box);
      return true;
    }
    boolean yes = letter.equals(SwapWords.say("key.fit"));
    if (fit != null && (yes || letter.equals(SwapWords.say("key.unfit")))) {
      work.riderFit(yes);
      WholeInView.show(fit);
      return true;
    }
    return false;
  }

  /** Shows what is confirmed. */
  void show(SwapSheet now) {
    for (SwapSheet.Check check : now.confirmed()) {
      CheckBox box = ticks.get(check.key());
      if (box != null) {
        box.setSelected(check.yes());
      }
    }
    if (fit != null) {
      fit.show(now.riderFit());
    }
  }

  /** The first tick or answer that is still open; empty if none is. */
  Optional<Node> open() {
    return ticks.values().stream()
        .filter(box -> !box.isSelected())
        .map(Node.class::cast)
        .findFirst()
        .or(
            () ->
                fit != null && fit.open()
                    ? Optional.<Node>of(fit.first())
                    : Optional.<Node>empty());
  }
}
