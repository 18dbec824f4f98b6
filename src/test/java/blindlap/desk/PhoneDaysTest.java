package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.day.DayResult;
import blindlap.desk.day.MeasureState;
import blindlap.desk.day.PhoneDays.Taken;
import blindlap.seal.SealParameters;
import blindlap.session.Fact;
import blindlap.session.PhonesHeard;
import blindlap.session.PlateRead;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.session.day.ByPhone;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.Twice;
import blindlap.store.SqliteNotebook;
import blindlap.timing.TimeRecord;
import blindlap.wording.PhoneConflictWords;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What phones say becomes entries once, whenever it comes. */
class PhoneDaysTest {
  private static final LapId LAP = new LapId(1, 1);
  private static final Duration AHEAD = Duration.ofMinutes(3);

  @TempDir Path folder;
  private TestDay day;
  private PhoneHand phone;

  @BeforeEach
  void open() {
    day = new TestDay(folder, TestDay.EIGHT, 4);
    day.desk().riderDays().handedOver(day.id(), 1);
    phone = new PhoneHand(day, 1, AHEAD);
  }

  @AfterEach
  void close() {
    day.close();
  }

  private PhoneHand.Kept score(PhoneHand phone, int value) {
    return phone.say(
        acts -> acts.score(day.id(), LAP, "grip in the rocks", BigDecimal.valueOf(value), false));
  }

  private List<StoredEntry> byPhone() {
    return day.state().entries().stream().filter(e -> e.entry().phone() != null).toList();
  }

  private BigDecimal grip() {
    return day.state().lap(LAP).orElseThrow().values().get("grip in the rocks");
  }

  @Test
  void anEntryBearsThePhonesClockAtBothEndsItsOffsetAndItsNumber() {
    PhoneHand.Kept kept = score(phone, 64);
    Instant said = day.clock().instant();
    day.clock().move(Duration.ofSeconds(3));
    assertThat(kept.send()).isInstanceOf(Taken.Done.class);
    StoredEntry entry = byPhone().get(0);
    ByPhone by = entry.entry().phone();
    assertThat(by.number()).isEqualTo(1);
    assertThat(by.given()).isEqualTo(said.plus(AHEAD));
    assertThat(by.offset()).isEqualTo(AHEAD.negated());
    assertThat(by.late()).as("the laptop answered").isFalse();
    assertThat(entry.entry().when()).isEqualTo(said);
    assertThat(entry.entry().at()).isEqualTo(day.clock().instant());
    assertThat(entry.text()).contains("\"form\":\"blindlap-entry-2\"", "\"role\":\"rider\"");
  }

  @Test
  void sentTwiceItIsEnteredOnceAlsoByAProgramThatWasStartedAgain() {
    PhoneHand.Kept kept = score(phone, 64);
    assertThat(kept.send()).isInstanceOf(Taken.Done.class);
    assertThat(kept.send()).isInstanceOf(Taken.Already.class);
    score(phone, 70).send();
    assertThat(kept.send()).as("an old one comes again").isInstanceOf(Taken.Already.class);
    assertThat(grip()).isEqualByComparingTo("70");
    try (Desk started =
        new Desk(
            SqliteNotebook.open(
                folder.resolve("day-4.blindlap"), new byte[16], day.clock().instant()),
            day.clock(),
            FixedSources.order(4),
            new SealParameters(1),
            FixedSources.stream(8))) {
      PhoneHand heard = new PhoneHand(day, started.phoneDays(), 1, AHEAD);
      assertThat(heard.say(a -> a.note(day.id(), LAP, "again")).send())
          .as("number 1 is in")
          .isInstanceOf(Taken.Already.class);
    }
    assertThat(byPhone()).hasSize(2);
  }

  /** Two sends of one number race, while the window writes. */
  @Test
  void ofTwoSendsThatRaceOneIsEntered() throws Exception {
    ExecutorService many = Executors.newFixedThreadPool(3);
    for (int round = 0; round < 40; round++) {
      PhoneHand.Kept kept = score(phone, 20 + round);
      int at = round;
      Callable<Taken> send = kept::send;
      Callable<Taken> window =
          () -> {
            day.desk().riderDays().note(day.id(), LAP, "note " + at);
            return null;
          };
      for (Future<Taken> one : many.invokeAll(List.of(send, window, send))) {
        one.get();
      }
    }
    many.shutdown();
    assertThat(byPhone()).hasSize(40);
    assertThat(grip()).isEqualByComparingTo("59");
  }

