package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Plan;
import blindlap.review.SeriesFinding;
import blindlap.seal.HelperPhrase;
import blindlap.seal.SealParameters;
import blindlap.seal.SessionKind;
import blindlap.session.DayCommands;
import blindlap.session.LifeCommands;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.SessionId;
import blindlap.session.day.Source;
import blindlap.store.SqliteNotebook;
import blindlap.wording.SeriesWords;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A series of days of one person: how a day that ended early counts, and that none conceals. */
class AloneSeriesTest {
  private static final String SERIES = "series: alone\nseries_sessions: 2\n";

  @TempDir Path folder;

  private final SetClock clock = new SetClock(Instant.parse("2026-11-14T08:00:00Z"));

  private Desk desk() {
    return new Desk(
        SqliteNotebook.open(
            folder.resolve("series.blindlap"), FixedSources.stream(9).exactly(16), clock.instant()),
        clock,
        FixedSources.order(5),
        new SealParameters(1),
        FixedSources.stream(7));
  }

  private static Plan plan(Desk desk, String level, String more) {
    PlanPreview preview =
        PlanPreview.of(
            AloneDayTest.text(level).replace("eight-stints", "blocks-of-four") + more,
            desk.protocols());
    return preview.plan().orElseThrow(() -> new AssertionError(preview.problems()));
  }

  private static void done(Sessions.Result result) {
    assertThat(result).as(String.valueOf(result)).isInstanceOf(Sessions.Result.Done.class);
  }

  private SessionId ride(Desk desk, int last, String reason) {
    Plan plan = plan(desk, "drawn", SERIES);
    SessionState state =
        ((Committing.Result.Covered) desk.committing().cover(plan, List.of("R. Lind"))).state();
    List<LapInput> laps = new ArrayList<>();
    for (int stint = 1; stint <= last; stint++) {
      int setup = desk.notebook().cover(state.id()).orElseThrow().setup(stint).orElseThrow();
      BigDecimal time = new BigDecimal(180 - 6 * setup + stint * stint % 3);
      laps.add(LapInput.of(new LapId(stint, 1), Map.of("lap time", time)));
    }
    done(desk.sessions().act(state.id(), s -> new DayCommands(s).record(laps, Source.SCREEN)));
    if (last < plan.stints()) {
      done(
          desk.sessions()
              .act(state.id(), s -> new LifeCommands(s).cutShort(last, reason, "R. Lind", true)));
    }
    done(desk.sessions().act(state.id(), s -> new LifeCommands(s).closeDay()));
    done(desk.keys().closeReview(state.id()));
    clock.move(Duration.ofHours(2));
    return state.id();
  }

  @ParameterizedTest
  @CsvSource({"6, tired, false", "6, 'dark, the lamp was at home', true", "8, '', true"})
  void aDayEndedByChoiceIsPooledAndTakesTheVerdictAway(int last, String reason, boolean verdict) {
    try (Desk desk = desk()) {
      List<SessionId> sessions = List.of(ride(desk, 8, ""), ride(desk, last, reason));
      for (SessionId id : sessions) {
        SessionState state = desk.sessions().state(id).orElseThrow();
        done(desk.keys().unsealCovered(state, Optional.empty()));
      }
      SeriesFinding finding = desk.series().finding("alone").orElseThrow();
      assertThat(finding.pooled()).isEqualTo(2);
      assertThat(finding.these()).isPresent();
      if (verdict) {
        assertThat(finding.noVerdict()).isEmpty();
        assertThat(finding.verdict()).isPresent();
      } else {
        assertThat(finding.verdict()).isEmpty();
        assertThat(finding.noVerdict()).contains(SeriesFinding.NoVerdict.DAY_ENDED_FREELY);
        assertThat(new SeriesWords(finding).reason())
            .contains("for another reason than dark, injury or damage");
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"open", "drawn", "masked"})
  void noNullRunIsConcealedFromWhoKnowsWhatIsOn(String level) {
    try (Desk desk = desk()) {
      Plan plan = plan(desk, level, "");
      assertThat(desk.planning().refuseNullRun(plan)).isPresent();
      HelperPhrase phrase =
          ((Committing.Begun.Phrase) desk.committing().beginSealed(plan)).asked().unasked();
      Committing.Result result =
          desk.committing().seal(plan, SessionKind.nullRun(0), List.of("R. Lind"), phrase);
      assertThat(((Committing.Result.Refused) result).problems())
          .extracting(blindlap.fault.Problem::fault)
          .containsExactly(DeskFault.NULL_RUN_KNOWING);
      assertThat(desk.notebook().sessions()).isEmpty();
    }
  }

  @Test
  void aFriendWhoPreparesMayConcealANullRun() {
    try (Desk desk = desk()) {
      Plan plan = plan(desk, "prepared", "");
      assertThat(desk.planning().refuseNullRun(plan)).isEmpty();
      assertThat(Commits.commit(desk, plan, SessionKind.nullRun(0), List.of("R. Lind")).state())
          .isNotNull();
    }
  }
}
