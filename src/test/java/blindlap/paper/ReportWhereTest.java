package blindlap.paper;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Reviews;
import blindlap.desk.SampleDays;
import blindlap.review.Analysis;
import blindlap.review.Beside;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.review.WhereDays;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The report says where on the trail, with the picture and a row a sector. */
class ReportWhereTest {
  @Test
  void theSectionHasTheSentenceThePictureAndEverySector() {
    SampleDays.ride(
        "shocks-on-quarry-loop",
        (desk, state) -> {
          DayRecord day =
              WhereDays.recorded(
                  Reviews.day(state), WhereDays.gain(195, 690, 1.8), 0.05, new Random(6));
          for (ReportInput.Ink ink : ReportInput.Ink.values()) {
            ReportDocument report =
                Report.of(new ReportInput(state, Analysis.of(day), "0.1", Beside.NOTHING, ink));
            String html = report.html();
            String section = html.substring(html.indexOf(">Where on the trail</h2>"));
            section = section.substring(0, section.indexOf("<h2", 10));
            assertThat(section)
                .contains(
                    "Shock L gains from Rock garden to Ford; elsewhere no difference is shown.")
                .contains("Rock garden to Bridge", "Bridge to Ford", "Gate post to Rock garden")
                .contains("orders show as much in some sector", "never a second verdict")
                .contains("A sector time of one lap is good to about")
                .contains("<svg", "metres from Gate post");
            // The line, broad and narrow, and an interval a sector.
            assertThat(section.split("<svg ", -1)).hasSize(1 + 2 + 3);
            assertThat(html).contains("Where on the trail, by piece of the line");
            kept(report, ink);
          }
        });
  }

  @Test
  void aDayWithoutRecordingsHasNoSection() {
    SampleDays.ride(
        "shocks-on-quarry-loop",
        (desk, state) -> {
          Finding finding = Analysis.of(Reviews.day(state));
          String html =
              Report.of(
                      new ReportInput(
                          state, finding, "0.1", Beside.NOTHING, ReportInput.Ink.COLOUR))
                  .html();
          assertThat(html).doesNotContain("Where on the trail");
        });
  }

  /** For whoever wants to look at it. */
  private static void kept(ReportDocument report, ReportInput.Ink ink) {
    String folder = System.getProperty("blindlap.pictures", "");
    if (!folder.isEmpty()) {
      try {
        Files.createDirectories(Path.of(folder));
        Files.write(Path.of(folder, "report-where-" + ink + ".pdf"), report.pdf());
      } catch (IOException e) {
        throw new java.io.UncheckedIOException(e);
      }
    }
  }
}
