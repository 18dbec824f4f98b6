package blindlap.screen.swap;

import blindlap.screen.part.Look;
import blindlap.session.HelperEntry;
import blindlap.wording.SwapWords;
import java.util.LinkedHashMap;
import java.util.Map;
import javafx.scene.layout.StackPane;

/**
 * "Was there a mishap?", asked once a handling has taken longer than planned: a handling that went
 * wrong is not to be counted as one that always takes so long. A mishap is told in words, on the
 * sheet.
 */
final class SwapOverrunView extends StackPane {
  private final SwapChoiceView<Boolean> mishap;

  /**
   * @param tell opens the sheet where a mishap is told
   */
  SwapOverrunView(Look look, SwapWork work, Runnable tell) {
    Map<Boolean, String> options = new LinkedHashMap<>();
    options.put(true, SwapWords.say("mishap.yes"));
    options.put(false, SwapWords.say("mishap.no"));
    mishap =
        new SwapChoiceView<>(
            look,
            SwapWords.say("mishap.brief"),
            SwapWords.say("mishap"),
            options,
            62,
            yes -> {
              HelperEntry.Timing kept = work.answered();
              work.mishap(yes, kept == null ? "" : kept.words());
              if (yes) {
                tell.run();
              }
            });
    getChildren().setAll(mishap);
    HelperEntry.Timing kept = work.answered();
    mishap.show(kept == null ? null : kept.mishap());
  }

  /** The question, while it is open. */
  SwapChoiceView<Boolean> question() {
    return mishap;
  }
}
