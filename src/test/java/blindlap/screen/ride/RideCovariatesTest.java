package blindlap.screen.ride;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.TestDay;
import blindlap.ride.RideCovariates;
import blindlap.screen.Models;
import blindlap.screen.Window;
import blindlap.screen.part.Look;
import blindlap.session.day.CovariateAt;
import java.nio.file.Path;
import java.util.List;
import javafx.scene.control.TextField;
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
              protocol: eight-stints\
              """);

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

  @Test
  void whatWasSaidIsTakenBackByItsNameUntilItIsTooLate() {
    try (TestDay day = new TestDay(folder, PLAN, 1)) {
      RideModel model = Models.ride(day);
      CovariateAt legs = new CovariateAt("legs", 1, 0);
      model.covariates().say(legs, "4");
      model.covariates().say(legs, "6");
      assertThat(model.lastAnswerProperty().get()).isEqualTo("legs");
      model.undo().takeBack();
      assertThat(day.state().day().covariates().get(legs)).isEqualByComparingTo("4");
      model.undo().takeBack();
      assertThat(day.state().day().covariates()).isEmpty();
      assertThat(model.lastAnswerProperty().get()).isEmpty();

      model.covariates().say(legs, "5");
      assertThat(model.lastAnswerProperty().get()).isEqualTo("legs");
      model.handedOver();
      assertThat(model.lastAnswerProperty().get()).isEmpty();

      model.lapDone();
      CovariateAt wind = new CovariateAt("wind", 1, 1);
      model.covariates().say(wind, "2.5");
      assertThat(model.lastAnswerProperty().get()).isEqualTo("wind");
      model.undo().takeBack();
      assertThat(day.state().day().covariates()).containsOnlyKeys(legs);
    }
  }

  @Test
  void theFieldShowsWhatStandsAgainAndKeepsWhatIsBeingTyped() throws InterruptedException {
    Window.start();
    try (TestDay day = new TestDay(folder, PLAN, 1)) {
      Window.run(
          () -> {
            RideModel model = Models.ride(day);
            RideCovariatesView view = new RideCovariatesView(new Look(), model, "covariate.before");
            TextField legs = (TextField) view.lookup("#covariate-legs");
            legs.setText("6");
            legs.getOnAction().handle(null);
            model.undo().takeBack();
            assertThat(legs.getText()).isEmpty();
            legs.setText("3");
            legs.getOnAction().handle(null);
            legs.setText("35");
            model.undo().takeBack();
            assertThat(legs.getText()).isEqualTo("35");
          });
    }
  }
}
