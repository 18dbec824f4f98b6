package blindlap.recording;

import java.io.ByteArrayInputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * In which letters a recording is written: what it declares, else UTF-8. The platform's reader of
 * XML would find that out too, but speaks to standard error of letters that are none.
 */
final class Lettering {
  private static final int DECLARATION = 200;
  private static final Pattern ENCODING =
      Pattern.compile("^<\\?xml[^>]*?encoding\\s*=\\s*[\"']([\\w.:-]+)[\"']");

  private static final Pattern ROOT = Pattern.compile("<(\\w+:)?(gpx|TrainingCenterDatabase)\\b");

  private Lettering() {}

  /** A reader of the text, which fails at a letter that is none. */
  static Reader reader(byte[] bytes) {
    int start = start(bytes);
    return new InputStreamReader(
        new ByteArrayInputStream(bytes, start, bytes.length - start),
        charset(bytes, start)
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT));
  }

  /**
   * The line of a recording at which a letter is none; empty if there is no such letter, or nothing
   * in front of it is a recording's.
   */
  static OptionalInt garbled(byte[] bytes) {
    CharBuffer letters = CharBuffer.allocate(8192);
    ByteBuffer left = ByteBuffer.wrap(bytes);
    CharsetDecoder decoder = charset(bytes, start(bytes)).newDecoder();
    CoderResult result;
    do {
      letters.clear();
      result = decoder.decode(left, letters, true);
    } while (result.isOverflow());
    String before = new String(bytes, 0, left.position(), StandardCharsets.ISO_8859_1);
    return result.isError() && ROOT.matcher(before).find()
        ? OptionalInt.of(1 + (int) before.chars().filter(letter -> letter == '\n').count())
        : OptionalInt.empty();
  }

  /** Lines that {@link #reader} leaves out. */
  static int linesInFront(byte[] bytes) {
    int lines = 0;
    for (int i = 0; i < start(bytes); i++) {
      lines += bytes[i] == '\n' ? 1 : 0;
    }
    return lines;
  }

  /** Blanks in front of everything are a copier's slip, which no reader of XML forgives. */
  private static int start(byte[] bytes) {
    int start = marked(bytes) ? 3 : 0;
    while (start < bytes.length && bytes[start] > 0 && bytes[start] <= ' ') {
      start++;
    }
    return start;
  }

  private static boolean marked(byte[] bytes) {
    return bytes.length >= 3
        && (bytes[0] & 0xff) == 0xef
        && (bytes[1] & 0xff) == 0xbb
        && (bytes[2] & 0xff) == 0xbf;
  }

  /** A declaration of wide letters that is written in narrow ones is a converter's slip. */
  private static Charset charset(byte[] bytes, int start) {
    int length = Math.min(DECLARATION, bytes.length - start);
    Matcher declared =
        ENCODING.matcher(new String(bytes, start, length, StandardCharsets.ISO_8859_1));
    if (!declared.find() || declared.group(1).matches("(?i)(utf|ucs|iso-10646).*")) {
      return StandardCharsets.UTF_8;
    }
    try {
      return Charset.forName(declared.group(1));
    } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
      return StandardCharsets.UTF_8;
    }
  }
}
