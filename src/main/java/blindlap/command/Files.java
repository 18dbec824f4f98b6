package blindlap.command;

import blindlap.desk.WholeFiles;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;

/** Writes files whole or not at all, and says in a sentence where that cannot be done. */
final class Files {
  private Files() {}

  /** Writes several files to a folder, all of them or none; the folder is made if need be. */
  static void write(Path folder, Map<String, byte[]> files) {
    write(folder, files, () -> {});
  }

  /**
   * The same with something to be done once all of them are on disk and before any is in its place,
   * such as an entry that tells of them.
   */
  static void write(Path folder, Map<String, byte[]> files, Runnable between) {
    try (WholeFiles whole = WholeFiles.beside(folder, files)) {
      between.run();
      whole.settle();
    } catch (IOException e) {
      throw new Complaint(
          ExitCode.FILE_TROUBLE,
          "The files cannot be written to " + folder + "; nothing was left half-written there.");
    }
  }

  /** Writes one text; what lies in its place is replaced. */
  static void write(Path target, String text) {
    try {
      WholeFiles.write(target, text.getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new Complaint(
          ExitCode.FILE_TROUBLE,
          "The file " + target + " cannot be written; nothing was left half-written.");
    }
  }
}
