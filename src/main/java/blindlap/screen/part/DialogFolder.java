package blindlap.screen.part;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Where the dialogs of a window begin: in the folder of the last choice, at first in the one that
 * the program was started from. A folder that is gone, and the root of a disk, are left to the
 * system.
 */
public final class DialogFolder {
  private Path folder;

  /**
   * @param first where the first dialog begins
   */
  public DialogFolder(Path first) {
    this.folder = first.toAbsolutePath();
  }

  /** Where the next dialog begins; empty for where the system begins. */
  Optional<Path> begin() {
    return Optional.of(folder).filter(f -> f.getNameCount() > 0 && Files.isDirectory(f));
  }

  /** A file was chosen to be read or written. */
  void chosenFile(Path file) {
    Path parent = file.toAbsolutePath().getParent();
    if (parent != null) {
      folder = parent;
    }
  }

  /** A folder was chosen. */
  void chosenFolder(Path chosen) {
    folder = chosen.toAbsolutePath();
  }
}
