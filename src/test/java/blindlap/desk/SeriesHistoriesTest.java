package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.review.SeriesFinding;
import blindlap.session.day.SessionId;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Random histories of a series in two notebooks whose clocks do not agree: plans that differ, early
 * ends, abandoned sessions, seals opened in any order, exchange at any time. A record of what
 * really happened, and in which order, is kept beside: whoever could know a result before the last
 * of the counted sessions was closed, or before another was dropped, has no verdict. One in four is
 * steered: days that a storm ends give their places to others, and the series comes to its right
 * end; one in eight drops a session as soon as the first seal is open.
 */
class SeriesHistoriesTest {
  private static final int HISTORIES = Integer.getInteger("blindlap.histories", 40);

  @TempDir Path folder;

  @Test
  void aVerdictIsPooledOnlyWhereNobodyCouldKnowAResultBeforeTheEnd() {
    int verdicts = 0;
    int peeked = 0;
    int ended = 0;
    int refused = 0;
    int replacing = 0;
    int dropped = 0;
    int windy = 0;
    for (int seed = 0; seed < HISTORIES; seed++) {
      try (SeriesHistory history = new SeriesHistory(folder.resolve(String.valueOf(seed)), seed)) {
        history.run();
        SeriesFinding found = history.finding();
        boolean peek = history.peeked(found);
        assertThat(history.refusedAtCommit(found)).as("held, history %d", seed).isEmpty();
        refused += history.refused;
        List<SessionId> replaced = history.replaced(found);
        if (!found.peeks().byClocks()) {
          assertThat(replaced)
              .as("replaced, history %d", seed)
              .allMatch(history::couldNotBeDroppedForItsResult);
        }
        assertThat(replaced)
            .as("scored and undeclared, history %d", seed)
            .noneMatch(history.undeclared::contains);
        dropped += history.droppedLate() && found.verdict().isEmpty() ? 1 : 0;
        if (found.verdict().isPresent()) {
          verdicts++;
          windy += history.windy() ? 1 : 0;
          replacing += replaced.isEmpty() ? 0 : 1;
          assertThat(found.pooled()).as("history %d", seed).isEqualTo(history.declared);
          assertThat(found.parts().stream().filter(part -> part.fate().counts()))
              .as("closed, history %d", seed)
              .allMatch(part -> part.fate() == SeriesFinding.Fate.POOLED);
          assertThat(history.ended).as("ended, history %d", seed).isFalse();
          if (!found.peeks().byClocks()) {
            assertThat(peek).as("peeked, history %d", seed).isFalse();
          }
        } else if (found.open()
            && !history.ended
            && !peek
            && !found.peeks().byClocks()
            && found.pooled() == history.declared) {
          assertThat(found.noVerdict()).as("history %d", seed).isEmpty();
        }
        peeked += peek ? 1 : 0;
        ended += history.ended ? 1 : 0;
      }
    }
    // The histories reach every end, or this says nothing.
    assertThat(verdicts).isGreaterThan(HISTORIES / 10);
    assertThat(ended).isGreaterThan(HISTORIES / 10);
    assertThat(peeked).isPositive();
    assertThat(refused).isPositive();
    assertThat(replacing).as("verdicts with a replaced session").isGreaterThan(HISTORIES / 10);
    assertThat(windy).as("verdicts with a covariate").isPositive();
    assertThat(dropped).as("dropped once a seal was open").isPositive();
  }
}
