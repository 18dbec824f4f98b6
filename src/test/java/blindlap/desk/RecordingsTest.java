package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.fault.Problem;
import blindlap.session.DayCommands;
import blindlap.session.RecordedLap;
import blindlap.session.RecordedPass;
import blindlap.session.RecordingBroughtIn;
import blindlap.session.SessionFault;
import blindlap.session.day.LapId;
import blindlap.session.day.Source;
import blindlap.wording.SettlingRow;
import blindlap.wording.SettlingRow.Doubt;
import blindlap.wording.SettlingRow.Match;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordingsTest {
  @TempDir Path folder;

  private TrackDay day() {
    return new TrackDay(folder, TrackDay.plan(), 3);
  }

  private static List<Match> matches(Settling settling) {
    return settling.rows().stream().map(SettlingRow::match).toList();
  }

  private static RecordingBroughtIn taken(TrackDay day, Settling settling) {
    Sessions.Result result = day.recordings().take(settling, true);
    assertThat(result).as(String.valueOf(result)).isInstanceOf(Sessions.Result.Done.class);
    List<RecordingBroughtIn> files = day.state().recorded().files();
    return files.get(files.size() - 1);
  }

  private static void refused(Sessions.Result result, blindlap.fault.Fault fault) {
    assertThat(result).isInstanceOf(Sessions.Result.Refused.class);
    assertThat(((Sessions.Result.Refused) result).problems())
        .extracting(Problem::fault)
        .containsExactly(fault);
  }

  private static void refused(Recordings.Read read, blindlap.fault.Fault fault) {
    assertThat(read).isInstanceOf(Recordings.Read.Refused.class);
    assertThat(((Recordings.Read.Refused) read).problems())
        .extracting(Problem::fault)
        .containsExactly(fault);
  }

  @Test
  void aClearDayIsSettledByItselfAndItsTimesAreTheTruth() {
    try (TrackDay day = day().recorderAhead(Duration.ofMinutes(61)).clear()) {
      Settling settling = day.settling();
      assertThat(matches(settling)).hasSize(8).containsOnly(Match.FITS);
      assertThat(settling.warmUps()).isEqualTo(1);
      assertThat(settling.offset().orElseThrow()).isCloseTo(-61 * 60 + 30, within(8.0));
      RecordingBroughtIn fact = taken(day, settling);
      assertThat(fact.file()).isEqualTo("quarry.gpx");
      assertThat(fact.trail()).isEqualTo(day.trail().title().sha256());
      assertThat(fact.borders()).hasSize(41);
      assertThat(fact.laps()).hasSize(8);
      for (RecordedLap lap : fact.laps()) {
        double truth = TrackDay.seconds(lap.lap().stint());
        BigDecimal seconds = lap.passes().get(3).seconds();
        assertThat(seconds.doubleValue()).isCloseTo(truth, within(0.1));
        assertThat(lap.passes().get(0).seconds()).isEqualByComparingTo("0");
        assertThat(lap.pieces()).hasSize(40).doesNotContainNull();
        assertThat(lap.pieces().stream().reduce(BigDecimal.ZERO, BigDecimal::add))
            .isEqualByComparingTo(seconds);
        assertThat(lap.settled()).isEqualTo(RecordedLap.Settled.FITS);
      }
    }
  }

  @Test
  void positionsAreThoseBetweenStartAndFinishAndKnowNoTimeOfDay() {
    try (TrackDay day = day().clear()) {
      RecordingBroughtIn fact = taken(day, day.settling());
      for (RecordedLap lap : fact.laps()) {
        byte[] kept = day.day().desk().notebook().contents().find(lap.positions()).orElseThrow();
        List<String> lines = new String(kept, StandardCharsets.UTF_8).lines().toList();
        assertThat(lines.get(0)).isEqualTo("seconds,latitude,longitude");
        double seconds = lap.passes().get(3).seconds().doubleValue();
        assertThat(lines).hasSizeBetween((int) seconds, (int) seconds + 2);
        assertThat(lines.subList(1, lines.size()))
            .allSatisfy(
                line -> assertThat(Double.parseDouble(line.split(",")[0])).isBetween(0.0, seconds));
      }
      assertThat(day.day().desk().notebook().contents().names()).hasSize(8);
    }
  }

  @Test
  void positionsMayBeLeftOut() {
    try (TrackDay day = day().clear()) {
      assertThat(day.recordings().take(day.settling(), false))
          .isInstanceOf(Sessions.Result.Done.class);
      assertThat(day.state().recorded().laps().values())
          .hasSize(8)
          .extracting(RecordedLap::positions)
          .containsOnlyNulls();
      assertThat(day.day().desk().notebook().contents().names()).isEmpty();
    }
  }

  /** Somebody tries the trail once more between two laps. */
  @Test
  void aPassThatFitsNoLapWaitsAndNothingIsTakenInBefore() {
    try (TrackDay day = day().warmUp()) {
      for (int stint = 1; stint <= 8; stint++) {
        day.lap(stint, TrackDay.speed(stint), 20).climb(700);
        if (stint == 4) {
          day.ride(0, 700, 4).climb(650);
        }
      }
      Settling settling = day.settling();
      assertThat(matches(settling))
          .hasSize(9)
          .containsOnly(Match.FITS, Match.FITS_NONE)
          .startsWith(Match.FITS, Match.FITS, Match.FITS, Match.FITS, Match.FITS_NONE);
      assertThat(settling.waiting()).isEqualTo(1);
      int entries = day.state().entries().size();
      refused(day.recordings().take(settling, true), RecordingFault.WAITS);
      assertThat(day.state().entries()).hasSize(entries);
      int pass = settling.rows().get(4).pass();
      assertThat(settling.problems(pass, Settling.Answer.KEEP))
          .extracting(Problem::fault)
          .containsExactly(RecordingFault.PASS_IS_NO_LAP);
      assertThat(settling.problems(pass, Settling.Answer.lap(9)))
          .extracting(Problem::fault)
          .containsExactly(RecordingFault.LAP_NOT_OF_DAY);
      Settling settled = settling.with(pass, Settling.Answer.NO_LAP);
      assertThat(settled.waiting()).isZero();
      assertThat(taken(day, settled).laps()).hasSize(8);
      assertThat(settled.without(pass).waiting()).isEqualTo(1);
    }
  }

  @Test
  void aMissedSplitIsKeptOrLeftOutByAPersonAndOnlyItsSectorsAreMissing() {
    try (TrackDay day = day().warmUp()) {
      for (int stint = 1; stint <= 8; stint++) {
        if (stint == 5) {
          day.ride(0, 180, 6).aside(0.001, 6, 1).ride(216, 700, 6).entered(stint, 20).climb(700);
        } else {
          day.lap(stint, TrackDay.speed(stint), 20).climb(700);
        }
      }
      Settling settling = day.settling();
      SettlingRow row = settling.rows().get(4);
      assertThat(row.match()).isEqualTo(Match.DOUBTFUL);
      assertThat(row.doubts()).containsExactly(new Doubt(Doubt.Kind.MISSED, "Rock garden"));
      assertThat(row.seconds()).isCloseTo(680 / 6.0, within(1.0));
      Settling kept = settling.with(row.pass(), Settling.Answer.KEEP);
      assertThat(kept.rows().get(4).match()).isEqualTo(Match.KEPT);
      RecordedLap lap = taken(day, kept).laps().get(4);
      assertThat(lap.settled()).isEqualTo(RecordedLap.Settled.KEPT);
      assertThat(lap.passes()).extracting(RecordedPass::seconds).element(1).isNull();
      assertThat(lap.passes().get(3).seconds()).isNotNull();
      Settling out = day.settling().with(row.pass(), Settling.Answer.LEAVE_OUT);
      assertThat(taken(day, out).laps()).hasSize(7);
      assertThat(day.state().recorded().files()).hasSize(1);
      assertThat(day.state().recorded().laps()).hasSize(7).doesNotContainKey(new LapId(5, 1));
    }
  }

  @Test
  void aLapWhoseStartWasMissedHasItsSectorsAfterTheFirstGatePassed() {
    try (TrackDay day = day().warmUp()) {
      for (int stint = 1; stint <= 8; stint++) {
        if (stint == 2) {
          day.silent(20).ride(100, 700, 6).entered(stint, 20).climb(700);
        } else {
          day.lap(stint, TrackDay.speed(stint), 20).climb(700);
        }
      }
      Settling settling = day.settling();
      SettlingRow row = settling.rows().get(1);
      assertThat(row.match()).isEqualTo(Match.DOUBTFUL);
      assertThat(row.seconds()).isNaN();
      RecordedLap lap = taken(day, settling.with(row.pass(), Settling.Answer.KEEP)).laps().get(1);
      assertThat(lap.passes()).extracting(RecordedPass::seconds).element(0).isNull();
      assertThat(lap.passes().get(1).seconds()).isEqualByComparingTo("0");
      assertThat(lap.passes().get(2).seconds().doubleValue()).isCloseTo(220 / 6.0, within(0.1));
      assertThat(lap.pieces()).hasSize(40).allMatch(Objects::isNull);
    }
  }

  @Test
  void aGapOnAGateMakesItsTimeUnknownAndOnWithinFiveSecondsDoubtful() {
    try (TrackDay day = day().warmUp()) {
      for (int stint = 1; stint <= 8; stint++) {
        if (stint == 3) {
          day.ride(0, 414, 6).silent(3).ride(432, 700, 6).entered(stint, 20).climb(700);
        } else if (stint == 6) {
          day.ride(0, 666, 6).silent(3).ride(684, 700, 6).entered(stint, 20).climb(700);
        } else {
          day.lap(stint, TrackDay.speed(stint), 20).climb(700);
        }
      }
      List<SettlingRow> rows = day.settling().rows();
      assertThat(rows.get(2).doubts()).containsExactly(new Doubt(Doubt.Kind.SILENT, "Bridge"));
      assertThat(rows.get(5).doubts()).containsExactly(new Doubt(Doubt.Kind.GAP, "Ford"));
      assertThat(rows.stream().filter(row -> row.match() == Match.FITS)).hasSize(6);
    }
  }

  @Test
  void lapsKeptOnPaperAreMatchedByOrderAndOneMoreIsAskedAbout() {
    try (TrackDay day = day().kept(Source.PAPER)) {
      day.clear();
      Settling settling = day.settling();
      assertThat(matches(settling)).hasSize(8).containsOnly(Match.FITS);
      assertThat(settling.offset()).isNotEmpty();
    }
  }

  @Test
  void theSameRecordingAgainIsRefusedAndALaterOneReplacesWithAWord() {
    try (TrackDay day = day().clear()) {
      taken(day, day.settling());
      Settling again = day.settling();
      assertThat(again.again()).isTrue();
      refused(day.recordings().take(again, true), SessionFault.RECORDING_AGAIN);
      day.aside(0.1, 5, 1);
      Recordings.Read second = day.read("C:\\watch\\second.gpx");
      Settling later = ((Recordings.Read.Table) second).settling();
      assertThat(later.fileName()).isEqualTo("second.gpx");
      assertThat(later.again()).isFalse();
      assertThat(later.rows()).allMatch(row -> row.replaces().equals("quarry.gpx"));
      taken(day, later);
      assertThat(day.state().recorded().files()).hasSize(2);
    }
  }

  /** A morning and an afternoon; a pass of a void lap is that lap's. */
  @Test
  void severalFilesOfADayAddUpAndVoidLapsAreLaps() {
    try (TrackDay day = day().warmUp()) {
      for (int stint = 1; stint <= 4; stint++) {
        day.lap(stint, TrackDay.speed(stint), 20).climb(600 + 97 * stint);
      }
      day.act(state -> new DayCommands(state).voidLap(new LapId(2, 1), "puncture", ""));
      refused(day.read(), SessionFault.RECORDING_TOO_EARLY);
      byte[] first = day.gpx();
      day.newFile();
      for (int stint = 5; stint <= 8; stint++) {
        day.lap(stint, TrackDay.speed(stint), 20).climb(500 + 131 * stint);
      }
      Settling morning =
          ((Recordings.Read.Table) day.recordings().read(day.state(), "morning", first)).settling();
      assertThat(matches(morning))
          .startsWith(Match.FITS, Match.FITS, Match.FITS, Match.FITS)
          .endsWith(Match.NO_PASS, Match.NO_PASS, Match.NO_PASS, Match.NO_PASS);
      assertThat(morning.rows().get(1).voided()).isTrue();
      taken(day, morning);
      Settling afternoon = day.settling();
      assertThat(matches(afternoon))
          .startsWith(Match.NO_PASS, Match.NO_PASS, Match.NO_PASS, Match.NO_PASS)
          .endsWith(Match.FITS, Match.FITS, Match.FITS, Match.FITS);
      taken(day, afternoon);
      assertThat(day.state().recorded().laps()).hasSize(8);
    }
  }

  @Test
  void aFileOfOneLapIsProposedAndAPersonSaysWhichLapItIs() {
    try (TrackDay day = day().kept(Source.PAPER).warmUp()) {
      day.lap(1, 6, 20).climb(700).lap(2, 6, 20).climb(700);
      day.newFile();
      day.lap(3, 6, 20);
      day.close(false);
      Settling settling = day.settling();
      assertThat(settling.waiting()).isEqualTo(1);
      int pass =
          settling.rows().stream()
              .filter(row -> row.match().waits())
              .findFirst()
              .orElseThrow()
              .pass();
      Settling said = settling.with(pass, Settling.Answer.lap(3));
      assertThat(said.waiting()).isZero();
      assertThat(matches(said)).containsExactly(Match.NO_PASS, Match.NO_PASS, Match.CHOSEN);
      RecordingBroughtIn fact = taken(day, said);
      assertThat(fact.laps()).singleElement().matches(lap -> lap.lap().equals(new LapId(3, 1)));
      assertThat(fact.laps().get(0).settled()).isEqualTo(RecordedLap.Settled.CHOSEN);
    }
  }

  @Test
  void withoutATrailInThePlanOneOfTheBookIsTakenAndItIsExploratory() {
    try (TrackDay day = new TrackDay(folder, TestDay.EIGHT, 3).clear()) {
      Settling settling = day.settling();
      assertThat(settling.planned()).isFalse();
      assertThat(taken(day, settling).laps()).hasSize(8);
      refused(
          day.recordings().read(day.state(), "q.gpx", day.gpx(), "Mill track", null),
          RecordingFault.TRAIL_UNKNOWN);
    }
    try (TrackDay day = new TrackDay(folder, TestDay.EIGHT.replace("Quarry", "Mill"), 4).clear()) {
      refused(day.read(), RecordingFault.NO_TRAIL);
    }
  }

  @Test
  void ofLapsThatAWatchTimedTooBothTimesAreThere() {
    try (TrackDay day = day().clear()) {
      for (int stint : new int[] {2, 5}) {
        BigDecimal typed = BigDecimal.valueOf(TrackDay.seconds(stint) + 0.4);
        day.act(
            state ->
                new DayCommands(state)
                    .score(new LapId(stint, 1), "lap time", typed, Source.SCREEN));
      }
      blindlap.plan.Measure measure = day.state().plan().measure("lap time").orElseThrow();
      assertThat(Recordings.pairs(day.state(), measure)).isEmpty();
      taken(day, day.settling());
      assertThat(Recordings.pairs(day.state(), measure))
          .hasSize(2)
          .allSatisfy(
              pair -> assertThat(pair.watch() - pair.recording()).isCloseTo(0.4, within(0.1)))
          .extracting(Recordings.Pair::lap)
          .containsExactly(new LapId(2, 1), new LapId(5, 1));
    }
  }

  @Test
  void nothingIsBroughtInBeforeALapNorAfterTheReviewAndNothingThatIsElsewhere() {
    try (TrackDay day = day()) {
      refused(day.read(), SessionFault.RECORDING_TOO_EARLY);
      day.clear();
      byte[] recording = day.gpx();
      day.newFile();
      day.aside(0.1, 60, 1);
      refused(day.read(), RecordingFault.NO_PASS);
      refused(
          day.recordings().read(day.state(), "x", "no track".getBytes(StandardCharsets.UTF_8)),
          blindlap.recording.TrackFault.UNKNOWN_FORMAT);
      Settling settling =
          ((Recordings.Read.Table) day.recordings().read(day.state(), "q", recording)).settling();
      day.close(true);
      refused(day.recordings().read(day.state(), "q", recording), SessionFault.REVIEW_IS_CLOSED);
      refused(day.recordings().take(settling, true), SessionFault.REVIEW_IS_CLOSED);
      assertThat(day.state().recorded().laps()).isEmpty();
      assertThat(day.day().desk().notebook().contents().names()).isEmpty();
    }
  }
}
