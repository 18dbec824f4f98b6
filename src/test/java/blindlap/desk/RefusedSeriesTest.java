package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.review.SeriesAnswers;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.wording.SeriesWords;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A session of a series that cannot be compared. */
class RefusedSeriesTest {
  private static final SeriesDays.Day FLAT =
      new SeriesDays.Day("R. Lind", "2026-10-03", 2, 0, 0, false);
  private static final SeriesDays.Day USUAL =
      new SeriesDays.Day("R. Lind", "2026-10-10", 2, -1, 0.7, true);

  @TempDir Path folder;

  @Test
  void isSaidToBeSoWithTheReasonInWords() {
    try (SeriesDays days = new SeriesDays(folder, 1)) {
      days.ride(FLAT);
      days.ride(USUAL);
      days.unsealAll();
      assertThat(
              new SeriesWords(days.desk().series().finding(SeriesDays.SERIES).orElseThrow()).rows())
          .extracting(SeriesWords.Row::standing)
          .containsExactly(
              "could not be compared. Nothing varied from stint to stint, so there is no noise to"
                  + " hold a difference against.",
              "pooled, 100 % of the weight on these days");
      assertThat(days.desk().series().json(SeriesDays.SERIES).orElseThrow())
          .contains("\"why\" : \"Nothing varied from stint to stint, so there is no noise to hold");
    }
  }

  @Test
  void isNotTakenForOneWhereTheProgramErrs() {
    try (SeriesDays days = new SeriesDays(folder, 1)) {
      SessionId first = days.ride(USUAL);
      days.ride(FLAT);
      days.unsealAll();
      List<SessionState> sessions = List.of(days.state(first));
      AtomicInteger opened = new AtomicInteger();
      assertThatThrownBy(
              () ->
                  new SeriesAnswers(
                          state -> {
                            // The second record is the one that is compared.
                            if (opened.incrementAndGet() == 2) {
                              throw new IllegalArgumentException("a mistake in the program");
                            }
                            return Reviews.day(state);
                          })
                      .whole(sessions))
          .hasMessage("a mistake in the program");
    }
  }
}
