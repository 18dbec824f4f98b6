package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.plan.DayAnswer;
import blindlap.plan.DayAnswers;
import blindlap.plan.DayDetail;
import blindlap.plan.Plan;
import blindlap.plan.Plans;
import blindlap.plan.Protocol;
import blindlap.plan.StepsDays;
import blindlap.stats.compare.ConfidenceCurve;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Sampling;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** What a plan says of the declared difference, against days simulated here and its own numbers. */
class RequestWordsTest {
  private static final Pattern CHANCES =
      Pattern.compile(
          "If it truly is ([0-9.]+)\\P{Alnum}s: differs from nothing on (\\d+) of 100 such days,"
              + " larger than \\1\\P{Alnum}s shown on (\\d+)\\. If it is ([0-9.]+)\\P{Alnum}s:"
              + " (\\d+) and (\\d+) \\((.*)\\)\\.");

  private final DayAnswers answers = new DayAnswers(() -> List.copyOf(Plans.protocols().all()));

  /** Days in 100 that differ from nothing, and that are shown to be larger than .5. */
  private static double[] simulated(Plan plan, double truth, double sd) {
    Assignments set = plan.rule().assignments();
    var source = RandomSource.XO_RO_SHI_RO_128_PP.create(5);
    Random noise = new Random(6);
    boolean[] valid = new boolean[plan.stints()];
    Arrays.fill(valid, true);
    int trials = 1500;
    double[] found = new double[2];
    for (int trial = 0; trial < trials; trial++) {
      int[] order = set.random(source);
      double[] y = new double[order.length];
      for (int i = 0; i < y.length; i++) {
        y[i] = order[i] * truth + sd * noise.nextGaussian();
      }
      ConfidenceCurve curve =
          TwoSetups.compare(set, order, y, valid, Drift.LINE, Sampling.PREFERRED).curve();
      boolean real = curve.p(0) <= 0.05;
      found[0] += real ? 100.0 / trials : 0;
      found[1] += real && curve.exceeds(0.5, 0.05) ? 100.0 / trials : 0;
    }
    return found;
  }

  private static Matcher chances(List<String> lead) {
    for (String line : lead) {
      Matcher found = CHANCES.matcher(line);
      if (found.matches()) {
        return found;
      }
    }
    throw new AssertionError("no chances in " + lead);
  }

  @Test
  void theChancesAreThoseOfDaysSimulatedWithTheTestItself() {
    Plan plan = Plans.with("noise: {sd: 0.35}\n");
    Matcher said = chances(new AnswerWords(plan, answers.quick(plan)).lead());

    assertThat(said.group(1)).isEqualTo("0.5");
    assertThat(Double.parseDouble(said.group(4))).isCloseTo(1.0, within(1e-9));
    double[] just = simulated(plan, 0.5, 0.35);
    double[] twice = simulated(plan, 1, 0.35);
    // Three standard errors of 1 500 days, and .025 for the formula (docs/method.md).
    assertThat(Double.parseDouble(said.group(2))).isCloseTo(just[0], within(6.0));
    assertThat(Double.parseDouble(said.group(3))).isCloseTo(just[1], within(4.0));
    assertThat(Double.parseDouble(said.group(5))).isCloseTo(twice[0], within(4.0));
    assertThat(Double.parseDouble(said.group(6))).isCloseTo(twice[1], within(6.0));
    assertThat(said.group(7)).isEqualTo("by formula");
  }

