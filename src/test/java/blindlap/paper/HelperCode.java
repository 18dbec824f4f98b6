package blindlap.paper;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;

/** The key on a printed helper's sheet: the code to scan, and the rows to type. */
final class HelperCode {
  /**
   * Dots an inch at which a code is looked for. The decoder misses a sound code now and then at one
   * size (seed 32 at 150, 200 and 300, though every module is printed as it should be).
   */
  private static final List<Integer> SCANS = List.of(150, 200, 300, 120, 180, 240);

  private static final Pattern ROW =
      Pattern.compile("(?m)\\b[A-Z]\\d{0,2}: [A-Z0-9 .,-]+ \\*[A-F0-9]{4}\\.");

  private HelperCode() {}

  /** The code on the last page that has one; empty if none can be read. */
  static Optional<String> scanned(byte[] sheet) {
    try (PDDocument document = Loader.loadPDF(sheet)) {
      PDFRenderer renderer = new PDFRenderer(document);
      for (int page = document.getNumberOfPages() - 1; page >= 0; page--) {
        for (int dots : SCANS) {
          Optional<String> found = code(renderer.renderImageWithDPI(page, dots));
          if (found.isPresent()) {
            return found;
          }
        }
      }
      return Optional.empty();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Optional<String> code(BufferedImage image) {
    int width = image.getWidth();
    int height = image.getHeight();
    int[] pixels = image.getRGB(0, 0, width, height, null, 0, width);
    try {
      return Optional.of(
          new QRCodeReader()
              .decode(
                  new BinaryBitmap(
                      new HybridBinarizer(new RGBLuminanceSource(width, height, pixels))),
                  Map.of(DecodeHintType.TRY_HARDER, true))
              .getText());
    } catch (com.google.zxing.ReaderException none) {
      return Optional.empty();
    }
  }

  /** The rows as somebody types them, in the order in which they are read. */
  static String typed(PdfMarks marks) {
    Matcher row = ROW.matcher(marks.text.toString().replace('\n', ' '));
    return row.results().map(r -> r.group()).collect(Collectors.joining("\n"));
  }
}
