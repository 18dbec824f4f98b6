package blindlap.screen.swap;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.HelperDay;
import blindlap.desk.Keys;
import blindlap.desk.TestDay;
import blindlap.exchange.HelperFits;
import blindlap.screen.Models;
import blindlap.screen.cover.Idling;
import blindlap.screen.swap.SwapModel.Phase;
import blindlap.session.Fact;
import blindlap.session.SafetyCheck;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.LapId;
import blindlap.wording.day.SettingRow;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SwapModelTest {
  private static final Duration HANDLING = Duration.ofMinutes(7);

  private @TempDir(factory = RamFolder.class) Path folder;
  private TestDay day;
  private SwapModel model;

  @BeforeEach
  void start() {
    day = new TestDay(folder, TestDay.EIGHT, 5);
    model = Models.swap(day);
  }

  @AfterEach
  void end() {
    day.close();
  }

  private void unlock() {
    model.phrase(day.phrase());
    model.choosePin("0417");
    assertThat(model.phaseProperty().get()).isEqualTo(Phase.OPEN);
  }

  private SwapSheet sheet() {
    return Objects.requireNonNull(model.work().sheetProperty().get());
  }

  private void wait(Duration time) {
    for (Duration gone = Duration.ZERO; gone.compareTo(time) < 0; gone = gone.plusMinutes(1)) {
      day.clock().move(Duration.ofMinutes(1));
      model.touch();
      model.tick();
    }
  }

  private void measureAsPlanned() {
    day.helper()
        .settings(sheet().stint(), sheet().fitted())
        .forEach(s -> model.work().measured(s.name(), s.value()));
  }

  private void confirmAll() {
    for (SafetyCheck check : SafetyCheck.values()) {
      model.work().confirm(check.name(), true);
    }
    if (sheet().fitAsked()) {
      model.work().riderFit(true);
    }
  }

  private void handleInFull() {
    measureAsPlanned();
    confirmAll();
    wait(HANDLING);
  }

  private void wholeStint() {
    model.work().begin();
    handleInFull();
    model.work().handOver();
    assertThat(model.work().troubleProperty().get()).isEmpty();
    bikeIsBack();
  }

  /** The bike comes back; the PIN opens the page on the next stint. */
  private void bikeIsBack() {
    assertThat(model.phaseProperty().get()).isEqualTo(Phase.SAFE);
    model.bikeReturned();
    assertThat(model.phaseProperty().get()).isEqualTo(Phase.BLANK);
    model.reopen("0417");
  }

  @Test
  void nothingIsShownBeforeThePhraseAndAWrongOneShowsNothing() {
    assertThat(model.phaseProperty().get()).isEqualTo(Phase.PHRASE);
    model.phrase("one two three");
    assertThat(model.phaseProperty().get()).isEqualTo(Phase.PHRASE);
    assertThat(model.troubleProperty().get()).isNotEmpty();
    assertThat(model.work().sheetProperty().get()).isNull();
  }

  @Test
  void twoMinutesWithoutATouchBlankThePageAndTwoMinutesLessASecondDoNot() {
    unlock();
    day.clock().move(Idling.LIMIT.minusSeconds(1));
    model.tick();
    assertThat(model.phaseProperty().get()).isEqualTo(Phase.OPEN);
    day.clock().move(Duration.ofSeconds(1));
    model.tick();
    assertThat(model.phaseProperty().get()).isEqualTo(Phase.BLANK);
    assertThat(model.work().sheetProperty().get()).isNull();
    assertThat(model.timeProperty().get()).isEqualTo(SwapClock.Time.NONE);
  }

  @Test
  void aClockSetBackBlanksThePageInsteadOfKeepingItOpenForAnHour() {
    unlock();
    day.clock().set(Duration.ofHours(-1));
    model.tick();
    assertThat(model.phaseProperty().get()).isEqualTo(Phase.BLANK);
  }

  @Test
  void hideNowBlanksAndThePinBringsTheSameStintBack() {
    unlock();
    model.work().begin();
    model.work().confirm("BRAKES", true);
    SwapSheet before = sheet();
    model.hide();
    assertThat(model.work().sheetProperty().get()).isNull();
    model.reopen("0418");
    assertThat(model.phaseProperty().get()).isEqualTo(Phase.BLANK);
    model.reopen("0417");
    assertThat(sheet()).isEqualTo(before);
  }

  @Test
  void fiveWrongPinsAskForThePhraseAndThePinIsForgotten() {
    unlock();
    model.hide();
    for (int i = 0; i < 5; i++) {
      model.reopen("9999");
    }
    assertThat(model.phaseProperty().get()).isEqualTo(Phase.PHRASE);
    model.reopen("0417");
    assertThat(model.phaseProperty().get()).isEqualTo(Phase.PHRASE);
    unlock();
  }

  @Test
  void whatAnotherWindowWritesNeverUncoversABlankPage() {
    unlock();
    model.hide();
    day.desk().riderDays().handedOver(day.id(), 0);
    model.tick();
    assertThat(model.phaseProperty().get()).isEqualTo(Phase.BLANK);
    assertThat(model.work().sheetProperty().get()).isNull();
  }

  @Test
  void theCountdownStepsAndChecksAreTheSameForRealAndDummySwaps() {
    unlock();
    wholeStint(); // the warm-up has no cool-down of its own to wait for
    Map<Boolean, List<Object>> byKind = new LinkedHashMap<>();
    for (int stint = 1; stint <= 8; stint++) {
      boolean real = day.helper().work(stint).real();
      model.work().begin();
      model.tick();
      List<Object> seen =
          List.of(
              model.timeProperty().get().left(),
              sheet().steps().size(),
              sheet().settings().stream().map(SettingRow::name).toList(),
              sheet().fitAsked());
      if (stint > 1 && stint < 8) {
        assertThat(byKind.computeIfAbsent(real, r -> seen)).isEqualTo(seen);
      }
      wholeStint();
    }
    assertThat(byKind).containsOnlyKeys(true, false);
    assertThat(byKind.get(true)).isEqualTo(byKind.get(false));
    assertThat(model.phaseProperty().get()).isEqualTo(Phase.ALL_DONE);
    assertThat(day.state().helperRecords()).hasSize(9);
  }

  @Test
  void theBikeIsNotHandedOverBeforeTheWholeTimeIsOver() {
    unlock();
    model.work().begin();
    measureAsPlanned();
    confirmAll();
    wait(HANDLING.minusMinutes(1));
    model.work().handOver();
    assertThat(model.work().troubleProperty().get()).contains("1:00");
    assertThat(day.state().handedOver(0)).isFalse();
  }

  @Test
  void aLapWaitsForEverySafetyItem() {
    unlock();
    model.work().begin();
    handleInFull();
    assertThat(model.work().waitsProperty().get().whole()).isEmpty();
    model.work().confirm("WHEELS", false);
    assertThat(model.work().waitsProperty().get().whole()).isNotEmpty();
    model.work().handOver();
    assertThat(day.state().handedOver(0)).isFalse();
  }

  @Test
  void aValueOutsideItsToleranceSaysByHowMuchAndWhichWay() {
    unlock();
    model.work().begin();
    model.work().measured("sag", "24.5");
    SettingRow sag =
        sheet().settings().stream().filter(r -> r.name().equals("sag")).findFirst().orElseThrow();
    assertThat(sag.outside()).contains("1.5 %").contains("below");
    model.work().measured("sag", "26.5");
    assertThat(sheet().settings()).allSatisfy(r -> assertThat(r.outside()).isEmpty());
  }

  @Test
  void aHalfTypedValueOutsideItsToleranceWaitsForItsReason() {
    unlock();
    model.work().begin();
    handleInFull();
    model.work().typing("sag", "2");
    assertThat(sheet().settings()).allSatisfy(r -> assertThat(r.outside()).isEmpty());
    assertThat(model.work().waitsProperty().get().none()).isFalse();
    model.work().typing("sag", "26");
    assertThat(model.work().waitsProperty().get().none()).isTrue();
  }

  @Test
  void aWrongFitIsSealedAndLeavesNothingTheRiderCanRead() {
    unlock();
    model.work().fitted(1 - sheet().fitted());
    model.work().note("wrong one went on");
    wholeStint();
    assertThat(day.desk().notebook().entries(day.id()))
        .allSatisfy(e -> assertThat(e.text()).doesNotContain("wrong one"));
    assertThat(day.desk().notebook().drafts().toString()).doesNotContain("wrong one");
  }

  @Test
  void aNoteTooLongForTheEntryIsRefusedInWordsAndTheStintGoesOn() {
    unlock();
    model.work().begin();
    model.work().note("x".repeat(9_000));
    assertThat(model.work().troubleProperty().get()).isNotEmpty();
    model.work().note("short");
    handleInFull();
    model.work().handOver();
    assertThat(day.state().handedOver(0)).isTrue();
  }

  @Test
  void aProgramThatEndsInTheMiddleOfAHandlingGoesOnWhereItWas() {
    unlock();
    model.work().begin();
    model.work().measured("sag", "26.4");
    model.work().confirm("AXLES", true);
    SwapSheet before = sheet();
    day.clock().move(SwapDrafts.EVERY);
    model.beat();
    model = Models.swap(day);
    unlock();
    assertThat(sheet()).isEqualTo(before);
  }

  @Test
  void anEntryWrittenJustBeforeTheProgramEndedStillHandsTheBikeOver() {
    HelperDay helper = day.helper();
    unlock();
    wholeStint();
    model.work().begin();
    handleInFull();
    // The helper's entry is on disk, the hand-over is not: that is where the plug was pulled.
    var entry = Objects.requireNonNull(model.work().entry());
    var handled = helper.write(entry);
    assertThat(handled).isInstanceOf(blindlap.desk.Sessions.Result.Done.class);
    assertThat(day.state().handedOver(1)).isFalse();
    model = Models.swap(day);
    model.phrase(day.phrase());
    model.choosePin("0417");
    assertThat(day.state().handedOver(1)).isTrue();
    bikeIsBack();
    assertThat(sheet().stint()).isEqualTo(2);
  }

  @Test
  void aDayClosedByTheRiderClosesTheHelpersPage() {
    unlock();
    wholeStint();
    wholeStint();
    var riders = day.desk().riderDays();
    riders.warmUp(day.id());
    riders.ridden(day.id(), new LapId(1, 1));
    riders.closeDay(day.id());
    model.tick();
    assertThat(model.phaseProperty().get()).isEqualTo(Phase.OVER);
    assertThat(model.work().sheetProperty().get()).isNull();
  }

  @Test
  void aDayCutShortLeavesNoFurtherStintToHandle() {
    unlock();
    wholeStint();
    wholeStint();
    var riders = day.desk().riderDays();
    riders.warmUp(day.id());
    riders.ridden(day.id(), new LapId(1, 1));
    model.events().cutShort("dark", "M. Oster", true);
    assertThat(model.events().saidProperty().get()).contains("stint 1").contains("not settled");
    assertThat(day.state().cutShort()).map(Fact.DayCutShort::lastStint).contains(1);
    assertThat(model.phaseProperty().get()).isEqualTo(Phase.ALL_DONE);
  }

  @Test
  void settingTheClockMakesNoHandlingShorterOrLongerWhateverIsFitted() {
    unlock();
    wholeStint();
    Map<Boolean, Duration> waited = new LinkedHashMap<>();
    for (int stint = 1; stint <= 8; stint++) {
      boolean real = day.helper().work(stint).real();
      Duration set = Duration.ofMinutes(real ? 90 : -45);
      model.work().begin();
      measureAsPlanned();
      confirmAll();
      wait(Duration.ofMinutes(2));
      day.clock().set(set);
      model.touch();
      model.tick();
      assertThat(model.timeProperty().get().left()).isEqualTo("5:00");
      model.work().handOver();
      assertThat(day.state().handedOver(stint)).as("before its time").isFalse();
      long from = day.clock().nanos();
      while (!day.state().handedOver(stint)) {
        wait(Duration.ofMinutes(1));
        model.work().handOver();
      }
      bikeIsBack();
      waited.put(real, Duration.ofNanos(day.clock().nanos() - from));
      day.clock().set(set.negated());
      model.touch();
    }
    assertThat(waited).containsOnlyKeys(true, false);
    assertThat(waited.values()).containsOnly(Duration.ofMinutes(5));
  }

  @Test
  void aProgramStartedAgainAfterTheClockWasSetBackWaitsTheWholeTimeAndNoMore() {
    unlock();
    model.work().begin();
    wait(Duration.ofMinutes(3));
    day.clock().set(Duration.ofHours(-1));
    model = Models.swap(day);
    unlock();
    assertThat(model.timeProperty().get().left()).isEqualTo("7:00");
    wait(HANDLING);
    assertThat(model.timeProperty().get().left()).isEqualTo("0:00");
  }

  @Test
  void hidingThePageAndComingBackKeepsTheCountdownWhateverTheClockWasSetTo() {
    unlock();
    model.work().begin();
    wait(Duration.ofMinutes(2));
    model.hide();
    day.clock().set(Duration.ofHours(3));
    day.clock().move(Duration.ofMinutes(1));
    model.reopen("0417");
    model.tick();
    assertThat(model.timeProperty().get().left()).isEqualTo("4:00");
  }

  private boolean anyoneReads(String words) {
    return day.desk().notebook().entries(day.id()).stream().anyMatch(e -> e.text().contains(words))
        || day.desk().notebook().drafts().toString().contains(words);
  }

  @Test
  void whatTheHelperSaysOfAnEventIsSealedWhileTheEventItselfIsForEveryone() {
    unlock();
    wholeStint();
    wholeStint();
    day.desk().riderDays().warmUp(day.id());
    model.events().coverOff("the yellow spring showed");
    model.events().blindBroken("he saw the yellow spring");
    model.helperChanged("T. Brandt");
    assertThat(anyoneReads("yellow")).isFalse();
    assertThat(anyoneReads("Brandt")).isFalse();
    assertThat(day.state().deviations())
        .extracting(Fact.DeviationNoted::kind)
        .containsExactly(DeviationKind.COVER_OFF, DeviationKind.HELPER_CHANGED);
    assertThat(day.state().blindBroken()).extracting(Fact.BlindBroken::stint).containsExactly(1);
    wholeStint();
    assertThat(anyoneReads("yellow")).isFalse();
    String sealed = openedRecord(2);
    assertThat(sealed).contains("yellow spring showed", "he saw the yellow", "T. Brandt");
    assertThat(HelperFits.read(Map.of(2, sealed), day.state().plan()).get(2).note())
        .contains("cover off, stint 1: the yellow spring showed")
        .contains("blind broken, stint 1: he saw the yellow spring");
  }

  /** A stint's sealed entry as it is read after unsealing. */
  private String openedRecord(int stint) {
    var result = (Keys.Result.Open) day.desk().keys().helper(day.state(), day.phrase());
    return result
        .lock()
        .decrypt(day.id().text(), Objects.requireNonNull(day.state().helperRecords().get(stint)))
        .orElseThrow();
  }

  @Test
  void onceEveryStintHasItsEntryWordsCanBeReadByAnyoneAndArePublicAsTyped() {
    unlock();
    for (int stint = 0; stint <= 8; stint++) {
      wholeStint();
    }
    model.events().coverOff("slipped at the gate");
    assertThat(anyoneReads("slipped at the gate")).isTrue();
  }

  @Test
  void wordsForWhichTheSealedEntryHasNoRoomAreRefusedAndNothingIsRecorded() {
    unlock();
    model.events().coverOff("x".repeat(9_000));
    assertThat(model.events().troubleProperty().get()).contains("no more room");
    assertThat(day.state().deviations()).isEmpty();
    model.events().coverOff("short");
    assertThat(day.state().deviations()).hasSize(1);
  }

  @Test
  void afterEveryLapOfAStintItIsAskedAnewWhetherTheRiderIsFit() {
    day.close();
    String plan =
        TestDay.EIGHT
            .replace("scored: 1", "scored: 2")
            .replace("lap_budget: 12", "lap_budget: 20")
            .replace("16:38", "20:00");
    day = new TestDay(folder, plan, 6);
    model = Models.swap(day);
    unlock();
    wholeStint();
    wholeStint();
    var riders = day.desk().riderDays();
    riders.warmUp(day.id());
    riders.ridden(day.id(), new LapId(1, 1));
    model.tick();
    model.work().begin();
    handleInFull();
    assertThat(sheet().riderFit()).isTrue();
    assertThat(model.work().waitsProperty().get().whole()).isEmpty();
    riders.ridden(day.id(), new LapId(1, 2));
    model.tick();
    assertThat(sheet().riderFit()).isNull();
    model.work().handOver();
    assertThat(day.state().handedOver(2)).isFalse();
    model.work().riderFit(true);
    model.work().handOver();
    assertThat(day.state().handedOver(2)).isTrue();
    assertThat(openedRecord(2)).contains("\"rider_fit\":{\"2\":true,\"3\":true}");
  }

  @Test
  void aWrongFitIsMeasuredByTheSettingsOfWhatIsReallyOn() {
    day.close();
    String plan =
        TestDay.EIGHT.replaceFirst(
                " +- .name: sag, value: 26, unit: \"%\", tolerance: 1, readings: 3.\n", "")
            + "differences_reason: one has no sag to set\n";
    day = new TestDay(folder, plan, 7);
    model = Models.swap(day);
    unlock();
    int first = sheet().settings().size();
    model.work().fitted(1 - sheet().fitted());
    assertThat(sheet().settings()).hasSize(first == 2 ? 3 : 2);
    model.work().measured(sheet().settings().get(0).name(), "1");
    assertThat(sheet().settings().get(0).outside()).isNotEmpty();
  }

  @Test
  void anotherHelperIsAnEntryOfTheDayAndSignsTheSealedEntriesFromThenOn() {
    unlock();
    model.helperChanged(" ");
    assertThat(model.events().troubleProperty().get()).isNotEmpty();
    assertThat(day.state().deviations()).isEmpty();
    model.helperChanged("T. Brandt");
    assertThat(day.state().deviations())
        .extracting(Fact.DeviationNoted::kind)
        .containsExactly(DeviationKind.HELPER_CHANGED);
    assertThat(Objects.requireNonNull(model.work().entry()).helper()).isEqualTo("T. Brandt");
    wholeStint();
    assertThat(Objects.requireNonNull(model.work().entry()).helper()).isEqualTo("T. Brandt");
  }

  @Test
  void theBlindIsBrokenForTheStintBeingRiddenNotForTheOneTheHelperPreparesNext() {
    unlock();
    wholeStint();
    wholeStint();
    day.desk().riderDays().warmUp(day.id());
    assertThat(sheet().stint()).isEqualTo(2);
    model.events().blindBroken("the cloth slipped on the climb");
    assertThat(day.state().blindBroken()).extracting(Fact.BlindBroken::stint).containsExactly(1);
    assertThat(model.events().saidProperty().get()).contains("stint 1");
  }

  @Test
  void theSheetAndTheModelPrintNothingOfTheKey() {
    unlock();
    assertThat(sheet().toString()).doesNotContain("Shock");
    assertThat(model.toString()).doesNotContain("Shock");
  }

  @Test
  void anOverrunAsksForAMishapAndLaterHandlingsTakeLongerOnceOnly() {
    unlock();
    model.work().begin();
    handleInFull();
    assertThat(model.work().overrunProperty().get()).isFalse();
    wait(Duration.ofMinutes(2));
    assertThat(model.work().overrunProperty().get()).isTrue();
    assertThat(model.work().waitsProperty().get().whole())
        .isEqualTo(
            "This handling has taken longer than the 7:00 that every one takes. Waits for your"
                + " answer whether a mishap made it so.");
    model.work().handOver();
    assertThat(model.work().stint()).isZero();
    model.work().mishap(false, "");
    model.work().handOver();
    bikeIsBack();
    assertThat(model.work().stint()).isEqualTo(1);
    assertThat(model.words().handling()).startsWith("Every handling takes 8:45 from now on,");
    assertThat(model.work().overrunProperty().get()).isFalse();

    model.work().begin();
    handleInFull();
    assertThat(model.work().waitsProperty().get().whole()).contains("is over in 1:45");
    wait(Duration.ofMinutes(8));
    model.work().mishap(false, "");
    model.work().handOver();
    bikeIsBack();
    assertThat(model.words().handling()).startsWith("Every handling takes 8:45 from now on,");
  }

  @Test
  void aDeclaredMishapRaisesNothingAndIsSealedWithItsWords() {
    unlock();
    model.work().begin();
    handleInFull();
    wait(Duration.ofMinutes(9));
    model.work().mishap(true, "a stripped bolt");
    model.work().handOver();
    assertThat(model.work().troubleProperty().get()).isEmpty();
    bikeIsBack();
    assertThat(model.words().handling())
        .startsWith("Every handling takes 7:00, real or dummy alike.");
  }

  @Test
  void theRaisedTimeIsTheSameForEveryOrder() {
    List<String> said = new java.util.ArrayList<>();
    for (long seed : new long[] {105, 106, 111}) {
      day.close();
      day = new TestDay(folder, TestDay.EIGHT, seed);
      model = Models.swap(day);
      unlock();
      StringBuilder words = new StringBuilder();
      for (int stint = 0; stint < 4; stint++) {
        model.work().begin();
        handleInFull();
        wait(Duration.ofMinutes(stint > 0 ? 1 : 0));
        if (model.work().overrunProperty().get()) {
          model.work().mishap(false, "");
        }
        model.work().handOver();
        bikeIsBack();
        assertThat(model.work().stint()).isEqualTo(stint + 1);
        words.append(model.words().handling()).append(model.timeProperty().get().left());
      }
      said.add(words.toString());
    }
    assertThat(said).containsOnly(said.get(0));
    assertThat(said.get(0)).contains("7:00").contains("8:00");
  }
}
