package blindlap.plan;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Who scores what by code, and what is left for the day. */
class WhoScoresTest {
  private static final Plan PLAN =
      Plans.with(
          """
          measures:
            - {name: time, kind: lap time, unit: s, role: primary, worthwhile: 1}
            - {name: line, kind: count, unit: a lap, assessor: Ann}
            - {name: feet, kind: count, unit: a lap, assessor: Bo, assessor_knows: yes}
            - {name: brakes, kind: count, unit: a lap, assessor: Ann}
          """);

  @Test
  void everyMeasureIsScoredByOnePersonOrOnTheDay() {
    assertThat(PLAN.assessors()).containsExactly("Ann", "Bo");
    assertThat(PLAN.scoredBy("Ann")).extracting(Measure::name).containsExactly("line", "brakes");
    assertThat(PLAN.scoredBy("Bo")).extracting(Measure::name).containsExactly("feet");
    assertThat(PLAN.scoredBy("Cy")).isEmpty();
    assertThat(PLAN.askedOnTheDay()).extracting(Measure::name).containsExactly("time");
  }
}
