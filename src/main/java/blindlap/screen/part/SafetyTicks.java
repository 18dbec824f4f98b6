package blindlap.screen.part;

import blindlap.wording.day.SafetyRow;
import blindlap.wording.day.Words;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;

/** The ticks of a safety list, each with its letter; where they stand is their page's. */
public final class SafetyTicks {
  private static final Words WORDS = Words.of("swap");

  private final Look look;
  private final double high;
  private final BiConsumer<String, Boolean> confirm;
  private final Runnable next;
  private final Map<String, CheckBox> ticks = new LinkedHashMap<>();
  private final Map<String, String> keys = new LinkedHashMap<>();

  /**
   * @param high height of a tick at 100 %, at least
   * @param confirm told of each item that is confirmed, or not
   * @param next goes on to what is needed next
   */
  public SafetyTicks(Look look, double high, BiConsumer<String, Boolean> confirm, Runnable next) {
    this.look = look;
    this.high = high;
    this.confirm = confirm;
    this.next = next;
  }

  /** One more item: its tick, and the letter that sets it. */
  public HBox add(SafetyRow row) {
    CheckBox box = Fields.wide(new CheckBox(row.words()));
    box.setWrapText(true);
    box.setAccessibleText(WORDS.say("tick", row.words(), row.letter()));
    box.minHeightProperty()
        .bind(
            Bindings.createDoubleBinding(
                () -> Math.max(look.touch(high).get(), box.prefHeight(box.getWidth())),
                box.widthProperty(),
                box.fontProperty(),
                look.textScaleProperty()));
    box.setMinWidth(0);
    box.setOnAction(e -> confirm.accept(row.key(), box.isSelected()));
    box.addEventHandler(KeyEvent.KEY_PRESSED, e -> enter(e, box));
    ticks.put(row.key(), box);
    keys.put(row.letter(), row.key());
    Label letter = new Label(row.letter());
    letter.getStyleClass().addAll("key", "second");
    letter.setMinWidth(Region.USE_PREF_SIZE);
    HBox.setHgrow(box, Priority.ALWAYS);
    HBox line = new HBox(2, box, letter);
    line.setAlignment(Pos.CENTER_LEFT);
    line.getStyleClass().add("swap-row");
    return line;
  }

  /** Enter on a tick sets it, and goes on. */
  private void enter(KeyEvent event, CheckBox box) {
    if (event.getCode() == KeyCode.ENTER) {
      if (!box.isSelected()) {
        box.fire();
      }
      next.run();
      event.consume();
    }
  }

  /** Sets or takes back the tick that a letter stands for; false if it stands for none. */
  public boolean key(String letter) {
    CheckBox box = ticks.get(keys.getOrDefault(letter, ""));
    if (box == null) {
      return false;
    }
    box.fire();
    WholeInView.show(box);
    return true;
  }

  /** Shows what is confirmed. Nobody is told. */
  public void show(List<SafetyRow> rows) {
    for (SafetyRow row : rows) {
      CheckBox box = ticks.get(row.key());
      if (box != null) {
        box.setSelected(row.yes());
      }
    }
  }

  /** The first tick that is still open; empty if none is. */
  public Optional<Node> open() {
    return ticks.values().stream()
        .filter(box -> !box.isSelected())
        .map(Node.class::cast)
        .findFirst();
  }
}
