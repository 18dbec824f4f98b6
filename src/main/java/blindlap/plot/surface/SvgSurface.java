package blindlap.plot.surface;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Writes a drawing as an SVG picture for a page: words stay words, nothing external is named, and
 * the picture carries its title and description.
 *
 * <p>Source: W3C, Scalable Vector Graphics (SVG) 1.1 second edition. Lengths are written with two
 * decimals, independent of the locale.
 */
public final class SvgSurface implements Surface {
  private final Palette palette;
  private final StringBuilder out = new StringBuilder();

  private SvgSurface(Palette palette) {
    this.palette = palette;
  }

  /**
   * The drawing as one {@code svg} element.
   *
   * @param drawing what is drawn
   * @param width width in logical pixels
   * @param textScale 1 for 100 %
   * @param palette colours
   * @param id letters and digits, unique on the page; title and description get ids from it
   * @return markup that stands in HTML and is well-formed XML
   */
  public static String svg(
      Drawing drawing, double width, double textScale, Palette palette, String id) {
    if (!id.matches("[A-Za-z][A-Za-z0-9-]*")) {
      throw new IllegalArgumentException("Not an id: " + id);
    }
    SvgSurface surface = new SvgSurface(palette);
    drawing.draw(surface, width, textScale);
    String height = number(drawing.heightFor(width, textScale));
    String size = number(width);
    Spoken spoken = drawing.spoken();
    return String.format(
        Locale.ROOT,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %s %s\" width=\"%s\" height=\"%s\""
            + " role=\"img\" aria-labelledby=\"%s-t %s-d\" font-family=\"'%s',sans-serif\""
            + " fill=\"none\">%n<title id=\"%s-t\">%s</title>%n<desc id=\"%s-d\">%s</desc>%n%s</svg>%n",
        size,
        height,
        size,
        height,
        id,
        id,
        Weight.FAMILY,
        id,
        escaped(spoken.sentence()),
        id,
        escaped(spoken.table()),
        surface.out);
  }

  @Override
  public Palette palette() {
    return palette;
  }

  @Override
  public void segments(double[] ends, Pen pen) {
    StringBuilder path = new StringBuilder();
    for (int i = 0; i < ends.length; i += 4) {
      path.append('M').append(point(ends[i], ends[i + 1]));
      path.append('L').append(point(ends[i + 2], ends[i + 3]));
    }
    stroke("<path d=\"" + path + "\"", pen);
  }

  @Override
  public void polyline(double[] xs, double[] ys, Pen pen) {
    stroke("<polyline points=\"" + points(xs, ys) + "\"", pen);
  }

  @Override
  public void polygon(double[] xs, double[] ys, Ink fill) {
    fill("<polygon points=\"" + points(xs, ys) + "\"", fill);
  }

  @Override
  public void rectangle(Box box, Ink fill) {
    fill(
        attributes(
            "<rect",
            "x",
            number(box.x()),
            "y",
            number(box.y()),
            "width",
            number(box.width()),
            "height",
            number(box.height())),
        fill);
  }

  @Override
  public void disc(double x, double y, double radius, Ink fill) {
    fill(circle(x, y, radius), fill);
  }

  @Override
  public void ring(double x, double y, double radius, Pen pen) {
    stroke(circle(x, y, radius), pen);
  }

  @Override
  public void text(String words, double x, double baseline, Anchor anchor, Face face, Ink ink) {
    if (!palette.draws(ink) || words.isEmpty()) {
      return;
    }
    Weight weight = palette.weight(face.weight());
    String family =
        weight == Weight.REGULAR
            ? ""
            : " font-family=\"'" + weight.family() + "','" + Weight.FAMILY + "',sans-serif\"";
    String open =
        attributes(
            "<text",
            "x",
            number(x),
            "y",
            number(baseline),
            "font-size",
            number(face.size()),
            "font-weight",
            Integer.toString(weight.number()),
            "text-anchor",
            anchor.svg(),
            "fill",
            palette.hex(ink));
    out.append(open).append(family).append('>').append(escaped(words)).append("</text>\n");
  }

  @Override
  public void cells(double x, double y, double side, boolean[][] rows, Ink fill) {
    StringBuilder path = new StringBuilder();
    for (int row = 0; row < rows.length; row++) {
      for (int from = 0; from < rows[row].length; from++) {
        int end = from;
        while (end < rows[row].length && rows[row][end]) {
          end++;
        }
        if (end > from) {
          String length = number((end - from) * side);
          path.append('M')
              .append(point(x + from * side, y + row * side))
              .append('h')
              .append(length);
          path.append('v').append(number(side)).append("h-").append(length).append('z');
          from = end;
        }
      }
    }
    // Without crisp edges a hair of paper shows between the rows, which some readers stumble over.
    fill("<path shape-rendering=\"crispEdges\" d=\"" + path + "\"", fill);
  }

  private void fill(String element, Ink ink) {
    if (palette.draws(ink)) {
      out.append(element).append(" fill=\"").append(palette.hex(ink)).append("\"/>\n");
    }
  }

  private void stroke(String element, Pen pen) {
    if (!palette.draws(pen.ink())) {
      return;
    }
    out.append(element).append(" stroke=\"").append(palette.hex(pen.ink())).append('"');
    out.append(" stroke-width=\"").append(number(palette.lineWidth(pen.width()))).append('"');
    double[] dash = pen.dash().lengths();
    if (dash.length > 0) {
      String lengths =
          Arrays.stream(dash).mapToObj(SvgSurface::number).collect(Collectors.joining(" "));
      out.append(" stroke-dasharray=\"").append(lengths).append('"');
    }
    out.append("/>\n");
  }

  private static String circle(double x, double y, double radius) {
    return attributes("<circle", "cx", number(x), "cy", number(y), "r", number(radius));
  }

  private static String attributes(String element, String... namesAndValues) {
    StringBuilder text = new StringBuilder(element);
    for (int i = 0; i < namesAndValues.length; i += 2) {
      text.append(' ').append(namesAndValues[i]).append("=\"");
      text.append(namesAndValues[i + 1]).append('"');
    }
    return text.toString();
  }

  private static String points(double[] xs, double[] ys) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < xs.length; i++) {
      text.append(i == 0 ? "" : " ").append(point(xs[i], ys[i]));
    }
    return text.toString();
  }

  private static String point(double x, double y) {
    return number(x) + "," + number(y);
  }

  private static String number(double value) {
    // Formatting with a pattern would take a fifth of the time of a whole report.
    return BigDecimal.valueOf(value)
        .setScale(2, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }

  private static String escaped(String words) {
    return words
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
