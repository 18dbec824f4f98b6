package blindlap.plot;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plot.surface.Spoken;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Strips along the distance. */
class AlongProfileTest {
  private static final double[] ALONG = {0, 100, 200, 300};

  /** One number alone says nothing of how much a line rises. */
  @ParameterizedTest
  @CsvSource({"0,38,true", "0,27,true", "0,3.1,true", "381,408,false", "399,401,false", "0,0,true"})
  void everyStripHasTwoNumbersAtLeast(double low, double high, boolean fromZero) {
    double[] values = {low, high, low, high};
    Axis axis = new Axis("metres", Axis.Counting.DECIMAL, (value, step) -> "at " + value);
    AlongProfile profile =
        AlongProfile.of(
            new AlongProfile.Content(
                ALONG,
                List.of(new AlongProfile.Strip(values, axis, fromZero)),
                List.of(),
                new Axis("way", Axis.Counting.DECIMAL, (value, step) -> ""),
                new Spoken("A strip.", "")));
    RecordingSurface surface = new RecordingSurface();
    profile.draw(surface, 560, 1);
    assertThat(surface.words)
        .filteredOn(word -> word.words().startsWith("at "))
        .hasSizeBetween(2, 4);
  }
}
