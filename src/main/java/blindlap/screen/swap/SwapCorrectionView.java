package blindlap.screen.swap;

import blindlap.screen.part.ChoiceRow;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.wording.SwapWords;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.WeakChangeListener;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** "A wrong setup was on": in which stint, what was really on, how it came about. */
final class SwapCorrectionView extends VBox {
  private final Look look;
  private final SwapLater later;
  private final TextField words = Fields.wide(new TextField());

  @SuppressWarnings("FieldCanBeLocal") // held, for the model holds it weakly
  private final ChangeListener<List<SwapLater.Stint>> changed = (o, before, now) -> show();

  private int stint = -1;
  private int setup = -1;
  private @Nullable Button record;

  SwapCorrectionView(Look look, SwapLater later) {
    super(12);
    this.look = look;
    this.later = later;
    words.setAccessibleText(SwapWords.say("later.wrong.words"));
    words.minHeightProperty().bind(look.touch());
    later.stintsProperty().addListener(new WeakChangeListener<>(changed));
    show();
  }

  private void show() {
    stint = -1;
    setup = -1;
    words.clear();
    List<ChoiceRow.Option<Integer>> stints = new ArrayList<>();
    later
        .stintsProperty()
        .get()
        .forEach(each -> stints.add(new ChoiceRow.Option<>(each.stint(), each.words())));
    List<ChoiceRow.Option<Integer>> setups = new ArrayList<>();
    List<String> names = later.setups();
    for (int i = 0; i < names.size(); i++) {
      setups.add(new ChoiceRow.Option<>(i, names.get(i)));
    }
    Button go = new Button(SwapWords.say("later.wrong.record"));
    go.setMinWidth(USE_PREF_SIZE);
    go.minHeightProperty().bind(look.touch());
    go.setDisable(true);
    go.setOnAction(e -> later.correct(stint, setup, words.getText()));
    record = go;
    Label asked = new Label(SwapWords.say("later.wrong.words"));
    asked.setLabelFor(words);
    getChildren()
        .setAll(
            new ChoiceRow<>(look, SwapWords.say("later.wrong.stint"), stints, 2, this::stint),
            new ChoiceRow<>(look, SwapWords.say("later.wrong.on"), setups, 2, this::setup),
            asked,
            recording(go));
  }

  /** Side by side, so that a choice of several stints and setups leaves the button in view. */
  private Pane recording(Button go) {
    HBox.setHgrow(words, Priority.ALWAYS);
    return look.stacked() ? new VBox(12, words, go) : new HBox(12, words, go);
  }

  private void stint(int chosen) {
    stint = chosen;
    ready();
  }

  private void setup(int chosen) {
    setup = chosen;
    ready();
  }

  private void ready() {
    Button go = record;
    if (go != null) {
      go.setDisable(stint < 0 || setup < 0);
    }
  }
}