  @Test
  void withSignalAPhoneIsLikeAnotherWindow() {
    score(phone, 64).send();
    day.desk().riderDays().score(day.id(), LAP, "grip in the rocks", BigDecimal.valueOf(50), false);
    score(phone, 55).send();
    assertThat(grip()).isEqualByComparingTo("55");
    assertThat(day.state().lap(LAP).orElseThrow().twice()).isEmpty();
    assertThat(day.state().corrections()).hasSize(2);
  }

  @Test
  void aValueSaidWithoutSignalBesideAnotherStandsTwice() {
    PhoneHand.Kept kept = score(phone, 64);
    day.clock().move(Duration.ofMinutes(4));
    day.desk().riderDays().score(day.id(), LAP, "grip in the rocks", BigDecimal.valueOf(50), false);
    day.clock().move(Duration.ofMinutes(4));
    assertThat(kept.send()).isInstanceOf(Taken.Done.class);
    Twice twice = day.state().lap(LAP).orElseThrow().twice().get("grip in the rocks");
    assertThat(twice.values()).hasSize(2);
    assertThat(grip()).as("said earlier by the clocks").isEqualByComparingTo("64");
    assertThat(score(phone, 70).send()).isInstanceOf(Taken.Refused.class);
    assertThat(twice.values()).extracting(v -> v.value().intValue()).containsExactly(64, 50);
  }

  @Test
  void aValueSaidWithoutSignalAfterAnotherThatWasSeenReplacesIt() {
    day.desk().riderDays().score(day.id(), LAP, "grip in the rocks", BigDecimal.valueOf(50), false);
    phone.look();
    PhoneHand.Kept first = score(phone, 64);
    PhoneHand.Kept second = score(phone, 65);
    day.clock().move(Duration.ofMinutes(4));
    first.send();
    second.send();
    assertThat(grip()).isEqualByComparingTo("65");
    assertThat(day.state().lap(LAP).orElseThrow().twice()).isEmpty();
  }

  @Test
  void anOlderGuessNoteConditionOrCovariateThatComesLaterIsKeptAndListed() {
    Guess coil = new Guess(0, Guess.Sureness.HUNCH, "");
    PhoneHand.Kept guess = phone.say(a -> a.guess(day.id(), 1, coil));
    PhoneHand.Kept note = phone.say(a -> a.note(day.id(), LAP, "from the phone"));
    PhoneHand.Kept wind = phone.say(a -> a.conditions(day.id(), LAP, Map.of("wind", "strong")));
    PhoneHand.Kept light = phone.say(a -> a.conditions(day.id(), LAP, Map.of("light", "dusk")));
    day.clock().move(Duration.ofMinutes(1));
    Guess air = new Guess(1, null, "");
    day.desk().riderDays().guess(day.id(), 1, air);
    day.desk().riderDays().note(day.id(), LAP, "typed later");
    day.desk().riderDays().conditions(day.id(), LAP, Map.of("wind", "still"));
    day.clock().move(Duration.ofMinutes(1));
    List.of(guess, note, wind, light)
        .forEach(k -> assertThat(k.send()).isInstanceOf(Taken.Done.class));
    SessionState state = day.state();
    assertThat(state.guesses().get(1)).isEqualTo(air);
    assertThat(state.lap(LAP).orElseThrow().note()).isEqualTo("typed later");
    assertThat(state.lap(LAP).orElseThrow().conditions())
        .containsEntry("wind", "still")
        .containsEntry("light", "dusk");
    assertThat(state.phones().conflicts())
        .extracting(PhonesHeard.Conflict::kind)
        .containsExactly(
            PhonesHeard.Kind.OUTDATED, PhonesHeard.Kind.OUTDATED, PhonesHeard.Kind.OUTDATED);
    assertThat(PhoneConflictWords.lines(state))
        .hasSize(3)
        .first()
        .asString()
        .startsWith("Stint 1: a guess, said by phone at ");
  }

  @Test
  void aHandOverSaidByTheRiderWithoutSignalHandsOverOnce() {
    PhoneHand.Kept read = phone.say(a -> a.plateRead(day.id(), 2));
    PhoneHand.Kept again = phone.say(a -> a.plateRead(day.id(), 2));
    day.clock().move(Duration.ofMinutes(9));
    read.send();
    again.send();
    assertThat(day.state().day().handedOver(2)).isTrue();
    assertThat(day.state().day().bikeOut()).isEqualTo(2);
    assertThat(byPhone()).extracting(e -> e.entry().fact()).contains(new PlateRead(2));
    assertThat(byPhone().stream().filter(e -> e.entry().fact() instanceof PlateRead)).hasSize(1);
  }

