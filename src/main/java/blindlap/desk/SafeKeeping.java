package blindlap.desk;

import blindlap.session.Notebook;
import blindlap.session.NotebookException;
import blindlap.session.NotebookFiles;
import blindlap.session.NotebookReport;
import blindlap.session.RecoveryReport;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.SortedMap;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * Keeping one notebook file safe: backups, the full check, recovery. Needs no open notebook, for
 * one that cannot be opened is what some of it is about. Everything throws {@link
 * NotebookException} with one sentence when a file cannot be used.
 */
public final class SafeKeeping {
  private static final String ENDING = ".blindlap";
  private static final long LARGEST_AT_CLOSING = 16_000_000;

  private final NotebookFiles files;
  private final Path notebook;

  /**
   * @param files the notebook files of this machine
   * @param notebook the one that is kept safe
   */
  public SafeKeeping(NotebookFiles files, Path notebook) {
    this.files = files;
    this.notebook = notebook;
  }

  /** The same for another notebook of this machine. */
  public SafeKeeping of(Path other) {
    return new SafeKeeping(files, other);
  }

  /** The notebook file. */
  public Path notebook() {
    return notebook;
  }

  /** A place for a new notebook, beside this one, where nothing lies yet. */
  public Path beside() {
    Path whole = notebook.toAbsolutePath();
    String name = String.valueOf(whole.getFileName());
    String stem = name.endsWith(ENDING) ? name.substring(0, name.length() - ENDING.length()) : name;
    Path place = whole.resolveSibling(stem + "-saved" + ENDING);
    for (int i = 2; Files.exists(place); i++) {
      place = whole.resolveSibling(stem + "-saved-" + i + ENDING);
    }
    return place;
  }

  /** Makes a backup now. */
  public Path backUp() {
    return files.backUp(notebook);
  }

  /** Makes a backup unless the latest one holds the same; empty if nothing has changed. */
  public Optional<Path> backUpIfChanged() {
    return files.backUpIfChanged(notebook);
  }

  /**
   * Makes a last backup if something has changed, of a notebook that is not so large that whoever
   * closes the window would have to wait. Nobody is left to be told of trouble.
   */
  public void backUpAtClosing() {
    if (notebook.toFile().length() > LARGEST_AT_CLOSING) {
      return;
    }
    try {
      backUpIfChanged();
    } catch (NotebookException trouble) {
      // The next window makes one, or says why not.
    }
  }

  /** The backups that are there, by time. */
  public SortedMap<Instant, Path> backups() {
    return files.backups(notebook);
  }

  /**
   * Makes backups in the background, whenever something has changed.
   *
   * @param executor does the work, off the interface thread
   * @param every pause between two looks
   * @param trouble is told, on the executor's thread, why there is no backup
   * @return to be cancelled when the window closes
   */
  public ScheduledFuture<?> watch(
      ScheduledExecutorService executor,
      Duration every,
      Consumer<? super NotebookException> trouble) {
    return files.watch(notebook, executor, every, trouble::accept);
  }

  /** Reads another notebook through a copy. */
  <T> T read(Path other, Function<Notebook, T> reader) {
    return files.read(other, reader);
  }

  /** Reads and checks everything, also of a notebook that is too damaged to be opened. */
  public NotebookReport verify() {
    return files.verify(notebook);
  }

  /**
   * Puts everything of the notebook that still verifies into a new one.
   *
   * @param fresh where the new one goes; nothing may lie there
   */
  public RecoveryReport recover(Path fresh) {
    return files.recover(notebook, fresh);
  }
}
