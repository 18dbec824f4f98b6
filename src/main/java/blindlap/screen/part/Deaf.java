package blindlap.screen.part;

import java.time.Duration;
import java.util.function.LongSupplier;
import javafx.event.ActionEvent;
import javafx.scene.Node;
import javafx.scene.control.ButtonBase;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;

/**
 * A page hears nothing for a moment after it has changed: whoever pressed twice, or whose key
 * bounced, must not press what was not there when the finger came down.
 */
public final class Deaf {
  /** How long nothing is heard. */
  public static final Duration FOR = Duration.ofMillis(800);

  private final LongSupplier monotonic;
  private boolean begun;
  private long since;

  /**
   * @param monotonic nanoseconds that only ever grow
   */
  public Deaf(LongSupplier monotonic) {
    this.monotonic = monotonic;
  }

  /** The page has just changed. */
  public void begin() {
    begun = true;
    since = monotonic.getAsLong();
  }

  /** Something was done that only a finger which has moved can do. */
  public void end() {
    begun = false;
  }

  /** True while nothing is heard. */
  public boolean now() {
    begun = begun && monotonic.getAsLong() - since < FOR.toNanos();
    return begun;
  }

  /** Does what a press asks for, unless nothing is heard. */
  public void hear(Runnable action) {
    if (!now()) {
      action.run();
    }
  }

  /** Begins after each press in a part of a page whose questions open where they were asked. */
  public void after(Node part) {
    part.addEventHandler(
        ActionEvent.ACTION,
        e -> {
          if (e.getTarget() instanceof ButtonBase) {
            begin();
          }
        });
  }

  /** Keeps presses from a part of a page while nothing is heard. */
  public void guard(Node part) {
    part.addEventFilter(
        MouseEvent.MOUSE_PRESSED,
        e -> {
          if (now()) {
            e.consume();
          }
        });
    part.addEventFilter(
        KeyEvent.KEY_PRESSED,
        e -> {
          if ((e.getCode() == KeyCode.SPACE || e.getCode() == KeyCode.ENTER) && now()) {
            e.consume();
          }
        });
  }
}
