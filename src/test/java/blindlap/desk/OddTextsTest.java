package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.fault.Problem;
import blindlap.fault.TextFault;
import blindlap.seal.SealParameters;
import blindlap.seal.Sealing;
import blindlap.seal.SealingSources;
import blindlap.seal.SecureBytes;
import blindlap.session.Fact;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import blindlap.store.SqliteNotebook;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A control character in every text of a day that can be typed: at the door it is refused in one
 * sentence, and a notebook that holds it all the same gives report, page and package.
 */
class OddTextsTest {
  private @TempDir(factory = RamFolder.class) Path folder;

  @Test
  void everyTextOfAPlanIsLookedAtWithItsPlace() {
    for (int field = 1; field <= OddDay.FIELDS; field++) {
      String odd = OddDay.PLAN.replace("Wq" + field + "~", "Wq\\a").replace("~", "");
      assertThat(odd).contains("Wq\\a");
      PlanPreview preview = PlanPreview.of(odd);
      assertThat(preview.problems().stream().map(Problem::fault))
          .as("field %d: %s", field, preview.problems())
          .containsAnyOf(TextFault.CONTROL, blindlap.plan.PlanFault.WRONG_VALUE);
      assertThat(preview.problems()).noneMatch(problem -> problem.where().isBlank());
    }
    assertThat(
            PlanPreview.of(OddDay.PLAN.replace("each lap Wq14~", "each lap").replace("~", ""))
                .problems())
        .isEmpty();
  }

  @Test
  void everyTextOfAFactIsRefusedAndNothingIsWritten() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 3)) {
      OddDay.ridden(OddDay.TIME).forEach(fact -> write(day, fact));
      int before = day.desk().notebook().entries(day.id()).size();
      for (Fact fact : OddDay.facts(OddDay.ODD, OddDay.TIME)) {
        assertThat(write(day, fact))
            .isInstanceOfSatisfying(
                Sessions.Result.Refused.class,
                refused ->
                    assertThat(refused.problems().get(0).fault()).isEqualTo(TextFault.CONTROL));
      }
      HelperDay helper = day.helper();
      for (String where : List.of("helper", "note", "said", "outside")) {
        assertThat(helper.write(OddDay.entry(1, 0, where, OddDay.ODD)))
            .as(where)
            .isInstanceOf(Sessions.Result.Refused.class);
      }
      assertThat(day.desk().notebook().entries(day.id())).hasSize(before);
    }
  }

  private static Sessions.Result write(TestDay day, Fact fact) {
    return day.desk().sessions().act(day.id(), latest -> Outcome.accepted(fact));
  }

  private static void quiet(String name, String text) {
    assertThat(text.codePoints().filter(c -> c != '\n' && Character.isISOControl(c)).toArray())
        .as(name)
        .isEmpty();
    assertThat(text.indexOf('\u202E')).as(name).isNegative();
  }

  @Test
  void aNotebookThatHoldsThemAllTheSameGivesReportPageAndPackage() throws IOException {
    SetClock clock = new SetClock(Instant.parse("2026-11-14T08:00:00Z"));
    SecureBytes ids = FixedSources.stream(7);
    SealingSources sources = FixedSources.order(5);
    SealParameters quick = new SealParameters(1);
    SqliteNotebook notebook =
        SqliteNotebook.open(folder.resolve("old.blindlap"), ids.exactly(16), clock.instant());
    try (Desk desk = new Desk(notebook, clock, sources, quick, ids)) {
      OddDay.Old old = OddDay.old(desk, new Sealing(sources, quick), OddDay.Gone.UNSEALED, 9);
      SessionState state = desk.sessions().state(old.id()).orElseThrow();
      assertThat(desk.notebook().verify().sound()).isTrue();

      String html = desk.reviews().html(state, false);
      quiet("page", html);
      // A page of a megabyte says nothing in a message, so only what it lacks is named.
      assertThat(OddDay.SAID.stream().filter(said -> !html.contains(said + OddDay.SHOWN)))
          .isEmpty();
      assertThat(List.of("Wq1", "Wq2", "Wq3", "Wq4", "amended", "because"))
          .allMatch(said -> html.contains(said + OddDay.SHOWN));
      desk.reviews()
          .report(state, false)
          .forEach(
              (name, bytes) -> {
                if (name.endsWith(".pdf")) {
                  assertThat(pdf(bytes)).contains("Wq4‹U+0007›", "‹U+202E›");
                }
              });
      quiet("text", String.join("\n", desk.reviews().text(state)));
      Map<String, byte[]> files = desk.reviews().export(state);
      files.forEach(
          (name, bytes) ->
              quiet(
                  name,
                  new String(bytes, StandardCharsets.UTF_8)
                      .replace("\r\n", "\n")
                      // JSON keeps such characters as they are, or as their number.
                      .replace(name.matches(".*\\.json|session\\.txt") ? "\u202E" : "\0", "")));
      assertThat(new String(files.get("laps.csv"), StandardCharsets.UTF_8))
          .contains("note" + OddDay.SHOWN);
      assertThat(PackageReview.of(files).text()).isNotEmpty();
      desk.sheets().open(state, Sheets.Paper.A4).forEach((name, bytes) -> pdf(bytes));
    }
  }

  private static String pdf(byte[] bytes) {
    try (PDDocument document = Loader.loadPDF(bytes)) {
      return new PDFTextStripper().getText(document).replaceAll("\\s+", "");
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
