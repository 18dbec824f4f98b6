package blindlap.store;

import blindlap.session.NotebookException;
import blindlap.session.NotebookException.Kind;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * What the first 100 bytes of a file say, before any database touches it (SQLite database file
 * format, section 1.3: magic at 0, user version at 60, application id at 68).
 */
final class NotebookFile {
  /** "Blap" as four bytes. */
  static final int APPLICATION_ID = 0x426C6170;

  /** The version this program writes. */
  static final int VERSION = 1;

  private static final String MAGIC = "SQLite format 3\0";
  private static final int HEADER = 100;

  private NotebookFile() {}

  /**
   * Reads the version of a notebook.
   *
   * @return 0 for a file that does not exist or is empty
   * @throws NotebookException if it is not a notebook, is too new, or cannot be read
   */
  static int version(Path file) {
    if (Files.notExists(file)) {
      return 0;
    }
    ByteBuffer header = ByteBuffer.allocate(HEADER);
    try (SeekableByteChannel channel = Files.newByteChannel(file)) {
      if (channel.size() == 0) {
        return 0;
      }
      while (header.hasRemaining() && channel.read(header) >= 0) {
        // Short reads are continued.
      }
    } catch (IOException e) {
      throw new NotebookException(
          Kind.OTHER, "The notebook " + file + " cannot be read; nothing was changed.", e);
    }
    byte[] bytes = header.array();
    String magic = new String(bytes, 0, MAGIC.length(), StandardCharsets.ISO_8859_1);
    if (header.hasRemaining() || !magic.equals(MAGIC) || header.getInt(68) != APPLICATION_ID) {
      throw new NotebookException(
          Kind.NOT_A_NOTEBOOK,
          "The file "
              + file
              + " is not a Blindlap notebook; it was left as it is. Name another file with"
              + " --notebook.");
    }
    int version = header.getInt(60);
    if (version > VERSION) {
      throw new NotebookException(
          Kind.TOO_NEW,
          "The notebook "
              + file
              + " was written by a newer Blindlap (version "
              + version
              + ", this one knows "
              + VERSION
              + "); it was left as it is. Open it with the newer program.");
    }
    return version;
  }
}
