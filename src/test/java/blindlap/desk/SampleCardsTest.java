package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plot.CardFormat;
import blindlap.sample.SampleSession;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.metadata.IIOMetadataNode;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.xml.sax.SAXException;

/**
 * The cards of the invented sessions: every verdict, pairs, counts, levels, telling runs, and what
 * is not a whole blind day. With {@code -Dblindlap.pictures=FOLDER} they are written there.
 */
class SampleCardsTest {
  private static final Pattern NUMBER = Pattern.compile("[.]?\\d[\\d.:,]*(?<![.:,])");
  private static final Pattern SIZE = Pattern.compile("font-size=\"([0-9.]+)\"");

  static List<String> samples() {
    return SampleSession.ALL;
  }

  @ParameterizedTest
  @MethodSource("samples")
  void everyCardSaysWhatItsGoldenFileSays(String name) {
    SampleDays.ride(
        name,
        (desk, state) -> {
          Map<String, byte[]> files = desk.reviews().card(state, false);
          GoldenCards.check(name, files);
          String prefix = "card-" + state.plan().day() + "-" + state.id().brief();
          assertThat(files.keySet())
              .containsExactly(
                  prefix + "-1600x900.png",
                  prefix + "-1600x900.svg",
                  prefix + "-1080x1350.png",
                  prefix + "-1080x1350.svg",
                  prefix + ".txt");
          String id = state.id().text();
          String text = text(files, prefix + ".txt");
          assertThat(text).doesNotContain(id);
          numbers(text, String.join("\n", desk.reviews().text(state)));
          for (CardFormat format : CardFormat.values()) {
            String size = "-" + format.width() + "x" + format.height();
            picture(files.get(prefix + size + ".png"), format, text);
            svg(files.get(prefix + size + ".svg"), text, format == CardFormat.TALL ? 18 : 16);
          }
        });
  }

  /** Every number of the card stands in the review, but for its day and what nobody compares. */
  private static void numbers(String card, String review) {
    String said =
        card.lines()
            .filter(line -> !line.startsWith("fingerprint") && !line.startsWith("The picture: "))
            .collect(Collectors.joining("\n"))
            .replaceAll("\\d+ [A-Z][a-z]+ 20\\d\\d", "")
            .replaceAll("Conditions: .*", "");
    List<String> question =
        NUMBER
            .matcher(card.lines().findFirst().orElseThrow())
            .results()
            .map(MatchResult::group)
            .toList();
    List<String> all = NUMBER.matcher(review).results().map(MatchResult::group).toList();
    assertThat(NUMBER.matcher(said).results().map(MatchResult::group))
        .isNotEmpty()
        .allMatch(number -> all.contains(number) || question.contains(number));
  }

  private static void picture(byte[] png, CardFormat format, String text) {
    try {
      BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
      assertThat(image.getWidth()).isEqualTo(format.width());
      assertThat(image.getHeight()).isEqualTo(format.height());
      ImageReader reader = ImageIO.getImageReadersByFormatName("png").next();
      reader.setInput(ImageIO.createImageInputStream(new ByteArrayInputStream(png)));
      IIOMetadataNode tree =
          (IIOMetadataNode) reader.getImageMetadata(0).getAsTree("javax_imageio_png_1.0");
      Element entry = (Element) tree.getElementsByTagName("iTXtEntry").item(0);
      assertThat(entry.getAttribute("keyword")).isEqualTo("Description");
      assertThat(entry.getAttribute("text")).isEqualTo(text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void svg(byte[] svg, String text, double letters) {
    try {
      Document document =
          DocumentBuilderFactory.newInstance()
              .newDocumentBuilder()
              .parse(new ByteArrayInputStream(svg));
      String title = document.getElementsByTagName("title").item(0).getTextContent();
      assertThat(text.lines().skip(1).findFirst()).contains(title);
      assertThat(document.getElementsByTagName("desc").item(0).getTextContent())
          .isEqualTo(String.join(" ", text.lines().toList()));
      String whole = new String(svg, StandardCharsets.UTF_8);
      assertThat(whole.replace("http://www.w3.org/2000/svg", "")).doesNotContain("http");
      assertThat(svg.length).isLessThan(300_000);
      assertThat(SIZE.matcher(whole).results().mapToDouble(r -> Double.parseDouble(r.group(1))))
          .allMatch(size -> size >= letters);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (SAXException | ParserConfigurationException e) {
      throw new AssertionError(e);
    }
  }

  private static String text(Map<String, byte[]> files, String name) {
    return new String(files.get(name), StandardCharsets.UTF_8);
  }
}
