package blindlap.screen.part;

import java.time.Duration;
import java.util.function.LongSupplier;
import javafx.animation.PauseTransition;
import javafx.scene.control.Button;

/**
 * A button that is held down for a second and then let go, by finger, mouse, Space or Enter: for
 * what is somebody else's to say. It acts when it is let go, so that a key which is still down
 * presses nothing of what comes after it.
 */
public final class HoldButton extends Button {
  /** How long it is held. */
  public static final Duration LONG = Duration.ofSeconds(1);

  private final LongSupplier monotonic;
  private final Runnable held;
  private final Runnable tooShort;
  private final PauseTransition look = new PauseTransition(javafx.util.Duration.millis(50));
  private final String words;
  private long since;
  private long heldFor;

  /**
   * @param words what stands on it
   * @param letGo what stands on it once it was held long enough
   * @param monotonic nanoseconds that only ever grow
   * @param held what is done
   * @param tooShort told when it was pressed but not held
   */
  public HoldButton(
      String words, String letGo, LongSupplier monotonic, Runnable held, Runnable tooShort) {
    super(words);
    this.words = words;
    this.monotonic = monotonic;
    this.held = held;
    this.tooShort = tooShort;
    look.setOnFinished(e -> show(letGo));
  }

  /** The clock alone says how long it was held; the animation only asks it now and then. */
  private void show(String letGo) {
    if (monotonic.getAsLong() - since >= LONG.toNanos()) {
      // Narrower, it would slip away from under the pointer, and its hold would begin anew.
      double wide = getWidth();
      setText(letGo);
      if (prefWidth(-1) < wide) {
        setPrefWidth(wide);
      }
    } else {
      look.playFromStart();
    }
  }

  @Override
  public void arm() {
    if (!isArmed() && !isDisabled()) {
      since = monotonic.getAsLong();
      look.playFromStart();
    }
    super.arm();
  }

  @Override
  public void disarm() {
    if (isArmed()) {
      heldFor = monotonic.getAsLong() - since;
      look.stop();
      setText(words);
      setPrefWidth(USE_COMPUTED_SIZE);
    }
    super.disarm();
  }

  @Override
  public void fire() {
    if (isDisabled()) {
      return;
    }
    // A mouse is let go before its button is disarmed, a key after it.
    long lasted = isArmed() ? monotonic.getAsLong() - since : heldFor;
    heldFor = 0;
    if (lasted >= LONG.toNanos()) {
      held.run();
    } else {
      tooShort.run();
    }
  }
}
