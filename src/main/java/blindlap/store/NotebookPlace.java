package blindlap.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;

/**
 * Where a notebook and what belongs to it lie, and for whose eyes: the owner's alone. SQLite gives
 * a journal the mode of its notebook, so that nothing more is to be done about journals. Where a
 * file system knows no such modes (Windows), files have those of their folder.
 */
final class NotebookPlace {
  private static final Set<PosixFilePermission> OWNERS_FILE =
      PosixFilePermissions.fromString("rw-------");
  private static final Set<PosixFilePermission> OWNERS_FOLDER =
      PosixFilePermissions.fromString("rwx------");

  private NotebookPlace() {}

  /**
   * A file beside a notebook, by the notebook's name and an ending. Of a notebook that was opened
   * through a link it is the file itself that counts, so that it has the same backups and journal
   * whichever way it is opened.
   */
  static Path beside(Path notebook, String ending) {
    Path real = real(notebook);
    return real.resolveSibling(real.getFileName() + ending);
  }

  /** The file itself where a link was named; what was named otherwise, as it was named. */
  static Path real(Path notebook) {
    try {
      Path link = notebook;
      for (int i = 0; i < 40 && Files.isSymbolicLink(link); i++) {
        link = link.toAbsolutePath().resolveSibling(Files.readSymbolicLink(link));
      }
      return link;
    } catch (IOException e) {
      return notebook;
    }
  }

  /** Lays an empty file where none is, before SQLite would make one that others can read. */
  static void make(Path notebook) {
    Path place = real(notebook);
    if (Files.notExists(place)) {
      try {
        Files.createFile(place, attributes(place, OWNERS_FILE));
      } catch (IOException e) {
        // SQLite comes to the same place next, and says what is the matter with it.
      }
    }
  }

  /** Takes from everyone else what they may do with a file that is there. */
  static void ownersAlone(Path file) {
    try {
      if (knowsModes(file)) {
        Files.setPosixFilePermissions(real(file), OWNERS_FILE);
      }
    } catch (IOException e) {
      // Somebody else's file: whoever owns it decides.
    }
  }

  /** Makes a folder where there is none. */
  static void folder(Path folder) throws IOException {
    if (Files.notExists(folder)) {
      Files.createDirectories(folder, attributes(folder, OWNERS_FOLDER));
    }
  }

  private static FileAttribute<?>[] attributes(Path place, Set<PosixFilePermission> mode) {
    return knowsModes(place)
        ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(mode)}
        : new FileAttribute<?>[0];
  }

  private static boolean knowsModes(Path place) {
    Path folder = place.toAbsolutePath().getParent();
    return folder != null
        && Files.getFileAttributeView(folder, PosixFileAttributeView.class) != null;
  }
}
