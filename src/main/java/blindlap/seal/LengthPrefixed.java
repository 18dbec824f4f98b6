package blindlap.seal;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;

/**
 * Fields one after another, each as its length in 8 bytes (big-endian) and its bytes, so that no
 * two lists of fields give the same bytes. Text is UTF-8, a number is 8 bytes big-endian.
 */
final class LengthPrefixed {
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();

  LengthPrefixed add(byte[] field) {
    out.writeBytes(eight(field.length));
    out.writeBytes(field);
    return this;
  }

  LengthPrefixed add(String field) {
    return add(field.getBytes(StandardCharsets.UTF_8));
  }

  LengthPrefixed add(long field) {
    return add(eight(field));
  }

  byte[] bytes() {
    return out.toByteArray();
  }

  static byte[] eight(long number) {
    return ByteBuffer.allocate(Long.BYTES).putLong(number).array();
  }
}
