package blindlap.screen.ride;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.TestDay;
import blindlap.ride.RideCovariates;
import blindlap.screen.Models;
import blindlap.session.day.CovariateAt;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RideCovariatesTest {
  private static final String PLAN =
      TestDay.EIGHT
          .replace("warm_up: 1", "warm_up: 0")
          .replace(
              "protocol: eight-stints",
              """
              covariates:
                - {name: wind, kind: wind, unit: m/s, per: lap, reason: read at the start}
                - {name: legs, kind: fatigue, unit: 0 to 10, by: rider, reason: asked before}
              protocol: eight-stints""");

  @TempDir Path folder;

  private static List<String> asked(RideModel model) {
    return model.covariates().asked().stream().map(RideCovariates.Asked::title).toList();
  }

  @Test
  void whatIsSaidOfAStintIsAskedBeforeTheHandOverAndWhatOfALapOnceItIsDone() {
    try (TestDay day = new TestDay(folder, PLAN, 1)) {
      RideModel model = Models.ride(day);
      CovariateAt legs = new CovariateAt("legs", 1, 0);
      assertThat(asked(model)).containsExactly("legs (0 to 10)");

      model.covariates().say(legs, "tired");
      assertThat(model.troubleProperty().get())
          .isEqualTo(
              "\"tired\" is no number, so nothing was recorded for \"legs\". Type a number such as"
                  + " 3 or 2.5.");
      model.covariates().say(legs, "4,5");
      assertThat(day.state().day().covariates().get(legs)).isEqualByComparingTo("4.5");
      assertThat(model.covariates().asked().get(0).given()).isEqualTo("4.5");
      model.covariates().say(legs, " ");
      assertThat(day.state().day().covariates()).isEmpty();

      model.handedOver();
      assertThat(asked(model)).isEmpty();
      model.covariates().say(legs, "4");
      assertThat(model.troubleProperty().get()).contains("after the lap the setup may have");

      model.lapDone();
      assertThat(asked(model)).containsExactly("wind (m/s)");
      model.covariates().say(new CovariateAt("wind", 1, 1), "2.5");
      assertThat(day.state().day().covariates()).containsOnlyKeys(new CovariateAt("wind", 1, 1));
    }
  }
}
