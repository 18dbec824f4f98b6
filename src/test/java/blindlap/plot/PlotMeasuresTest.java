package blindlap.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.plot.surface.Box;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Hatching;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Palette;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Stack;
import blindlap.plot.surface.SvgSurface;
import blindlap.plot.surface.TextWidth;
import blindlap.plot.surface.Weight;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

class PlotMeasuresTest {
  private static final List<String> WORDS =
      List.of("0123456789", "m:ss.s", "−2.3 ± 0.64 s", "Quarry loop", "18 × 2 → ≤ ≥", "„Ä“ é ñ č");

  @Test
  void textWidthsAgreeWithThePlatformsOwnReadingOfTheFonts() throws Exception {
    FontRenderContext exact = new FontRenderContext(null, true, true);
    for (Weight weight : Weight.values()) {
      try (InputStream in = Weight.class.getResourceAsStream("/blindlap/fonts/" + weight.file())) {
        Font font = Font.createFont(Font.TRUETYPE_FONT, in).deriveFont(1000f);
        for (String words : WORDS) {
          double advances = 0;
          for (int i = 0; i < words.length(); i++) {
            advances +=
                font.createGlyphVector(exact, words.substring(i, i + 1))
                    .getGlyphMetrics(0)
                    .getAdvanceX();
          }
          assertThat(1000 * TextWidth.of(words, weight)).as(words).isCloseTo(advances, within(1.0));
        }
      }
    }
  }

  @Test
  void allDigitsHaveTheSameWidthSoThatAStopwatchDoesNotJitter() {
    for (Weight weight : Weight.values()) {
      for (char digit = '0'; digit <= '9'; digit++) {
        assertThat(TextWidth.of(String.valueOf(digit), weight))
            .isEqualTo(TextWidth.of("0", weight));
      }
    }
    assertThat(TextWidth.of("7", Weight.REGULAR)).isEqualTo(0.497);
  }

  @Test
  void textReachesItsContrastInEveryTheme() {
    for (Palette palette : Palette.values()) {
      double needed = palette == Palette.SUNLIGHT ? 7 : 4.5;
      for (Ink ink : List.of(Ink.INK, Ink.SECOND, Ink.A, Ink.B, Ink.C, Ink.D)) {
        assertThat(palette.contrast(ink, Ink.PAPER))
            .as(palette + " " + ink)
            .isGreaterThanOrEqualTo(needed);
      }
      for (Ink ground : List.of(Ink.SHEET, Ink.NOISE, Ink.HIGHLIGHT)) {
        Ink text = ground == Ink.HIGHLIGHT ? Ink.ON_HIGHLIGHT : Ink.SECOND;
        assertThat(palette.contrast(text, ground))
            .as(palette + " on " + ground)
            .isGreaterThanOrEqualTo(needed);
      }
      assertThat(palette.contrast(Ink.HATCH, Ink.PAPER)).isGreaterThanOrEqualTo(3);
    }
  }

  @Test
  void contrastIsTheOneOfTheAccessibilityGuidelines() {
    // Values of the table in the design text, computed there by another program.
    assertThat(Palette.PAPER.contrast(Ink.INK, Ink.PAPER)).isCloseTo(15.3, within(0.05));
    assertThat(Palette.PAPER.contrast(Ink.B, Ink.PAPER)).isCloseTo(4.6, within(0.05));
    assertThat(Palette.DARK.contrast(Ink.D, Ink.PAPER)).isCloseTo(12.4, within(0.06));
    assertThat(Palette.SUNLIGHT.contrast(Ink.INK, Ink.PAPER)).isEqualTo(21);
  }

  @Test
  void styleSheetsAndPalettesHaveTheSameColours() throws Exception {
    Map<String, Ink> names =
        Map.ofEntries(
            Map.entry("paper", Ink.PAPER),
            Map.entry("sheet", Ink.SHEET),
            Map.entry("ink", Ink.INK),
            Map.entry("ink2", Ink.SECOND),
            Map.entry("rule", Ink.RULE),
            Map.entry("mark", Ink.HIGHLIGHT),
            Map.entry("on-mark", Ink.ON_HIGHLIGHT),
            Map.entry("noise", Ink.NOISE),
            Map.entry("hatch", Ink.HATCH),
            Map.entry("a", Ink.A),
            Map.entry("b", Ink.B),
            Map.entry("c", Ink.C),
            Map.entry("d", Ink.D));
    for (Palette palette : List.of(Palette.PAPER, Palette.DARK, Palette.SUNLIGHT)) {
      Map<String, String> tokens = tokens(palette.name().toLowerCase(java.util.Locale.ROOT));
      names.forEach(
          (name, ink) ->
              assertThat(tokens).as(palette.name()).containsEntry(name, palette.hex(ink)));
    }
  }

