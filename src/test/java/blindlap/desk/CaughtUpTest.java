package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.Fault;
import blindlap.fault.Problem;
import blindlap.review.Analysis;
import blindlap.review.DayRecord;
import blindlap.session.DayCommands;
import blindlap.session.Fact;
import blindlap.session.HelperEntry;
import blindlap.session.KeptOnPaper;
import blindlap.session.SafetyCheck;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import blindlap.session.day.DayEvent;
import blindlap.wording.FindingText;
import blindlap.wording.day.Problems;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Stints that were kept on paper: keyed in, recorded, told after unsealing. */
class CaughtUpTest {
  private static final Set<SafetyCheck> ALL = EnumSet.allOf(SafetyCheck.class);

  private @TempDir Path folder;
  private TestDay day;
  private HelperHand hand;

  @BeforeEach
  void open() {
    day = new TestDay(folder, TestDay.EIGHT, 3);
    hand = new HelperHand(day);
  }

  @AfterEach
  void close() {
    day.close();
  }

  private CaughtUp caughtUp() {
    return new CaughtUp(hand.helper());
  }

  private static KeptOnPaper scheduled(int stint) {
    return new KeptOnPaper(stint, KeptOnPaper.AS_SCHEDULED, "J. Ask", ALL, Map.of(), "");
  }

  private static List<Fault> faults(Sessions.Result result) {
    return ((Sessions.Result.Refused) result).problems().stream().map(Problem::fault).toList();
  }

  @Test
  void thePageIsAtTheStintInHandWithoutAnyWaitAndEveryStintHasAnOrdinaryRecord() {
    hand.handle(0);
    hand.handle(1);
    HelperHand.done(caughtUp().record(List.of(scheduled(2), scheduled(3), scheduled(4))));
    SessionState now = day.state();
    assertThat(hand.helper().next(now)).contains(5);
    assertThat(now.helperRecords().values())
        .hasSize(5)
        .allSatisfy(
            r -> assertThat(r.ciphertext()).hasSameSizeAs(now.helperRecords().get(1).ciphertext()));
    assertThat(now.handedOver(4)).as("no bike is handed over by a table").isFalse();
    day.helper();
    assertThat(day.state().handedOver(4)).as("nor when the day is opened again").isFalse();
  }

  @Test
  void aStintThatWasFittedOtherwiseCountsAsAWrongFitAndTheNextIsRealOrDummyByIt() {
    hand.handle(0);
    int other = 1 - hand.helper().work(1).setup();
    HelperHand.done(
        caughtUp().record(List.of(new KeptOnPaper(1, other, "", Set.of(), Map.of(), "mixed up"))));
    assertThat(hand.helper().work(2).comesOff()).isEqualTo(other);
    assertThat(day.helper().work(2).comesOff()).isEqualTo(other);
  }

  @Test
  void theReportListsWhatWasKeptOnPaperAndWhoTickedIt() {
    hand.handle(0);
    hand.ride(0);
    int other = 1 - hand.helper().work(2).setup();
    Set<SafetyCheck> some = EnumSet.of(SafetyCheck.AXLES, SafetyCheck.BRAKES);
    HelperHand.done(
        caughtUp()
            .record(
                List.of(
                    new KeptOnPaper(
                        1, KeptOnPaper.AS_SCHEDULED, "J. Ask", ALL, Map.of("sag", "24,5"), ""),
                    new KeptOnPaper(2, other, "J. Ask", some, Map.of(), "taken for the other"),
                    new KeptOnPaper(3, KeptOnPaper.AS_SCHEDULED, "", Set.of(), Map.of(), ""))));
    hand.ride(1);
    hand.ride(2);
    hand.ride(3);
    for (int stint = 4; stint <= 8; stint++) {
      hand.handle(stint);
      hand.ride(stint);
    }
    HelperHand.done(hand.over().write(hand.over().entry(day.state())));
    hand.unseal();
    DayRecord record = Reviews.day(day.state());
    assertThat(record.wrongFits()).containsExactly(2);
    assertThat(record.handlings().get(2)).as("nobody knows how long it took").isNull();
    List<String> lines = new FindingText(Analysis.of(record)).record();
    assertThat(lines)
        .anyMatch(
            l ->
                l.matches(
                    "Stint 1, kept on paper: fitted as scheduled \\(Shock [KL]\\); the whole safety"
                        + " list confirmed on paper by J\\. Ask\\."))
        .anyMatch(
            l ->
                l.matches(
                    "Stint 2, kept on paper: fitted otherwise, Shock [KL] instead of Shock [KL];"
                        + " of the safety list J\\. Ask confirmed on paper: axles and brakes\\."))
        .anyMatch(l -> l.endsWith("the safety list not confirmed on paper."));
    String html = day.desk().reviews().html(day.state(), false);
    assertThat(html).contains("Stint 2, kept on paper", "taken for the other");
    assertThat(new FindingText(Analysis.of(record)).circumstances())
        .anyMatch(l -> l.contains("sag was 24,5"));
  }

