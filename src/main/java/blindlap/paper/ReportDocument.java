package blindlap.paper;

import blindlap.paper.sheet.PlainFont;
import blindlap.wording.day.Shown;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FSFontUseCase;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/** A written report as a self-contained HTML page and as PDF: one source, two forms. */
public final class ReportDocument {
  /** Stands where the styles go, so that the fonts in them are not searched through. */
  private static final String STYLE_PLACE = "/* styles */";

  private static final String FONTS = "/blindlap/fonts/";

  private record Face(String file, String family, int weight, FontStyle style) {}

  private static final List<Face> FACES =
      List.of(
          new Face("SourceSans3_400Regular.ttf", "Source Sans 3", 400, FontStyle.NORMAL),
          new Face("SourceSans3_600SemiBold.ttf", "Source Sans 3", 600, FontStyle.NORMAL),
          new Face("SourceSans3_700Bold.ttf", "Source Sans 3", 700, FontStyle.NORMAL),
          new Face("SourceSerif4_400Regular.ttf", "Source Serif 4", 400, FontStyle.NORMAL),
          new Face("SourceSerif4_600SemiBold.ttf", "Source Serif 4", 600, FontStyle.NORMAL));

  private final ReportPage page;
  private final String title;
  private final ReportInput.Ink ink;
  private final String engine;

  /**
   * @param page the page, written
   * @param title name of the document
   * @param ink colour, or black on white
   * @param engine version of the program
   */
  ReportDocument(ReportPage page, String title, ReportInput.Ink ink, String engine) {
    this.page = page;
    this.title = title;
    this.ink = ink;
    this.engine = engine;
  }

  /** One HTML page that needs nothing else; its fonts are in it. */
  public String html() {
    StringBuilder faces = new StringBuilder();
    for (Face face : FACES) {
      faces.append("@font-face{font-family:'").append(face.family()).append("';font-weight:");
      faces.append(face.weight()).append(";src:url(data:font/ttf;base64,");
      faces.append(Base64.getEncoder().encodeToString(bytes(face.file()))).append(")}\n");
    }
    // Inside HTML a picture needs no name space, so that no address at all stands in the page.
    return "<!DOCTYPE html>\n"
        + Shown.text(document("", STYLE_PLACE, page.body()))
            .replace(" xmlns=\"http://www.w3.org/2000/svg\"", "")
            .replaceAll("(<(?:meta|br)[^>]*) />", "$1>")
            .replaceAll(" style=\"width:[^\"]*\"", "")
            .replace(STYLE_PLACE, faces + style("report.css") + style("report-screen.css"));
  }

  /** The page in text only: what the golden files hold. */
  public String body() {
    return page.body();
  }

  private String document(String more, String style, String body) {
    return "<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\" />\n"
        + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\" />\n"
        + Html.element("title", title)
        + more
        + "<style>\n"
        + style
        + "</style>\n</head>\n<body class=\""
        + (ink == ReportInput.Ink.BLACK ? "black" : "colour")
        + "\">\n"
        + body
        + "</body>\n</html>\n";
  }

  /** The PDF, with bookmarks, language and alternative texts. */
  public byte[] pdf() {
    XRLog.setLoggingEnabled(false);
    ByteArrayOutputStream out = new ByteArrayOutputStream(1 << 20);
    String head =
        "<meta name=\"description\" content=\""
            + Html.text(title)
            + "\" />\n<meta name=\"subject\" content=\""
            + Html.text(title)
            + "\" />\n"
            + bookmarks();
    try (BatikSVGDrawer drawer = new BatikSVGDrawer()) {
      PdfRendererBuilder builder = new PdfRendererBuilder();
      for (Face face : FACES) {
        builder.useFont(
            () -> new ByteArrayInputStream(PlainFont.of(bytes(face.file()))),
            face.family(),
            face.weight(),
            face.style(),
            true,
            uses(face));
      }
      builder.useSVGDrawer(drawer);
      builder.usePdfUaAccessibility(true);
      builder.withProducer("Blindlap " + engine);
      builder.withHtmlContent(
          Shown.inLetters(
              document(head, style("report.css") + style("report-print.css"), page.bodyForPaper())),
          null);
      builder.toStream(out);
      builder.run();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  /** Pictures are set in the sans only; every font a picture may use takes time to load. */
  private static Set<FSFontUseCase> uses(Face face) {
    return face.family().contains("Sans") && face.weight() < 700
        ? EnumSet.of(FSFontUseCase.DOCUMENT, FSFontUseCase.SVG)
        : EnumSet.of(FSFontUseCase.DOCUMENT);
  }

  private String bookmarks() {
    StringBuilder out = new StringBuilder("<bookmarks>\n");
    for (ReportPage.Heading heading : page.headings()) {
      if (heading.level() == 2) {
        out.append("<bookmark name=\"").append(Html.text(heading.text()));
        out.append("\" href=\"#").append(heading.id()).append("\" />\n");
      }
    }
    return out.append("</bookmarks>\n").toString();
  }

  private static InputStream stream(String font) {
    return Objects.requireNonNull(ReportDocument.class.getResourceAsStream(FONTS + font), font);
  }

  private static byte[] bytes(String font) {
    try (InputStream in = stream(font)) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String style(String name) {
    try (InputStream in =
        Objects.requireNonNull(
            ReportDocument.class.getResourceAsStream("/blindlap/paper/" + name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
