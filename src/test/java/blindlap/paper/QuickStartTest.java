package blindlap.paper;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.paper.ride.QuickStartSheet;
import blindlap.paper.sheet.SheetFormat;
import blindlap.wording.day.Words;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The page for a helper who has never seen the program. */
class QuickStartTest {
  private static final @Nullable String PICTURES = System.getProperty("blindlap.pictures");

  @ParameterizedTest
  @EnumSource(SheetFormat.class)
  void allOfItStandsOnOnePageAboveTheCautions(SheetFormat format) throws IOException {
    byte[] pdf = QuickStartSheet.pdf(format);
    picture(pdf, format);
    PdfMarks marks = PdfMarks.of(pdf);
    assertThat(marks.pages).isEqualTo(1);
    assertThat(marks.overprinted()).isEmpty();
    assertThat(marks.letters)
        .allMatch(
            l ->
                l.x() > 9
                    && l.right() < format.width() - 9
                    && l.y() > 9
                    && l.y() < format.height() - 5);

    String text = marks.text.toString().replaceAll("\\s+", " ");
    Words quick = Words.of("quick");
    quick.keys().stream()
        .filter(key -> !key.equals("head"))
        .forEach(key -> assertThat(text).as(key).contains(quick.say(key)));
    String cautions = Words.of("cautions").say("short") + " " + Words.of("cautions").say("ride");
    assertThat(text).contains(cautions);
    assertThat(QuickStartSheet.pdf(format)).as("the same bytes again").isEqualTo(pdf);
  }

  private static void picture(byte[] pdf, SheetFormat format) throws IOException {
    if (PICTURES == null) {
      return;
    }
    Path folder = Files.createDirectories(Path.of(PICTURES, "sheets"));
    try (PDDocument document = Loader.loadPDF(pdf)) {
      BufferedImage image = new PDFRenderer(document).renderImageWithDPI(0, 100);
      ImageIO.write(image, "png", folder.resolve("quick-start-" + format + ".png").toFile());
    }
  }
}
