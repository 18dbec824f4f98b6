package blindlap.paper.sheet;

import blindlap.plot.Qr;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.jspecify.annotations.Nullable;

/**
 * Draws sheets in millimetres from the upper left, black on white, so that a line of 100 mm is 100
 * mm on paper. The same content gives the same bytes.
 */
public final class SheetPen implements AutoCloseable {
  /** Typefaces of the sheets. */
  public enum Face {
    SANS("SourceSans3_400Regular"),
    STRONG("SourceSans3_600SemiBold"),
    BOLD("SourceSans3_700Bold"),
    SERIF("SourceSerif4_600SemiBold");

    private final String file;

    Face(String file) {
      this.file = file;
    }
  }

  private static final double POINTS = 72 / 25.4;
  private static final double LEADING = 1.25;
  private static final double POINT_MM = 25.4 / 72;

  private final SheetFormat format;
  private final PDDocument document = new PDDocument();
  private final Map<Face, Typeface> typefaces = new EnumMap<>(Face.class);
  private @Nullable PDPageContentStream page;

  public SheetPen(SheetFormat format) {
    this.format = format;
    document.setDocumentId(1L); // else it would be drawn from the clock
  }

  /** Something that may fail to be written; in memory it does not. */
  @FunctionalInterface
  private interface Drawing {
    void on(PDPageContentStream stream) throws IOException;
  }

