package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.DataPackageReader;
import blindlap.exchange.HelperEntryText;
import blindlap.fault.Fault;
import blindlap.fault.Problem;
import blindlap.review.Analysis;
import blindlap.review.DayRecord;
import blindlap.review.Remark;
import blindlap.seal.HelperRecord;
import blindlap.session.HelperEntry;
import blindlap.session.LifeCommands;
import blindlap.session.SessionState;
import blindlap.wording.FindingText;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Wrong fits that were noticed after "Safe", from the draft to the finding. */
class FitCorrectionsTest {
  private static final int WRONG = 3;

  private @TempDir Path folder;

  private static List<Fault> faults(List<Problem> problems) {
    return problems.stream().map(Problem::fault).toList();
  }

  private static int other(HelperHand hand, int stint) {
    return 1 - hand.helper().work(stint).setup();
  }

  private TestDay day(String name) {
    return new TestDay(
        folder.resolve(name + ".blindlap"), TestDay.EIGHT, 3, java.util.Optional.empty());
  }

  /** Stints one after the other, from the warm-up or from another on. */
  private static void stints(HelperHand hand, int from, int to) {
    for (int stint = from; stint <= to; stint++) {
      hand.handle(stint);
      hand.ride(stint);
    }
  }

  private static void correct(TestDay day, HelperHand hand, int stint, int setup, String words) {
    FitCorrections fits = hand.fits();
    assertThat(fits.keep(day.state(), fits.now(stint, setup, words))).isEmpty();
  }

  /** A day on which stint 3 was fitted wrongly, and its helper noticed before stint 5. */
  private static DayRecord noticedLater(TestDay day) {
    HelperHand hand = new HelperHand(day);
    stints(hand, 0, 4);
    correct(day, hand, WRONG, other(hand, WRONG), "the boxes were swapped");
    stints(hand, 5, 8);
    HelperHand.done(hand.over().write(hand.over().entry(day.state())));
    hand.unseal();
    return Reviews.day(day.state());
  }

  @Test
  void theFindingIsTheOneOfAWrongFitThatWasRecordedAtTheStintItself() {
    try (TestDay later = day("later");
        TestDay atOnce = day("at-once")) {
      DayRecord noticed = noticedLater(later);
      HelperHand hand = new HelperHand(atOnce);
      stints(hand, 0, 2);
      hand.handle(WRONG, other(hand, WRONG));
      hand.ride(WRONG);
      stints(hand, 4, 8);
      HelperHand.done(hand.over().write(hand.over().entry(atOnce.state())));
      hand.unseal();
      DayRecord recorded = Reviews.day(atOnce.state());
      assertThat(noticed.wrongFits()).containsExactly(WRONG);
      assertThat(noticed.asFitted()).isEqualTo(recorded.asFitted());
      FindingText one = new FindingText(Analysis.of(noticed));
      FindingText two = new FindingText(Analysis.of(recorded));
      assertThat(one.headline().text()).isEqualTo(two.headline().text());
      assertThat(one.evidence()).isEqualTo(two.evidence());
      assertThat(one.sensitivities()).isEqualTo(two.sensitivities()).isNotEmpty();
      assertThat(later.state().recordedFinding()).isEqualTo(atOnce.state().recordedFinding());
    }
  }

