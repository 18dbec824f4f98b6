package blindlap.screen.ride;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.HelperDay;
import blindlap.desk.Sessions;
import blindlap.desk.TestDay;
import blindlap.ride.RideSheet;
import blindlap.screen.Models;
import blindlap.session.Fact;
import blindlap.session.HelperEntry;
import blindlap.session.SafetyCheck;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.LapId;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A lap starts between the helper's "Safe" and "The bike is back", and nothing else waits. */
class RideLockTest {
  private static final String TIME = "lap time";
  private static final String GRIP = "grip in the rocks";

  private @TempDir(factory = RamFolder.class) Path folder;
  private TestDay day;
  private RideModel ride;

  @BeforeEach
  void open() {
    day =
        new TestDay(
            folder,
            TestDay.EIGHT
                .replace("scored: 1", "scored: 2")
                .replace("lap_budget: 12", "lap_budget: 20")
                .replace("16:38", "20:00"),
            2);
    ride = Models.ride(day);
    ride.watches().timedBy("STARTER");
  }

  @AfterEach
  void close() {
    day.close();
  }

  private void handle(int stint) {
    HelperDay helper = day.helper();
    HelperDay.Work work = helper.work(stint);
    Map<String, String> measured = new LinkedHashMap<>();
    work.settings().forEach(s -> measured.put(s.name(), s.value()));
    day.clock().move(Duration.ofMinutes(8));
    HelperEntry entry =
        HelperEntry.untouched(stint, "M. Oster", work.setup())
            .withMeasured(measured, List.of())
            .withConfirmed(EnumSet.allOf(SafetyCheck.class))
            .withFit(day.state().lapsSoFar(), true);
    assertThat(helper.handOver(entry)).isInstanceOf(Sessions.Result.Done.class);
    ride.tick();
  }

  private void back(int stint) {
    day.desk().helperDays().bikeReturned(day.id(), stint);
    ride.tick();
  }

  private void firstStint() {
    handle(0);
    ride.warmUpRidden();
    back(0);
    handle(1);
  }

  @Test
  void noLapStartsWhileTheBikeIsBackAndWhatWasRiddenIsScored() {
    firstStint();
    ride.watches().start(TIME);
    day.clock().move(Duration.ofSeconds(90));
    back(1);
    assertThat(ride.sheet().locked()).as("a lap that is under way").isFalse();
    ride.watches().stop(TIME);
    ride.answer(GRIP, BigDecimal.TEN);
    ride.lapDone();
    ride.next();
    assertThat(ride.troubleProperty().get()).isEmpty();
    assertThat(ride.sheet().lap()).isEqualTo(new LapId(1, 2));
    assertThat(ride.sheet().locked()).isTrue();
    ride.watches().start(TIME);
    assertThat(ride.troubleProperty().get()).contains("The bike is back with the helper");
    ride.answer(GRIP, BigDecimal.ONE);
    ride.note("ridden while the watch stood still");
    assertThat(ride.troubleProperty().get()).isEmpty();
    assertThat(day.state().lap(new LapId(1, 2)).orElseThrow().values()).containsKey(GRIP);
  }

  @Test
  void aBikeThatNeverWentBackIsHandedOverByTheHeldButtonAndThatIsADeviation() {
    firstStint();
    back(1);
    assertThat(ride.sheet().locked()).isTrue();
    ride.handedOver();
    assertThat(ride.sheet().locked()).isFalse();
    ride.watches().start(TIME);
    assertThat(ride.troubleProperty().get()).isEmpty();
    assertThat(day.state().deviations())
        .extracting(Fact.DeviationNoted::kind)
        .containsExactly(DeviationKind.WITHOUT_HAND_OVER);
    ride.handedOver();
    assertThat(day.state().deviations()).as("pressed twice").hasSize(1);
  }

  @Test
  void aReturnThatIsForgottenHoldsNothingUpAndALateOneChangesNothing() {
    firstStint();
    ride.lapDone();
    ride.next();
    ride.lapDone();
    ride.next();
    assertThat(ride.sheet().stage()).isEqualTo(RideSheet.Stage.HAND_OVER);
    handle(2);
    ride.watches().start(TIME);
    back(1);
    assertThat(ride.sheet().locked()).isFalse();
    assertThat(day.state().day().bikeOut()).isEqualTo(2);
    assertThat(ride.troubleProperty().get()).isEmpty();
  }

  @Test
  void whereNoHelperUsesThePageNothingIsLocked() {
    ride.handedOver();
    ride.warmUpRidden();
    day.clock().move(Duration.ofMinutes(8));
    ride.handedOver();
    back(1);
    assertThat(ride.sheet().locked()).isFalse();
    ride.watches().start(TIME);
    assertThat(ride.troubleProperty().get()).isEmpty();
    assertThat(day.state().deviations()).isEmpty();
  }
}
