package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.wording.OneStintWords;
import blindlap.wording.day.Words;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What to set for one stint, typed by somebody who is not the helper. */
class OneStintCommandTest {
  @TempDir Path folder;

  private CommandLineSession day;
  private String id;
  private String phrase;
  private String order;

  @BeforeEach
  void commit() {
    day = new CommandLineSession(folder);
    id = day.commit(Plans.SMALL);
    phrase = day.phrase();
    order = day.run("helper", id).out();
  }

  /** The three words of a stint as they were printed. */
  static String words(CommandLineSession.Ran made, int stint) {
    assertThat(made.code()).as(made.err()).isZero();
    String row =
        made.out().lines().filter(line -> line.matches(" +" + stint + "  .*")).findFirst().get();
    String[] parts = row.strip().split(" +");
    return String.join(" ", parts[2], parts[3], parts[4]);
  }

  private CommandLineSession.Ran look(int stint, String words) {
    day.types(words);
    day.answers.addAll(List.of("P. Wier", String.valueOf(stint)));
    return day.run("one-stint", id);
  }

  private String fitted(int stint) {
    String row = order.lines().filter(l -> l.matches(" +" + stint + "  .*")).findFirst().get();
    return row.contains("Shock K") ? "Shock K" : "Shock L";
  }

  @Test
  void whatToSetIsShownOnceForAMinuteAndThenItIsAskedWhetherTheRiderSaw() {
    CommandLineSession.Ran made = day.run("one-stint", id, "--make");
    assertThat(made.out()).contains(Words.of("cautions").say("short")).doesNotContain("Shock");
    day.handsOver.add("no");
    CommandLineSession.Ran shown = look(3, words(made, 3));
    assertThat(shown.code()).as(shown.err()).isZero();
    assertThat(shown.out())
        .contains("Stint 3", fitted(3), Words.of("cautions").say("short"), "the rider did not see");
    assertThat(shown.out().contains("real swap"))
        .isEqualTo(order.lines().anyMatch(l -> l.matches(" +3  .*real swap.*")));
    assertThat(day.blanked).containsExactly(Duration.ofSeconds(60));
    CommandLineSession.Ran again = look(3, words(made, 3));
    assertThat(again.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(again.err()).contains("shown once already");
    assertThat(day.run("review", id).out()).doesNotContain("blind");
  }

  @Test
  void aRiderWhoSawBreaksTheBlindInThatStintAndItIsAskedUntilItIsAnswered() {
    CommandLineSession.Ran made = day.run("one-stint", id, "--make");
    day.handsOver.add(CommandLineSession.NOBODY);
    assertThat(look(2, words(made, 2)).out()).contains("The same command asks again");
    day.handsOver.add("perhaps");
    CommandLineSession.Ran asked = day.run("one-stint", id);
    assertThat(asked.err()).contains("Type yes or no");
    assertThat(asked.out()).contains("broken in stint 2").doesNotContain("Shock");
  }

  @Test
  void theReportSaysToWhomAStintWasShownAndWhetherTheRiderSaw() throws Exception {
    CommandLineSession.Ran made = day.run("one-stint", id, "--make");
    for (String saw : List.of("yes", "no", CommandLineSession.NOBODY)) {
      day.handsOver.add(saw);
      int stint = saw.equals("yes") ? 2 : saw.equals("no") ? 4 : 5;
      assertThat(look(stint, words(made, stint)).code()).isZero();
    }
    day.types(phrase);
    Path laps = day.file("laps.csv", Plans.laps(8));
    for (List<String> typed :
        List.of(
            List.of("record", id, laps.toString()),
            List.of("close-day", id),
            List.of("close-review", id),
            List.of("unseal", id),
            List.of("report", id, "--out", folder.resolve("report").toString()))) {
      CommandLineSession.Ran ran = day.run(typed.toArray(String[]::new));
      assertThat(ran.code()).as(ran.err()).isZero();
    }
    StringBuilder report = new StringBuilder();
    try (var files = java.nio.file.Files.list(folder.resolve("report"))) {
      for (Path file : files.filter(f -> f.toString().endsWith(".html")).toList()) {
        report.append(java.nio.file.Files.readString(file));
      }
    }
    assertThat(report.toString())
        .contains("P. Wier was shown once what to set for stint 2; the rider saw or heard it.")
        .contains("P. Wier was shown once what to set for stint 4; the rider did not see it.")
        .contains("what to set for stint 5; the rider may have seen it: that was not said.");
  }

  @Test
  void wrongWordsAreRefusedAndAfterThreeThereIsAWait() {
    CommandLineSession.Ran made = day.run("one-stint", id, "--make");
    for (int i = 0; i < 3; i++) {
      CommandLineSession.Ran wrong = look(1, words(made, 2));
      assertThat(wrong.code()).isEqualTo(ExitCode.BAD_INPUT);
      assertThat(wrong.err()).contains("not the words of stint 1").doesNotContain("Shock");
    }
    assertThat(look(1, words(made, 1)).err()).contains("60 seconds");
    day.later(61);
    assertThat(look(1, words(made, 1)).out()).contains("Stint 1");
    assertThat(look(9, "any words here").err()).contains("9");
    day.answers.add(CommandLineSession.NOBODY);
    assertThat(day.run("one-stint", id).err()).contains("type a name");
    day.answers.addAll(List.of("P. Wier", CommandLineSession.NOBODY));
    assertThat(day.run("one-stint", id).err())
        .isEqualToIgnoringNewLines(OneStintWords.say("no.stint"));
  }

  @Test
  void slipsHoldWordsAndCautionsAndNoSetup() throws Exception {
    Path out = folder.resolve("slips");
    day.types(phrase);
    CommandLineSession.Ran made = day.run("one-stint", id, "--make", "--out", out.toString());
    assertThat(made.code()).as(made.err()).isZero();
    assertThat(made.out()).contains("one-stint-slips.pdf").doesNotContain("Shock");
    String text;
    try (PDDocument pdf = Loader.loadPDF(out.resolve("one-stint-slips.pdf").toFile())) {
      text = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
    }
    assertThat(text).contains("Stint 1 of 8", "Stint 8 of 8").doesNotContain("Shock");
    assertThat(text.split("torque and pressure limits", -1)).hasSizeGreaterThan(8);
  }
}
