package blindlap.screen.swap;

import blindlap.screen.part.ChoiceRow;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.session.HelperEntry;
import blindlap.wording.SwapWords;
import java.util.List;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/**
 * "Was there a mishap?", asked once a handling has taken longer than planned: a handling that went
 * wrong is not to be counted as one that always takes so long.
 */
final class SwapOverrunView extends VBox {
  private final SwapWork work;
  private final ChoiceRow<Boolean> mishap;
  private final TextField what = Fields.wide(new TextField());
  private final VBox words = new VBox(4);

  SwapOverrunView(Look look, SwapModel model) {
    super(6);
    this.work = model.work();
    mishap =
        new ChoiceRow<>(
            look,
            SwapWords.say("mishap"),
            List.of(
                new ChoiceRow.Option<>(true, SwapWords.say("mishap.yes")),
                new ChoiceRow.Option<>(false, SwapWords.say("mishap.no"))),
            2,
            this::answered);
    Label asked = new Label(SwapWords.say("mishap.what"));
    asked.setLabelFor(what);
    asked.setWrapText(true);
    what.setAccessibleText(SwapWords.say("mishap.what"));
    what.minHeightProperty().bind(look.touch());
    what.focusedProperty().addListener((o, before, now) -> typed(now));
    words.getChildren().setAll(asked, what);
    words.managedProperty().bind(words.visibleProperty());
    getChildren().setAll(mishap, words);
    visibleProperty().bind(work.overrunProperty());
    managedProperty().bind(visibleProperty());
    HelperEntry.Timing kept = work.answered();
    what.setText(kept == null ? "" : kept.words());
    words.setVisible(answer());
  }

  /** A mishap is told in words, which are asked for at once. */
  private void answered(boolean yes) {
    work.mishap(yes, what.getText());
    words.setVisible(yes);
    if (yes) {
      what.requestFocus();
    }
  }

  /** Shows what was answered; true if it was a mishap. */
  private boolean answer() {
    HelperEntry.Timing kept = work.answered();
    @Nullable Boolean yes = kept == null ? null : kept.mishap();
    mishap.show(yes);
    return Boolean.TRUE.equals(yes);
  }

  private void typed(boolean focused) {
    HelperEntry.Timing kept = work.answered();
    if (!focused
        && kept != null
        && kept.declared()
        && !what.getText().strip().equals(kept.words())) {
      work.mishap(true, what.getText());
    }
  }
}
