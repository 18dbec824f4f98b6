package blindlap.screen.swap;

import blindlap.desk.LapWaits;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;

/** What the page shows of the stint in hand. */
public abstract class SwapShown {
  final ReadOnlyObjectWrapper<@Nullable SwapSheet> sheet = new ReadOnlyObjectWrapper<>();
  final ReadOnlyObjectWrapper<LapWaits> waits = new ReadOnlyObjectWrapper<>(LapWaits.NONE);
  final ReadOnlyStringWrapper saved = new ReadOnlyStringWrapper("");
  final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  final ReadOnlyBooleanWrapper overrun = new ReadOnlyBooleanWrapper();

  SwapShown() {}

  /** The stint in hand; null while the page is closed or all is done. */
  public ReadOnlyObjectProperty<@Nullable SwapSheet> sheetProperty() {
    return sheet.getReadOnlyProperty();
  }

  /** What the lap still waits for. */
  public ReadOnlyObjectProperty<LapWaits> waitsProperty() {
    return waits.getReadOnlyProperty();
  }

  /** "Saved 11:44:07", once the disk has what was entered until then. */
  public ReadOnlyStringProperty savedProperty() {
    return saved.getReadOnlyProperty();
  }

  /** One sentence if something was refused; else empty. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** True once the handling has taken so much longer than planned that a mishap is asked about. */
  public ReadOnlyBooleanProperty overrunProperty() {
    return overrun.getReadOnlyProperty();
  }

  /** Nothing is shown any more. */
  final void blank() {
    sheet.set(null);
    waits.set(LapWaits.NONE);
    saved.set("");
    trouble.set("");
    overrun.set(false);
  }
}
