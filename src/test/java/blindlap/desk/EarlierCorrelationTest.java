package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.compute.NoiseJson;
import blindlap.plan.Covariate;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.review.CovariateFinding;
import blindlap.review.NoiseRecord;
import blindlap.stats.noise.PooledCorrelation;
import blindlap.wording.CovariateWords;
import blindlap.wording.LapNoiseWords;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** How covariates went with measures on earlier days, from the noise book. */
class EarlierCorrelationTest {
  private static Covariate called(Covariate like, String name, String unit) {
    return new Covariate(name, like.kind(), unit, like.by(), like.per(), like.reason(), null);
  }

  @Test
  void anUnsealedDayTellsTheNextPlanAsItsOwnFindingSaid() {
    SampleDays.ride(
        "wheels-on-windy-ridge",
        (desk, state) -> {
          Plan plan = state.plan();
          Measure primary = plan.primary().orElseThrow();
          Covariate wind = plan.covariates().get(0);
          CovariateFinding found =
              desk.reviews().finding(state).covariates().stream()
                  .filter(each -> each.covariate().equals(wind))
                  .findFirst()
                  .orElseThrow();
          var earlier = desk.history().earlier(plan);
          PooledCorrelation told = earlier.correlation(primary, 1, wind).orElseThrow();
          assertThat(told.r()).isCloseTo(found.correlation(), within(1e-12));
          assertThat(told.days()).isEqualTo(1);
          assertThat(earlier.correlation(primary, 3, wind)).isEqualTo(Optional.of(told));
          assertThat(earlier.correlation(primary, 1, called(wind, "wind", "knots"))).isEmpty();
          assertThat(earlier.correlation(primary, 1, called(wind, "sun", wind.unit()))).isEmpty();
          assertThat(
                  desk.history()
                      .earlier(plan.rider(), "Another trail")
                      .correlation(primary, 1, wind))
              .isEmpty();
          assertThat(CovariateWords.planned(plan, earlier))
              .anyMatch(line -> line.startsWith("wind went with lap time by 0."))
              .anyMatch(line -> line.startsWith("legs went with lap time by "));
        });
  }

  @Test
  void theNoiseBookSaysIt() {
    SampleDays.ride(
        "wheels-on-windy-ridge",
        (desk, state) -> {
          List<NoiseRecord> records =
              desk.history().records(state.plan().rider(), state.plan().trail());
          assertThat(LapNoiseWords.lines(records.get(0)))
              .anyMatch(line -> line.startsWith("wind went with lap time by 0."));
          assertThat(NoiseJson.write(records))
              .contains("\"covariates\" : [ {", "\"covariate\" : \"wind\"", "\"correlation\" : 0.");
        });
  }

  @Test
  void aSealedDayTellsNothing() {
    SampleDays.sealed(
        "wheels-on-windy-ridge",
        (desk, state, phrase) -> {
          Plan plan = state.plan();
          assertThat(
                  desk.history()
                      .earlier(plan)
                      .correlation(plan.primary().orElseThrow(), 1, plan.covariates().get(0)))
              .isEmpty();
        });
  }
}
