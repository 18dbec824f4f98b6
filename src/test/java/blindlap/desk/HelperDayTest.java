package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.HelperEntryText;
import blindlap.exchange.HelperFits;
import blindlap.fault.Fault;
import blindlap.fault.Problem;
import blindlap.plan.Setting;
import blindlap.seal.HelperRecord;
import blindlap.session.HelperEntry;
import blindlap.session.SafetyCheck;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HelperDayTest {
  private @TempDir Path folder;
  private TestDay day;
  private HelperDay helper;

  @BeforeEach
  void open() {
    day = new TestDay(folder, TestDay.EIGHT, 3);
    helper = day.helper();
  }

  @AfterEach
  void close() {
    day.close();
  }

  private Map<String, String> asPlanned(int setup) {
    Map<String, String> measured = new LinkedHashMap<>();
    List<Setting> all = new ArrayList<>(day.state().plan().setups().get(setup).settings());
    all.addAll(day.state().plan().bike());
    all.forEach(s -> measured.put(s.name(), s.value()));
    return measured;
  }

  private HelperEntry entry(
      int stint, int fitted, Map<String, String> measured, Set<SafetyCheck> checks, String note) {
    HelperDay.Work work = helper.work(stint);
    List<HelperEntry.Outside> outside = new ArrayList<>();
    for (Setting setting : work.settings()) {
      Tolerance.outside(setting, measured.getOrDefault(setting.name(), "")).ifPresent(outside::add);
    }
    return new HelperEntry(
        stint,
        "M. Oster",
        work.setup(),
        fitted,
        day.clock().instant(),
        null,
        measured,
        outside,
        checks,
        new TreeMap<>(stint == 0 ? Map.of() : Map.of(0, true)),
        List.of(),
        note);
  }

  private HelperEntry ready(int stint) {
    int setup = helper.work(stint).setup();
    return entry(stint, setup, asPlanned(setup), EnumSet.allOf(SafetyCheck.class), "");
  }

  private static List<Fault> faults(List<Problem> problems) {
    return problems.stream().map(Problem::fault).toList();
  }

  @Test
  void aFullyConfirmedHandlingHandsTheBikeOver() {
    assertThat(helper.missing(ready(0), 0)).isEmpty();
    assertThat(helper.handOver(ready(0))).isInstanceOf(Sessions.Result.Done.class);
    assertThat(day.state().handedOver(0)).isTrue();
    assertThat(day.state().handedOver(1)).isFalse();
  }

  @Test
  void everySafetyItemMustBeConfirmedBeforeRealAndDummySwapsAlike() {
    for (int stint = 0; stint <= 8; stint++) {
      for (SafetyCheck left : SafetyCheck.values()) {
        int setup = helper.work(stint).setup();
        Set<SafetyCheck> most = EnumSet.complementOf(EnumSet.of(left));
        HelperEntry open = entry(stint, setup, asPlanned(setup), most, "");
        assertThat(faults(helper.missing(open, 0))).containsExactly(DeskFault.CHECKS_OPEN);
        assertThat(helper.handOver(open)).isInstanceOf(Sessions.Result.Refused.class);
      }
    }
    assertThat(day.state().helperRecords()).isEmpty();
  }

  @Test
  void aSettingOutsideItsToleranceNeedsAReasonAndSaysByHowMuch() {
    int setup = helper.work(1).setup();
    Map<String, String> measured = asPlanned(setup);
    measured.put("sag", "24,5");
    HelperEntry soft = entry(1, setup, measured, EnumSet.allOf(SafetyCheck.class), "");
    assertThat(soft.outside()).hasSize(1);
    assertThat(soft.outside().get(0).by()).isEqualByComparingTo("-1.5");
    assertThat(faults(helper.missing(soft, 0))).containsExactly(DeskFault.OUTSIDE_TOLERANCE);
  }

  @Test
  void aSettingAtTheEdgeOfItsToleranceIsInside() {
    int setup = helper.work(1).setup();
    Map<String, String> measured = asPlanned(setup);
    measured.put("sag", "25");
    assertThat(entry(1, setup, measured, Set.of(), "").outside()).isEmpty();
    measured.put("sag", "24.99");
    assertThat(entry(1, setup, measured, Set.of(), "").outside()).hasSize(1);
  }

  @Test
  void wordsWhereANumberIsMeasuredAreNotAMeasurement() {
    int setup = helper.work(1).setup();
    Map<String, String> measured = asPlanned(setup);
    measured.put("front tyre", "fine");
    HelperEntry entry = entry(1, setup, measured, EnumSet.allOf(SafetyCheck.class), "");
    assertThat(faults(helper.missing(entry, 0))).containsExactly(DeskFault.MEASURES_OPEN);
  }

  @Test
  void aStintHasOneEntryOnly() {
    assertThat(helper.handOver(ready(1))).isInstanceOf(Sessions.Result.Done.class);
    assertThat(helper.handOver(ready(1))).isInstanceOf(Sessions.Result.Refused.class);
    assertThat(day.state().helperRecords()).hasSize(1);
  }

  @Test
  void entriesAreOfOneLengthWhateverTheyHold() {
    helper.handOver(ready(1));
    int setup = helper.work(2).setup();
    HelperEntry talkative =
        entry(2, setup, asPlanned(setup), EnumSet.allOf(SafetyCheck.class), "bolt ".repeat(60));
    assertThat(helper.handOver(talkative)).isInstanceOf(Sessions.Result.Done.class);
    Map<Integer, HelperRecord> records = Map.copyOf(day.state().helperRecords());
    assertThat(records.get(1).ciphertext()).hasSameSizeAs(records.get(2).ciphertext());
    assertThat(records.get(1).ciphertext()).doesNotContain("Shock");
  }

  @Test
  void aNoteTooLongForAnEntryIsRefusedAndNothingIsWritten() {
    int setup = helper.work(1).setup();
    HelperEntry endless =
        entry(1, setup, asPlanned(setup), EnumSet.allOf(SafetyCheck.class), "🚵".repeat(2_000));
    Sessions.Result result = helper.handOver(endless);
    assertThat(result).isInstanceOf(Sessions.Result.Refused.class);
    assertThat(faults(((Sessions.Result.Refused) result).problems()))
        .containsExactly(DeskFault.NOTE_TOO_LONG);
    assertThat(day.state().handedOver(1)).isFalse();
  }

  @Test
  void theEntryCarriesTheScheduledTimeInTheClearWheneverTheBikeWasReady() {
    day.clock().move(Duration.ofMinutes(47));
    helper.handOver(ready(1));
    var handled =
        day.desk().notebook().entries(day.id()).stream()
            .filter(e -> e.entry().fact() instanceof blindlap.session.Fact.StintHandled)
            .toList();
    assertThat(handled).hasSize(1);
    assertThat(handled.get(0).entry().at()).isEqualTo(helper.scheduled(1));
  }

  @Test
  void anUnfinishedEntryIsTakenUpAgainAndIsNotReadableInTheNotebook() {
    int setup = helper.work(1).setup();
    HelperEntry begun =
        entry(1, setup, asPlanned(setup), EnumSet.of(SafetyCheck.BRAKES), "rivet found loose");
    HelperDraft draft = new HelperDraft(begun, Set.of(0, 3, 11));
    helper.keep(draft);
    assertThat(day.helper().unfinished(1)).contains(draft);
    helper.keep(begun);
    assertThat(day.helper().unfinished(1)).contains(new HelperDraft(begun, Set.of()));
    assertThat(day.helper().unfinished(2)).isEmpty();
    assertThat(day.desk().notebook().drafts().values())
        .allSatisfy(kept -> assertThat(kept).doesNotContain("rivet"));
  }

  @Test
  void aWrongFitStandsInTheEntryAndIsReadForTheAnalysis() {
    int other = 1 - helper.work(4).setup();
    HelperEntry wrong =
        entry(4, other, asPlanned(other), EnumSet.allOf(SafetyCheck.class), "taken for the other");
    String text = HelperEntryText.write(wrong, day.state().plan());
    assertThat(HelperEntryText.read(text, day.state().plan())).contains(wrong);
    assertThat(wrong.wrongFit()).isTrue();
    assertThat(HelperFits.read(Map.of(4, text), day.state().plan()).get(4).fitted())
        .isEqualTo(other);
  }

  @Test
  void aRiderWhoIsNotFitToGoOnIsNotSentOut() {
    HelperEntry asked = ready(2);
    HelperEntry tired = asked.withFit(0, false);
    assertThat(faults(helper.missing(tired, 0))).containsExactly(DeskFault.RIDER_NOT_FIT);
  }

  @Test
  void aWrongPhraseOpensNothing() {
    String other =
        day.phrase().split(" ")[0] + " " + day.phrase().substring(0, day.phrase().lastIndexOf(' '));
    assertThat(day.desk().helperDays().open(day.state(), other))
        .isInstanceOf(HelperDays.Opened.Refused.class);
  }

  private void handled(int stint, int minutes, @org.jspecify.annotations.Nullable Boolean mishap) {
    HelperEntry.Timing timing =
        new HelperEntry.Timing(
            Duration.ofMinutes(7), Duration.ofMinutes(minutes), mishap, "a word");
    assertThat(helper.handOver(ready(stint).withTiming(timing)))
        .isInstanceOf(Sessions.Result.Done.class);
  }

  @Test
  void anOverrunRaisesEveryLaterHandlingOnceByAQuarterAtMost() {
    handled(0, 7, null);
    assertThat(helper.raised(day.state(), 1)).isZero();
    handled(1, 8, false);
    assertThat(helper.raised(day.state(), 1)).isZero();
    assertThat(helper.raised(day.state(), 2)).isEqualTo(Duration.ofMinutes(1));
    handled(2, 12, false);
    assertThat(helper.raised(day.state(), 3)).isEqualTo(Duration.ofMinutes(1));
  }

  @Test
  void aLongOverrunRaisesByAQuarterAndNoMore() {
    handled(0, 20, null);
    assertThat(helper.raised(day.state(), 1)).isEqualTo(Duration.ofSeconds(105));
  }

  @Test
  void aMishapRaisesNothing() {
    handled(0, 20, true);
    assertThat(helper.raised(day.state(), 1)).isZero();
    handled(1, 9, false);
    assertThat(helper.raised(day.state(), 2)).isEqualTo(Duration.ofSeconds(105));
  }

  @Test
  void howLongAHandlingTookComesBackAndOlderRecordsLackIt() {
    HelperEntry plain = ready(1);
    HelperEntry timed =
        plain.withTiming(
            new HelperEntry.Timing(
                Duration.ofMinutes(7), Duration.ofMillis(552_300), true, "bolt"));
    String text = HelperEntryText.write(timed, day.state().plan());
    assertThat(text).contains("\"timing\":{\"given\":\"420\",\"mishap\":true,\"took\":\"552.3\"");
    assertThat(HelperEntryText.read(text, day.state().plan())).contains(timed);
    String old = HelperEntryText.write(plain, day.state().plan());
    assertThat(old).doesNotContain("timing");
    assertThat(HelperEntryText.read(old, day.state().plan())).contains(plain);
    HelperEntry open =
        plain.withTiming(new HelperEntry.Timing(null, Duration.ofSeconds(9), null, ""));
    assertThat(
            HelperEntryText.read(
                HelperEntryText.write(open, day.state().plan()), day.state().plan()))
        .contains(open);
  }
}
