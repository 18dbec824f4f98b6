package blindlap.screen.ride;

import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.scene.Node;

/** What stands in the place of the hand-over where the rider swaps alone. */
public interface OwnSwapView {
  /** True while a session is open whose rider swaps alone. */
  ReadOnlyBooleanProperty aloneProperty();

  /** What is to be mounted before the next lap; the same node all the time. */
  Node view();

  /** The part comes into view: it shows how the day stands now. */
  void comes();

  /** Where the next key is needed, never a button. */
  Node first();
}