  /** The helper's page handed over meanwhile and has the bike back: the late word moves nothing. */
  @Test
  void whatTheHelpersPageMovedLaterStaysWhereItIs() {
    HelperHand helper = new HelperHand(day);
    helper.handle(1);
    PhoneHand.Kept read = phone.say(a -> a.plateRead(day.id(), 1));
    day.clock().move(Duration.ofMinutes(5));
    day.desk().helperDays().bikeReturned(day.id(), 1);
    day.clock().move(Duration.ofMinutes(5));
    read.send();
    assertThat(day.state().day().bikeOut()).isNull();
    assertThat(day.state().deviations())
        .extracting(Fact.DeviationNoted::kind)
        .doesNotContain(DeviationKind.WITHOUT_HAND_OVER);
    assertThat(day.state().phones().conflicts()).isEmpty();
  }

  @Test
  void ridingBeforeTheHelpersPageHandedOverIsListed() {
    HelperHand helper = new HelperHand(day);
    helper.handle(1);
    PhoneHand.Kept early = phone.say(a -> a.plateRead(day.id(), 2));
    PhoneHand.Kept never = phone.say(a -> a.plateRead(day.id(), 3));
    day.clock().move(Duration.ofMinutes(5));
    helper.handle(2);
    day.clock().move(Duration.ofMinutes(5));
    early.send();
    never.send();
    assertThat(day.state().phones().conflicts())
        .extracting(PhonesHeard.Conflict::kind)
        .containsExactly(PhonesHeard.Kind.BEFORE_HAND_OVER);
    assertThat(PhoneConflictWords.lines(day.state()).get(0)).startsWith("Stint 2: ");
    assertThat(day.state().deviations())
        .filteredOn(d -> d.kind() == DeviationKind.WITHOUT_HAND_OVER)
        .extracting(Fact.DeviationNoted::stint)
        .containsExactly(2, 3);
  }

  /** What was ridden was ridden, wherever the bike is by the time the phone is heard. */
  @Test
  void aLateWatchIsTakenAndAFreshOneIsNot() {
    HelperHand helper = new HelperHand(day);
    helper.handle(1);
    Instant start = day.clock().instant();
    PhoneHand.Kept begun = phone.say(a -> a.watchStarted(day.id(), LAP, "lap time", start));
    day.clock().move(Duration.ofSeconds(92));
    TimeRecord time =
        new TimeRecord(
            start, day.clock().instant(), 92_000_000_000L, TimeRecord.TimedBy.STARTER, null);
    PhoneHand.Kept taken = phone.say(a -> a.time(day.id(), LAP, "lap time", time, false));
    PhoneHand.Kept ridden = phone.say(a -> a.ridden(day.id(), LAP));
    day.clock().move(Duration.ofMinutes(5));
    day.desk().helperDays().bikeReturned(day.id(), 1);
    Instant now = day.clock().instant();
    LapId next = new LapId(1, 1);
    PhoneHand.Kept fresh =
        new PhoneHand(day, 2, Duration.ZERO)
            .say(a -> a.watchStarted(day.id(), next, "lap time", now));
    assertThat(fresh.send())
        .isInstanceOfSatisfying(
            Taken.Refused.class,
            refused ->
                assertThat(refused.problems().get(0).fault())
                    .isEqualTo(SessionFault.BIKE_WITH_HELPER));
    List.of(begun, taken, ridden)
        .forEach(kept -> assertThat(kept.send()).isInstanceOf(Taken.Done.class));
    assertThat(day.state().lap(LAP).orElseThrow().values().get("lap time"))
        .isEqualByComparingTo("92");
  }

  @Test
  void afterTheDayIsClosedItIsRefusedAndNothingIsWritten() {
    PhoneHand.Kept kept = score(phone, 64);
    day.desk().riderDays().ridden(day.id(), LAP);
    assertThat(day.desk().riderDays().closeDay(day.id())).isInstanceOf(DayResult.Done.class);
    day.clock().move(Duration.ofMinutes(1));
    assertThat(kept.send()).isInstanceOf(Taken.Refused.class);
    assertThat(byPhone()).isEmpty();
  }

  /** The rider said 64 and took it back to what the window says, all without signal. */
  @Test
  void aLateValueThatComesBackToTheOneThatCountsLeavesNoConflict() {
    day.desk().riderDays().score(day.id(), LAP, "grip in the rocks", BigDecimal.valueOf(50), false);
    PhoneHand.Kept other = score(phone, 64);
    PhoneHand.Kept back = score(phone, 50);
    day.clock().move(Duration.ofMinutes(4));
    other.send();
    assertThat(day.state().lap(LAP).orElseThrow().twice()).isNotEmpty();
    back.send();
    assertThat(day.state().lap(LAP).orElseThrow().twice()).isEmpty();
    assertThat(grip()).isEqualByComparingTo("50");
  }

