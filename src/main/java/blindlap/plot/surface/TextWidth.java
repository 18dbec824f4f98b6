package blindlap.plot.surface;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.util.EnumMap;
import java.util.Map;

/**
 * Advance widths read from the bundled fonts, so that a layout does not depend on the surface, the
 * window system or the fonts of the machine. No kerning.
 *
 * <p>Source: ISO/IEC 14496-22 (OpenType), tables head, hhea, hmtx and cmap (format 4). Checked
 * against java.awt.Font in a test.
 */
public final class TextWidth {
  private static final Map<Weight, TextWidth> LOADED = new EnumMap<>(Weight.class);

  private final ByteBuffer font;
  private final double unitsPerEm;
  private final int metrics;
  private final int metricCount;
  private final int characters;

  /** Widths of Latin letters, which nearly all words are made of; looked up once. */
  private final int[] latin = new int[0x250];

  private TextWidth(ByteBuffer font) {
    this.font = font;
    unitsPerEm = font.getShort(table("head") + 18) & 0xFFFF;
    metricCount = font.getShort(table("hhea") + 34) & 0xFFFF;
    metrics = table("hmtx");
    characters = characterTable();
    for (char c = 0; c < latin.length; c++) {
      latin[c] = advance(glyph(c));
    }
  }

  /**
   * Width of the words in em of their size; characters outside the font get the width of its blank
   * glyph.
   */
  public static double of(String words, Weight weight) {
    TextWidth widths = load(weight);
    long units = 0;
    for (int i = 0; i < words.length(); i++) {
      char c = words.charAt(i);
      units += c < widths.latin.length ? widths.latin[c] : widths.advance(widths.glyph(c));
    }
    return units / widths.unitsPerEm;
  }

  private static synchronized TextWidth load(Weight weight) {
    return LOADED.computeIfAbsent(weight, w -> new TextWidth(ByteBuffer.wrap(bytes(w))));
  }

  private static byte[] bytes(Weight weight) {
    String name = "/blindlap/fonts/" + weight.file();
    try (InputStream in = TextWidth.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("The font " + name + " is missing from the program");
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException("The font " + name + " cannot be read", e);
    }
  }

  private int table(String tag) {
    int count = font.getShort(4);
    for (int i = 0; i < count; i++) {
      int entry = 12 + 16 * i;
      if (isTag(entry, tag)) {
        return font.getInt(entry + 8);
      }
    }
    throw new IllegalStateException("The font has no table " + tag);
  }

  private boolean isTag(int at, String tag) {
    for (int i = 0; i < 4; i++) {
      if (font.get(at + i) != tag.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  private int characterTable() {
    int cmap = table("cmap");
    int count = font.getShort(cmap + 2);
    for (int i = 0; i < count; i++) {
      int at = cmap + font.getInt(cmap + 4 + 8 * i + 4);
      if (font.getShort(at) == 4) {
        return at;
      }
    }
    throw new IllegalStateException("The font has no character table of format 4");
  }

  private int glyph(char c) {
    int doubled = unsigned(characters + 6);
    int ends = characters + 14;
    int starts = ends + doubled + 2;
    for (int i = 0; i < doubled; i += 2) {
      if (c <= unsigned(ends + i)) {
        return c < unsigned(starts + i) ? 0 : glyphInSegment(c, starts + i, doubled);
      }
    }
    return 0;
  }

  private int glyphInSegment(char c, int start, int doubled) {
    int delta = font.getShort(start + doubled);
    int offsetAt = start + 2 * doubled;
    int offset = unsigned(offsetAt);
    if (offset == 0) {
      return c + delta & 0xFFFF;
    }
    int glyph = unsigned(offsetAt + offset + 2 * (c - unsigned(start)));
    return glyph == 0 ? 0 : glyph + delta & 0xFFFF;
  }

  private int advance(int glyph) {
    return unsigned(metrics + 4 * Math.min(glyph, metricCount - 1));
  }

  private int unsigned(int at) {
    return font.getShort(at) & 0xFFFF;
  }
}
