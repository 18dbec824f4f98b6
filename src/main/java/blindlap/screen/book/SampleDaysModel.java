package blindlap.screen.book;

import blindlap.screen.part.Background;
import blindlap.wording.NotebookWords;
import blindlap.wording.day.Trouble;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/**
 * Invented days to look at. They lie in a notebook of their own and open in a window of their own:
 * nothing of them ever comes into the notebook that somebody rides with.
 */
public final class SampleDaysModel {
  private final Callable<Path> make;
  private final Consumer<Path> open;
  private final Background background;
  private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper working = new ReadOnlyBooleanWrapper();

  /**
   * @param make makes their notebook if it is not there, which takes seconds, and says where it is
   * @param open opens a window on it, on the interface thread
   */
  public SampleDaysModel(Callable<Path> make, Consumer<Path> open, Background background) {
    this.make = make;
    this.open = open;
    this.background = background;
  }

  /** What became of it, one sentence; empty before. */
  public ReadOnlyStringProperty saidProperty() {
    return said.getReadOnlyProperty();
  }

  /** True while the days are being made. */
  public ReadOnlyBooleanProperty workingProperty() {
    return working.getReadOnlyProperty();
  }

  /** Shows them in a window of their own; does nothing while they are being made. */
  public void show() {
    if (working.get()) {
      return;
    }
    working.set(true);
    said.set(NotebookWords.say("samples.made"));
    background.run(
        make,
        file -> {
          working.set(false);
          try {
            open.accept(file);
            said.set(NotebookWords.say("samples.open", file));
          } catch (RuntimeException unusable) {
            fail(unusable);
          }
        },
        this::fail);
  }

  private void fail(Exception why) {
    working.set(false);
    said.set(NotebookWords.say("samples.failed", Trouble.sentence(why)));
  }
}
