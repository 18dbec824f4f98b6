package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.picture.TellingPictures;
import blindlap.review.TellingFinding;
import blindlap.review.TellingRuns;
import blindlap.review.TellingTrial;
import blindlap.session.day.Guess.Sureness;
import blindlap.stats.tell.Discrimination;
import blindlap.stats.tell.TellingTrials;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class TellingWordsTest {
  private static final TellingNames CLICKS = new TellingNames("M. Oss", "4 clicks", "support");

  private static TellingWords words(
      Discrimination task, int declared, int answered, int right, double matters, boolean nullRun) {
    return new TellingWords(
        TellingRuns.run(task, declared, answered, right, matters, nullRun), CLICKS);
  }

  private static String shown(String words) {
    return words.replace('\u202f', ' ');
  }

  @Test
  void elevenOfFifteenTrianglesReadAsInThePicture() {
    TellingWords words = words(Discrimination.TRIANGLE, 15, 15, 11, 0.5, false);
    assertThat(words.headline().text())
        .isEqualTo("M. Oss told 4 clicks apart in 11 of 15 trials; guessing gives 5.");
    assertThat(words.headline().phrase()).isEqualTo("11 of 15 trials");
    assertThat(shown(words.lead()))
        .isEqualTo(
            "M. Oss can tell: guessing gives 11 or more in about 2 of 1,000 such runs (p = .0018)."
                + " Whether in half of the trials, as declared to matter, is open: really told in"
                + " 23 to 86 % of the trials (90 % limits).");
    assertThat(words.whyTitle()).isEqualTo("Why guessing gives 5");
    assertThat(words.why())
        .isEqualTo(
            "Each trial drew its own order, so one in three is right by luck whatever a rider's"
                + " habits. 9 right of 15 was the least that could show anything.");
    assertThat(words.axis().interval().get(1)).isEqualTo("6.7 to 13.8 of 15");
  }

  @Test
  void surenessIsReadAsCounted() {
    List<TellingTrial> trials = new ArrayList<>();
    for (int i = 1; i <= 10; i++) {
      trials.add(
          new TellingTrial(i, 1, i <= 7 ? 1 : 2, i <= 7 ? Sureness.CERTAIN : Sureness.HUNCH));
    }
    trials.add(new TellingTrial(11, 2, 2, Sureness.FAIRLY_SURE));
    trials.add(new TellingTrial(12, 2, 2, null));
    trials.add(new TellingTrial(13, 2, 3, null));
    TellingFinding finding =
        TellingFinding.of(TellingTrials.of(Discrimination.TRIANGLE, 15, 0.5), false, trials, 1);
    TellingWords words = new TellingWords(finding, CLICKS);
    assertThat(words.sure())
        .containsExactly(
            "“Certain” 7 times, all right.",
            "“Fairly sure” 1 time, right.",
            "“A hunch” 3 times, none right.",
            "Not said 2 times, 1 right.",
            "No verdict hangs on how sure the rider was.");
    assertThat(words.voids()).isEqualTo("1 trial was void before an answer and does not count.");
    assertThat(words.early().orElseThrow())
        .startsWith("The run ended before its time: of 15 declared trials 13 answered, 1 void.");
  }

  @Test
  void picturesSpeakEveryTrialAndTheCount() {
    TellingFinding finding = TellingRuns.run(Discrimination.DUO_TRIO, 24, 24, 13, 0.5, false);
    TellingWords words = new TellingWords(finding, CLICKS);
    String strip = TellingPictures.strip(finding, words).spoken().all();
    assertThat(strip).startsWith(words.headline().text());
    assertThat(strip.split("Trial \\d+: lap [23] differed from the reference", -1)).hasSize(25);
    assertThat(strip.split(", right\\.", -1)).hasSize(14);
    assertThat(strip.split(", wrong\\.", -1)).hasSize(12);
    assertThat(TellingPictures.axis(finding, words).spoken().all())
        .startsWith("13 right of 24 trials; guessing gives 12, and from 18 it matters")
        .contains("Guessers land at 16 or fewer at least 19 times of 20.");
    TellingFinding choice = TellingRuns.run(Discrimination.TWO_CHOICE, 4, 4, 4, 0.5, false);
    TellingWords more = new TellingWords(choice, CLICKS);
    assertThat(TellingPictures.strip(choice, more).spoken().table()).contains("had more support");
    assertThat(TellingPictures.axis(choice, more).spoken().table())
        .contains("Every count is one at which guessers land.");
    TellingFinding nothing = TellingRuns.run(Discrimination.TRIANGLE, 15, 15, 6, 0.5, true);
    assertThat(TellingPictures.strip(nothing, new TellingWords(nothing, CLICKS)).spoken().all())
        .startsWith("Null run")
        .contains("bore the other name")
        .doesNotContain("differed,");
  }

  @Test
  void setupsAndARiderWithoutANameAreSaid() {
    TellingNames names = TellingNames.ofSetups(" ", List.of("Shock K", "Shock L"), "");
    TellingFinding finding = TellingRuns.run(Discrimination.TRIANGLE, 16, 16, 7, 0.4, false);
    assertThat(new TellingWords(finding, names).headline().text())
        .isEqualTo(
            "The rider, Shock K and Shock L: not settled. Right in 7 of 16 trials; guessing gives"
                + " 5.3.");
  }

  /** .0503, .04996 and .0501: to three decimals all of them would read as one in twenty. */
  @Test
  void aProbabilityNextToTheLevelIsSaidOnItsSide() {
    assertThat(words(Discrimination.TRIANGLE, 28, 28, 14, 0.5, false).lead())
        .startsWith("Not settled: ")
        .contains("(p = .051)");
    assertThat(words(Discrimination.TRIANGLE, 16, 16, 9, 0.5, false).lead())
        .startsWith("M. Oss can tell: ")
        .contains("(p = .049)");
    assertThat(words(Discrimination.TWO_CHOICE, 95, 95, 56, 0.2, false).lead())
        .contains("(p = .051)");
  }
}
