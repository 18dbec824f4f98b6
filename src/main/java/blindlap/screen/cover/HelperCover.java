package blindlap.screen.cover;

import blindlap.desk.DayPin;
import blindlap.desk.DeskFault;
import blindlap.fault.Problem;
import blindlap.wording.day.Problems;
import java.time.Clock;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;

/**
 * Covers pages that only the helper may see, before there is a phrase to open them with: at one
 * key, or when nobody has touched them for as long as on the Swap page. A PIN that the helper
 * chooses brings them back.
 */
public final class HelperCover {
  /** How the pages stand. */
  public enum State {
    /** They are nobody's. */
    OFF,
    OPEN,
    BLANK
  }

  private final Idling idling;
  private final Function<String, DayPin> pins;
  private final Runnable usedUp;
  private final ReadOnlyObjectWrapper<State> state = new ReadOnlyObjectWrapper<>(State.OFF);
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper idle = new ReadOnlyStringWrapper("");
  private @Nullable DayPin pin;

  /**
   * @param pins makes a PIN of four digits
   * @param usedUp run when too many wrong PINs were tried
   */
  public HelperCover(Clock clock, Function<String, DayPin> pins, Runnable usedUp) {
    this.idling = new Idling(clock);
    this.pins = pins;
    this.usedUp = usedUp;
  }

  /** How the pages stand. */
  public ReadOnlyObjectProperty<State> stateProperty() {
    return state.getReadOnlyProperty();
  }

  /** One sentence if a PIN was refused; else empty. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** When the pages close themselves, such as "closes itself in 1:52"; empty unless open. */
  public ReadOnlyStringProperty idleProperty() {
    return idle.getReadOnlyProperty();
  }

  /** The helper takes the pages over with a PIN; false if it is none. */
  public boolean begin(String digits) {
    if (!DayPin.valid(digits)) {
      refuse(Problem.of(DeskFault.PIN_FORM, ""));
      return false;
    }
    pin = pins.apply(digits);
    open();
    return true;
  }

  private void open() {
    trouble.set("");
    touch();
    state.set(State.OPEN);
    tick();
  }

  /** Brings blank pages back. */
  public void reopen(String digits) {
    DayPin kept = pin;
    if (kept == null || state.get() != State.BLANK) {
      return;
    }
    switch (kept.attempt(digits)) {
      case RIGHT -> open();
      case WRONG -> refuse(Problem.of(DeskFault.PIN_WRONG, "", kept.left()));
      case USED_UP -> usedUp.run();
    }
  }

  private void refuse(Problem problem) {
    trouble.set(Problems.sentence(problem));
  }

  /** Blanks the pages at once. */
  public void hide() {
    if (state.get() == State.OPEN) {
      trouble.set("");
      idle.set("");
      state.set(State.BLANK);
    }
  }

  /** The helper is done. */
  public void end() {
    pin = null;
    trouble.set("");
    idle.set("");
    state.set(State.OFF);
  }

  /** Someone is at the page. */
  public void touch() {
    idling.touch();
  }

  /** Once a second. */
  public void tick() {
    if (state.get() != State.OPEN) {
      return;
    }
    if (idling.over()) {
      hide();
    } else {
      idle.set(idling.words());
    }
  }
}
