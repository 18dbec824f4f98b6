package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WholeSessionTest {
  @TempDir Path folder;

  @Test
  void aSessionTypedOnTheCommandLineEndsWithAReportedVerdict() throws Exception {
    CommandLineSession day = new CommandLineSession(folder);
    Path plan = day.file("plan.yaml", Plans.SMALL);
    assertThat(day.run("plan", plan.toString()).out()).contains("50 orders").contains(".04");
    String session = day.commit(Plans.SMALL);

    assertThat(day.run("helper", session).out()).contains("stint  code  fit").contains("Shock");
    CommandLineSession.Ran codes = day.run("codes", session);
    assertThat(codes.out()).doesNotContain("Shock").contains("8");

    Path laps = day.file("laps.csv", Plans.laps(8));
    assertThat(day.run("record", session, laps.toString()).out()).contains("8 of 8 laps");
    assertThat(day.run("void", session, "3", "--reason", "puncture").code()).isZero();
    assertThat(day.run("review", session).code()).isEqualTo(2);
    assertThat(day.run("close-day", session).code()).isZero();
    assertThat(day.run("close-review", session).out()).contains("fingerprint");
    assertThat(day.run("unseal", session).out()).contains("Both fingerprints match");

    CommandLineSession.Ran review = day.run("review", session);
    assertThat(review.out()).contains("Shock K").contains("7 of 8 stints used");
    assertThat(day.run("review", session, "--json").out()).contains("\"verdict\"");
    CommandLineSession.Ran report =
        day.run("report", session, "--out", folder.resolve("out").toString());
    assertThat(report.code()).as(report.err()).isZero();
    try (var files = Files.list(folder.resolve("out"))) {
      assertThat(files.filter(f -> f.toString().endsWith(".html"))).isNotEmpty();
    }
    CommandLineSession.Ran card =
        day.run("card", session, "--out", folder.resolve("cards").toString());
    assertThat(card.code()).as(card.err()).isZero();
    assertThat(card.out().lines()).hasSize(5).allMatch(line -> line.startsWith("Card written to "));
    try (var files = Files.list(folder.resolve("cards"))) {
      assertThat(files.map(f -> f.toString().replaceFirst(".*\\.", "")))
          .containsExactlyInAnyOrder("png", "png", "svg", "svg", "txt");
    }
    assertThat(day.run("notebook").out()).contains("Shock K against Shock L");
    assertThat(day.run("notebook", "--verify").code()).isZero();
  }

  /** The rows of the key as someone would type them from the printed sheet. */
  private static String typedFromPaper(Path pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      return new PDFTextStripper()
          .getText(document)
          .lines()
          .filter(line -> line.matches("[A-Z][0-9]*: .+ \\*[0-9A-F]{4}\\."))
          .collect(Collectors.joining("\n"));
    }
  }

  @Test
  void aLostPhraseIsReplacedByTheHelpersSheet() throws Exception {
    CommandLineSession day = new CommandLineSession(folder);
    String session = day.commit(Plans.SMALL);
    Path paper = folder.resolve("paper");
    CommandLineSession.Ran written =
        day.run("sheets", session, "--out", paper.toString(), "--helper");
    assertThat(written.code()).as(written.err()).isZero();
    String sheet = typedFromPaper(paper.resolve("helper-sheet.pdf"));
    day.run("record", session, day.file("laps.csv", Plans.laps(8)).toString());
    day.run("close-day", session);
    day.run("close-review", session);

    CommandLineSession.Ran opened =
        day.run("unseal", session, "--from-sheet", day.file("sheet.txt", sheet).toString());

    assertThat(opened.code()).as(opened.err()).isZero();
    assertThat(opened.out()).contains("Both fingerprints match");
  }

  @Test
  void theTextOfTheHelpersSheetMayComeFromStandardInput() throws Exception {
    CommandLineSession day = new CommandLineSession(folder);
    String session = day.commit(Plans.SMALL);
    Path paper = folder.resolve("paper");
    day.run("sheets", session, "--out", paper.toString(), "--helper");
    String sheet = typedFromPaper(paper.resolve("helper-sheet.pdf"));
    day.run("record", session, day.file("laps.csv", Plans.laps(8)).toString());
    day.run("close-day", session);
    day.run("close-review", session);
    InputStream before = System.in;
    try {
      System.setIn(new ByteArrayInputStream(new byte[] {(byte) 0xE9}));
      CommandLineSession.Ran refused = day.run("unseal", session, "--from-sheet", "-");
      assertThat(refused.code()).isEqualTo(ExitCode.BAD_INPUT);
      assertThat(refused.err()).contains("UTF-8");
      System.setIn(new ByteArrayInputStream(sheet.getBytes(StandardCharsets.UTF_8)));
      CommandLineSession.Ran opened = day.run("unseal", session, "--from-sheet", "-");
      assertThat(opened.code()).as(opened.err()).isZero();
      assertThat(opened.out()).contains("Both fingerprints match");
    } finally {
      System.setIn(before);
    }
  }

  @Test
  void theDemoDoesTheMainJobWithoutADisplay() {
    CommandLineSession day = new CommandLineSession(folder);

    CommandLineSession.Ran ran = day.run("demo");

    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.out())
        .contains("both fingerprints match")
        .contains("real and worthwhile")
        .contains("no worthwhile difference")
        .contains("not settled")
        .contains("There is no display");
  }

  @Test
  void aDayCutShortKeepsTheOrdersAndMasksTheRest() {
    CommandLineSession day = new CommandLineSession(folder);
    String session = day.commit(Plans.SMALL);
    day.run("record", session, day.file("laps.csv", Plans.laps(6)).toString());

    assertThat(
            day.run(
                    "cut-short",
                    session,
                    "--after-stint",
                    "6",
                    "--reason",
                    "dark",
                    "--decided-by",
                    "R. Lind")
                .code())
        .isZero();
    day.run("close-day", session);
    day.run("close-review", session);
    day.run("unseal", session);

    assertThat(day.run("review", session).out()).contains("6 of 8 stints used");
  }

  @Test
  void helpTeachesTheOrderOfADay() {
    CommandLineSession day = new CommandLineSession(folder);

    assertThat(day.run("--help").out()).contains("plan, commit, helper").contains("demo");
    CommandLineSession.Ran one = day.run("bring-in", "--help");
    assertThat(one.code()).isZero();
    assertThat(one.out()).contains("Brings in sessions from other notebooks");
  }
}
