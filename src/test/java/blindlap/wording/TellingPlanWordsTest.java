package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.stats.tell.Discrimination;
import blindlap.stats.tell.TellingTrials;
import java.util.List;
import org.junit.jupiter.api.Test;

class TellingPlanWordsTest {
  @Test
  void fifteenTrianglesAreSaidWithBothTheirChances() {
    TellingTrials run = TellingTrials.of(Discrimination.TRIANGLE, 15, 0.5);
    assertThat(TellingPlanWords.said(run))
        .isEqualTo(
            "15 trials: 9 right is the least that shows anything. If half of the trials are really"
                + " told, 80 of 100 such runs show it; if nothing is felt, 78 of 100 show that the"
                + " rider cannot tell as often as would matter.");
    List<TellingPlanWords.Row> table = TellingPlanWords.table(run, 9);
    assertThat(table).hasSize(11);
    assertThat(table).contains(new TellingPlanWords.Row("15", "9", "80", "78", "135"));
    assertThat(table).contains(new TellingPlanWords.Row("12", "8", "63", "62", "108"));
  }

  @Test
  void anUnusualNumberStandsInItsPlaceAndWhatCannotShowAnythingSaysSo() {
    TellingTrials four = TellingTrials.of(Discrimination.TWO_CHOICE, 4, 0.4);
    List<TellingPlanWords.Row> table = TellingPlanWords.table(four, 6);
    assertThat(table).hasSize(12);
    assertThat(table.get(0)).isEqualTo(new TellingPlanWords.Row("4", "never", "–", "–", "24"));
    assertThat(TellingPlanWords.head(0.4).can().replace('\u202f', ' '))
        .isEqualTo("shows \"can tell\" if 40 % of the trials are really told, of 100 runs");
    assertThat(TellingPlanWords.said(four))
        .isEqualTo(
            "4 trials: not even all right could show anything, because guessing gives that in 6 of"
                + " 100 such runs.");
    assertThat(TellingPlanWords.said(TellingTrials.of(Discrimination.TRIANGLE, 3, 1)))
        .startsWith("3 trials: 3 right is the least that shows anything. If all trials are really");
  }
}
