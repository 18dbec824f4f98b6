package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Somebody who sets one level does not know what is on, and is told the way that needs no such
 * knowledge.
 */
class OneStintOfStepsDayTest {
  @TempDir Path folder;

  @Test
  void theWayGoesToTheEndUncountedAndIsAsLongForEveryLevel() {
    try (TestDay day = new TestDay(folder, StepsTestDay.NINE, 5)) {
      OneStints views = day.desk().oneStints();
      OneStints.Made made = views.make(day.helper(), day.state());
      for (OneStints.Slip slip : ((OneStints.Made.Slips) made).slips()) {
        OneStints.Shown.Setup shown =
            (OneStints.Shown.Setup)
                views.show(day.state(), slip.stint(), "P. Wier", slip.words().text());

        assertThat(shown.setup())
            .isEqualTo(
                day.state().plan().setups().get(day.helper().work(slip.stint()).setup()).name());
        List<String> steps = shown.steps();
        assertThat(steps.get(1)).contains("without counting");
        assertThat(steps).anyMatch(step -> step.endsWith("out: that is " + shown.setup()));
        assertThat(clicks(steps)).isEqualTo(20);
      }
    }
  }

  private static int clicks(List<String> steps) {
    int all = 0;
    for (String step : steps) {
      if (step.startsWith("Count ")) {
        int times = step.contains(" back") ? 2 : 1;
        all += times * Integer.parseInt(step.split(" ")[1]);
      }
      all += step.contains("beside the bike") ? 1 : 0;
    }
    return all;
  }
}
