package blindlap.paper;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Sheets;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.RandomPlans;
import blindlap.seal.HelperSchedule;
import blindlap.seal.SessionKind;
import blindlap.wording.day.Words;
import java.awt.Color;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What stands on the sheets of any day, read back from the finished pages. */
class RandomSheetsTest {
  /** Seeds that lie side by side begin alike, unless they are spread first. */
  private static final long MIXED = 0x9E3779B97F4A7C15L;

  /** Days in every build; more with {@code -Dsheets=500} (DEVELOPERS.md). */
  private static final int DAYS = Integer.getInteger("sheets", 8);

  private static final List<Printed> KEPT = new ArrayList<>();

  private static final double MARGIN = 14;
  private static final double BODY = 10.5;

  /** A day with its sheets as they were printed. */
  private record Printed(
      long seed,
      SealedDay day,
      Sheets.Paper paper,
      Map<String, byte[]> files,
      Map<String, PdfMarks> read) {
    Plan plan() {
      return day.state().plan();
    }

    PdfMarks marks(String file) {
      return read.computeIfAbsent(file, name -> marks(files.get(name)));
    }

    private static PdfMarks marks(byte[] pdf) {
      try {
        return PdfMarks.of(pdf);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    @Override
    public String toString() {
      return "sheets of seed " + seed + " on " + paper;
    }
  }

  private static Plan plan(long seed) {
    return RandomPlans.comparison(new Random(seed * MIXED));
  }

  private static SessionKind kind(long seed) {
    return seed % 4 == 0 ? SessionKind.nullRun((int) (seed / 4 % 2)) : SessionKind.comparison();
  }

  private static Stream<Printed> all() {
    if (Integer.getInteger("sheets") != null) {
      return LongStream.rangeClosed(1, DAYS).mapToObj(RandomSheetsTest::printed);
    }
    if (KEPT.isEmpty()) {
      LongStream.rangeClosed(1, DAYS).mapToObj(RandomSheetsTest::printed).forEach(KEPT::add);
    }
    return KEPT.stream();
  }

  private static Printed printed(long seed) {
    SealedDay day = new SealedDay(plan(seed), kind(seed), seed);
    Sheets.Paper paper = Sheets.Paper.values()[(int) (seed % 2)];
    return new Printed(seed, day, paper, day.sheets(paper), new HashMap<>());
  }

  private static int count(String word, PdfMarks marks) {
    String letters =
        marks.letters.stream().map(PdfMarks.Letter::text).collect(Collectors.joining());
    return letters.split(Pattern.quote(word), -1).length - 1;
  }

  @Test
  void theCodeForThePlateStandsLargeOnTheScoreSheetOfEveryScoredLapInOrder() {
    all()
        .forEach(
            printed -> {
              PdfMarks marks = printed.marks("score-sheets.pdf");
              String large =
                  marks.letters.stream()
                      .filter(l -> l.size() > 70)
                      .map(PdfMarks.Letter::text)
                      .collect(Collectors.joining());
              assertThat(large)
                  .as("%s", printed)
                  .isEqualTo(codes(printed, printed.plan().laps().scored()));
            });
  }

  private static String codes(Printed printed, int times) {
    return printed.day().state().codes().stream()
        .map(code -> String.valueOf(code).repeat(times))
        .collect(Collectors.joining());
  }

  /** Lines of body print that begin with a number and go on with a code, by their parts. */
  private static List<List<String>> rows(PdfMarks marks, double left) {
    Map<String, List<PdfMarks.Letter>> lines = new LinkedHashMap<>();
    marks.letters.stream()
        .filter(l -> Math.abs(l.size() - BODY) < 0.1)
        .forEach(
            l ->
                lines
                    .computeIfAbsent(l.page() + " " + Math.round(l.y() * 5), k -> new ArrayList<>())
                    .add(l));
    List<List<String>> rows = new ArrayList<>();
    for (List<PdfMarks.Letter> line : lines.values()) {
      String number = words(line, left - 0.5, left + 11.5);
      String code = words(line, left + 11.5, left + 22.5);
      if (number.matches("\\d+") && code.matches("\\d{3}")) {
        rows.add(List.of(number, code, words(line, left + 22.5, 300)));
      }
    }
    return rows;
  }

  private static String words(List<PdfMarks.Letter> line, double from, double to) {
    return line.stream()
        .filter(l -> l.x() >= from && l.x() < to)
        .map(PdfMarks.Letter::text)
        .collect(Collectors.joining())
        .strip();
  }

  @Test
  void theStarterHasOneRowForEveryLapWithTheCodeOfItsStint() {
    all()
        .forEach(
            printed -> {
              int per = printed.plan().laps().perStint();
              List<List<String>> rows = rows(printed.marks("starter-sheet.pdf"), MARGIN);
              assertThat(rows.stream().map(row -> row.get(0)))
                  .as("%s", printed)
                  .containsExactlyElementsOf(
                      IntStream.rangeClosed(1, printed.plan().stints() * per)
                          .mapToObj(String::valueOf)
                          .toList());
              assertThat(rows.stream().map(row -> row.get(1)).collect(Collectors.joining()))
                  .as("%s", printed)
                  .isEqualTo(codes(printed, per));
            });
  }

  @Test
  void everyMeasureStandsOnTheSheetOfWhoeverFillsItInAndOnNoOther() {
    all()
        .forEach(
            printed -> {
              Plan plan = printed.plan();
              PdfMarks rider = printed.marks("score-sheets.pdf");
              PdfMarks starter = printed.marks("starter-sheet.pdf");
              PdfMarks timetable = printed.marks("timetable.pdf");
              PdfMarks helper = printed.marks("helper-sheet.pdf");
              for (int i = 0; i < plan.measures().size(); i++) {
                String word = RandomPlans.measureWord(i);
                Measure.Kind kind = plan.measures().get(i).kind();
                boolean time = kind == Measure.Kind.LAP_TIME || kind == Measure.Kind.SECTOR_TIME;
                assertThat(count(word, rider))
                    .as("%s: %s for the rider", printed, kind)
                    .isEqualTo(time ? 0 : plan.stints() * plan.laps().scored());
                assertThat(count(word, starter))
                    .as("%s: %s for the starter", printed, kind)
                    .isEqualTo(time ? starter.pages : 0);
                assertThat(count(word, timetable) + count(word, helper)).isZero();
              }
            });
  }

  @Test
  void theRiderIsAskedForAGuessOnceAStintWithEverySetupNamedAlike() {
    all()
        .forEach(
            printed -> {
              Plan plan = printed.plan();
              for (int setup = 0; setup < plan.setups().size(); setup++) {
                String word = RandomPlans.setupWord(setup);
                assertThat(count(word, printed.marks("score-sheets.pdf")))
                    .as("%s", printed)
                    .isEqualTo(plan.blinding().guesses() ? plan.stints() : 0);
                assertThat(count(word, printed.marks("starter-sheet.pdf"))).isZero();
                assertThat(count(word, printed.marks("timetable.pdf"))).isZero();
              }
            });
  }

  @Test
  void riderAndStarterGetTheSameBytesWhateverOrderWasSealed() {
    for (long seed = 1; seed <= DAYS; seed++) {
      Plan plan = plan(seed);
      Sheets.Paper paper = Sheets.Paper.values()[(int) (seed % 2)];
      SealedDay one = new SealedDay(plan, SessionKind.comparison(), seed);
      SealedDay other = new SealedDay(plan, SessionKind.nullRun(1), seed + 1000);
      Map<String, byte[]> expected = one.open(paper);
      other
          .open(paper)
          .forEach((file, bytes) -> assertThat(bytes).as(file).isEqualTo(expected.get(file)));
      assertThat(other.helper(paper)).isNotEqualTo(one.helper(paper));
    }
  }

  @Test
  void theHelperReadsWhatToFitForEveryStintAndWhetherTheSwapIsReal() {
    all()
        .forEach(
            printed -> {
              List<HelperSchedule.Fit> fits = printed.day().schedule().fits();
              List<List<String>> rows = rows(printed.marks("helper-sheet.pdf"), 15);
              assertThat(rows).as("%s", printed).hasSameSizeAs(fits);
              for (int i = 0; i < fits.size(); i++) {
                HelperSchedule.Fit fit = fits.get(i);
                assertThat(rows.get(i).subList(0, 2))
                    .containsExactly(String.valueOf(i + 1), String.valueOf(fit.code()));
                assertThat(fitted(rows.get(i).get(2)))
                    .as("%s, stint %d", printed, i + 1)
                    .isEqualTo(fit.fitted());
                boolean first = i == 0 && printed.plan().laps().warmUp() == 0;
                String swap = fit.swap() == HelperSchedule.Swap.REAL ? "real" : "dummy";
                assertThat(rows.get(i).get(2)).endsWith(first ? "first fit" : swap);
              }
              String all = printed.marks("helper-sheet.pdf").page(1);
              Matcher warm = Pattern.compile("warm-up.{0,30}?Sq(\\d)zk").matcher(all);
              assertThat(warm.find()).isEqualTo(printed.plan().laps().warmUp() > 0);
              if (printed.plan().laps().warmUp() > 0) {
                assertThat(Integer.parseInt(warm.group(1)))
                    .isEqualTo(printed.day().schedule().warmUp());
              }
              assertThat(all).contains(printed.day().phrase());
            });
  }

  private static int fitted(String words) {
    Matcher name = Pattern.compile("Sq(\\d)zk").matcher(words);
    assertThat(name.find()).as(words).isTrue();
    int setup = Integer.parseInt(name.group(1));
    assertThat(name.find()).as(words).isFalse();
    return setup;
  }

  @Test
  void theCodeToScanAndTheTypedRowsHoldTheSameDayAsTheTable() {
    all()
        .forEach(
            printed -> {
              assertThat(scanned(printed)).as("%s", printed).isEqualTo(printed.day().payload());
              assertThat(printed.day().scheduleOf(scanned(printed)).fits())
                  .isEqualTo(printed.day().schedule().fits());
              String typed = HelperCode.typed(printed.marks("helper-sheet.pdf"));
              assertThat(printed.day().scheduleOf(typed).fits())
                  .as("%s, typed", printed)
                  .isEqualTo(printed.day().schedule().fits());
            });
  }

  private static String scanned(Printed printed) {
    return HelperCode.scanned(printed.files().get("helper-sheet.pdf"))
        .orElseThrow(() -> new AssertionError(printed + ": no code can be scanned"));
  }

  @Test
  void noTextLeavesTheMarginsAndNoneLiesOverAnother() {
    all()
        .forEach(
            printed -> {
              double width = printed.paper() == Sheets.Paper.A4 ? 210 : 215.9;
              double height = printed.paper() == Sheets.Paper.A4 ? 297 : 279.4;
              for (String file : printed.files().keySet()) {
                boolean helper = file.startsWith("helper");
                double left = (helper ? 15 : MARGIN) - 0.6;
                double right = width - (helper ? 10 : MARGIN);
                PdfMarks marks = printed.marks(file);
                assertThat(
                        marks.letters.stream()
                            .filter(l -> !l.text().isBlank())
                            .filter(
                                l ->
                                    l.x() < left
                                        || l.right() > right + 0.3
                                        || l.top() < (helper ? 4 : MARGIN - 2)
                                        || l.y() > height - 9))
                    .as("%s, %s", printed, file)
                    .isEmpty();
                assertThat(marks.overprinted()).as("%s, %s", printed, file).isEmpty();
                assertThat(marks.covered()).as("%s, %s", printed, file).isEmpty();
              }
            });
  }

  @Test
  void theCautionsStandOnEveryPageOfEverySheetInBlackOnWhite() {
    String ride = Words.of("cautions").say("ride");
    String manual = Words.of("cautions").say("short");
    all()
        .forEach(
            printed -> {
              Map<String, PdfMarks> sheets = new TreeMap<>();
              printed.files().keySet().forEach(file -> sheets.put(file, printed.marks(file)));
              sheets.forEach(
                  (file, marks) -> {
                    for (int page = 1; page <= marks.pages; page++) {
                      assertThat(marks.page(page)).as("%s, %s", printed, file).contains(ride);
                      if (file.startsWith("helper")) {
                        assertThat(marks.page(page)).as("%s", printed).contains(manual);
                      }
                    }
                    assertThat(marks.colours)
                        .isNotEmpty()
                        .allMatch(RandomSheetsTest::isGray, "black, white or gray");
                  });
            });
  }

  static boolean isGray(Color colour) {
    return Math.abs(colour.getRed() - colour.getGreen()) <= 1
        && Math.abs(colour.getGreen() - colour.getBlue()) <= 1;
  }

  @Test
  void sheetsOfAnUnblindedDaySaySoAndOthersDoNot() {
    all()
        .forEach(
            printed ->
                Stream.of("score-sheets.pdf", "starter-sheet.pdf", "timetable.pdf")
                    .forEach(
                        file ->
                            assertThat(printed.marks(file).page(1).contains("unblinded"))
                                .as("%s, %s", printed, file)
                                .isEqualTo(!printed.plan().blinding().blinded())));
  }
}