  private void draw(Drawing drawing) {
    try {
      drawing.on(java.util.Objects.requireNonNull(page, "no page was begun"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public double width() {
    return format.width();
  }

  public double height() {
    return format.height();
  }

  /** Begins a page. */
  public void newPage() {
    try {
      end();
      PDPage sheet =
          new PDPage(
              new PDRectangle(
                  (float) (format.width() * POINTS), (float) (format.height() * POINTS)));
      document.addPage(sheet);
      page = new PDPageContentStream(document, sheet);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Draws on a page that was ended, such as how many there are; to be called once all are there.
   *
   * @param number from 1
   */
  public void onPage(int number, Runnable drawing) {
    try {
      end();
      PDPage sheet = document.getPage(number - 1);
      page = new PDPageContentStream(document, sheet, AppendMode.APPEND, false, true);
      drawing.run();
      end();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void end() throws IOException {
    if (page != null) {
      page.close();
      page = null;
    }
  }

  public int pages() {
    return document.getNumberOfPages();
  }

  private float across(double mm) {
    return (float) (mm * POINTS);
  }

  private float up(double mm) {
    return (float) ((format.height() - mm) * POINTS);
  }

  /** Height of a line of text in millimetres. */
  public static double leading(double points) {
    return points * POINT_MM * LEADING;
  }

  /** Read when it is first used: most sheets need three of the four. */
  private Typeface typeface(Face face) {
    return typefaces.computeIfAbsent(face, one -> new Typeface(document, one.file));
  }

  /** Width of words in millimetres. */
  public double width(Face face, double points, String words) {
    return typeface(face).em(words) / 1000 * points * POINT_MM;
  }

  /** Words on one line; y is the baseline. */
  public void text(double x, double y, Face face, double points, String words) {
    text(x, y, face, points, words, 0);
  }

  /**
   * Words in a shade.
   *
   * @param gray 0 black to 1 white
   */
  public void text(double x, double y, Face face, double points, String words, double gray) {
    draw(
        stream -> {
          stream.beginText();
          stream.setFont(typeface(face).font(), (float) points);
          stream.setNonStrokingColor((float) gray);
          stream.newLineAtOffset(across(x), up(y));
          stream.showText(typeface(face).printable(words));
          stream.endText();
        });
  }

  /** Words that end at x. */
  public void textTo(double x, double y, Face face, double points, String words) {
    text(x - width(face, points, words), y, face, points, words);
  }

  /**
   * Words broken into lines of at most this width; a word too long for a line is cut into parts.
   */
  public List<String> lines(double width, Face face, double points, String words) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : words.strip().split("\\s+")) {
      String rest = word;
      String joined = line.isEmpty() ? rest : line + " " + rest;
      if (width(face, points, joined) <= width) {
        line.setLength(0);
        line.append(joined);
        continue;
      }
      if (!line.isEmpty()) {
        lines.add(line.toString());
        line.setLength(0);
      }
      while (width(face, points, rest) > width && rest.length() > 1) {
        int fits = rest.length() - 1;
        while (fits > 1 && width(face, points, rest.substring(0, fits)) > width) {
          fits--;
        }
        lines.add(rest.substring(0, fits));
        rest = rest.substring(fits);
      }
      line.append(rest);
    }
    lines.add(line.toString());
    return lines;
  }

  /**
   * Words in lines from the top.
   *
   * @return the height they take, in millimetres
   */
  public double paragraph(
      double x, double top, double width, Face face, double points, String words) {
    List<String> lines = lines(width, face, points, words);
    double y = top;
    for (String line : lines) {
      text(x, y + points * POINT_MM, face, points, line);
      y += leading(points);
    }
    return lines.size() * leading(points);
  }

  /** Height of words in lines. */
  public double height(double width, Face face, double points, String words) {
    return lines(width, face, points, words).size() * leading(points);
  }

  /** A line; ends are square and exactly where they are said to be. */
  public void line(double x1, double y1, double x2, double y2, double thick) {
    draw(
        stream -> {
          stream.setLineWidth(across(thick));
          stream.setLineCapStyle(0);
          stream.setStrokingColor(0f);
          stream.moveTo(across(x1), up(y1));
          stream.lineTo(across(x2), up(y2));
          stream.stroke();
        });
  }

  /** A dashed line to fold or cut along. */
  public void dashed(double x1, double y, double x2) {
    draw(
        stream -> {
          stream.setLineDashPattern(new float[] {4, 3}, 0);
          stream.setLineWidth(0.7f);
          stream.moveTo(across(x1), up(y));
          stream.lineTo(across(x2), up(y));
          stream.stroke();
          stream.setLineDashPattern(new float[] {}, 0);
        });
  }

  /** An empty box to tick. */
  public void box(double x, double top, double width, double height) {
    draw(
        stream -> {
          stream.setLineWidth(across(0.35));
          stream.setStrokingColor(0f);
          stream.addRect(across(x), up(top + height), across(width), across(height));
          stream.stroke();
        });
  }

  /** A filled area. */
  public void fill(double x, double top, double width, double height, double gray) {
    draw(
        stream -> {
          stream.setNonStrokingColor((float) gray);
          stream.addRect(across(x), up(top + height), across(width), across(height));
          stream.fill();
        });
  }

  /** The setup's mark: disc, triangle, square or diamond, filled or open as on the screen. */
  public void mark(int setup, double x, double y, double r) {
    draw(
        stream -> {
          stream.setNonStrokingColor(0f);
          stream.setStrokingColor(0f);
          stream.setLineWidth(across(r / 3.4));
          switch (setup) {
            case 0 -> disc(stream, x, y, r);
            case 1 -> polygon(stream, x, y - r, x + r, y + 0.78 * r, x - r, y + 0.78 * r);
            case 2 ->
                stream.addRect(
                    across(x - 0.88 * r), up(y + 0.88 * r), across(1.76 * r), across(1.76 * r));
            default -> polygon(stream, x, y - r, x + r, y, x, y + r, x - r, y);
          }
          if (setup % 2 == 0) {
            stream.fill();
          } else {
            stream.closeAndStroke();
          }
        });
  }

  private void polygon(PDPageContentStream stream, double... xy) throws IOException {
    stream.moveTo(across(xy[0]), up(xy[1]));
    for (int i = 2; i < xy.length; i += 2) {
      stream.lineTo(across(xy[i]), up(xy[i + 1]));
    }
  }

  /** A circle of four cubic curves; 0.5523 is 4/3·(√2 − 1). */
  private void disc(PDPageContentStream stream, double x, double y, double r) throws IOException {
    double k = 0.5523 * r;
    stream.moveTo(across(x + r), up(y));
    stream.curveTo(across(x + r), up(y - k), across(x + k), up(y - r), across(x), up(y - r));
    stream.curveTo(across(x - k), up(y - r), across(x - r), up(y - k), across(x - r), up(y));
    stream.curveTo(across(x - r), up(y + k), across(x - k), up(y + r), across(x), up(y + r));
    stream.curveTo(across(x + k), up(y + r), across(x + r), up(y + k), across(x + r), up(y));
  }

  /** A code to scan, its modules in a square of this side. */
  public void qr(Qr code, double x, double top, double side) {
    double module = side / code.size();
    for (int row = 0; row < code.size(); row++) {
      for (int column = 0; column < code.size(); column++) {
        if (code.dark(column, row)) {
          fill(x + column * module, top + row * module, module * 1.01, module * 1.01, 0);
        }
      }
    }
  }

  /** The finished file. */
  public byte[] bytes() {
    try {
      end();
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      document.save(out);
      return out.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() {
    try {
      end();
      document.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
