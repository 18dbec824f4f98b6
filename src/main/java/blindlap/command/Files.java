package blindlap.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Writes files whole or not at all. */
final class Files {
  private Files() {}

  /** Makes a folder where there is none. */
  static void folder(Path folder) {
    try {
      java.nio.file.Files.createDirectories(folder);
    } catch (IOException e) {
      throw new Complaint(
          ExitCode.FILE_TROUBLE, "The folder " + folder + " cannot be made; nothing was written.");
    }
  }

  /** Writes text beside the target first and moves it there. */
  static void write(Path target, String text) {
    write(target, text.getBytes(StandardCharsets.UTF_8));
  }

  /** Writes bytes beside the target first and moves them there. */
  static void write(Path target, byte[] bytes) {
    Path folder = target.toAbsolutePath().getParent();
    try {
      Path part = java.nio.file.Files.createTempFile(folder, ".part", "");
      try {
        java.nio.file.Files.write(part, bytes);
        java.nio.file.Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
      } finally {
        java.nio.file.Files.deleteIfExists(part);
      }
    } catch (IOException e) {
      throw new Complaint(
          ExitCode.FILE_TROUBLE,
          "The file " + target + " cannot be written; nothing was left half-written.");
    }
  }
}
