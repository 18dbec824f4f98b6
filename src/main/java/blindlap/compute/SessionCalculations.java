package blindlap.compute;

import blindlap.stats.compare.CountRatio;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Orders;
import blindlap.stats.power.Detectable;
import blindlap.stats.tell.GuessTest;
import blindlap.stats.tell.WaitTest;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Guesses, waits, counts, and what a day can detect, over the admissible orders. */
final class SessionCalculations {
  private static final double FEW_COUNTS = 1;
  private static final double LIMIT = 0.05;

  private SessionCalculations() {}

  static List<Calculation> all() {
    return List.of(
        OrderGiven.calculation(
            "guesses",
            Set.of("order", "guesses", "levels"),
            given ->
                given.given().has("levels") ? LevelCalculations.guesses(given) : guesses(given)),
        OrderGiven.calculation("waits", Set.of("order", "waits"), SessionCalculations::waits),
        OrderGiven.calculation(
            "count-ratio", OrderGiven.withStints("order"), SessionCalculations::countRatio),
        OrderGiven.calculation(
            "detectable", Set.of("sd", "power", "drift"), SessionCalculations::detectable));
  }

  private static Evaluation guesses(OrderGiven given) {
    int[] order = given.order();
    GuessTest found =
        GuessTest.of(
            given.set(), order, given.given().text("guesses"), given.valid(), given.set().stints());
    return new Evaluation(
        new ResultFields()
            .whole("count", found.count())
            .whole("t", found.t())
            .number("index_a", found.indexA())
            .number("index_b", found.indexB())
            .number("index_mean", found.indexMean())
            .number("p", found.p())
            .number("mid_p", found.midP()),
        "Re-randomisation of right less wrong guesses, one-sided; index per setup after Bang, Ni & "
            + "Davis (2004).",
        List.of(
            "Counted exactly along the graph of orders; nothing is sampled.",
            "A large p is no evidence that the blind held: few stints see little."));
  }

  private static Evaluation waits(OrderGiven given) {
    given.refuseRatioScale("waits are compared in their own unit.");
    WaitTest found =
        WaitTest.of(
            given.set(), given.order(), given.given().numbersWithGaps("waits"), given.sampling());
    ResultFields result =
        new ResultFields()
            .whole("count", found.count())
            .whole("waits", found.waits())
            .whole("reals", found.kind().reals())
            .number("difference", found.kind().seconds())
            .number("p", found.kind().p())
            .number("mid_p", found.kind().midP());
    found
        .setup()
        .ifPresent(
            apart ->
                result
                    .text("slowest", String.valueOf(Orders.letter(apart.slowest())))
                    .text("quickest", String.valueOf(Orders.letter(apart.quickest())))
                    .number("setup_difference", apart.seconds())
                    .number("setup_p", apart.p())
                    .number("setup_mid_p", apart.midP()));
    given.stateSample(result, found.sampled());
    return new Evaluation(
        result,
        "Re-randomisation of waits after a straight line: real against dummy swaps, one-sided; by"
            + " the setup now fitted, two-sided.",
        List.of(given.reference(found.sampled()), "A large p is no evidence that the blind held."));
  }

  private static Evaluation countRatio(OrderGiven given) {
    given.refuseRatioScale("count-ratio compares counts as they are.");
    CountRatio found =
        CountRatio.of(given.set(), given.order(), given.values(), given.valid(), given.sampling());
    ResultFields result =
        new ResultFields()
            .whole("count", found.count())
            .number("ratio", found.ratio())
            .interval("interval_95", found.interval95().low(), found.interval95().high())
            .number("mean_count", found.meanCount());
    given.stateSample(result, found.sampled());
    if (found.sampled()) {
      result.number("p_error", Math.sqrt(LIMIT * (1 - LIMIT) / given.sampling().draws()));
    }
    List<String> notes = new ArrayList<>();
    notes.add(given.reference(found.sampled()));
    notes.add("The interval is approximate; the test is exact at the ratio 1 only.");
    if (found.meanCount() < FEW_COUNTS) {
      notes.add("Fewer than one count per stint: only very large ratios can be seen.");
    }
    if (found.sampled()) {
      notes.add("p_error is the Monte-Carlo standard error of a p of .05, where the ends lie.");
    }
    return new Evaluation(
        result, "Inversion of the re-randomisation test on counts divided by the ratio.", notes);
  }

  private static Evaluation detectable(OrderGiven given) {
    given.refuseRatioScale("sd and difference are in the unit of the analysis already.");
    Given fields = given.given();
    Drift drift = given.drift();
    double sd = positive(fields, "sd");
    double power = fields.number("power");
    Detectable day =
        fields.has("valid")
            ? Detectable.of(given.set(), given.valid(), drift, given.sampling())
            : Detectable.of(given.set(), drift, given.sampling());
    boolean sampled = sampledEfficiency(given, drift);
    ResultFields result =
        new ResultFields()
            .number("difference", day.onResidualDf().difference(sd, power))
            .whole("df", day.df())
            .number("attainable_level", day.attainableLevel())
            .number("efficiency", day.efficiency())
            .number("difference_by_order_df", day.difference(sd, power))
            .number("order_df", day.orderDf());
    given.stateSample(result, sampled);
    List<String> notes = new ArrayList<>();
    notes.add(
        "difference takes all degrees of freedom of the residuals; difference_by_order_df, which"
            + " plan and report use, those that the orders mix.");
    if (!day.formulaHolds()) {
      notes.add(
          "Fewer than "
              + Detectable.FORMULA_FROM
              + " orders: the formula is too hopeful here; simulate.");
    }
    if (sampled) {
      notes.add("The efficiency is from a sample of the orders.");
    }
    return new Evaluation(
        result,
        "Noncentral t at the attainable level, on the information left after drift, both tails.",
        notes);
  }

  private static boolean sampledEfficiency(OrderGiven given, Drift drift) {
    return given.given().has("valid")
        ? given.sampling().samples(given.set())
        : Detectable.sampled(given.set(), drift, given.sampling());
  }

  private static double positive(Given fields, String field) {
    double value = fields.number(field);
    if (value <= 0) {
      RequestException refusal = fields.refuse(field, "must be above 0, but is " + value + ".");
      throw refusal;
    }
    return value;
  }
}
