package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.review.SeriesFinding;
import blindlap.session.LifeCommands;
import blindlap.session.SessionSummary;
import blindlap.session.day.SessionId;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a series answers is worked out once for list, room and report, and is never out of date. */
class KeptSeriesTest {
  @TempDir Path folder;

  @Test
  void aSeriesIsWorkedOutOnceUntilSomethingIsWrittenInOneOfItsSessions() {
    try (SeriesDays days = new SeriesDays(folder, 1)) {
      days.oneRider();
      SeriesBook book = days.desk().series();
      SeriesFinding answer = book.answer(SeriesDays.SERIES).orElseThrow();
      assertThat(book.answer(SeriesDays.SERIES).orElseThrow()).isSameAs(answer);
      SeriesFinding whole = book.finding(SeriesDays.SERIES).orElseThrow();
      assertThat(whole).isEqualTo(answer);
      assertThat(book.finding(SeriesDays.SERIES).orElseThrow()).isSameAs(whole);
      assertThat(whole.these().orElseThrow()).isSameAs(answer.these().orElseThrow());
      SessionId last = days.desk().notebook().summaries().get(0).id();
      assertThat(
              days.desk()
                  .sessions()
                  .act(last, latest -> new LifeCommands(latest).amend("It rained.", "Forgotten.")))
          .isInstanceOf(Sessions.Result.Done.class);
      SeriesFinding later = book.finding(SeriesDays.SERIES).orElseThrow();
      assertThat(later).isNotSameAs(whole);
      assertThat(later.these().orElseThrow().curve().knots())
          .isEqualTo(whole.these().orElseThrow().curve().knots());
    }
  }

  @Test
  void theListIsThereBeforeASeriesIsWorkedOutAndSaysTheSameAfterwards() {
    try (SeriesDays days = new SeriesDays(folder, 1)) {
      days.ride(new SeriesDays.Day("R. Lind", "2026-10-03", 2, -1.2, 0.7, true));
      days.ride(new SeriesDays.Day("R. Lind", "2026-10-10", 2, -1.2, 0.7, true));
      SessionList list = days.desk().sessionList();
      List<SessionSummary> sealed = days.desk().notebook().summaries();
      // Before its end nothing of a series is worked out, so that all of it is known at once.
      assertThat(list.knownInSeries(sealed)).hasSize(2).isEqualTo(list.inSeries(sealed));
      days.unsealAll();
      List<SessionSummary> open = days.desk().notebook().summaries();
      assertThat(list.knownInSeries(open)).isEmpty();
      Map<SessionId, String> told = list.inSeries(open);
      assertThat(told).hasSize(2);
      assertThat(list.knownInSeries(open)).isEqualTo(told);
    }
  }
}
