package blindlap.session;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.TrackDay;
import blindlap.fault.Problem;
import blindlap.plan.Sector;
import blindlap.session.day.LapId;
import blindlap.session.day.VoidEvent;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordingCommandsTest {
  private static final LapId LAP = new LapId(2, 1);
  private static final Sector LAST = new Sector("Bridge", "Ford");

  @TempDir Path folder;
  private TrackDay day;

  @BeforeEach
  void commit() {
    day = new TrackDay(folder, TrackDay.plan(), 4);
  }

  @AfterEach
  void close() {
    day.close();
  }

  private RecordingCommands commands() {
    return new RecordingCommands(day.state());
  }

  private static void refused(Outcome outcome, SessionFault fault) {
    assertThat(outcome).isInstanceOf(Outcome.Refused.class);
    assertThat(((Outcome.Refused) outcome).problems())
        .extracting(Problem::fault)
        .containsExactly(fault);
  }

  private SectorVoided voided(String event) {
    Outcome outcome = commands().voidSector(LAP, LAST, event, "walkers");
    assertThat(outcome).as(String.valueOf(outcome)).isInstanceOf(Outcome.Accepted.class);
    day.act(state -> outcome);
    return day.state().recorded().sectorVoids().get(LAP).get(2);
  }

  @Test
  void aSectorIsVoidBeforeItsTimeIsSeenOrAfterAndTheEntrySaysWhich() {
    day.clear();
    SectorVoided before = voided("traffic");
    assertThat(before).isEqualTo(new SectorVoided(LAP, LAST, VoidEvent.TRAFFIC, "walkers", false));
    refused(commands().voidSector(LAP, LAST, "crash", ""), SessionFault.SECTOR_ALREADY_VOID);
    day.act(state -> new RecordingCommands(state).withdraw(LAP, LAST, "it was lap 3"));
    assertThat(day.state().recorded().sectorVoids().get(LAP)).isEmpty();
    refused(commands().withdraw(LAP, LAST, "again"), SessionFault.SECTOR_NOT_VOID);
    day.recordings().take(day.settling(), false);
    assertThat(voided("traffic").afterValuesSeen()).isTrue();
  }

  @Test
  void onceTheDayIsClosedValuesAreSeenAndOnceTheReviewIsNothingChanges() {
    day.clear();
    day.close(false);
    assertThat(voided("crash").afterValuesSeen()).isTrue();
    day.act(state -> new LifeCommands(state).closeReview());
    refused(commands().voidSector(LAP, LAST, "crash", ""), SessionFault.REVIEW_IS_CLOSED);
    refused(commands().withdraw(LAP, LAST, "no"), SessionFault.REVIEW_IS_CLOSED);
  }

  @Test
  void whatIsNoSectorNoLapNoEventOrNoReasonIsRefused() {
    day.warmUp().lap(1, 6, 20).lap(2, 6, 20);
    refused(
        commands().voidSector(LAP, new Sector("Ford", "Bridge"), "crash", ""),
        SessionFault.NO_SUCH_SECTOR);
    refused(commands().voidSector(new LapId(3, 1), LAST, "crash", ""), SessionFault.LAP_NOT_RIDDEN);
    refused(commands().voidSector(new LapId(9, 1), LAST, "crash", ""), SessionFault.NO_SUCH_LAP);
    refused(commands().voidSector(LAP, LAST, "too slow", ""), SessionFault.NOT_AN_EVENT);
    voided("crash");
    refused(commands().withdraw(LAP, LAST, " "), SessionFault.REASON_MISSING);
  }

  private static RecordingBroughtIn recording(String file, String trail, int... stints) {
    List<RecordedLap> laps =
        java.util.Arrays.stream(stints)
            .mapToObj(
                stint ->
                    new RecordedLap(
                        new LapId(stint, 1),
                        List.of(pass(0), pass(30), pass(60), pass(file.charAt(0) + stint)),
                        List.of(),
                        null,
                        RecordedLap.Settled.FITS))
            .toList();
    return new RecordingBroughtIn(
        file, file.repeat(64).substring(0, 64), trail, null, List.of(), laps);
  }

  private static RecordedPass pass(int seconds) {
    return new RecordedPass(BigDecimal.valueOf(seconds), new BigDecimal("0.2"), null);
  }

  /** The plan's trail alone; a file settled anew takes back what it said, an earlier one counts. */
  @Test
  void ofTwoFilesTheLaterCountsAndAFileSettledAnewTakesBackAllItSaid() {
    day.warmUp().lap(1, 6, 20).lap(2, 6, 20).lap(3, 6, 20);
    day.close(false);
    String trail = day.trail().title().sha256();
    refused(
        commands().bringIn(recording("a", "0".repeat(64), 1)),
        SessionFault.RECORDING_TRAIL_PLANNED);
    refused(commands().bringIn(recording("a", trail)), SessionFault.RECORDING_EMPTY);
    refused(commands().bringIn(recording("a", trail, 4)), SessionFault.LAP_NOT_RIDDEN);
    for (RecordingBroughtIn each :
        List.of(
            recording("a", trail, 1, 2),
            recording("b", trail, 2, 3),
            recording("c", trail, 3),
            recording("b", trail, 3))) {
      day.act(state -> new RecordingCommands(state).bringIn(each));
    }
    refused(commands().bringIn(recording("b", trail, 3)), SessionFault.RECORDING_AGAIN);
    Recorded recorded = day.state().recorded();
    assertThat(recorded.files())
        .extracting(RecordingBroughtIn::file)
        .containsExactly("a", "c", "b");
    assertThat(recorded.laps().get(new LapId(2, 1)).passes().get(3)).isEqualTo(pass('a' + 2));
    assertThat(recorded.laps().get(new LapId(3, 1)).passes().get(3)).isEqualTo(pass('b' + 3));
    assertThat(recorded.laps()).hasSize(3);
  }

  @Test
  void withoutATrailInThePlanNoSectorIsVoidAndAllFilesShareOneTrail() {
    try (TrackDay open = new TrackDay(folder, blindlap.desk.TestDay.EIGHT, 9)) {
      open.warmUp().lap(1, 6, 20);
      open.close(false);
      RecordingCommands commands = new RecordingCommands(open.state());
      refused(commands.voidSector(new LapId(1, 1), LAST, "crash", ""), SessionFault.SECTORS_NONE);
      open.act(state -> new RecordingCommands(state).bringIn(recording("a", "1".repeat(64), 1)));
      RecordingCommands after = new RecordingCommands(open.state());
      refused(after.bringIn(recording("b", "2".repeat(64), 1)), SessionFault.RECORDING_OTHER_TRAIL);
      assertThat(after.bringIn(recording("a", "2".repeat(64), 1)))
          .isInstanceOf(Outcome.Accepted.class);
    }
  }
}
