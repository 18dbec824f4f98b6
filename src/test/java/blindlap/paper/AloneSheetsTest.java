package blindlap.paper;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Keys;
import blindlap.desk.Sheets;
import blindlap.desk.TestDay;
import blindlap.session.SessionState;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sheets of days without a helper. */
class AloneSheetsTest {
  private static final String PREPARED = "level: prepared, prepared_by: M. Oster";
  private static final String BY_CODE =
      TestDay.at("level: drawn")
          .replace(
              "high_words: unbearable}",
              "high_words: unbearable, assessor: N. Falk, definition: sum of the seat trace}");

  @TempDir Path folder;

  private static String text(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
    }
  }

  private static void keep(Map<String, byte[]> sheets, String level) throws IOException {
    Path to = Files.createDirectories(Path.of("target/pictures"));
    for (Map.Entry<String, byte[]> sheet : sheets.entrySet()) {
      Files.write(to.resolve("sheet-" + level + "-" + sheet.getKey()), sheet.getValue());
    }
  }

  @Test
  void aDrawnDayHasASheetToMountByThatSaysNothingOfWhatWasNotShown() throws IOException {
    String[] texts = new String[2];
    for (int seed = 1; seed <= 2; seed++) {
      try (TestDay day = new TestDay(folder, TestDay.at("level: drawn"), seed)) {
        Map<String, byte[]> sheets = day.desk().sheets().open(day.state(), Sheets.Paper.A4);
        assertThat(sheets).containsKey("mount-sheet.pdf").doesNotContainKeys("labels.pdf");
        texts[seed - 1] = text(sheets.get("mount-sheet.pdf"));
        assertThat(text(sheets.get("timetable.pdf")))
            .contains("The rider may stop at any time.")
            .doesNotContain("dummy", "blind broken", "phrase");
        keep(sheets, "drawn");
      }
    }
    assertThat(texts[0])
        .isEqualTo(texts[1])
        .contains("drawn as you go", "Axles to the maker's torque", "Are you fit to go on?")
        .contains("12 N.m", "shown and mounted", "Blindlap supplies no torque")
        .doesNotContain("look away", "the helper");
  }

  /** Nobody looks for a plate that nobody hung on the bike. */
  @Test
  void theNumberIsAskedForOnlyWhereItIsOnTheBikeOrItsUnit() throws IOException {
    List<String> levels =
        List.of("level: open", "level: drawn", "level: masked, prepared_by: M. Oster", PREPARED);
    for (String level : levels) {
      Path own = Files.createTempDirectory(folder, "level");
      try (TestDay day = new TestDay(own, TestDay.at(level), 3)) {
        String sheet =
            text(day.desk().sheets().open(day.state(), Sheets.Paper.A4).get("score-sheets.pdf"));
        assertThat(sheet).as(level).doesNotContain("on the plate");
        assertThat(sheet)
            .as(level)
            .contains(level.equals(PREPARED) ? "number on the unit?" : "The number of this stint");
      }
    }
  }

  @Test
  void anOpenDayPrintsTheOrderAndEveryStintOnce() throws IOException {
    try (TestDay day = new TestDay(folder, TestDay.at("level: open"), 2)) {
      Map<String, byte[]> sheets = day.desk().sheets().open(day.state(), Sheets.Paper.LETTER);
      String words = text(sheets.get("mount-sheet.pdf"));
      SessionState state = day.state();
      for (int stint = 1; stint <= 8; stint++) {
        String name = state.plan().setups().get(state.shown().get(stint)).name();
        assertThat(words).contains(stint + " " + state.code(stint) + " " + name);
      }
      keep(sheets, "open");
    }
  }

  @Test
  void aMaskedDayNamesNoPartOnTheSheetToMountBy() throws IOException {
    try (TestDay day = new TestDay(folder, TestDay.at("level: masked, prepared_by: M. Oster"), 2)) {
      Map<String, byte[]> sheets = day.desk().sheets().open(day.state(), Sheets.Paper.A4);
      assertThat(text(sheets.get("mount-sheet.pdf")))
          .contains("masked labels", "which label to mount")
          .doesNotContain("Shock K", "Shock L", "compression");
      keep(sheets, "masked");
    }
  }

  @Test
  void aPreparedDayHasLabelsWithCodesAloneAndAPackingSheetForTheFriend() throws IOException {
    try (TestDay day = new TestDay(folder, TestDay.at(PREPARED), 2)) {
      Map<String, byte[]> sheets = day.desk().sheets().open(day.state(), Sheets.Paper.A4);
      String labels = text(sheets.get("labels.pdf"));
      for (int stint = 1; stint <= 8; stint++) {
        assertThat(labels.split(String.valueOf(day.state().code(stint)), -1)).hasSize(3);
      }
      assertThat(labels).doesNotContain("Shock");
      assertThat(text(sheets.get("mount-sheet.pdf")))
          .contains("cover and seal", "name no setup")
          .doesNotContain("Shock K", "Shock L");
      byte[] packing =
          day.desk()
              .sheets()
              .helper(
                  day.state(),
                  (Keys.Result.Open) day.desk().keys().helper(day.state(), day.phrase()),
                  day.phrase(),
                  Sheets.Paper.A4);
      assertThat(text(packing))
          .contains("Friend", "Rider: look away", "Shock K", "Shock L", day.phrase(), "sealed")
          .contains("Blindlap supplies no torque")
          .doesNotContain("dummy", "swap at", "The rider may be called in");
      keep(sheets, "prepared");
      keep(Map.of("packing.pdf", packing), "prepared");
    }
  }

  @Test
  void whoScoresByCodeSeesCodesBySizeAndNeitherOrderNorSetup() throws IOException {
    try (TestDay day = new TestDay(folder, BY_CODE, 2)) {
      Map<String, byte[]> sheets = day.desk().sheets().open(day.state(), Sheets.Paper.A4);
      String words = text(sheets.get("by-code.pdf"));
      assertThat(words)
          .contains("N. Falk", "Do you know which is which?", "harshness at the hands")
          .doesNotContain("Shock", "Stint", "grip in the rocks", "R. Lind");
      int before = 0;
      int at = 0;
      for (int code : day.state().day().codes().stream().sorted().toList()) {
        at = words.indexOf(" " + code + " ", before);
        assertThat(at).as(String.valueOf(code)).isGreaterThan(before);
        before = at;
      }
      keep(sheets, "by-code");
    }
  }

  @Test
  void everySheetIsTheSameBytesWhenItIsPrintedAgain() {
    try (TestDay day = new TestDay(folder, TestDay.at(PREPARED), 2)) {
      Map<String, byte[]> once = day.desk().sheets().open(day.state(), Sheets.Paper.A4);
      Map<String, byte[]> again = day.desk().sheets().open(day.state(), Sheets.Paper.A4);
      assertThat(once.keySet()).isEqualTo(again.keySet());
      ByteArrayOutputStream all = new ByteArrayOutputStream();
      once.forEach((name, bytes) -> assertThat(again.get(name)).as(name).isEqualTo(bytes));
      once.values().forEach(all::writeBytes);
      assertThat(all.size()).isGreaterThan(10_000);
    }
  }
}
