package blindlap.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.plot.surface.Spoken;
import java.util.List;
import org.junit.jupiter.api.Test;

class GuessedEndsTest {
  private static final GuessedEnds.Stint RIGHT =
      new GuessedEnds.Stint(1, 0.25, GuessedEnds.Guess.LOW);
  private static final GuessedEnds.Stint WRONG =
      new GuessedEnds.Stint(2, 0.25, GuessedEnds.Guess.HIGH);
  private static final GuessedEnds.Stint MIDDLE =
      new GuessedEnds.Stint(3, 0.5, GuessedEnds.Guess.HIGH);
  private static final GuessedEnds.Stint UNKNOWN =
      new GuessedEnds.Stint(4, 1, GuessedEnds.Guess.UNKNOWN);

  private static long strong(GuessedEnds.Stint... stints) {
    GuessedEnds drawing =
        GuessedEnds.of(
            new GuessedEnds.Content(
                List.of(stints), "level", "guess", "low", "high", "?", new Spoken("Said.", "")));
    return RecordingSurface.of(drawing, 600, 1).lines.stream()
        .filter(line -> line.pen().width() == 2)
        .count();
  }

  @Test
  void onlyARightGuessIsJoinedToItsLevel() {
    assertThat(strong(UNKNOWN)).isZero();
    assertThat(strong(WRONG)).isEqualTo(1); // its arrow alone
    assertThat(strong(MIDDLE)).isEqualTo(1); // nearer to neither end
    assertThat(strong(RIGHT)).isEqualTo(2);
    assertThat(strong(RIGHT, WRONG, MIDDLE, UNKNOWN)).isEqualTo(4);
  }

  @Test
  void aLevelOutsideOfItsEndsIsRefused() {
    assertThatThrownBy(() -> new GuessedEnds.Stint(1, 1.2, GuessedEnds.Guess.LOW))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("1.2");
  }
}
