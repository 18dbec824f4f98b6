package blindlap.compute;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Requests that cannot be computed: the sentence starts with the field at fault. */
class RefusalsTest {
  private final Calculations calculations = Calculations.standard();

  private void answer(String calculation, String given) {
    String text = "{\"calculation\": \"" + calculation + "\", \"given\": {" + given + "}}";
    calculations.answer(CalculationRequest.parse(text).requests().get(0));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "horoscope|''|calculation: \"horoscope\" is not a known calculation.",
        "choice|\"trials\": 10, \"chosen\": 11, \"chance\": 0.5, \"tail\":"
            + " \"greater\"|given.chosen: 11 is more",
        "choice|\"trials\": 10, \"chosen\": 1, \"chance\": 1.5, \"tail\": \"greater\"|given.chance:"
            + " must be above 0",
        "choice|\"trials\": 10, \"chosen\": 1, \"chance\": 0.5|given.tail: is missing.",
        "choice|\"trials\": 1.5, \"chosen\": 1, \"chance\": 0.5, \"tail\": \"less\"|given.trials:"
            + " must be a whole",
        "choice|\"trials\": 5, \"chosen\": 1, \"chance\": 0.5, \"tail\": \"up\"|given.tail: \"up\""
            + " is none of",
        "choice|\"trials\": 5, \"choosen\": 1, \"chance\": 0.5, \"tail\": \"less\"|given.choosen:"
            + " is not a known",
        "choice-minimum|\"trials\": [5, 0], \"chance\": 0.5, \"level\": 0.05, \"tail\":"
            + " \"greater\"|given.trials[1]:",
        "choice-minimum|\"trials\": 5, \"chance\": 0.5, \"level\": 0.05, \"tail\":"
            + " \"less\"|given.tail: must be",
        "choice-power|\"trials\": 5, \"chance\": 0.5, \"level\": 0.05, \"true_proportion\":"
            + " 1.2|given.true_proportion:",
        "adjust|\"p\": [0.1, 1.2], \"method\": \"holm\"|given.p[1]: must lie between 0 and 1",
        "adjust|\"p\": [], \"method\": \"holm\"|given.p: has 0 values",
        "spread|\"values\": []|given.values: has 0 values",
        "spread|\"values\": [1, 1e999]|given.values[1]: is too large",
        "spread|\"values\": [1, \"NaN\"]|given.values[1]: must be a number.",
        "one-way|\"groups\": [[1], [2]]|given.groups: has one value per group",
        "one-way|\"groups\": [[1, 1], [2, 2]]|given.groups: is constant within every group",
        "repeatability|\"groups\": [[1, 2], [3]]|given.groups[1]: has 1 values",
        "agreement|\"first\": [1, 2], \"second\": [1, 2, 3]|given.second: has 3 values",
        "sensitivity|\"task\": \"triangle\", \"trials\": 5, \"correct\": 6|given.correct: 6 is more"
            + " than",
        "sensitivity|\"task\": \"triangle\", \"trials\": 5, \"correct\": 2, \"hits\": 1|given.hits:"
            + " is not a known",
        "sensitivity|\"task\": \"guess\", \"trials\": 5, \"correct\": 2|given.task: \"guess\" is"
            + " none of triangle",
        "sensitivity|\"task\": \"same-or-other\", \"hits\": 5, \"misses\": -2, \"false_alarms\": 1,"
            + " \"correct_rejections\": 1|given.misses: must not be negative",
        "sensitivity-curve|\"task\": \"triangle\", \"d_prime\": [1, -1]|given.d_prime[1]: must not"
            + " be negative",
        "telling|\"task\": \"three-choice\", \"trials\": 15, \"correct\": 6|given.task: must be",
        "telling|\"task\": \"triangle\", \"trials\": 101, \"correct\": 6|given.trials: must lie",
        "telling|\"task\": \"triangle\", \"trials\": 15, \"correct\": 16|given.correct: 16 is more",
        "telling|\"task\": \"triangle\", \"trials\": 15, \"correct\": 6, \"matters\":"
            + " 0|given.matters: must be above 0",
        "telling|\"task\": \"triangle\", \"trials\": 15, \"right\": 6|given.right: is not a known",
        "guess-index|\"table\": [[1, 2, 3]]|given.table: has 1 rows",
        "guess-index|\"table\": [[1, 2], [2, 1]]|given.table: has 2 columns, but there are 3"
            + " weights.",
        "intraclass|\"table\": [[1, 1], [1, 1]]|given.table: holds one value throughout",
        "rank-agreement|\"table\": [[1, 2], [1]]|given.table[1]: has 1 values",
        "pair-preference|\"wins\": [[0, 1], [1, 0]], \"labels\": [\"a\"]|given.labels: has 1"
            + " entries",
        "pair-preference|\"wins\": [[0, 1], [1, 0]], \"labels\": [\"a\", \"a\"]|given.labels: names"
            + " one thing twice.",
        "pair-preference|\"wins\": [[0, 1], [1, 0]], \"labels\": [\"a\", \"b\"], \"reference\":"
            + " \"c\"|given.reference:",
        "pair-preference|\"wins\": [[0, 1], [0, 0]], \"labels\": [\"a\", \"b\"]|given.wins: do not"
            + " connect",
        "mean-power|\"n\": [5], \"difference\": 1, \"sd\": 1, \"level\": 0.05, \"kind\":"
            + " \"two-sample\", \"tail\": \"greater\"|given.n: must be one number or a pair",
        "mean-power|\"n\": 5, \"difference\": 1, \"sd\": 1, \"level\": 0.05, \"kind\": \"paired\","
            + " \"tail\": \"two-sided\"|given.both_tails: is missing.",
        "mean-power|\"n\": 5, \"difference\": 1, \"sd\": -1, \"level\": 0.05, \"kind\": \"paired\","
            + " \"tail\": \"greater\"|given.sd: must be above 0",
        "mean-power-solve|\"n\": 5, \"difference\": 1, \"sd\": 1, \"power\": 0.8, \"level\": 0.05,"
            + " \"kind\": \"paired\", \"tail\": \"greater\"|given.n: is given",
        "mean-power-solve|\"sd\": 1, \"power\": 0.8, \"level\": 0.05, \"kind\": \"paired\","
            + " \"tail\": \"greater\"|given.difference: is missing",
        "mean-power-solve|\"n\": 5, \"sd\": 1, \"power\": 1.8, \"level\": 0.05, \"kind\":"
            + " \"paired\", \"tail\": \"greater\"|given.power: must be above 0",
        "compare-two|\"rule\": {\"setups\": 2, \"stints\": 4, \"block\": 2}, \"order\": \"ABAB\","
            + " \"drift\": \"none\", \"laps\": [[1, 2], [2, 3], [3, 4], [4, 5]], \"summary\":"
            + " \"median\"|given.laps[0]: has 2 laps; a median needs at least 3",
        "compare-two|\"rule\": {\"setups\": 2, \"stints\": 4, \"block\": 2}, \"order\": \"ABAB\","
            + " \"drift\": \"none\", \"laps\": [[1, 2], [2], [3, 4], [4, 5]]|given.laps[1]: has 1"
            + " laps, but the first stint has 2",
        "compare-two|\"rule\": {\"setups\": 2, \"stints\": 4, \"block\": 2}, \"order\": \"ABAB\","
            + " \"drift\": \"none\", \"laps\": [[1], [2], [3], [4]], \"values\": [1, 2, 3,"
            + " 4]|given.values: must be left out",
        "compare-two|\"rule\": {\"setups\": 2, \"stints\": 4, \"block\": 2}, \"order\": \"ABAB\","
            + " \"drift\": \"none\", \"values\": [1, 2, 3, 4], \"summary\": \"mean\"|given.summary:"
            + " must be left out",
        "compare-two|\"rule\": {\"setups\": 2, \"stints\": 4, \"block\": 2}, \"order\": \"ABAB\","
            + " \"drift\": \"none\", \"values\": [1, 2, 3, 5], \"covariates\": [[3, 3, 3,"
            + " 3]]|given.covariates[0]: is constant",
        "compare-two|\"rule\": {\"setups\": 2, \"stints\": 4, \"block\": 2}, \"order\": \"ABAB\","
            + " \"drift\": \"none\", \"values\": [1, 2, 3, 5], \"covariates\": [[1, 2,"
            + " 3]]|given.covariates[0]: has 3 values for 4 stints",
        "compare-two|\"rule\": {\"setups\": 2, \"stints\": 4, \"block\": 2}, \"order\": \"ABAB\","
            + " \"drift\": \"none\", \"values\": [1, 2, 3, 5], \"covariates\": [[1], [1],"
            + " [1]]|given.covariates: has 3 covariates",
        "guesses|\"rule\": {\"setups\": 2, \"stints\": 4, \"block\": 2}, \"order\": \"ABAB\","
            + " \"guesses\": \"ABAB\", \"covariates\": [[1, 2, 3, 4]]|given.covariates: is not a"
            + " known",
        "stopping|\"looks\": [0.5, 0.5], \"level\": 0.05, \"spending\": \"pocock\","
            + " \"two_sided_total\": true|given.looks[1]: must be above the look before it",
        "stopping|\"looks\": [0.5, 1.1], \"level\": 0.05, \"spending\": \"pocock\","
            + " \"two_sided_total\": true|given.looks[1]: must be above the look before it (or 0)"
            + " and at most 1",
        "stopping|\"looks\": [], \"level\": 0.05, \"spending\": \"pocock\", \"two_sided_total\":"
            + " true|given.looks: must be from 1 to 100 looks",
        "stopping|\"looks\": [1], \"level\": 0, \"spending\": \"pocock\", \"two_sided_total\":"
            + " true|given.level: must be between 0 and 1",
        "stopping|\"looks\": [1], \"level\": 0.05, \"spending\": \"pocock\"|given.two_sided_total:"
            + " is missing",
        "stopping|\"looks\": 0, \"level\": 0.05, \"boundary\": \"pocock\"|given.looks: must be from"
            + " 1 to 100 looks",
        "stopping|\"looks\": 2, \"level\": 0.05, \"boundary\": \"pocock\", \"spending\":"
            + " \"pocock\"|given.spending: is not a known",
        "trend|\"rule\": {\"setups\": 1, \"stints\": 3, \"block\": 3}, \"levels\": [4], \"order\":"
            + " \"AAA\", \"values\": [1, 2, 3], \"drift\": \"none\"|given.rule.setups: must",
        "trend|\"rule\": {\"setups\": 2, \"stints\": 4, \"block\": 2}, \"order\": \"ABAB\","
            + " \"values\": [1, 2, 3, 5], \"drift\": \"none\"|given.levels: is missing.",
        "trend|\"rule\": {\"setups\": 2, \"stints\": 4, \"block\": 2}, \"levels\": [\"soft\","
            + " \"hard\"], \"order\": \"ABAB\", \"values\": [1, 2, 3, 5], \"drift\":"
            + " \"none\"|given.levels[0]: must be a number.",
        "trend|\"rule\": {\"setups\": 2, \"stints\": 4, \"block\": 2}, \"levels\": [1, 2],"
            + " \"order\": \"ABAB\", \"values\": [1, 2, 3, 5], \"drift\": \"none\", \"better\":"
            + " \"softer\"|given.better: \"softer\" is none of",
        "trend|\"rule\": {\"setups\": 3, \"stints\": 3, \"block\": 3}, \"levels\": [1, 2, 1],"
            + " \"order\": \"ABC\", \"values\": [1, 2, 3], \"drift\": \"none\"|given.levels: holds"
            + " 1.0 twice",
        "trend|\"rule\": {\"setups\": 3, \"stints\": 3, \"block\": 3}, \"levels\": [1, 2],"
            + " \"order\": \"ABC\", \"values\": [1, 2, 3], \"drift\": \"none\"|given.levels: has 2"
            + " levels",
        "trend|\"rule\": {\"setups\": 2, \"stints\": 4, \"block\": 2}, \"levels\": [1, 2],"
            + " \"order\": \"ABAB\", \"values\": [1, 2, 3, 5], \"drift\": \"none\", \"worthwhile\":"
            + " 0|given.worthwhile: must be above 0",
        "trend|\"rule\": {\"setups\": 2, \"stints\": 4, \"block\": 2}, \"levels\": [1, 2],"
            + " \"order\": \"ABAB\", \"values\": [1, 2, 0, 5], \"drift\": \"none\", \"scale\":"
            + " \"ratio\"|given.values[2]: must be above 0",
        "trend|\"rule\": {\"setups\": 2, \"stints\": 4, \"block\": 2}, \"levels\": [1, 2],"
            + " \"order\": \"ABAB\", \"values\": [1, 2, 3, 5], \"drift\": \"none\", \"at\":"
            + " 1|given.at: must be",
        "trend|\"rule\": {\"setups\": 2, \"stints\": 4, \"block\": 2}, \"levels\": [1, 2],"
            + " \"order\": \"ABAB\", \"values\": [1, 2, 3, 5], \"drift\": \"none\", \"fitted\": [1,"
            + " 2, 1, 2]|given.order: must be left out when fitted is given",
        "trend|\"rule\": {\"setups\": 2, \"stints\": 4, \"block\": 2}, \"levels\": [1, 2],"
            + " \"values\": [1, 2, 3, 5], \"drift\": \"none\", \"fitted\": [1, 2]|given.fitted: has"
            + " 2",
        "along|\"rule\": {\"setups\": 2, \"stints\": 4, \"block\": 2}, \"order\": \"ABAB\","
            + " \"pieces\": [[1, 2], [1], [1, 2], [1, 2]], \"drift\": \"none\"|given.pieces[1]: has"
            + " 1 pieces",
        "along|\"rule\": {\"setups\": 2, \"stints\": 4, \"block\": 2}, \"order\": \"ABAB\","
            + " \"pieces\": [[1, 2]], \"drift\": \"none\"|given.pieces: has 1 stints",
        "field|\"days\": []|given.days: is empty",
        "field|\"days\": [{\"setups\": [\"K\", \"K\"], \"order\": \"AB\", \"values\": [1, 2],"
            + " \"drift\": \"none\"}]|given.days[0].setups: names one setup twice",
        "field|\"days\": [{\"setups\": [\"K\", \"L\"], \"order\": \"AC\", \"values\": [1, 2],"
            + " \"drift\": \"none\"}]|given.days[0].order: rides more setups",
        "distance|\"from\": [91, 0], \"to\": [0, 0]|given.from[0]: must lie between",
        "distance|\"from\": [0, 0], \"to\": [0]|given.to: must hold a latitude",
        "gate-time|\"gate\": [[0, 0]], \"track\": []|given.gate: must hold its two ends",
        "gate-time|\"gate\": [[0, 0], [0, 0]], \"track\": []|given.gate: has both ends",
        "gate-time|\"gate\": [[0, 0], [0, 1]], \"track\": [[0, 0, 5], [0, 1, 4]]|given.track[1]: is"
            + " at 4.0 s",
        "vibration-weight|\"curve\": \"Wx\", \"frequencies\": [1]|given.curve: \"Wx\" is none of",
        "vibration-weight|\"curve\": \"Wk\", \"frequencies\": [1, 0]|given.frequencies[1]: must be"
            + " above 0",
        "vibration-sum|\"axes\": [1], \"vdv_parts\": [1]|given.vdv_parts: must be the only one",
        "vibration-sum|\"axes\": [1, 2], \"multipliers\": [1]|given.multipliers: has 1 numbers for"
            + " 2 axes",
        "vibration-sum|\"curve\": \"Wk\", \"bands\": [{\"hz\": 1, \"rms\": -1}]|given.bands[0].rms:"
            + " must be at least 0",
        "pool-riders|\"estimates\": [1]|given.estimates: has 1 values",
        "pool-riders|\"estimates\": [1, 2], \"variances\": [1, -1]|given.variances[1]: must be"
            + " above 0",
        "variance-components|\"groups\": [[1, 2], [3, 4]], \"method\": \"guess\"|given.method:"
            + " \"guess\" is none of reml.",
        "field|\"days\": [{\"setups\": [\"K\", \"L\"], \"order\": \"ABBAAB\", \"values\": [1, 2, 3,"
            + " 4, 5, 7], \"drift\": \"none\", \"covariates\": [[1,"
            + " 2]]}]|given.days[0].covariates[0]: has 2 values for 6 stints",
        "convert|\"value\": 1, \"from\": \"N\", \"to\": \"mm\"|given.to: \"N\" and \"mm\" measure"
            + " different things",
        "convert|\"value\": 1, \"from\": \"furlong\", \"to\": \"mm\"|given.from: \"furlong\" is"
            + " none of the units",
        "sag|\"stroke_mm\": 60|given.sag_mm: is missing.",
        "sag|\"stroke_mm\": 60, \"sag_mm\": 1, \"sag_percent\": 1|given.sag_percent: must be left"
            + " out",
        "sag|\"stroke_mm\": 60, \"sag_mm\": 70|given.sag_mm: must lie between",
        "spring-step|\"rate\": 500, \"new_rate\": 0, \"sag_percent\": 30|given.new_rate: must be"
            + " above 0",
      })
  void theFieldAtFaultIsNamed(String calculation, String given, String start) {
    assertThatThrownBy(() -> answer(calculation, given))
        .isInstanceOf(RequestException.class)
        .hasMessageStartingWith(start)
        .hasMessageEndingWith(".");
  }

  @Test
  void everyCalculationRefusesAFieldThatItDoesNotKnow() {
    for (String name : calculations.names()) {
      assertThatThrownBy(() -> answer(name, "\"surprise\": 1"))
          .hasMessage("given.surprise: is not a known field.");
    }
  }

  @Test
  void everyCalculationRefusesToWorkOnNothing() {
    for (String name : calculations.names()) {
      assertThatThrownBy(() -> answer(name, ""))
          .isInstanceOf(RequestException.class)
          .hasMessageEndingWith(": is missing.");
    }
  }

  @Test
  void twoCalculationsOfOneNameCannotBeRegistered() {
    Calculation one = Calculation.of("same", Set.of(), given -> null);
    assertThatThrownBy(() -> Calculations.of(List.of(one, one)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("same");
    assertThat(Calculations.of(List.of(one)).names()).containsExactly("same");
  }
}
