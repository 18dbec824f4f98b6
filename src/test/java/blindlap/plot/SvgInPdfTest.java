package blindlap.plot;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Palette;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;
import blindlap.plot.surface.SvgSurface;
import blindlap.plot.surface.Weight;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Test;

/** The third surface is the SVG inside the page that becomes the PDF. */
class SvgInPdfTest {
  private static final String FACES =
      Arrays.stream(Weight.values())
          .map(
              weight ->
                  "@font-face{font-family:'"
                      + weight.family()
                      + "';font-weight:"
                      + weight.number()
                      + ";src:url('"
                      + Weight.class.getResource("/blindlap/fonts/" + weight.file())
                      + "')}")
          .collect(Collectors.joining());

  /** Words in one weight, nothing else. */
  private record Words(Weight weight) implements Drawing {
    @Override
    public Spoken spoken() {
      return new Spoken("words", "");
    }

    @Override
    public double heightFor(double width, double textScale) {
      return 60;
    }

    @Override
    public void draw(Surface surface, double width, double textScale) {
      surface.text("Shock L quicker", 0, 40, Anchor.START, new Face(weight, 40), Ink.INK);
    }
  }

  private static byte[] pdf(Map<String, Drawing> drawings) throws IOException {
    String body =
        drawings.entrySet().stream()
            .map(each -> SvgSurface.svg(each.getValue(), 680, 1, Palette.PRINT, each.getKey()))
            .collect(Collectors.joining("<p> </p>"));
    String html =
        "<!DOCTYPE html><html lang='en'><head><title>t</title><style>"
            + FACES
            + "svg{display:block;page-break-inside:avoid}</style></head><body>"
            + body
            + "</body></html>";
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PdfRendererBuilder builder = new PdfRendererBuilder();
    builder.useSVGDrawer(new BatikSVGDrawer());
    builder.withHtmlContent(html, null);
    builder.toStream(out);
    builder.run();
    return out.toByteArray();
  }

  @Test
  void drawingsBecomeLinesAndNotPixels() throws IOException {
    Map<String, Drawing> all = new TreeMap<>(Samples.all());
    all.putAll(MoreSamples.all());
    byte[] bytes = pdf(all);
    Files.write(
        Files.createDirectories(Path.of("target", "pictures")).resolve("drawings.pdf"), bytes);
    try (PDDocument pdf = Loader.loadPDF(bytes)) {
      assertThat(pdf.getNumberOfPages()).isGreaterThan(3);
      for (PDPage page : pdf.getPages()) {
        for (COSName name : page.getResources().getXObjectNames()) {
          assertThat(page.getResources().isImageXObject(name)).as(name.getName()).isFalse();
        }
      }
    }
  }

  @Test
  void theThreeWeightsStayApartOnPaper() throws IOException {
    long regular = ink(Weight.REGULAR);
    long semibold = ink(Weight.SEMIBOLD);
    long bold = ink(Weight.BOLD);
    assertThat(semibold).isGreaterThan(regular * 11 / 10);
    assertThat(bold).isGreaterThan(semibold * 105 / 100);
  }

  private static long ink(Weight weight) throws IOException {
    try (PDDocument pdf = Loader.loadPDF(pdf(Map.of("w", new Words(weight))))) {
      BufferedImage picture = new PDFRenderer(pdf).renderImageWithDPI(0, 96);
      long dark = 0;
      for (int y = 0; y < picture.getHeight(); y++) {
        for (int x = 0; x < picture.getWidth(); x++) {
          dark += 255 - (picture.getRGB(x, y) & 255);
        }
      }
      return dark;
    }
  }
}
