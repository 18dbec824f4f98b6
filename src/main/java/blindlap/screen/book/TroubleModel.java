package blindlap.screen.book;

import blindlap.desk.SafeKeeping;
import blindlap.screen.part.Background;
import blindlap.session.NotebookException;
import blindlap.wording.KeepingWords;
import blindlap.wording.day.Trouble;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;

/** A notebook that cannot be opened: why, and what can be saved of it. */
public final class TroubleModel {
  private static final int BACKUPS_TOLD = 3;

  private final SafeKeeping keeping;
  private final Background background;
  private final Consumer<Path> open;
  private final ReadOnlyStringWrapper sentence = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper damaged = new ReadOnlyBooleanWrapper(false);
  private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper working = new ReadOnlyBooleanWrapper(false);
  private final ReadOnlyObjectWrapper<@Nullable Path> fresh = new ReadOnlyObjectWrapper<>(null);

  /**
   * @param keeping of the notebook in trouble
   * @param why it could not be opened
   * @param open opens the pages on a notebook, or throws {@link NotebookException}
   * @return empty if what was thrown is nothing that a notebook says
   */
  public static Optional<TroubleModel> of(
      SafeKeeping keeping, RuntimeException why, Background background, Consumer<Path> open) {
    return why instanceof NotebookException said
        ? Optional.of(new TroubleModel(keeping, said, background, open))
        : Optional.empty();
  }

  private TroubleModel(
      SafeKeeping keeping, NotebookException why, Background background, Consumer<Path> open) {
    this.keeping = keeping;
    this.background = background;
    this.open = open;
    tell(why);
  }

  /** Why it cannot be opened, in one sentence. */
  public ReadOnlyStringProperty sentenceProperty() {
    return sentence.getReadOnlyProperty();
  }

  /** True if the file is damaged, so that something may have to be saved of it. */
  public ReadOnlyBooleanProperty damagedProperty() {
    return damaged.getReadOnlyProperty();
  }

  /** What came of saving, a line each; empty before. */
  public ReadOnlyStringProperty saidProperty() {
    return said.getReadOnlyProperty();
  }

  /** True while something is being saved. */
  public ReadOnlyBooleanProperty workingProperty() {
    return working.getReadOnlyProperty();
  }

  /** The new notebook with all that could be saved; null before. */
  public ReadOnlyObjectProperty<@Nullable Path> freshProperty() {
    return fresh.getReadOnlyProperty();
  }

  /** The latest backups, newest first, a line each; none if there are none or none can be read. */
  public List<String> backups() {
    List<String> lines = new ArrayList<>();
    try {
      keeping
          .backups()
          .forEach(
              (made, file) ->
                  lines.add(0, KeepingWords.backup(made, file.toFile().length(), file)));
    } catch (NotebookException unreadable) {
      return List.of();
    }
    return lines.subList(0, Math.min(BACKUPS_TOLD, lines.size()));
  }

  /** A place for the new notebook, beside the damaged one, where nothing lies yet. */
  public Path suggested() {
    return keeping.beside();
  }

  /** Puts everything that still verifies into a new notebook; the damaged file is only read. */
  public void recover(Path target) {
    working.set(true);
    said.set(KeepingWords.say("trouble.working"));
    background.run(
        () -> keeping.recover(target),
        report -> {
          working.set(false);
          said.set(String.join("\n", KeepingWords.recovered(report, target)));
          fresh.set(target);
        },
        failure -> {
          working.set(false);
          said.set(Trouble.sentence(failure));
        });
  }

  /** Opens the pages on what was saved. */
  public void openFresh() {
    Path saved = fresh.get();
    if (saved != null) {
      open(saved);
    }
  }

  /** Tries once more, after a lock has gone or a disk has room again. */
  public void tryAgain() {
    open(keeping.notebook());
  }

  private void open(Path notebook) {
    try {
      open.accept(notebook);
    } catch (NotebookException still) {
      tell(still);
    }
  }

  private void tell(NotebookException why) {
    sentence.set(Trouble.sentence(why));
    damaged.set(why.kind() == NotebookException.Kind.DAMAGED);
  }
}
