package blindlap.paper;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.Sheets;
import blindlap.desk.TellingTestDay;
import blindlap.desk.TestDay;
import blindlap.plan.TellingRun;
import blindlap.plan.TellingTask;
import blindlap.seal.SessionKind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Sheets of telling runs: trials whole on their pages, pages counted, nothing of the order. */
class TrialSheetsTest {
  /** Orders that are compared; of three trials there are at most 216. */
  private static final int ORDERS = Integer.getInteger("orders", 100);

  /** Where sheets go, to be looked at; null keeps none. */
  private static final @Nullable String PICTURES = System.getProperty("blindlap.pictures");

  private static final Pattern HEAD =
      Pattern.compile("trials? (\\d+)(?: to (\\d+))? of (\\d+), page (\\d+) of (\\d+)");

  static Stream<Arguments> runs() {
    return Stream.of(
            TellingTestDay.levels(TellingTask.TRIANGLE, 100),
            TellingTestDay.shocks(TellingTask.TRIANGLE, 21),
            TellingTestDay.levels(TellingTask.DUO_TRIO, 24),
            TellingTestDay.shocks(TellingTask.TWO_CHOICE, 7),
            TellingTestDay.scored(TellingTestDay.levels(TellingTask.TRIANGLE, 16)))
        .flatMap(plan -> Stream.of(Sheets.Paper.values()).map(paper -> Arguments.of(plan, paper)));
  }

  @ParameterizedTest
  @MethodSource("runs")
  void everyTrialStandsWholeOnOnePageWhoseHeadNamesIt(
      String plan, Sheets.Paper paper, @TempDir(factory = RamFolder.class) Path folder)
      throws IOException {
    try (TestDay day = new TestDay(folder, plan, 3)) {
      TellingRun run = Objects.requireNonNull(day.state().plan().telling());
      Map<String, byte[]> all = new TreeMap<>(SheetsTest.sheets(day, paper));
      assertThat(all.keySet())
          .containsExactlyInAnyOrder(
              "helper-sheet.pdf", "score-sheets.pdf", "starter-sheet.pdf", "timetable.pdf");
      for (Map.Entry<String, byte[]> sheet : all.entrySet()) {
        if (PICTURES != null) {
          Path to = Files.createDirectories(Path.of(PICTURES, "trials"));
          String name = run.task() + "-" + run.trials() + "-" + paper + "-" + sheet.getKey();
          Files.write(to.resolve(name), sheet.getValue());
        }
        PdfMarks marks = PdfMarks.of(sheet.getValue());
        double width = paper == Sheets.Paper.A4 ? 210 : 215.9;
        double height = paper == Sheets.Paper.A4 ? 297 : 279.4;
        assertThat(marks.letters)
            .as(sheet.getKey())
            .isNotEmpty()
            .allMatch(l -> l.x() > 5 && l.right() < width - 5 && l.y() > 5 && l.y() < height - 5);
        assertThat(marks.overprinted()).as(sheet.getKey()).isEmpty();
        assertThat(marks.covered()).as(sheet.getKey()).isEmpty();
        for (int page = 1; page <= marks.pages; page++) {
          assertThat(marks.page(page))
              .as("%s, page %d", sheet.getKey(), page)
              .contains("page " + page + " of " + marks.pages)
              .contains("Quarry loop")
              .contains("2026-11-14")
              .contains("The rider may stop at any time");
        }
        if (!sheet.getKey().equals("timetable.pdf")) {
          assertThat(trialsOfPages(marks, run, day)).as(sheet.getKey()).isEqualTo(run.trials());
        }
      }
    }
  }

  /** Trials that the heads name, each once and in order, with all codes on that page. */
  private static int trialsOfPages(PdfMarks marks, TellingRun run, TestDay day) {
    int before = 0;
    for (int page = 1; page <= marks.pages; page++) {
      Matcher head = HEAD.matcher(marks.page(page));
      if (!head.find()) {
        continue;
      }
      int first = Integer.parseInt(head.group(1));
      int last = head.group(2) == null ? first : Integer.parseInt(head.group(2));
      assertThat(first).isEqualTo(before + 1);
      assertThat(head.group(3)).isEqualTo(String.valueOf(run.trials()));
      String text = " " + marks.page(page) + " ";
      IntStream.rangeClosed(run.firstStint(first), run.lastStint(last))
          .forEach(
              stint -> assertThat(text).contains(" " + day.state().codes().get(stint - 1) + " "));
      before = last;
    }
    return before;
  }

  @ParameterizedTest
  @EnumSource(TellingTask.class)
  void theScoreSheetAsksForOneLapThatCanBeNamedAndOffersNoWayOut(
      TellingTask task, @TempDir(factory = RamFolder.class) Path folder) throws IOException {
    try (TestDay day = new TestDay(folder, TellingTestDay.shocks(task, 4), 3)) {
      Map<String, byte[]> open = day.desk().sheets().open(day.state(), Sheets.Paper.A4);
      String text = PdfMarks.of(Objects.requireNonNull(open.get("score-sheets.pdf"))).page(1);
      String question =
          switch (task) {
            case TRIANGLE -> "Two laps were alike: which lap differed?";
            case DUO_TRIO -> "Which of laps 2 and 3 differed from lap 1, the reference?";
            case TWO_CHOICE -> "Which lap had more grip in the rocks?";
          };
      String picked = task == TellingTask.TWO_CHOICE ? " had more" : " differed";
      assertThat(text.split(Pattern.quote(question), -1)).hasSize(5);
      for (int place = 1; place <= task.laps(); place++) {
        assertThat(text.split("(?<!, )lap " + place + picked + "(?! from)", -1))
            .as("boxes under lap %d", place)
            .hasSize(place < task.firstNamed() ? 1 : 5);
      }
      assertThat(text)
          .contains("a hunch", "fairly sure", "certain")
          .contains("Void, before the answer only")
          .contains("tick one lap, sure or not")
          .contains("After the answer nothing voids it")
          .contains("while the helper goes through its remaining lines without a ride")
          .doesNotContain("don't know")
          .doesNotContain("Shock K")
          .doesNotContain("Shock L");
    }
  }

