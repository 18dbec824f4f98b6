package blindlap.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.session.day.Guess.Sureness;
import blindlap.stats.tell.Discrimination;
import blindlap.stats.tell.TellingTrials;
import blindlap.stats.tell.TellingVerdict;
import java.util.List;
import org.junit.jupiter.api.Test;

class TellingFindingTest {
  private static final TellingTrials FIVE = TellingTrials.of(Discrimination.TRIANGLE, 5, 0.5);

  private static TellingTrial trial(int number, int differed, int named) {
    return new TellingTrial(number, differed, named, Sureness.HUNCH);
  }

  @Test
  void surenessIsCountedAgainstRightAnswersTheSurestFirst() {
    List<TellingTrial> trials =
        List.of(
            new TellingTrial(1, 1, 1, Sureness.CERTAIN),
            new TellingTrial(2, 3, 2, Sureness.HUNCH),
            new TellingTrial(3, 2, 2, Sureness.CERTAIN),
            new TellingTrial(4, 2, 3, null),
            new TellingTrial(5, 3, 3, Sureness.HUNCH));
    TellingFinding finding = TellingFinding.of(FIVE, false, trials, 0);
    assertThat(finding.telling().right()).isEqualTo(3);
    assertThat(finding.sureness())
        .containsExactly(
            new TellingFinding.Sure(Sureness.CERTAIN, 2, 2),
            new TellingFinding.Sure(Sureness.HUNCH, 2, 1),
            new TellingFinding.Sure(null, 1, 0));
  }

  @Test
  void onlyAnsweredTrialsCountAndTooFewOfThemAreToldFromAPlanThatCouldNot() {
    TellingFinding few = TellingFinding.of(FIVE, false, List.of(trial(2, 1, 1), trial(4, 2, 2)), 1);
    assertThat(few.telling().run().number()).isEqualTo(2);
    assertThat(few.telling().verdict()).isEqualTo(TellingVerdict.COULD_NOT_SHOW);
    assertThat(few.tooFew()).isTrue();
    assertThat(few.left()).isEqualTo(2);
    TellingTrials two = TellingTrials.of(Discrimination.TRIANGLE, 2, 0.5);
    TellingFinding never =
        TellingFinding.of(two, false, List.of(trial(1, 1, 1), trial(2, 2, 2)), 0);
    assertThat(never.tooFew()).isFalse();
    assertThat(never.left()).isZero();
  }

  @Test
  void whatCannotHaveBeenRiddenIsRefused() {
    assertThatThrownBy(() -> TellingFinding.of(FIVE, false, List.of(), 3))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("without an answered trial");
    assertThatThrownBy(() -> TellingFinding.of(FIVE, false, List.of(trial(1, 1, 1)), 5))
        .hasMessage("1 answered and 5 void trials of 5");
    assertThatThrownBy(() -> TellingFinding.of(FIVE, false, List.of(trial(3, 1, 4)), 0))
        .hasMessage("Lap 4 of trial 3 cannot be named");
    TellingTrials duo = TellingTrials.of(Discrimination.DUO_TRIO, 5, 0.5);
    assertThatThrownBy(() -> TellingFinding.of(duo, false, List.of(trial(1, 1, 2)), 0))
        .hasMessage("Lap 1 of trial 1 cannot be named");
    TellingTrials choice = TellingTrials.of(Discrimination.TWO_CHOICE, 5, 0.5);
    assertThatThrownBy(() -> TellingFinding.of(choice, false, List.of(trial(1, 1, 3)), 0))
        .hasMessage("Lap 3 of trial 1 cannot be named");
  }
}
