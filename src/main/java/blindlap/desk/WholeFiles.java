package blindlap.desk;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.CopyOption;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Files that people get, written whole or not at all, all of them or none: each is laid beside its
 * place and on disk first, for the owner's eyes alone, and only when the last of them is there they
 * take their places. Whatever fails before that, a full disk or a place that is a folder, leaves
 * nothing behind: no part of a file, no folder that was made for it.
 */
public final class WholeFiles implements AutoCloseable {
  private final Map<Path, Path> parts = new LinkedHashMap<>();
  private final List<Path> made = new ArrayList<>();

  private WholeFiles() {}

  /**
   * Lays files beside their places; {@link #settle} moves them there, {@link #close} takes away
   * what has not been moved.
   *
   * @param folder made if it is not there
   * @param files contents by file name, which may name folders in it: "session-1/laps.csv"
   * @throws IOException if one of them cannot be written; nothing is left then
   */
  public static WholeFiles beside(Path folder, Map<String, byte[]> files) throws IOException {
    WholeFiles whole = new WholeFiles();
    try {
      whole.make(folder.toAbsolutePath());
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        Path place = folder.resolve(file.getKey());
        whole.make(java.util.Objects.requireNonNull(place.toAbsolutePath().getParent()));
        whole.lay(place, file.getValue());
      }
      return whole;
    } catch (IOException e) {
      whole.close();
      throw e;
    }
  }

  /**
   * Writes files to a folder; what lies there under their names is replaced.
   *
   * @param folder made if it is not there
   * @param files contents by file name
   * @throws IOException if one of them cannot be written; nothing is left then
   */
  public static void write(Path folder, Map<String, byte[]> files) throws IOException {
    try (WholeFiles whole = beside(folder, files)) {
      whole.settle();
    }
  }

  /**
   * Writes files as {@link #write(Path, Map)} does, where a folder that takes no file is nobody's
   * mistake.
   *
   * @return false if they cannot be written; nothing is left then
   */
  public static boolean written(Path folder, Map<String, byte[]> files) {
    try {
      write(folder, files);
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  /**
   * Writes one file; what lies in its place is replaced.
   *
   * @param file in a folder that is there
   * @throws IOException if it cannot be written; what was there is kept
   */
  public static void write(Path file, byte[] bytes) throws IOException {
    Path folder = java.util.Objects.requireNonNull(file.toAbsolutePath().getParent());
    if (!Files.isDirectory(folder)) {
      throw new java.nio.file.NoSuchFileException(folder.toString());
    }
    write(folder, Map.of(String.valueOf(file.getFileName()), bytes));
  }

  /** Makes a folder and those above it, and remembers which it made, the innermost first. */
  private void make(Path folder) throws IOException {
    Path there = folder;
    int at = 0;
    while (there != null && Files.notExists(there)) {
      made.add(at++, there);
      there = there.getParent();
    }
    Files.createDirectories(folder);
  }

  private void lay(Path place, byte[] bytes) throws IOException {
    if (Files.isDirectory(place)) {
      throw new FileSystemException(place.toString(), null, "is a folder");
    }
    Path folder = java.util.Objects.requireNonNull(place.toAbsolutePath().getParent());
    // The owner's alone from its first byte on, as files for others to read are not.
    Path part = Files.createTempFile(folder, ".blindlap", ".part");
    parts.put(place, part);
    try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
      ByteBuffer left = ByteBuffer.wrap(bytes);
      while (left.hasRemaining()) {
        channel.write(left);
      }
      channel.force(true);
    }
  }

  /**
   * Moves every file to its place; what lies there is replaced.
   *
   * @throws IOException if one cannot be moved; those that took a free place are taken away again
   */
  public void settle() throws IOException {
    settle(new CopyOption[] {StandardCopyOption.REPLACE_EXISTING});
  }

  /**
   * Moves every file to its place, and none of them over a file that is there.
   *
   * @throws FileAlreadyExistsException if something lies in one of the places
   * @throws IOException if one cannot be moved; those that were are taken away again
   */
  public void settleFresh() throws IOException {
    settle(new CopyOption[0]);
  }

  private void settle(CopyOption... how) throws IOException {
    List<Path> fresh = new ArrayList<>();
    try {
      for (Map.Entry<Path, Path> each : parts.entrySet()) {
        boolean free = Files.notExists(each.getKey());
        Files.move(each.getValue(), each.getKey(), how);
        if (free) {
          fresh.add(each.getKey());
        }
      }
      made.clear();
    } catch (IOException e) {
      for (Path file : fresh) {
        Files.deleteIfExists(file);
      }
      throw e;
    }
  }

  /** Takes away what did not take its place, and folders that were made for nothing. */
  @Override
  public void close() throws IOException {
    for (Path part : parts.values()) {
      Files.deleteIfExists(part);
    }
    for (Path folder : made) {
      try {
        Files.deleteIfExists(folder);
      } catch (DirectoryNotEmptyException used) {
        // Someone else has put something there meanwhile.
      }
    }
    made.clear();
  }
}
