package blindlap.paper.sheet;

import blindlap.wording.day.Shown;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** A typeface of one sheet: what it can print, and how wide that is. */
final class Typeface {
  private final PDFont font;
  private final Map<Integer, Boolean> known = new HashMap<>();
  private final Map<Integer, Double> widths = new HashMap<>();

  /**
   * Reads a typeface. Ligatures are off: a text is as wide as its letters, which is how {@link #em}
   * reckons, can be searched, and looking them up took four fifths of the time a sheet took.
   */
  Typeface(PDDocument document, String file) {
    String name = "/blindlap/fonts/" + file + ".ttf";
    try (InputStream in = Typeface.class.getResourceAsStream(name)) {
      byte[] bytes = PlainFont.of(Objects.requireNonNull(in).readAllBytes());
      font = PDType0Font.load(document, new ByteArrayInputStream(bytes), true);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  PDFont font() {
    return font;
  }

  /** Width of words in thousandths of the size; typefaces are set without kerning. */
  double em(String words) {
    double em = 0;
    String printed = printable(words);
    for (int i = 0; i < printed.length(); i += Character.charCount(printed.codePointAt(i))) {
      em += widths.computeIfAbsent(printed.codePointAt(i), this::width);
    }
    return em;
  }

  private double width(int one) {
    try {
      return font.getStringWidth(Character.toString(one));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What the typeface lacks is printed as a question mark, so that nothing vanishes unseen. */
  String printable(String words) {
    StringBuilder out = new StringBuilder();
    Shown.inLetters(words)
        .codePoints()
        .forEach(c -> out.appendCodePoint(knows(c) ? c : Character.isISOControl(c) ? ' ' : '?'));
    return out.toString();
  }

  private boolean knows(int one) {
    return known.computeIfAbsent(one, this::encodes);
  }

  private boolean encodes(int one) {
    try {
      font.encode(Character.toString(one));
      return true;
    } catch (IllegalArgumentException | IOException missing) {
      return false;
    }
  }
}
