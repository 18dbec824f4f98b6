package blindlap.seal;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Base64;

/**
 * What the helper entered for one stint, encrypted. All records are of one length, whatever is
 * inside.
 *
 * @param stint whose record, from 1; 0 = the warm-up
 * @param iv 12 bytes, lower-case hexadecimal
 * @param ciphertext with its tag, Base64
 */
public record HelperRecord(int stint, String iv, String ciphertext) {
  /** First field of a record's associated data. */
  public static final String VERSION = "blindlap-helper-record-1";

  /** Most bytes of UTF-8 text in a record. */
  public static final int ROOM = 8188;

  private static final int PADDED_BYTES = 8192;
  private static final int CIPHERTEXT_BYTES = PADDED_BYTES + 16;

  public HelperRecord {
    if (stint < 0) {
      throw new IllegalArgumentException("a helper record belongs to a stint, not to " + stint);
    }
    if (!iv.matches("[0-9a-f]{24}")) {
      throw new IllegalArgumentException(
          "the helper record of stint "
              + stint
              + " cannot be read: its iv is not 12 bytes in lower-case hexadecimal");
    }
    if (!readable(ciphertext)) {
      throw new IllegalArgumentException(
          "the helper record of stint "
              + stint
              + " cannot be read: its ciphertext is not "
              + CIPHERTEXT_BYTES
              + " bytes in Base64");
    }
  }

  /** Bytes that a text takes of {@link #ROOM}: ask before sealing a long note. */
  public static int length(String text) {
    return text.getBytes(StandardCharsets.UTF_8).length;
  }

  /** Length in 4 bytes big-endian, the text in UTF-8, zeros up to 8192 bytes. */
  static byte[] pad(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    if (bytes.length > ROOM) {
      throw new RecordTooLong(bytes.length, ROOM);
    }
    return ByteBuffer.allocate(PADDED_BYTES).putInt(bytes.length).put(bytes).array();
  }

  static String unpad(byte[] padded) {
    ByteBuffer buffer = ByteBuffer.wrap(padded);
    byte[] bytes = new byte[buffer.getInt()];
    buffer.get(bytes);
    return new String(bytes, StandardCharsets.UTF_8);
  }

  static byte[] associatedData(String sessionId, int stint) {
    return new LengthPrefixed().add(VERSION).add(sessionId).add((long) stint).bytes();
  }

  private static boolean readable(String ciphertext) {
    try {
      return Base64.getDecoder().decode(ciphertext).length == CIPHERTEXT_BYTES;
    } catch (IllegalArgumentException e) {
      return false;
    }
  }

  @Override
  public String toString() {
    return "HelperRecord[stint " + stint + "]";
  }
}
