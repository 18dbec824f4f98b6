package blindlap.paper;

import java.awt.Color;
import java.awt.geom.Point2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.function.ToDoubleFunction;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** Reads back what stands on a PDF's pages: lines and texts with their places in millimetres. */
final class PdfMarks {
  /** A straight line. */
  record Line(int page, double x1, double y1, double x2, double y2) {
    double length() {
      return Math.hypot(x2 - x1, y2 - y1);
    }
  }

  /**
   * A character.
   *
   * @param y its baseline
   * @param size of the print, in points
   */
  record Letter(int page, String text, double x, double right, double y, double size) {
    /** Where a capital of this size ends above. */
    double top() {
      return y - CAPITAL * size * MM;
    }
  }

  private static final double MM = 25.4 / 72;

  /** Operators that choose a colour. */
  private static final Set<String> COLOURS =
      Set.of("g", "G", "rg", "RG", "k", "K", "sc", "SC", "scn", "SCN", "cs", "CS");

  /** Height of a capital as a share of the size of the print (Source Sans). */
  private static final double CAPITAL = 0.66;

  /** Baselines of two lines of the smallest print lie further apart, in millimetres. */
  private static final double LINE = 2.5;

  /** Letters beside one another may touch by so much. */
  private static final double CLOSE = 0.3;

  final List<Line> lines = new ArrayList<>();
  final List<Letter> letters = new ArrayList<>();
  final StringBuilder text = new StringBuilder();

  /** Colours of everything drawn, as red, green and blue. */
  final Set<Color> colours = new HashSet<>();

  int pages;

  static PdfMarks of(byte[] pdf) throws IOException {
    PdfMarks marks = new PdfMarks();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      marks.pages = document.getNumberOfPages();
      for (int i = 0; i < marks.pages; i++) {
        marks.new Engine(document.getPage(i), i + 1).run();
      }
      PDFTextStripper stripper =
          new PDFTextStripper() {
            @Override
            protected void writeString(String string, List<TextPosition> positions) {
              for (TextPosition at : positions) {
                marks.letters.add(
                    new Letter(
                        getCurrentPageNo(),
                        at.getUnicode(),
                        at.getXDirAdj() * MM,
                        (at.getXDirAdj() + at.getWidthDirAdj()) * MM,
                        at.getYDirAdj() * MM,
                        at.getFontSize()));
              }
              marks.text.append(string).append('\n');
            }
          };
      stripper.getText(document);
    }
    return marks;
  }

  /** Letters that are printed over one another. */
  List<String> overprinted() {
    return meeting(Letter::y, (one, other) -> other.y - one.y > LINE);
  }

  /** Letters that reach into one another, whatever their sizes. */
  List<String> covered() {
    return meeting(Letter::top, (one, other) -> other.top() > one.y - CLOSE);
  }

  /** Letters that share width, until one further down the page is past the first. */
  private List<String> meeting(ToDoubleFunction<Letter> height, BiPredicate<Letter, Letter> past) {
    List<Letter> sorted =
        letters.stream()
            .filter(l -> !l.text.isBlank())
            .sorted(Comparator.comparingInt(Letter::page).thenComparingDouble(height))
            .toList();
    List<String> found = new ArrayList<>();
    for (int i = 0; i < sorted.size(); i++) {
      Letter one = sorted.get(i);
      for (int j = i + 1; j < sorted.size(); j++) {
        Letter other = sorted.get(j);
        if (other.page != one.page || past.test(one, other)) {
          break;
        }
        double common = Math.min(one.right, other.right) - Math.max(one.x, other.x);
        if (common > CLOSE) {
          found.add("page " + one.page + ": '" + one.text + "' over '" + other.text + "'");
        }
      }
    }
    return found;
  }

  /** The words of a page, with one space between them. */
  String page(int number) {
    StringBuilder words = new StringBuilder();
    Letter before = null;
    for (Letter letter : letters) {
      if (letter.page == number) {
        boolean apart =
            before != null
                && (Math.abs(before.y - letter.y) > CLOSE || letter.x - before.right > 2 * CLOSE);
        words.append(apart ? " " : "").append(letter.text);
        before = letter;
      }
    }
    return words.toString().replaceAll("\\s+", " ");
  }

  /** Everything with its place to a hundredth of a millimetre, to compare two files. */
  String geometry() {
    StringBuilder out = new StringBuilder();
    lines.forEach(
        l ->
            out.append(
                String.format(
                    Locale.ROOT, "%d %.2f %.2f %.2f %.2f%n", l.page, l.x1, l.y1, l.x2, l.y2)));
    letters.forEach(
        l -> out.append(String.format(Locale.ROOT, "%d %s %.2f %.2f%n", l.page, l.text, l.x, l.y)));
    return out.toString();
  }

  private final class Engine extends PDFGraphicsStreamEngine {
    private final int number;
    private Point2D.Float at = new Point2D.Float();

    Engine(PDPage page, int number) {
      super(page);
      this.number = number;
    }

    void run() throws IOException {
      processPage(getPage());
    }

    @Override
    protected void processOperator(Operator operator, List<COSBase> operands) throws IOException {
      super.processOperator(operator, operands);
      if (COLOURS.contains(operator.getName())) {
        colours.add(new Color(getGraphicsState().getNonStrokingColor().toRGB()));
        colours.add(new Color(getGraphicsState().getStrokingColor().toRGB()));
      }
    }

    @Override
    public void moveTo(float right, float up) {
      at = new Point2D.Float(right, up);
    }

    @Override
    public void lineTo(float right, float up) {
      double top = getPage().getMediaBox().getHeight();
      lines.add(new Line(number, at.x * MM, (top - at.y) * MM, right * MM, (top - up) * MM));
      at = new Point2D.Float(right, up);
    }

    @Override
    public Point2D getCurrentPoint() {
      return at;
    }

    @Override
    public void appendRectangle(Point2D p0, Point2D p1, Point2D p2, Point2D p3) {}

    @Override
    public void drawImage(PDImage image) {}

    @Override
    public void clip(int windingRule) {}

    @Override
    public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {}

    @Override
    public void closePath() {}

    @Override
    public void endPath() {}

    @Override
    public void strokePath() {}

    @Override
    public void fillPath(int windingRule) {}

    @Override
    public void fillAndStrokePath(int windingRule) {}

    @Override
    public void shadingFill(COSName name) {}
  }
}