  @Test
  void reviewReportAndPackageSayWhatWasCorrectedWhenAndHowLongAfter() {
    try (TestDay day = day("said")) {
      DayRecord record = noticedLater(day);
      Remark said = record.remarks(Remark.Kind.FIT_CORRECTED).get(0);
      assertThat(said.stint()).isEqualTo(WRONG);
      assertThat(said.about())
          .isEqualTo(String.valueOf(Duration.ofMinutes(12 + 7 + 12).toSeconds()));
      String sentence =
          new FindingText(Analysis.of(record))
              .circumstances().stream()
                  .filter(l -> l.contains("noticed"))
                  .findFirst()
                  .orElseThrow();
      assertThat(sentence)
          .matches(
              "Stint 3: Shock [KL] was on, not Shock [KL] as recorded; M. Oster noticed it on"
                  + " 2026-11-14 .*, 31 min after the bike was ready. In words: the boxes were"
                  + " swapped");
      assertThat(day.desk().reviews().html(day.state(), false))
          .contains("the boxes were swapped", "M. Oster closed the helper")
          .doesNotContain("No deviation from the plan, no correction.");
      Map<String, byte[]> files = day.desk().reviews().export(day.state());
      DayRecord read = DataPackageReader.read(files);
      assertThat(read.remarks()).isEqualTo(record.remarks());
      assertThat(read.fits()).isEqualTo(record.fits());
      assertThat(read.asFitted()).isEqualTo(record.asFitted());
    }
  }

  @Test
  void theNextStintIsRealOrDummyByWhatIsOnTheBikeAndNotByWhatWasScheduled() {
    try (TestDay day = day("real")) {
      HelperHand hand = new HelperHand(day);
      stints(hand, 0, WRONG);
      boolean scheduled = hand.helper().work(WRONG + 1).real();
      int on = Objects.requireNonNull(hand.helper().work(WRONG + 1).comesOff());
      correct(day, hand, WRONG, 1 - on, "");
      for (HelperDay open : List.of(hand.helper(), day.helper())) {
        assertThat(open.work(WRONG + 1).real()).isEqualTo(!scheduled);
        assertThat(open.work(WRONG + 1).comesOff()).isEqualTo(1 - on);
      }
      hand.handle(WRONG + 1);
      assertThat(hand.helper().work(WRONG + 1).real()).isEqualTo(!scheduled);
      int fifth = other(hand, 5);
      hand.handle(5, fifth);
      assertThat(hand.helper().work(6).comesOff()).as("recorded at the stint").isEqualTo(fifth);
      HelperEntry inHand = hand.ready(6, other(hand, 6));
      assertThat(hand.helper().work(7, inHand).comesOff()).as("in hand").isEqualTo(inHand.fitted());
    }
  }

  @Test
  void aCorrectionIsOnDiskAtOnceUnreadableAndOfTheSizeOfAnyDraft() {
    try (TestDay day = day("draft")) {
      HelperHand hand = new HelperHand(day);
      stints(hand, 0, 1);
      hand.helper().keep(hand.fits().inHand(day.state()));
      Map<String, String> before = Map.copyOf(day.desk().notebook().drafts());
      correct(day, hand, 1, other(hand, 1), "a very long word ".repeat(20));
      Map<String, String> after = day.desk().notebook().drafts();
      assertThat(after.keySet()).isEqualTo(before.keySet()).hasSize(1);
      assertThat(after.values()).allSatisfy(d -> assertThat(d).doesNotContain("Shock", "word"));
      assertThat(after.values().iterator().next()).hasSameSizeAs(before.values().iterator().next());
      assertThat(day.helper().unfinished(2).orElseThrow().entry().corrections()).hasSize(1);
    }
  }

  @Test
  void whatAWindowKeepsDoesNotTakeOutWhatWasCorrectedBesideIt() {
    try (TestDay day = day("beside")) {
      HelperHand hand = new HelperHand(day);
      stints(hand, 0, 1);
      HelperEntry ofTheWindow = hand.ready(2, hand.helper().work(2).setup());
      correct(day, new HelperHand(day), 1, other(hand, 1), "by command");
      hand.helper().keep(ofTheWindow);
      assertThat(day.helper().unfinished(2).orElseThrow().entry().corrections()).hasSize(1);
      HelperHand.done(hand.helper().handOver(ofTheWindow));
      assertThat(hand.helper().records().of(day.state()).get(2).corrections()).hasSize(1);
      assertThat(day.desk().notebook().drafts()).isEmpty();
    }
  }

