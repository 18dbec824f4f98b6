package blindlap.session;

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
 * Notebook files as wholes, whether or not they can be opened: checked, backed up, recovered, read
 * beside one's own. Every method throws {@link NotebookException} with one sentence when a file
 * cannot be used.
 */
public interface NotebookFiles {
  /**
   * Checks everything in a file, also in one that is too damaged to be opened, which is read
   * through a copy then.
   */
  NotebookReport verify(Path notebook);

  /**
   * Puts everything that still verifies into a new notebook. The damaged file is not written to.
   *
   * @param damaged must not be open in this process
   * @param fresh where the new notebook goes; nothing may lie there
   */
  RecoveryReport recover(Path damaged, Path fresh);

  /** Makes a backup, checked in full, and thins those that are there. */
  Path backUp(Path notebook);

  /** Makes a backup unless the latest one holds the same; empty if nothing has changed. */
  Optional<Path> backUpIfChanged(Path notebook);

  /** The backups that are there, by time. */
  SortedMap<Instant, Path> backups(Path notebook);

  /**
   * Looks from time to time and makes a backup when something has changed since the last.
   *
   * @param executor does the work
   * @param every pause before the first look and between two
   * @param trouble is told of each look that failed
   */
  ScheduledFuture<?> watch(
      Path notebook,
      ScheduledExecutorService executor,
      Duration every,
      Consumer<NotebookException> trouble);

  /**
   * Lets someone read another notebook, of this version or an earlier one, through a copy that is
   * gone afterwards. The file itself is not written to.
   *
   * @param reader gets the copy, open
   */
  <T> T read(Path other, Function<Notebook, T> reader);
}
