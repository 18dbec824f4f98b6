package blindlap.paper;

import blindlap.picture.FindingCards;
import blindlap.plot.CardFormat;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Palette;
import blindlap.plot.surface.SvgSurface;
import blindlap.plot.surface.Weight;
import blindlap.review.Beside;
import blindlap.review.Finding;
import blindlap.review.TellingAnalysis;
import blindlap.session.SessionState;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;

/** A card as files: pixels and SVG in both sizes, and everything in words. */
public final class CardFiles {
  /** Where the first chunk of a PNG file, its head, is over. */
  private static final int AFTER_HEAD = 8 + 25;

  private CardFiles() {}

  /**
   * The card of a finding, contents by file name.
   *
   * @param state the unsealed session
   * @param beside other sessions of the question
   * @param black black on white instead of colour
   */
  public static Map<String, byte[]> of(
      SessionState state, Finding finding, Beside beside, boolean black) {
    return files(FindingCards.of(state, finding, beside), state, black);
  }

  /** The card of a telling run. */
  public static Map<String, byte[]> of(
      SessionState state, TellingAnalysis analysis, Beside beside, boolean black) {
    return files(FindingCards.of(state, analysis, beside), state, black);
  }

  private static Map<String, byte[]> files(FindingCards card, SessionState state, boolean black) {
    String name = "card-" + state.plan().day() + "-" + state.id().brief();
    Palette palette = black ? Palette.PRINT : Palette.PAPER;
    Map<String, byte[]> files = new LinkedHashMap<>();
    String text = String.join("\n", card.lines()) + "\n";
    for (CardFormat format : CardFormat.values()) {
      Drawing drawing = card.drawing(format);
      String size = "-" + format.width() + "x" + format.height();
      files.put(name + size + ".png", png(drawing, format, palette, text));
      files.put(name + size + ".svg", svg(drawing, format, palette));
    }
    files.put(name + ".txt", text.getBytes(StandardCharsets.UTF_8));
    return files;
  }

  /** The SVG picture with the letters it needs, so that it looks the same anywhere. */
  private static byte[] svg(Drawing drawing, CardFormat format, Palette palette) {
    String bare = SvgSurface.svg(drawing, format.width(), 1, palette, "card");
    Set<Integer> characters = new TreeSet<>();
    bare.codePoints().filter(c -> c >= ' ').forEach(characters::add);
    StringBuilder style = new StringBuilder("<style>\n");
    Outlines outlines = new Outlines();
    for (Weight weight : Weight.values()) {
      style.append("@font-face{font-family:'").append(weight.family()).append("';font-weight:");
      style.append(weight.number()).append(";src:url(data:font/ttf;base64,");
      style.append(Base64.getEncoder().encodeToString(outlines.part(weight, characters)));
      style.append(")}\n");
    }
    String after = "</desc>\n";
    int at = bare.indexOf(after) + after.length();
    String whole = bare.substring(0, at) + style + "</style>\n" + bare.substring(at);
    return whole.getBytes(StandardCharsets.UTF_8);
  }

  private static byte[] png(Drawing drawing, CardFormat format, Palette palette, String text) {
    ByteArrayOutputStream out = new ByteArrayOutputStream(1 << 17);
    try {
      ImageIO.setUseCache(false);
      ImageIO.write(RasterSurface.image(drawing, format.width(), palette), "png", out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return described(out.toByteArray(), text);
  }

  /**
   * The picture with its words inside.
   *
   * <p>Source: W3C, Portable Network Graphics (PNG) specification, third edition, 11.3.3.4 "iTXt":
   * keyword, 0, no compression, no language, no translated keyword, then UTF-8.
   */
  private static byte[] described(byte[] png, String text) {
    byte[] keyword = "iTXtDescription".getBytes(StandardCharsets.ISO_8859_1);
    byte[] words = text.getBytes(StandardCharsets.UTF_8);
    ByteBuffer chunk = ByteBuffer.allocate(keyword.length + 5 + words.length);
    chunk.put(keyword).put(new byte[5]).put(words);
    CRC32 check = new CRC32();
    check.update(chunk.array());
    ByteBuffer whole = ByteBuffer.allocate(png.length + chunk.capacity() + 8);
    whole.put(png, 0, AFTER_HEAD);
    whole.putInt(chunk.capacity() - 4).put(chunk.array()).putInt((int) check.getValue());
    whole.put(png, AFTER_HEAD, png.length - AFTER_HEAD);
    return whole.array();
  }
}
