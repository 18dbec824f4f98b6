package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How the PDF report falls on its pages. */
class ReportPagesTest {
  private static final int FOOTER = 70;

  private static List<String> pages(byte[] pdf) {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      List<String> pages = new ArrayList<>();
      PDFTextStripper stripper = new PDFTextStripper();
      stripper.setLineSeparator("\n");
      for (int page = 1; page <= document.getNumberOfPages(); page++) {
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        pages.add(stripper.getText(document).strip());
      }
      return pages;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "shocks-on-quarry-loop",
        "clicks-on-wet-steps",
        "tyres-on-root-garden",
        "tyres-on-fern-trail",
        "grips-on-moor-path",
        "rebound-on-heron-line",
        "air-on-otter-traverse",
        "clicks-told-on-alder-bank",
        "pads-told-on-slate-run"
      })
  void twoPagesHoldWhatAReaderInAHurryNeedsAndNoPageIsEmpty(String name) {
    SampleDays.ride(
        name,
        (desk, state) ->
            desk.reviews()
                .report(state, false)
                .forEach(
                    (file, bytes) -> {
                      if (!file.endsWith(".pdf")) {
                        return;
                      }
                      List<String> pages = pages(bytes);
                      assertThat(pages.get(1))
                          .contains(name.contains("told") ? "How to read the count" : "What next")
                          .contains("It approves no part and no setting.");
                      assertThat(pages.get(2))
                          .contains("3 / " + pages.size() + "\nPlan as committed\n");
                      assertThat(pages).allMatch(page -> page.length() > FOOTER + 80);
                    }));
  }
}
