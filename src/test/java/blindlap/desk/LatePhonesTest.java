package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.day.MeasureState;
import blindlap.desk.day.PhoneDays.Taken;
import blindlap.session.Fact;
import blindlap.session.PhonesHeard;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a phone said without signal, beside what was said meanwhile. */
class LatePhonesTest {
  private static final LapId LAP = new LapId(1, 1);
  private static final String GRIP = "grip in the rocks";

  @TempDir Path folder;
  private TestDay day;
  private PhoneHand phone;

  @BeforeEach
  void open() {
    day = new TestDay(folder, TestDay.EIGHT, 4);
    day.desk().riderDays().handedOver(day.id(), 1);
    phone = new PhoneHand(day, 1, Duration.ofMinutes(3));
  }

  @AfterEach
  void close() {
    day.close();
  }

  private PhoneHand.Kept score(int value) {
    return phone.say(acts -> acts.score(day.id(), LAP, GRIP, BigDecimal.valueOf(value), false));
  }

  private void windowScores(int value) {
    day.desk().riderDays().score(day.id(), LAP, GRIP, BigDecimal.valueOf(value), false);
  }

  private BigDecimal grip() {
    return day.state().lap(LAP).orElseThrow().values().get(GRIP);
  }

  /** What counts is the window's 50, and 50 is what the phone said last. */
  @Test
  void aValueThatEqualsTheOneThatCountsIsEnteredIfThePhoneSaidAnotherInBetween() {
    windowScores(50);
    day.clock().move(Duration.ofMinutes(1));
    PhoneHand.Kept first = score(64);
    PhoneHand.Kept second = score(50);
    day.clock().move(Duration.ofMinutes(4));
    assertThat(first.send()).isInstanceOf(Taken.Done.class);
    assertThat(day.state().lap(LAP).orElseThrow().twice()).containsKey(GRIP);
    assertThat(second.send()).isInstanceOf(Taken.Done.class);
    assertThat(day.state().lap(LAP).orElseThrow().twice()).isEmpty();
    assertThat(grip()).isEqualByComparingTo("50");
    assertThat(score(50).send()).isInstanceOf(Taken.Done.class);
    assertThat(day.state().entries().stream().filter(e -> e.entry().phone() != null)).hasSize(2);
  }

  @Test
  void conditionsAreOlderOrNewerNameByName() {
    PhoneHand.Kept both =
        phone.say(a -> a.conditions(day.id(), LAP, Map.of("wind", "strong", "light", "dusk")));
    day.clock().move(Duration.ofMinutes(1));
    day.desk().riderDays().conditions(day.id(), LAP, Map.of("wind", "still"));
    day.clock().move(Duration.ofMinutes(1));
    assertThat(both.send()).isInstanceOf(Taken.Done.class);
    assertThat(day.state().lap(LAP).orElseThrow().conditions())
        .containsEntry("wind", "still")
        .containsEntry("light", "dusk");
    assertThat(day.state().phones().conflicts())
        .extracting(PhonesHeard.Conflict::kind)
        .containsExactly(PhonesHeard.Kind.OUTDATED);
  }

  /** The lap that ended last is the one that the wait counts from, not the one entered last. */
  @Test
  void theWaitBeforeAHandOverCountsFromTheLapThatEndedLast() {
    try (TestDay fresh = new TestDay(folder, TestDay.EIGHT, 5)) {
      PhoneHand hand = new PhoneHand(fresh, 1, Duration.ZERO);
      PhoneHand.Kept ridden = hand.say(a -> a.warmUp(fresh.id()));
      fresh.clock().move(Duration.ofMinutes(6));
      fresh.desk().riderDays().warmUp(fresh.id());
      assertThat(ridden.send()).isInstanceOf(Taken.Done.class);
      fresh.clock().move(Duration.ofMinutes(2));
      fresh.desk().riderDays().handedOver(fresh.id(), 1);
      assertThat(fresh.state().deviations())
          .filteredOn(d -> d.kind() == DeviationKind.EARLY_HAND_OVER)
          .extracting(Fact.DeviationNoted::what)
          .containsExactly("120 s of 420 s");
    }
  }

  /** What was changed meanwhile is not taken back by who did not see it. */
  @Test
  void aLateTakingBackOfWhatChangedMeanwhileIsRefusedAndNothingIsLost() {
    Guess coil = new Guess(0, Guess.Sureness.HUNCH, "");
    score(64).send();
    phone.say(a -> a.note(day.id(), LAP, "from the phone")).send();
    phone.say(a -> a.guess(day.id(), 1, coil)).send();
    phone.look();
    MeasureState from = MeasureState.of(day.state().day(), LAP, GRIP);
    PhoneHand.Kept scoreBack =
        phone.say(a -> a.takeBack(day.id(), LAP, GRIP, from, new MeasureState(null, null, null)));
    PhoneHand.Kept noteBack = phone.say(a -> a.noteTakenBack(day.id(), LAP, "from the phone", ""));
    PhoneHand.Kept guessBack = phone.say(a -> a.guessTakenBack(day.id(), 1, coil, null));
    day.clock().move(Duration.ofMinutes(1));
    Guess air = new Guess(1, null, "");
    windowScores(50);
    day.desk().riderDays().note(day.id(), LAP, "typed later");
    day.desk().riderDays().guess(day.id(), 1, air);
    List<StoredEntry> before = day.state().entries();
    day.clock().move(Duration.ofMinutes(1));
    for (PhoneHand.Kept kept : List.of(scoreBack, noteBack, guessBack)) {
      assertThat(kept.send())
          .isInstanceOfSatisfying(
              Taken.Refused.class,
              refused ->
                  assertThat(refused.problems().get(0).fault())
                      .isEqualTo(SessionFault.CHANGED_MEANWHILE));
    }
    SessionState state = day.state();
    assertThat(state.entries()).isEqualTo(before);
    assertThat(grip()).isEqualByComparingTo("50");
    assertThat(state.lap(LAP).orElseThrow().note()).isEqualTo("typed later");
    assertThat(state.guesses().get(1)).isEqualTo(air);
  }
}
