package blindlap.paper;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.compute.OrderSeeds;
import blindlap.desk.Keys;
import blindlap.desk.RecordedDay;
import blindlap.desk.Sheets;
import blindlap.desk.StepsTestDay;
import blindlap.desk.TestDay;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class SheetsTest {
  /** Orders that are compared, of eight stints at most 50; more by -Dorders=200. */
  private static final int ORDERS = Integer.getInteger("orders", 20);

  /** Where pictures of sheets go, to be looked at; null keeps none. */
  private static final @Nullable String PICTURES = System.getProperty("blindlap.pictures");

  static Stream<Arguments> days() {
    return Stream.of(
            TestDay.EIGHT,
            TestDay.SIXTEEN,
            TestDay.SIXTEEN
                .replace("stints: 16", "stints: 24")
                .replace("lap_budget: 20", "lap_budget: 40")
                .replace("16:38", "20:00"),
            StepsTestDay.NINE,
            StepsTestDay.plan("levels: [3, 5, 7, 9, 11, 14], most: 16", 24),
            FourSetups.plan(16),
            FourSetups.plan(24))
        .flatMap(plan -> Stream.of(Sheets.Paper.values()).map(paper -> Arguments.of(plan, paper)));
  }

  static Map<String, byte[]> sheets(TestDay day, Sheets.Paper paper) {
    Map<String, byte[]> all = new LinkedHashMap<>(day.desk().sheets().open(day.state(), paper));
    Keys.Result.Open open = (Keys.Result.Open) day.desk().keys().helper(day.state(), day.phrase());
    all.put("helper-sheet.pdf", day.desk().sheets().helper(day.state(), open, day.phrase(), paper));
    return all;
  }

  @ParameterizedTest
  @MethodSource("days")
  void everyThingLiesOnThePaperAndEveryScaleIsAHundredMillimetres(
      String plan, Sheets.Paper paper, @TempDir(factory = RamFolder.class) Path folder)
      throws IOException {
    try (TestDay day = new TestDay(folder, plan, 3)) {
      int stints = day.state().plan().stints();
      for (Map.Entry<String, byte[]> sheet : sheets(day, paper).entrySet()) {
        if (stints == 24 && PICTURES != null) {
          keepPictures(sheet, stints + "-" + day.state().plan().setups().size() + "-" + paper);
        }
        PdfMarks marks = PdfMarks.of(sheet.getValue());
        double width = paper == Sheets.Paper.A4 ? 210 : 215.9;
        double height = paper == Sheets.Paper.A4 ? 297 : 279.4;
        assertThat(marks.letters)
            .as(sheet.getKey())
            .isNotEmpty()
            .allMatch(l -> l.x() > 5 && l.right() < width - 5 && l.y() > 5 && l.y() < height - 5);
        assertThat(marks.overprinted()).as(sheet.getKey()).isEmpty();
        if (sheet.getKey().equals("starter-sheet.pdf")) {
          assertThat(marks.pages).as("a page more for two rows").isEqualTo(1);
        }
        if (sheet.getKey().equals("score-sheets.pdf")) {
          List<PdfMarks.Line> scales =
              marks.lines.stream().filter(l -> Math.abs(l.length() - 100) < 1).toList();
          // Two line scales a lap, and two lines to write on that are as long.
          assertThat(scales).hasSizeGreaterThanOrEqualTo(2 * stints);
          assertThat(scales).allMatch(l -> Math.abs(l.length() - 100) <= 0.2);
        }
      }
    }
  }

  @Test
  void sheetsNameEveryCodeTheCautionsAndNoSetupInOrder(
      @TempDir(factory = RamFolder.class) Path folder) throws IOException {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 3)) {
      Map<String, byte[]> all = sheets(day, Sheets.Paper.A4);
      for (Map.Entry<String, byte[]> sheet : all.entrySet()) {
        String text = PdfMarks.of(sheet.getValue()).text.toString().replaceAll("\\s+", " ");
        assertThat(text).as(sheet.getKey()).contains("The rider may stop at any time");
        if (!sheet.getKey().startsWith("timetable")) {
          day.state().codes().forEach(code -> assertThat(text).contains(String.valueOf(code)));
        }
      }
      String helper = PdfMarks.of(all.get("helper-sheet.pdf")).text.toString();
      assertThat(helper).contains(day.phrase()).contains("Rider: look away").contains("dummy");
      String starter = PdfMarks.of(all.get("starter-sheet.pdf")).text.toString();
      assertThat(starter).doesNotContain("Shock K").doesNotContain("Shock L");
    }
  }

  @Test
  void whatARecorderGivesHasNoColumnAndIsSaidOnce(@TempDir(factory = RamFolder.class) Path folder)
      throws IOException {
    try (TestDay day = new TestDay(folder, RecordedDay.plan("recording", "watch"), 3)) {
      for (Map.Entry<String, byte[]> sheet : sheets(day, Sheets.Paper.A4).entrySet()) {
        if (PICTURES != null) {
          keepPictures(sheet, "recorded");
        }
        PdfMarks marks = PdfMarks.of(sheet.getValue());
        assertThat(marks.overprinted()).as(sheet.getKey()).isEmpty();
        String text = marks.text.toString().replaceAll("\\s+", " ");
        String said = "A recorder on the rider or the bike gives lap time: nothing to write.";
        if (sheet.getKey().equals("starter-sheet.pdf")) {
          assertThat(text).containsOnlyOnce("lap time").contains(said, "upper half");
          assertThat(marks.pages).isEqualTo(1);
        } else {
          assertThat(text).as(sheet.getKey()).doesNotContain("A recorder on the rider");
        }
      }
    }
  }

  @Test
  void sheetsOfAnUnblindedSessionCallItSo(@TempDir(factory = RamFolder.class) Path folder)
      throws IOException {
    String unblinded = TestDay.EIGHT.replace("blinding: {", "blinding: {blinded: false, ");
    for (String plan : List.of(TestDay.EIGHT, unblinded)) {
      try (TestDay day = new TestDay(folder, plan, plan.length())) {
        for (var sheet : day.desk().sheets().open(day.state(), Sheets.Paper.A4).entrySet()) {
          assertThat(PdfMarks.of(sheet.getValue()).text.toString().contains("unblinded"))
              .as(sheet.getKey())
              .isEqualTo(plan.equals(unblinded));
        }
      }
    }
  }

  private void sameForEveryOrder(String plan, int orders, Path folder) {
    Map<String, byte[]> first = null;
    for (long seed : OrderSeeds.of(plan, orders).values()) {
      try (TestDay day = new TestDay(folder, plan, seed)) {
        Map<String, byte[]> now = day.desk().sheets().open(day.state(), Sheets.Paper.A4);
        if (first == null) {
          first = now;
        }
        Map<String, byte[]> expected = first;
        now.forEach((name, bytes) -> assertThat(bytes).as(name).isEqualTo(expected.get(name)));
      }
    }
  }

  @Test
  void riderAndStarterGetTheSameBytesForOrdersOfEightStints(
      @TempDir(factory = RamFolder.class) Path folder) {
    sameForEveryOrder(TestDay.EIGHT, Math.min(50, ORDERS), folder);
  }

  @Test
  void riderAndStarterGetTheSameBytesForOrdersOfSixteenStints(
      @TempDir(factory = RamFolder.class) Path folder) {
    sameForEveryOrder(TestDay.SIXTEEN, ORDERS, folder);
  }

  @Test
  void theRidersSheetsOfAStepsDayAreTheSameForItsOrders(
      @TempDir(factory = RamFolder.class) Path folder) {
    sameForEveryOrder(StepsTestDay.NINE, ORDERS, folder);
  }

  /** Every row of the helper's sheet counts as many clicks, from the level that was on before. */
  @Test
  void theHelpersSheetOfAStepsDayCountsEveryHandlingOut(
      @TempDir(factory = RamFolder.class) Path folder) throws IOException {
    try (TestDay day = new TestDay(folder, StepsTestDay.NINE, 3)) {
      byte[] sheet = Objects.requireNonNull(sheets(day, Sheets.Paper.A4).get("helper-sheet.pdf"));
      String text = PdfMarks.of(sheet).text.toString().replaceAll("\\s+", " ");
      Matcher rows =
          Pattern.compile("(?:(\\d+) in|to the end), (\\d+) out and back, (\\d+) out(, 1 beside)?")
              .matcher(text);
      int before = 0;
      int found = 0;
      for (; rows.find(); found++) {
        int in = rows.group(1) == null ? 0 : Integer.parseInt(rows.group(1));
        int out = Integer.parseInt(rows.group(3));
        int beside = rows.group(4) == null ? 0 : 1;
        assertThat(in).isEqualTo(before);
        assertThat(in + 2 * Integer.parseInt(rows.group(2)) + out + beside).isEqualTo(20);
        before = out;
      }
      assertThat(found).isEqualTo(10);
      assertThat(text)
          .contains("20 clicks at every handling")
          .contains("rebound: 2 to 16 clicks, the maker's limits as you typed them (p. 12)")
          .contains("out of sight and earshot")
          .contains("Setup Shock K")
          .doesNotContain("Setup 4 clicks");
    }
  }

  private static void keepPictures(Map.Entry<String, byte[]> sheet, String name)
      throws IOException {
    Path folder = Files.createDirectories(Path.of(String.valueOf(PICTURES), "sheets"));
    try (PDDocument document = Loader.loadPDF(sheet.getValue())) {
      PDFRenderer renderer = new PDFRenderer(document);
      for (int page = 0; page < Math.min(2, document.getNumberOfPages()); page++) {
        BufferedImage image = renderer.renderImageWithDPI(page, 80);
        String file = sheet.getKey().replace(".pdf", "") + "-" + name + "-" + (page + 1) + ".png";
        ImageIO.write(image, "png", folder.resolve(file).toFile());
      }
    }
  }
}