  @Test
  void everyDayEndsWithOneClosingRecordOfTheSameSizeWhetherAnythingWasCorrectedOrNot() {
    try (TestDay plain = day("plain");
        TestDay corrected = day("corrected")) {
      for (TestDay day : List.of(plain, corrected)) {
        HelperHand hand = new HelperHand(day);
        stints(hand, 0, 8);
        if (day.equals(corrected)) {
          correct(day, hand, 8, other(hand, 8), "the last one");
        }
        HelperHand.done(hand.over().write(hand.over().entry(day.state())));
        assertThat(hand.over().write(hand.over().entry(day.state())))
            .as("once only")
            .isInstanceOf(Sessions.Result.Refused.class);
        assertThat(day.state().helperRecords()).hasSize(1 + 8 + 1);
        assertThat(day.desk().notebook().drafts()).isEmpty();
      }
      HelperRecord one = Objects.requireNonNull(plain.state().helperRecords().get(9));
      HelperRecord two = Objects.requireNonNull(corrected.state().helperRecords().get(9));
      assertThat(one.ciphertext()).hasSameSizeAs(two.ciphertext()).isNotEqualTo(two.ciphertext());
      new HelperHand(corrected).unseal();
      assertThat(Reviews.day(corrected.state()).wrongFits()).containsExactly(8);
    }
  }

  @Test
  void aDayThatIsCutShortIsClosedWithWhatStoodInTheDraftOfAStintThatIsNotRidden() {
    try (TestDay day = day("cut")) {
      HelperHand hand = new HelperHand(day);
      stints(hand, 0, 4);
      correct(day, hand, 2, other(hand, 2), "");
      HelperEntry begun =
          day.helper().unfinished(5).orElseThrow().entry().withNote("fifth was begun");
      hand.helper().keep(begun);
      assertThat(hand.over().write(hand.over().entry(day.state())))
          .as("stints are still to come")
          .isInstanceOf(Sessions.Result.Refused.class);
      day.desk()
          .sessions()
          .act(day.id(), s -> new LifeCommands(s).cutShort(4, "rain", "R. Lind", false));
      HelperHand.done(hand.over().write(hand.over().entry(day.state())));
      hand.unseal();
      DayRecord record = Reviews.day(day.state());
      assertThat(record.wrongFits()).containsExactly(2);
      assertThat(new FindingText(Analysis.of(record)).record())
          .anyMatch(line -> line.contains("with the words: fifth was begun"));
    }
  }

  @Test
  void aDayThatSomebodyElseClosedIsClosedForTheHelperAsSoonAsThePhraseOpensIt() {
    try (TestDay day = day("else")) {
      HelperHand hand = new HelperHand(day);
      stints(hand, 0, 8);
      correct(day, hand, 7, other(hand, 7), "");
      day.desk().riderDays().closeDay(day.id());
      FitCorrections fits = hand.fits();
      assertThat(faults(fits.keep(day.state(), fits.now(6, other(hand, 6), ""))))
          .containsExactly(DeskFault.FIT_AFTER_DAY);
      day.helper();
      assertThat(day.state().helperRecords()).hasSize(10);
      hand.unseal();
      assertThat(Reviews.day(day.state()).wrongFits()).containsExactly(7);
    }
  }

  @Test
  void whatStoodInTheDraftOfAHelperWhoNeverCameBackIsAnAmendmentAndTheAbsenceIsSaid() {
    try (TestDay day = day("never")) {
      HelperHand hand = new HelperHand(day);
      stints(hand, 0, 8);
      correct(day, hand, 7, other(hand, 7), "too late");
      hand.unseal();
      DayRecord record = Reviews.day(day.state());
      assertThat(record.wrongFits()).as("amendments change no number").isEmpty();
      assertThat(day.state().amendments()).hasSize(1);
      assertThat(day.state().amendments().get(0).text()).contains("stint 7").contains("too late");
      assertThat(new FindingText(Analysis.of(record)).circumstances())
          .anyMatch(line -> line.contains("never closed"));
      assertThat(day.desk().notebook().drafts()).isEmpty();
    }
  }