  @Test
  void whatThePageHadAlreadyTakenDownOfAStintGoesIntoItsRecord() {
    hand.handle(0);
    hand.handle(1);
    FitCorrections fits = hand.fits();
    int other = 1 - hand.helper().work(1).setup();
    HelperEntry begun =
        fits.inHand(day.state())
            .withEvent(new HelperEntry.Said(2, DayEvent.COVER_OFF, "slipped"))
            .withNote("begun here");
    hand.helper().keep(begun);
    assertThat(fits.keep(day.state(), fits.now(1, other, ""))).isEmpty();
    HelperHand.done(caughtUp().record(List.of(scheduled(2), scheduled(3))));
    HelperEntry second = hand.helper().records().of(day.state()).get(2);
    assertThat(second.corrections()).hasSize(1);
    assertThat(second.events()).hasSize(1);
    assertThat(second.note()).isEqualTo("begun here");
    assertThat(hand.helper().records().of(day.state()).get(3).corrections()).isEmpty();
    assertThat(day.desk().notebook().drafts()).isEmpty();
  }

  @Test
  void stintsOutOfTurnOrTwiceOrTooManyAreRefusedAndNotOneIsWritten() {
    hand.handle(0);
    assertThat(faults(caughtUp().record(List.of(scheduled(1), scheduled(3)))))
        .containsExactly(DeskFault.PAPER_OUT_OF_TURN);
    assertThat(faults(caughtUp().record(List.of(scheduled(0)))))
        .containsExactly(DeskFault.PAPER_OUT_OF_TURN);
    assertThat(faults(caughtUp().record(List.of()))).containsExactly(DeskFault.NOTHING_ON_PAPER);
    KeptOnPaper nobody = new KeptOnPaper(1, -1, " ", ALL, Map.of(), "");
    assertThat(faults(caughtUp().record(List.of(nobody, scheduled(2)))))
        .containsExactly(DeskFault.PAPER_BY_MISSING);
    KeptOnPaper words = new KeptOnPaper(1, -1, "", Set.of(), Map.of("sag", "fine"), "");
    assertThat(faults(caughtUp().record(List.of(words))))
        .containsExactly(DeskFault.PAPER_NOT_A_NUMBER);
    assertThat(day.state().helperRecords()).hasSize(1);
    hand.ride(1);
    day.desk().riderDays().closeDay(day.id());
    assertThat(faults(caughtUp().record(List.of(scheduled(1)))))
        .containsExactly(SessionFault.RECORDING_IS_OVER);
  }

