package blindlap.screen.part;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Asks for files and folders; tests and other surfaces answer in their own way. */
public interface Dialogs {
  /** A file to read; empty if nobody chose one. */
  Optional<Path> openFile(String title);

  /** Files to read; none if nobody chose any. */
  default List<Path> openFiles(String title) {
    return openFile(title).map(List::of).orElse(List.of());
  }

  /** A file to write; empty if nobody chose one. */
  Optional<Path> saveFile(String title, String name);

  /** A file to write, with a place for it to begin with; empty if nobody chose one. */
  default Optional<Path> saveFile(String title, Path suggested) {
    return saveFile(title, String.valueOf(suggested.getFileName()));
  }

  /** A folder; empty if nobody chose one. */
  Optional<Path> folder(String title);

  /** The same for what the rider may not see: no later dialog begins there. */
  default Optional<Path> coveredFolder(String title) {
    return folder(title);
  }
}