  /** What came in from another notebook after the phone's last look stands beside what it says. */
  @Test
  void aLateValueHadNotSeenWhatAnotherNotebookBroughtInMeanwhile() {
    phone.look();
    PhoneHand.Kept kept = score(phone, 64);
    try (Desk second =
        new Desk(
            SqliteNotebook.open(
                folder.resolve("second.blindlap"), new byte[16], day.clock().instant()),
            day.clock(),
            FixedSources.order(4),
            new SealParameters(1),
            FixedSources.stream(9))) {
      second.notebook().addEntries(day.state().entries());
      second.riderDays().score(day.id(), LAP, "grip in the rocks", BigDecimal.valueOf(50), false);
      day.desk().notebook().addEntries(second.sessions().state(day.id()).orElseThrow().entries());
      // The first entry after the bringing in is the one that learns of it.
      day.desk().riderDays().note(day.id(), LAP, "brought in");
      day.clock().move(Duration.ofMinutes(4));
      kept.send();
      Twice twice = day.state().lap(LAP).orElseThrow().twice().get("grip in the rocks");
      assertThat(twice.values()).hasSize(2);
      // Whichever notebook hears of the other first, the day is the same.
      second.notebook().addEntries(day.state().entries());
      assertThat(second.sessions().state(day.id()).orElseThrow().day().laps())
          .isEqualTo(day.state().day().laps());
    }
  }

  /** The lap that ended last counts, not the one that was heard of last. */
  @Test
  void aWaitIsCountedFromTheLapThatEndedLast() {
    String two =
        TestDay.EIGHT.replace("scored: 1", "scored: 2").replace("budget: 12", "budget: 20");
    try (TestDay laps = new TestDay(folder.resolve("laps.blindlap"), two, 4, Optional.empty())) {
      laps.desk().riderDays().handedOver(laps.id(), 1);
      PhoneHand starter = new PhoneHand(laps, 1, Duration.ZERO);
      PhoneHand.Kept first = starter.say(a -> a.ridden(laps.id(), LAP));
      laps.clock().move(Duration.ofMinutes(20));
      laps.desk().riderDays().ridden(laps.id(), new LapId(1, 2));
      first.send();
      laps.clock().move(Duration.ofMinutes(1));
      laps.desk().riderDays().handedOver(laps.id(), 2);
      assertThat(laps.state().deviations())
          .extracting(Fact.DeviationNoted::kind)
          .contains(DeviationKind.EARLY_HAND_OVER);
    }
  }

  @Test
  void lateConditionsReplaceNoNewerOnesOfTheSameName() {
    PhoneHand.Kept wind = phone.say(a -> a.conditions(day.id(), LAP, Map.of("wind", "strong")));
    day.clock().move(Duration.ofMinutes(1));
    day.desk().riderDays().conditions(day.id(), LAP, Map.of("wind", "still", "light", "dusk"));
    day.clock().move(Duration.ofMinutes(1));
    wind.send();
    assertThat(day.state().lap(LAP).orElseThrow().conditions()).containsEntry("wind", "still");
    assertThat(day.state().phones().conflicts()).hasSize(1);
  }

  /** What stands no more as the phone had it is not taken back over; nothing is lost by it. */
  @Test
  void aLateTakeBackOfWhatStandsNoMoreIsRefused() {
    score(phone, 64).send();
    PhoneHand.Kept back =
        phone.say(
            a ->
                a.takeBack(
                    day.id(),
                    LAP,
                    "grip in the rocks",
                    new MeasureState(BigDecimal.valueOf(64), null, null),
                    new MeasureState(null, null, null)));
    day.clock().move(Duration.ofMinutes(1));
    day.desk().riderDays().score(day.id(), LAP, "grip in the rocks", BigDecimal.valueOf(50), false);
    assertThat(back.send()).isInstanceOf(Taken.Refused.class);
    assertThat(grip()).isEqualByComparingTo("50");
  }

  @Test
  void closingTheDayForgetsWhichPhonesWereLetIn() {
    day.desk().phoneBook().keep(day.id(), "{}");
    day.desk().riderDays().ridden(day.id(), LAP);
    day.desk().riderDays().closeDay(day.id());
    assertThat(day.desk().phoneBook().kept(day.id())).isEmpty();
  }

  @Test
  void phonesThatWereLetInAreKeptUntilTheyAreForgotten() {
    day.desk().phoneBook().keep(day.id(), "{}");
    assertThat(day.desk().phoneBook().kept(day.id())).contains("{}");
    day.desk().phoneBook().forget(day.id());
    assertThat(day.desk().phoneBook().kept(day.id())).isEmpty();
  }
}