  @Test
  void theEmptyTableNamesNoSetupAndReadsBackFilledIn() {
    hand.handle(0);
    String form = new String(CaughtUp.form(day.state()), StandardCharsets.UTF_8);
    assertThat(form).doesNotContain("Shock");
    assertThat(form.lines().toList())
        .hasSize(9)
        .first()
        .isEqualTo(
            "stint;code;fitted;safe: axles;safe: pivots and mounts;safe: spring seated;safe:"
                + " pressures;safe: brakes;safe: wheels;safe: nothing loose;confirmed by;set:"
                + " compression;set: sag;set: front tyre;note");
    String filled =
        form.replaceFirst(
                "(?m)^1;(\\d+);.*$", "1;$1;as scheduled;x;x;x;X;yes;ok;;J. Ask;9;26,2;1,55;")
            .replaceFirst("(?m)^2;(\\d+);.*$", "2;$1;Shock L;;;;;;;;;;;;odd noise");
    CaughtUp.Paper paper = CaughtUp.read(day.state(), filled.getBytes(StandardCharsets.UTF_8));
    assertThat(paper.problems()).isEmpty();
    assertThat(paper.stints())
        .containsExactly(
            new KeptOnPaper(
                1,
                KeptOnPaper.AS_SCHEDULED,
                "J. Ask",
                EnumSet.complementOf(EnumSet.of(SafetyCheck.NOTHING_LOOSE)),
                Map.of("compression", "9", "sag", "26,2", "front tyre", "1,55"),
                ""),
            new KeptOnPaper(2, 1, "", Set.of(), Map.of(), "odd noise"));
    HelperHand.done(caughtUp().record(paper.stints()));
    assertThat(new String(CaughtUp.form(day.state()), StandardCharsets.UTF_8).lines()).hasSize(7);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "stint;fitted~1;Shock X|Line 2: \"Shock X\" is not \"as scheduled\" and none of the setups",
        "stint;fitted~1;Shock|Line 2: \"Shock\" is not \"as scheduled\" and none of the setups",
        "stint;fitted;note~1;;windy|Line 2: Of stint 1 nothing is said of what was fitted.",
        "stint;fitted~12;A|Line 2: \"12\" is not a stint of this day; they are numbered 0 to 8",
        "stint;fitted~1;A~1;B|Line 3: Stint 1 stands twice in this table, first at line 2.",
        "stint;code;fitted~1;999x;A|Line 2: Stint 1 does not have the code 999x.",
        "stint;fitted;safe: brakes~1;A;soft|Line 2: \"soft\" in \"safe: brakes\" is no tick;",
        "stint;fitted;set: sag~1;A;26mm|Line 2: \"26mm\" is not a number for \"sag\".",
        "stint;fitted;set: sag~1;A;1.026,5|Line 2: \"1.026,5\" for \"sag\" has both a point",
        "stint;fitted;set: sag~1;A;26,5~2;A;26.5|Line 3: \"26.5\" uses another decimal sign than",
        "stint;fitted;torque~1;A;5|Line 1: The column \"torque\" is not known.",
        "stint;fitted;fitted~1;A;A|Line 1: The column \"fitted\" stands twice.",
        "code;fitted~1;A|Line 1: There is no column \"stint\" among: code, fitted.",
        "stint;fitted~1;|The helper's table has no stint below its header that is filled in.",
        "stint;fitted|The helper's table has no stint below its header that is filled in.",
        "stint;fitted~1|Line 2: This row has 1 cells, the header has 2.",
        "stint;fitted~1;\"A|Line 2: The helper's table is not a table:"
      })
  void everyBadTableGetsOneClearSentence(String table, String begins) {
    byte[] bytes = table.replace('~', '\n').getBytes(StandardCharsets.UTF_8);
    CaughtUp.Paper paper = CaughtUp.read(day.state(), bytes);
    assertThat(paper.problems()).hasSize(1);
    assertThat(Problems.sentence(paper.problems().get(0)))
        .startsWith(begins)
        .contains("Nothing was recorded");
  }

  @Test
  void aTableThatIsNotTextIsRefused() {
    byte[] bytes = {(byte) 0xff, (byte) 0xfe, 0, 1};
    assertThat(CaughtUp.read(day.state(), bytes).problems().stream().map(Problem::fault))
        .containsExactly(blindlap.exchange.FileFault.HELPER_NOT_UTF8);
  }

  @Test
  void aWaitIsKnownWhereTheBikeWasHandedOverByTheRidersPage() {
    hand.handle(0);
    hand.handle(1);
    hand.ride(1);
    day.clock().move(java.time.Duration.ofMinutes(9));
    day.desk()
        .sessions()
        .act(day.id(), s -> new DayCommands(s).stint(2, new Fact.BikeHandedOver(2)));
    HelperHand.done(caughtUp().record(List.of(scheduled(2))));
    assertThat(day.state().handedOver(2)).isTrue();
    assertThat(hand.helper().next(day.state())).contains(3);
  }
}