  private static Map<String, String> tokens(String sheet) throws Exception {
    String name = "/blindlap/screen/" + sheet + ".css";
    try (InputStream in = PlotMeasuresTest.class.getResourceAsStream(name)) {
      String css = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      Matcher token = Pattern.compile("-bl-([a-z0-9-]+): (#[0-9A-F]{6});").matcher(css);
      Map<String, String> tokens = new TreeMap<>();
      while (token.find()) {
        tokens.put(token.group(1), token.group(2));
      }
      return tokens;
    }
  }

  @Test
  void ticksAreRoundAndClockTicksLieOnQuarterMinutes() {
    assertThat(Ticks.of(91.2, 96.3, 6, Axis.Counting.CLOCK).values())
        .containsExactly(92.0, 93.0, 94.0, 95.0, 96.0);
    assertThat(Ticks.of(100, 200, 7, Axis.Counting.CLOCK).step()).isEqualTo(15);
    assertThat(Ticks.of(100, 200, 7, Axis.Counting.DECIMAL).step()).isEqualTo(20);
    assertThat(Ticks.of(0, 3, 12, Axis.Counting.WHOLE).values())
        .containsExactly(0.0, 1.0, 2.0, 3.0);
    assertThat(Ticks.of(-0.3, 0.3, 3, Axis.Counting.DECIMAL).values())
        .containsExactly(-0.2, 0.0, 0.2);
  }

  @Test
  void nearEqualMarksArePiledAndDistantOnesAreNot() {
    assertThat(Stack.of(List.of(10.0, 11.0, 50.0, 12.0), 8).levels()).containsExactly(0, 1, 0, 2);
  }

  @Test
  void hatchingStaysInItsBox() {
    Box box = new Box(13, 27, 40, 90);
    double[] ends = Hatching.lines(box);
    assertThat(ends.length).isGreaterThan(16);
    for (int i = 0; i < ends.length; i += 2) {
      assertThat(box.grown(1e-9).contains(new Box(ends[i], ends[i + 1], 0, 0))).isTrue();
    }
    assertThat(ends[4] - ends[0] + ends[5] - ends[1]).isCloseTo(7 * Math.sqrt(2), within(1e-9));
  }

  @Test
  void everySvgIsWellFormedNamesNothingOutsideAndCarriesItsWords() throws Exception {
    Map<String, Drawing> all = new TreeMap<>(Samples.all());
    all.putAll(MoreSamples.all());
    for (Map.Entry<String, Drawing> each : all.entrySet()) {
      String svg = SvgSurface.svg(each.getValue(), 744, 1, Palette.PRINT, each.getKey());
      Element root =
          DocumentBuilderFactory.newInstance()
              .newDocumentBuilder()
              .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)))
              .getDocumentElement();
      assertThat(root.getAttribute("role")).isEqualTo("img");
      assertThat(root.getElementsByTagName("title").item(0).getTextContent())
          .isEqualTo(each.getValue().spoken().sentence());
      assertThat(svg.replace("http://www.w3.org/2000/svg", "")).doesNotContain("://");
      assertThat(svg).doesNotContain("NaN").doesNotContain("Infinity");
    }
  }

  @Test
  void wordsWithMarkupAreEscapedInSvg() {
    Qr code = Qr.of("x", new Spoken("a < b & \"c\"", ""));
    assertThat(SvgSurface.svg(code, 100, 1, Palette.PRINT, "q"))
        .contains("<title id=\"q-t\">a &lt; b &amp; &quot;c&quot;</title>");
    assertThatThrownBy(() -> SvgSurface.svg(code, 100, 1, Palette.PRINT, "q\" onload"))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aQrCodeIsReadBackByAReader() throws Exception {
    String words = "fingerprint 7f3a 91c4 … e20b";
    Qr code = Qr.of(words, new Spoken("code", ""));
    int module = 4;
    int side = (code.size() + 8) * module;
    int[] pixels = new int[side * side];
    for (int y = 0; y < side; y++) {
      for (int x = 0; x < side; x++) {
        int column = x / module - 4;
        int row = y / module - 4;
        boolean inside = column >= 0 && row >= 0 && column < code.size() && row < code.size();
        pixels[y * side + x] = inside && code.dark(column, row) ? 0xFF000000 : 0xFFFFFFFF;
      }
    }
    BinaryBitmap picture =
        new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(side, side, pixels)));
    assertThat(new QRCodeReader().decode(picture).getText()).isEqualTo(words);
  }

  @Test
  void aCodeThatIsTooLongIsRefused() {
    assertThatThrownBy(() -> Qr.of("x".repeat(4000), new Spoken("code", "")))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("4000 bytes are too long for one code");
  }
}