  @Test
  void whatAVoidTrialAsksOfTheHelperStandsOnEveryPage(
      @TempDir(factory = RamFolder.class) Path folder) throws IOException {
    try (TestDay day = new TestDay(folder, TellingTestDay.levels(TellingTask.DUO_TRIO, 24), 3)) {
      byte[] helper =
          Objects.requireNonNull(SheetsTest.sheets(day, Sheets.Paper.A4).get("helper-sheet.pdf"));
      PdfMarks marks = PdfMarks.of(helper);
      for (int page = 1; page <= marks.pages; page++) {
        assertThat(marks.page(page))
            .contains(
                "Void trial: the rider rides no more of it. Carry on line by line all the same")
            .contains("Follow the maker's manual");
      }
    }
  }

  /** In every line as many clicks are counted out as at any other, from what was on before. */
  @Test
  void theHelpersLinesCountOnFromOneToTheNext(@TempDir(factory = RamFolder.class) Path folder)
      throws IOException {
    try (TestDay day = new TestDay(folder, TellingTestDay.levels(TellingTask.TRIANGLE, 100), 3)) {
      byte[] helper =
          Objects.requireNonNull(SheetsTest.sheets(day, Sheets.Paper.A4).get("helper-sheet.pdf"));
      Matcher rows =
          Pattern.compile("(?:(\\d+) in|to the end), (\\d+) out and back, (\\d+) out(, 1 beside)?")
              .matcher(PdfMarks.of(helper).text.toString().replaceAll("\\s+", " "));
      int before = 0;
      int found = 0;
      for (; rows.find(); found++) {
        int in = rows.group(1) == null ? 0 : Integer.parseInt(rows.group(1));
        int out = Integer.parseInt(rows.group(3));
        assertThat(in).isEqualTo(before);
        int beside = rows.group(4) == null ? 0 : 1;
        assertThat(in + 2 * Integer.parseInt(rows.group(2)) + out + beside).isEqualTo(22);
        before = out;
      }
      assertThat(found).isEqualTo(301);
    }
  }

  @Test
  void theRidersSheetsAreTheSameForAnyOrderAndTheHelpersBreaksAtTheSameLines(
      @TempDir(factory = RamFolder.class) Path folder) throws IOException {
    // One long name, so that a line of its own height would break pages elsewhere.
    String plan =
        TellingTestDay.shocks(TellingTask.TRIANGLE, 15)
            .replace("name: Shock L", "name: Shock L with the longer of the two bushings, greased");
    Map<String, byte[]> first = null;
    String breaks = "";
    for (long seed = 1; seed <= ORDERS; seed++) {
      try (TestDay day = new TestDay(folder, plan, seed)) {
        Map<String, byte[]> now = day.desk().sheets().open(day.state(), Sheets.Paper.A4);
        Map<String, byte[]> expected = first == null ? now : first;
        now.forEach((name, bytes) -> assertThat(bytes).as(name).isEqualTo(expected.get(name)));
        first = expected;
        if (seed <= 20) {
          String broken = breaks(day);
          assertThat(breaks.isEmpty() ? broken : breaks).isEqualTo(broken);
          breaks = broken;
        }
      }
    }
    assertThat(breaks).contains("page 1 of").contains("of 15");
  }

  private static String breaks(TestDay day) throws IOException {
    byte[] helper =
        Objects.requireNonNull(SheetsTest.sheets(day, Sheets.Paper.A4).get("helper-sheet.pdf"));
    PdfMarks marks = PdfMarks.of(helper);
    StringBuilder heads = new StringBuilder();
    for (int page = 1; page <= marks.pages; page++) {
      Matcher head = HEAD.matcher(marks.page(page));
      heads.append(head.find() ? head.group() : "").append('\n');
    }
    return heads.toString();
  }

  /** Of 21 triangles, which are 63 laps, and of 32 choices, which are 64; not of one trial more. */
  @ParameterizedTest
  @EnumSource(TellingTask.class)
  void aCodeToScanStandsUpToSixtyFourLapsAndTheRowsToTypeAlways(
      TellingTask task, @TempDir(factory = RamFolder.class) Path folder) throws IOException {
    int most = 64 / task.laps();
    for (int trials : new int[] {most, most + 1}) {
      try (TestDay day = new TestDay(folder, TellingTestDay.shocks(task, trials), trials)) {
        SealedDay sealed = new SealedDay(day.state().plan(), SessionKind.comparison(), trials);
        byte[] helper = sealed.helper(Sheets.Paper.A4);
        PdfMarks marks = PdfMarks.of(helper);
        String text = marks.text.toString().replaceAll("\\s+", " ");
        assertThat(HelperCode.scanned(helper))
            .isEqualTo(trials == most ? Optional.of(sealed.payload()) : Optional.empty());
        assertThat(sealed.scheduleOf(HelperCode.typed(marks)).fits())
            .isEqualTo(sealed.schedule().fits());
        assertThat(text.contains("More than 64 laps: no code to scan")).isEqualTo(trials > most);
        assertThat(text).contains("--from-sheet FILE");
      }
    }
  }
}