  @Test
  void whereDaysWereSimulatedTwoStandardErrorsArePrinted() {
    Plan plan = Plans.with("protocol: eight-stints\nstints: 8\nnoise: {sd: 0.2}\n");
    DayAnswer quick = answers.quick(plan).orElseThrow();
    DayDetail detail =
        answers.detail(plan, answers.simulate(plan, 2000, 3, () -> false).orElseThrow());
    AnswerWords words =
        new AnswerWords(plan, java.util.Optional.of(answers.refined(plan, quick, detail)));
    Matcher said = chances(words.lead());

    double error = 0;
    for (int at : new int[] {1, 3}) {
      error = Math.max(error, detail.odds().get(at).odds().error());
    }
    // √(p(1 − p)/2000), at most 1.1 in a hundred days.
    assertThat(error).isLessThan(0.0113);
    assertThat(said.group(7))
        .isEqualTo(
            "each figure ± %.1f, two standard errors of the simulation".formatted(200 * error));
    assertThat(words.oddsSource(detail.odds(), detail.days())).contains("±", "two standard errors");
  }

  /** Over random plans: what is said agrees with the answer's own numbers. */
  @Test
  void noSentenceDisagreesWithItsNumbers() {
    Random random = new Random(41);
    List<Protocol> protocols = List.copyOf(Plans.protocols().all());
    int said = 0;
    int named = 0;
    for (int i = 0; i < 60; i++) {
      Protocol protocol = protocols.get(random.nextInt(protocols.size()));
      int setups = protocol.setups().isEmpty() ? 2 : protocol.setups().get(0);
      int block = protocol.block() == null ? 2 : protocol.block();
      int stints = block * Math.max(1, (6 + random.nextInt(24)) / block);
      String names = "{name: A}, {name: B}, {name: C}, {name: D}";
      List<Integer> levels = List.of(2, 3, 7, 8, 12, 15).subList(0, setups);
      String compared =
          protocol.levels()
              ? StepsDays.text("levels: " + levels, stints)
              : "setups: [%s]\nprotocol: %s\nstints: %d\n"
                  .formatted(names.substring(0, setups * 11 - 2), protocol.name(), stints);
      String yaml =
          compared
              + "noise: {sd: %.4f}\n%s"
                  .formatted(
                      Math.exp(3 * random.nextDouble() - 3),
                      random.nextBoolean() ? "timetable: null\n" : "");
      Plan plan = Plans.with(yaml);
      DayAnswer day = answers.quick(plan).orElse(null);
      if (day == null) {
        continue;
      }
      String lead = String.join(" ", new AnswerWords(plan, java.util.Optional.of(day)).lead());
      named += check(yaml + lead, plan, day, lead) ? 1 : 0;
      said++;
    }
    assertThat(said).isGreaterThan(40);
    assertThat(named).as("plans that are sent to another number of stints").isGreaterThan(5);
  }

  /** True if a least plan is named. */
  private static boolean check(String what, Plan plan, DayAnswer day, String lead) {
    boolean shows = !day.never() && day.showsWorthwhile();
    if (lead.contains("no plan with fewer stints")) {
      assertThat(shows).as(what).isTrue();
      assertThat(day.least().orElseThrow().stints()).as(what).isEqualTo(plan.stints());
    }
    Matcher least = Pattern.compile("nothing on 8 of 10 days has (\\d+) stints").matcher(lead);
    boolean named = least.find();
    if (named) {
      assertThat(day.least().orElseThrow().stints())
          .as(what)
          .isEqualTo(Integer.parseInt(least.group(1)));
      assertThat(day.least().orElseThrow().difference()).as(what).isLessThanOrEqualTo(0.5);
    }
    if (lead.contains("which fit the day")) {
      assertThat(plan.timetable()).as(what).isNotNull();
    }
    Matcher series = Pattern.compile("a series of (\\d+) such days").matcher(lead);
    if (series.find()) {
      assertThat(plan.setups()).as(what).hasSize(2);
      assertThat(day.days()).as(what).hasValue(Integer.parseInt(series.group(1)));
      assertThat(shows).as(what).isFalse();
    }
    if (plan.setups().size() > 2) {
      assertThat(lead).as(what).doesNotContain("series");
    }
    if (shows) {
      assertThat(lead).as(what).doesNotContain("no number", "no day of up to", "just under");
    }
    return named;
  }
}
