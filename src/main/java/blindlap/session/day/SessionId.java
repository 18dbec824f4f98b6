package blindlap.session.day;

import java.util.UUID;
import java.util.regex.Pattern;

/** Name of a session across notebooks: a random UUID in lower case. */
public record SessionId(String text) implements Comparable<SessionId> {
  private static final Pattern UUID_FORM =
      Pattern.compile("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}");

  public SessionId {
    if (!UUID_FORM.matcher(text).matches()) {
      throw new IllegalArgumentException("\"" + text + "\" is not the id of a session");
    }
  }

  /** An id of 16 random bytes (RFC 4122, version 4). */
  public static SessionId of(byte[] random) {
    return new SessionId(uuid(random));
  }

  public static String uuid(byte[] random) {
    java.nio.ByteBuffer buffer = java.nio.ByteBuffer.wrap(random, 0, 16);
    long high = (buffer.getLong() & 0xffffffffffff0fffL) | 0x4000L;
    long low = (buffer.getLong() & 0x3fffffffffffffffL) | 0x8000000000000000L;
    return new UUID(high, low).toString();
  }

  /** The first eight characters, enough for people to tell sessions apart. */
  public String brief() {
    return text.substring(0, 8);
  }

  @Override
  public int compareTo(SessionId other) {
    return text.compareTo(other.text);
  }

  @Override
  public String toString() {
    return text;
  }
}
