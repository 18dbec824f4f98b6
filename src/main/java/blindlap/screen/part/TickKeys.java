package blindlap.screen.part;

import java.util.function.IntPredicate;
import java.util.function.Predicate;
import javafx.scene.Node;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;

/**
 * One key for each tick: letters for the safety list, numbers for the steps. While a field is being
 * typed in they need Alt.
 */
public final class TickKeys {
  private final Predicate<String> letter;
  private final IntPredicate step;

  /**
   * @param letter does what a letter stands for; false if it stands for nothing
   * @param step ticks off a step, from 0; false if there is none
   */
  public TickKeys(Predicate<String> letter, IntPredicate step) {
    this.letter = letter;
    this.step = step;
  }

  /** Listens to the keys of a part of the page. */
  public void listen(Node part) {
    part.addEventFilter(
        KeyEvent.KEY_PRESSED,
        e -> {
          boolean typing = e.getTarget() instanceof TextInputControl;
          if (e.isControlDown() || e.isMetaDown() || typing != e.isAltDown()) {
            return;
          }
          if (does(e.getCode())) {
            e.consume();
          }
        });
  }

  private boolean does(KeyCode code) {
    if (code.isLetterKey()) {
      return letter.test(code.getName());
    }
    int digit = code.isDigitKey() ? number(code.getName()) : -1;
    return digit > 0 && step.test(digit - 1);
  }

  /** "Digit 4", "4" or "Numpad 4". */
  private static int number(String name) {
    char last = name.charAt(name.length() - 1);
    return Character.digit(last, 10);
  }
}