  @Test
  void ofTwoCorrectionsOfAStintTheLaterCountsAndBothAreSaid() {
    try (TestDay day = day("twice")) {
      HelperHand hand = new HelperHand(day);
      stints(hand, 0, 3);
      int scheduled = hand.helper().work(2).setup();
      correct(day, hand, 2, 1 - scheduled, "looked like it");
      correct(day, hand, 2, scheduled, "no, it was right");
      stints(hand, 4, 8);
      HelperHand.done(hand.over().write(hand.over().entry(day.state())));
      hand.unseal();
      DayRecord record = Reviews.day(day.state());
      assertThat(record.wrongFits()).isEmpty();
      assertThat(record.remarks(Remark.Kind.FIT_CORRECTED)).hasSize(2);
    }
  }

  @Test
  void whatCannotBeCorrectedIsRefusedAndNothingIsWritten() {
    try (TestDay day = day("refused")) {
      HelperHand hand = new HelperHand(day);
      stints(hand, 0, 2);
      FitCorrections fits = hand.fits();
      SessionState state = day.state();
      int on = hand.helper().work(2).setup();
      assertThat(faults(fits.keep(state, fits.now(3, 0, ""))))
          .containsExactly(DeskFault.FIT_NOT_YET);
      assertThat(faults(fits.keep(state, fits.now(9, 0, ""))))
          .containsExactly(DeskFault.FIT_NOT_YET);
      assertThat(faults(fits.keep(state, fits.now(2, on, ""))))
          .containsExactly(DeskFault.FIT_AS_RECORDED);
      assertThat(faults(fits.keep(state, fits.now(2, 1 - on, "🚵".repeat(2_000)))))
          .containsExactly(DeskFault.NOTE_TOO_LONG);
      assertThat(fits.keep(state, fits.now(2, 1 - on, "a bell \u0007"))).hasSize(1);
      assertThat(day.desk().notebook().drafts()).isEmpty();
      assertThat(day.state().entries()).hasSameSizeAs(state.entries());
    }
  }

  @Test
  void anEntryWithoutCorrectionsReadsAndIsWrittenAsBefore() {
    try (TestDay day = day("old")) {
      HelperHand hand = new HelperHand(day);
      HelperEntry plain = hand.ready(1, 0);
      String old = HelperEntryText.write(plain, day.state().plan());
      assertThat(old).doesNotContain("corrections").doesNotContain("paper");
      assertThat(HelperEntryText.read(old, day.state().plan())).contains(plain);
      HelperEntry full =
          plain
              .withCorrection(hand.fits().now(0, 1, "seen late"))
              .onPaper(new HelperEntry.Paper("M. Oster"));
      String text = HelperEntryText.write(full, day.state().plan());
      assertThat(HelperEntryText.read(text, day.state().plan())).contains(full);
      assertThat(full + " " + full.corrections()).doesNotContain("seen late");
    }
  }

  @Test
  void aDayWhoseHelperNeverHadSuchRecordsIsNotCalledUnclosed() {
    try (TestDay day = day("earlier")) {
      HelperHand hand = new HelperHand(day);
      for (int stint = 0; stint <= 8; stint++) {
        HelperEntry timed = hand.ready(stint, hand.helper().work(stint).setup());
        HelperEntry earlier =
            new HelperEntry(
                stint,
                timed.helper(),
                timed.planned(),
                timed.fitted(),
                timed.begun(),
                null,
                timed.measured(),
                List.of(),
                timed.confirmed(),
                timed.fit(),
                List.of(),
                "");
        HelperHand.done(hand.helper().handOver(earlier));
        hand.ride(stint);
      }
      hand.unseal();
      assertThat(Reviews.day(day.state()).remarks(Remark.Kind.HELPER_NOT_CLOSED)).isEmpty();
    }
  }
}
