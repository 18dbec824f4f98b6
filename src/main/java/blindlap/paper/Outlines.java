package blindlap.paper;

import blindlap.plot.surface.Weight;
import java.awt.geom.AffineTransform;
import java.awt.geom.GeneralPath;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.GlyphData;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TTFSubsetter;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** The letters of the bundled fonts: as outlines, and as small fonts that hold some of them. */
final class Outlines {
  /** What a browser asks of a font that is handed to it, beyond its letters. */
  private static final List<String> TABLES =
      List.of("OS/2", "cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post");

  private final Map<Weight, TrueTypeFont> fonts = new EnumMap<>(Weight.class);

  /**
   * Words as one outline, y upwards.
   *
   * @param path from the left end of the baseline
   * @param width advance
   * @param unitsPerEm units of both in one em
   */
  record Letters(GeneralPath path, double width, double unitsPerEm) {}

  /** The outline of words, without kerning, as they were measured. */
  Letters of(String words, Weight weight) {
    TrueTypeFont font = fonts.computeIfAbsent(weight, Outlines::font);
    try {
      CmapLookup characters = font.getUnicodeCmapLookup();
      GeneralPath path = new GeneralPath();
      double x = 0;
      for (int c : words.codePoints().toArray()) {
        int id = characters.getGlyphId(c);
        GlyphData glyph = font.getGlyph().getGlyph(id);
        if (glyph != null && glyph.getNumberOfContours() != 0) {
          path.append(
              glyph.getPath().getPathIterator(AffineTransform.getTranslateInstance(x, 0)), false);
        }
        x += font.getAdvanceWidth(id);
      }
      return new Letters(path, x, font.getUnitsPerEm());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A font with these characters alone. */
  byte[] part(Weight weight, Set<Integer> characters) {
    try {
      TTFSubsetter part = new TTFSubsetter(fonts.computeIfAbsent(weight, Outlines::font), TABLES);
      part.addAll(characters);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      part.writeToStream(out);
      return out.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static TrueTypeFont font(Weight weight) {
    String name = "/blindlap/fonts/" + weight.file();
    try (InputStream in = Objects.requireNonNull(Outlines.class.getResourceAsStream(name), name)) {
      return new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
