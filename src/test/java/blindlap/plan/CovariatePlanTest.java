package blindlap.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.PlanReader;
import blindlap.exchange.PlanText;
import blindlap.exchange.Protocols;
import blindlap.fault.Problem;
import blindlap.review.SeriesDeclaration;
import blindlap.stats.noise.PooledCorrelation;
import blindlap.wording.CovariateWords;
import blindlap.wording.day.Problems;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class CovariatePlanTest {
  private static final String WIND =
      "  - {name: wind, kind: wind, unit: m/s, per: lap, reason: read at the start}\n";

  private static String text(String covariates) {
    return """
    question: Is Shock L quicker than Shock K?
    rider: R. Lind
    trail: Quarry loop
    day: 2026-11-14
    setups: [{name: Shock K}, {name: Shock L}]
    measures: [{name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 0.5}]
    stints: 16
    rule: {setups: 2, stints: 16, block: 4}
    """
        + (covariates.isEmpty() ? "" : "covariates:\n" + covariates);
  }

  private static Plan plan(String covariates) {
    PlanReader.Reading reading = PlanReader.read(text(covariates), Protocols.NONE);
    assertThat(reading.problems()).isEmpty();
    return java.util.Objects.requireNonNull(reading.plan());
  }

  private static List<String> wrong(String covariates) {
    PlanReader.Reading reading = PlanReader.read(text(covariates), Protocols.NONE);
    List<Problem> problems = new ArrayList<>(reading.problems());
    problems.addAll(PlanCheck.problems(java.util.Objects.requireNonNull(reading.plan())));
    return problems.stream().map(Problems::sentence).toList();
  }

  @Test
  void aPlanWithoutCovariatesKeepsItsBytes() {
    assertThat(new String(PlanJson.bytes(plan("")), StandardCharsets.UTF_8))
        .doesNotContain("covariate");
  }

  @Test
  void aPlanWithCovariatesIsReadAgainAsItWasStoredAndAsItIsExported() {
    Plan plan =
        plan(
            WIND
                + "  - {name: legs, kind: fatigue, unit: 0 to 10, by: rider, reason: asked before,"
                + " correlation: 0.4}\n");
    assertThat(plan.covariates()).extracting(Covariate::name).containsExactly("wind", "legs");
    assertThat(plan.covariates().get(0).perLap()).isTrue();
    assertThat(PlanCheck.problems(plan)).isEmpty();
    assertThat(PlanReader.stored(new String(PlanJson.bytes(plan), StandardCharsets.UTF_8)))
        .isEqualTo(plan);
    assertThat(PlanReader.read(PlanText.yaml(PlanJson.tree(plan)), Protocols.NONE).plan())
        .isEqualTo(plan);
  }

  @Test
  void eachMistakeInACovariateGetsOneSentence() {
    assertThat(
            wrong(
                WIND
                    + WIND.replace("name: wind", "name: a")
                    + WIND.replace(": wind", ": wet ground")
                        .replace("kind: wet ground", "kind: wetness")))
        .containsExactly(
            "covariates: The plan has 3 covariates; at most 2 can be taken out. Leave those that go"
                + " best with the laps.");
    assertThat(wrong(WIND.replace(", reason: read at the start", "")))
        .containsExactly(
            "covariates[1].reason: The covariate \"wind\" needs the reason why no setup, of this"
                + " stint or an earlier one, can change it. Give it, or leave the covariate out.");
    assertThat(wrong(WIND.replace("kind: wind", "kind: moon")))
        .singleElement()
        .asString()
        .startsWith("covariates[1].kind (line 10, column ")
        .endsWith(
            "Found \"moon\", but this field takes one of: wind, wetness, temperature, control"
                + " sector, free, fatigue, tested sector.");
    assertThat(wrong(WIND.replace("per: lap", "per: lap, by: rider")))
        .containsExactly(
            "covariates[1].per: The rider says \"wind\" once a stint, before the hand-over: after"
                + " the lap the setup may have touched it. Set per to stint, or let the starter say"
                + " it.");
    assertThat(wrong(WIND.replace("per: lap", "per: lap, by: tester")))
        .singleElement()
        .asString()
        .contains("only a control sector can, and what the starter judges");
    assertThat(
            wrong(
                WIND.replace(
                    "kind: wind, unit: m/s, per: lap", "kind: control sector, unit: s, by: rider")))
        .singleElement()
        .asString()
        .contains("is timed while the rider rides it");
    assertThat(wrong(WIND.replace("name: wind", "name: Lap time")))
        .singleElement()
        .asString()
        .contains("\"Lap time\" is the name of a measure or of another covariate");
    assertThat(wrong(WIND.replace("name: wind", "name: guess")))
        .singleElement()
        .asString()
        .contains("\"guess\" is the name of a column of lap files");
    assertThat(wrong(WIND.replace("unit: m/s, ", "")))
        .singleElement()
        .asString()
        .contains("has no unit");
    assertThat(wrong(WIND.replace("per: lap", "correlation: 1")))
        .containsExactly(
            "covariates[1].correlation: The correlation of \"wind\" is 1; it lies from 0 up to, but"
                + " not at, 1. Correct it, or leave it out.");
  }

  @Test
  void aNoiseRunTakesNothingOut() {
    String text =
        text(WIND)
            .replace("rule: {setups: 2, stints: 16, block: 4}", "kind: noise run")
            .replace(", {name: Shock L}", "");
    assertThat(
            PlanCheck.problems(
                    java.util.Objects.requireNonNull(PlanReader.read(text, Protocols.NONE).plan()))
                .stream()
                .map(Problem::fault))
        .contains(PlanFault.COVARIATE_OF_NOISE_RUN);
  }

  @Test
  void plansOfASeriesDeclareTheSameCovariatesWhateverTheirReasons() {
    SeriesDeclaration declared = new SeriesDeclaration("first", plan(WIND));
    assertThat(declared.differences(plan(WIND.replace("read at the start", "as before"))))
        .isEmpty();
    assertThat(declared.differences(plan("")))
        .containsExactly(
            new SeriesDeclaration.Difference(SeriesDeclaration.Field.COVARIATES, "covariates"));
    assertThat(declared.differences(plan(WIND.replace("m/s", "knots")))).hasSize(1);
  }

  @Test
  void planningSaysWhatACovariateGainsAndWhatTheSetupMightTouch() {
    assertThat(CovariateWords.planned(plan(""), EarlierNoise.NONE)).isEmpty();
    assertThat(CovariateWords.planned(plan(WIND), EarlierNoise.NONE))
        .containsExactly(
            "Covariate wind (m/s), said by the starter every lap: taken out of every measure like"
                + " drift. No setup can change it because: read at the start.",
            "Taking out wind changes the difference this day can show by about −45 % if it goes"
                + " with the rider's noise by .85, −25 % by .7, −10 % by .5, and +4 % if it does"
                + " not go with it at all.");
    assertThat(
            CovariateWords.planned(
                plan(
                    "  - {name: legs, kind: fatigue, unit: 0 to 10, by: rider, reason: asked,"
                        + " correlation: 0.7}\n"),
                EarlierNoise.NONE))
        .contains(
            "The setup might touch legs: if it does, the p with it taken out is not exact. What no"
                + " setup can touch is the better covariate.",
            "legs with a correlation of 0.7 with the rider's noise: the day shows differences about"
                + " 25 % smaller.");
  }

  private static EarlierNoise wentBy(double r) {
    return new EarlierNoise() {
      @Override
      public Optional<DeclaredNoise> of(Measure measure, int scoredLaps) {
        return Optional.empty();
      }

      @Override
      public Optional<PooledCorrelation> correlation(
          Measure measure, int scoredLaps, Covariate covariate) {
        return PooledCorrelation.of(
            List.of(new PooledCorrelation.Seen(r, 12), new PooledCorrelation.Seen(r, 12)));
      }
    };
  }

  /** Half of the interval is 1.96/√22 on Fisher's scale: artanh .7 ± .4179 is .4203 to .8582. */
  @Test
  void whatEarlierDaysTellOfACovariateIsItsExpectedGainWithWhatTheyLeaveOpen() {
    assertThat(CovariateWords.planned(plan(WIND), wentBy(-0.7)))
        .endsWith(
            "wind went with lap time by −0.70 on 2 earlier days of this rider on this trail (95 %"
                + " interval −0.86 to −0.42; drift and setups removed).",
            "As on those earlier days, taking out wind changes the difference this day can show by"
                + " about −25 % (−46 to −5 %).");
  }

  @Test
  void whatIsStatedCountsAndEarlierDaysStandBesideIt() {
    List<String> lines =
        CovariateWords.planned(
            plan(WIND.replace("reason:", "correlation: 0.85, reason:")), wentBy(0.2));
    assertThat(lines)
        .anyMatch(line -> line.startsWith("wind went with lap time by 0.20"))
        .endsWith(
            "wind with a correlation of 0.85 with the rider's noise: the day shows differences"
                + " about 45 % smaller.");
  }
}
