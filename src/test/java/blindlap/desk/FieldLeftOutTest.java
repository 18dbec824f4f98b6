package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.Decimals;
import blindlap.plan.Measure;
import blindlap.review.FieldFinding;
import blindlap.review.FieldFinding.Why;
import blindlap.seal.SessionKind;
import blindlap.session.LifeCommands;
import blindlap.session.PlainDayPlaces;
import blindlap.session.day.SessionId;
import blindlap.wording.FieldWords;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whole days of other kinds beside a field: each stays out and is named with its reason. */
class FieldLeftOutTest {
  @TempDir Path folder;
  private FieldSeason season;

  @BeforeEach
  void rideTwoDays() {
    season = new FieldSeason(folder);
    season.ride("KL", "2026-08-29");
    season.ride("KM", "2026-09-12");
  }

  @AfterEach
  void close() {
    season.close();
  }

  private FieldFinding found() {
    return ((FieldBook.Result.Found) season.desk().field().find(FieldBook.Wanted.ANY)).finding();
  }

  private void onlyOut(SessionId id, Why why, String words) {
    FieldFinding finding = found();
    assertThat(finding.days()).hasSize(2).noneMatch(day -> day.session().equals(id.text()));
    assertThat(finding.out())
        .singleElement()
        .satisfies(
            out -> {
              assertThat(out.session()).isEqualTo(id.text());
              assertThat(out.why()).isEqualTo(why);
            });
    assertThat(new FieldWords(finding).out()).singleElement().asString().contains(words);
  }

  /** Or whoever dislikes a result would take its day out of the field. */
  @Test
  void aDayThatIsAbandonedOnceItsFindingIsKnownStaysInAndSaysSoEverywhere() {
    SessionId id = season.ride("LM", "2026-09-26");
    FieldFinding before = found();
    season.desk().sessions().act(id, s -> new LifeCommands(s).abandon("I do not like it"));
    FieldFinding after = found();
    assertThat(after.days()).hasSize(3).extracting(FieldFinding.Day::session).contains(id.text());
    assertThat(after.out()).isEmpty();
    assertThat(after.rows()).isEqualTo(before.rows());
    assertThat(new FieldWords(after).days().get(2))
        .contains("abandoned once its finding was known");
    Reviews reviews = season.desk().reviews();
    assertThat(String.join("\n", reviews.text(season.state(id))))
        .contains("Abandoned after the opening, its finding known: I do not like it");
    assertThat(
            new String(
                reviews.card(season.state(id), false).entrySet().stream()
                    .filter(file -> file.getKey().endsWith(".txt"))
                    .findFirst()
                    .orElseThrow()
                    .getValue(),
                StandardCharsets.UTF_8))
        .contains("Abandoned after the opening, its finding known.");
  }

  @Test
  void aTellingRun() {
    String plan =
        FieldSeason.plan("KL", "2026-10-01")
            .replace("question:", "kind: telling run\nquestion:")
            .replace("role: primary, worthwhile: 0.5", "role: secondary")
            .replaceAll("protocol: .*\nstints: .*\n", "")
            .replace(
                "measures:", "telling_run: {task: triangle, trials: 8, matters: 0.5}\nmeasures:");
    SessionId id = season.commit(plan, SessionKind.comparison());
    onlyOut(id, Why.NO_COMPARISON, "no comparison of setups in a drawn order");
  }

  @Test
  void aNoiseRun() {
    String plan =
        FieldSeason.plan("KL", "2026-10-01")
            .replace("question:", "kind: noise run\nquestion:")
            .replaceAll(", \\{name: Shock L.*\\}\\]", "]")
            .replaceAll("protocol: .*\n", "");
    onlyOut(season.commitOpen(plan), Why.NO_COMPARISON, "no comparison of setups in a drawn order");
  }

  @Test
  void anOldDayThatWasBroughtIn() {
    PlainDays.Result result =
        season
            .desk()
            .plainDays()
            .bring(
                new PlainDays.Day(
                    "old.csv", "R. Lind", "Quarry loop", LocalDate.parse("2026-07-04")),
                "time\n95.1\n94.2\n96.0\n95.5\n".getBytes(StandardCharsets.UTF_8),
                new PlainDays.Mapping(
                    List.of(new PlainDays.Wanted("lap time", "time", Measure.Kind.LAP_TIME, "s")),
                    new PlainDayPlaces("", "", "", "", "", Decimals.Sign.POINT)));
    SessionId id = ((PlainDays.Result.Brought) result).state().id();
    onlyOut(id, Why.NO_COMPARISON, "no comparison of setups in a drawn order");
  }

  /** Days of a series enter with its last one, not before. */
  @Test
  void daysOfASeriesUntilItsEnd() {
    String series = "series: k-or-n\nseries_sessions: 2\n";
    SessionId first = season.close(FieldSeason.plan("KN", "2026-10-01") + series);
    SessionId last = season.close(FieldSeason.plan("KN", "2026-10-15") + series);
    season.unseal(first);
    FieldFinding before = found();
    assertThat(before.days()).hasSize(2);
    assertThat(before.out())
        .extracting(FieldFinding.Out::session)
        .containsExactly(first.text(), last.text());
    assertThat(before.out())
        .extracting(FieldFinding.Out::why)
        .containsExactly(Why.SERIES, Why.SEALED);
    assertThat(new FieldWords(before).out().get(0))
        .contains("of a series that is not at its end, so nothing of it is told");
    season.unseal(last);
    FieldFinding finding = found();
    assertThat(finding.out()).isEmpty();
    assertThat(finding.days()).hasSize(4);
  }

  /** The same laps of a day that declares no looks enter. */
  @Test
  void aDayThatALookStopped() {
    String plan =
        FieldSeason.plan("KP", "2026-10-01").replace("stints: 12", "stints: 24\nlooks: [16]");
    SessionId id = season.stoppedByALook(plan, 16);
    onlyOut(id, Why.STOPPED_EARLY, "look");
    season.cutShort(FieldSeason.plan("KP", "2026-10-15").replace("stints: 12", "stints: 24"), 16);
    assertThat(found().days()).hasSize(3);
  }
}
