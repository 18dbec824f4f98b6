package blindlap.paper.sheet;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;

/**
 * A TrueType font without its table of glyph substitutions. The PDF library would search every word
 * for ligatures with regular expressions of its own, which takes as long as all the rest of a
 * report; without the table it sets the plain letters, which can be searched for and read aloud as
 * well.
 *
 * <p>The directory of tables begins at byte 12, 16 bytes a table, its tag first (OpenType 1.9,
 * "Organization of an OpenType font"). A tag that nobody knows is passed over.
 */
public final class PlainFont {
  private static final int DIRECTORY = 12;
  private static final int RECORD = 16;
  private static final byte[] SUBSTITUTIONS = "GSUB".getBytes(StandardCharsets.US_ASCII);
  private static final byte[] UNKNOWN = "gsub".getBytes(StandardCharsets.US_ASCII);

  private PlainFont() {}

  /** The font with its substitutions hidden; the bytes given are changed. */
  public static byte[] of(byte[] font) {
    int tables = ByteBuffer.wrap(font).getShort(4);
    for (int i = 0; i < tables; i++) {
      int at = DIRECTORY + i * RECORD;
      if (java.util.Arrays.equals(font, at, at + 4, SUBSTITUTIONS, 0, 4)) {
        System.arraycopy(UNKNOWN, 0, font, at, 4);
      }
    }
    return font;
  }
}
