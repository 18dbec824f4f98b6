package blindlap.recording;

import blindlap.fault.Unreadable;
import java.nio.charset.StandardCharsets;

/**
 * Looks at the bytes of a recording before any reader of XML does: no tag, text, comment or block
 * is longer than anything that a recorder writes, so that no reader needs more memory than that for
 * one of them; and there is no document type. A line may be as long as the file.
 */
final class PlainMarkup {
  /** Bytes: far above the longest name, remark or run of blanks. */
  static final int LONGEST = 1_000_000;

  private static final byte[] REMARK = ascii("<!--");
  private static final byte[] BLOCK = ascii("<![CDATA[");
  private static final byte[] DECLARED = ascii("<!");
  private static final byte[] INSTRUCTION = ascii("<?");

  private final byte[] bytes;

  private PlainMarkup(byte[] bytes) {
    this.bytes = bytes;
  }

  /**
   * @throws Unreadable if it breaks a bound, or holds no markup in so many bytes
   */
  static void check(byte[] bytes) {
    new PlainMarkup(bytes).run();
  }

  private void run() {
    int at = 0;
    boolean marked = false;
    while (at < bytes.length) {
      int tag = at;
      while (tag < bytes.length && bytes[tag] != '<') {
        tag++;
      }
      if (tag - at > LONGEST) {
        throw new Unreadable(marked ? TrackFault.NOT_ALLOWED : TrackFault.UNKNOWN_FORMAT);
      }
      marked = true;
      at = behind(tag);
      if (at - tag > LONGEST) {
        throw new Unreadable(TrackFault.NOT_ALLOWED);
      }
    }
  }

  /** Where the tag, remark, block or instruction that begins here has ended. */
  private int behind(int start) {
    if (begins(start, REMARK)) {
      return end(start, ascii("-->"));
    }
    if (begins(start, BLOCK)) {
      return end(start, ascii("]]>"));
    }
    if (begins(start, INSTRUCTION)) {
      return end(start, ascii("?>"));
    }
    if (begins(start, DECLARED)) {
      throw new Unreadable(TrackFault.NOT_ALLOWED);
    }
    byte quoted = 0;
    for (int i = start; i < bytes.length; i++) {
      byte letter = bytes[i];
      if (quoted != 0) {
        quoted = letter == quoted ? 0 : quoted;
      } else if (letter == '"' || letter == '\'') {
        quoted = letter;
      } else if (letter == '>') {
        return i + 1;
      }
    }
    return bytes.length;
  }

  private int end(int start, byte[] mark) {
    for (int i = start; i < bytes.length; i++) {
      if (begins(i, mark)) {
        return i + mark.length;
      }
    }
    return bytes.length;
  }

  private boolean begins(int at, byte[] mark) {
    if (at + mark.length > bytes.length) {
      return false;
    }
    for (int i = 0; i < mark.length; i++) {
      if (bytes[at + i] != mark[i]) {
        return false;
      }
    }
    return true;
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
