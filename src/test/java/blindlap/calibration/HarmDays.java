package blindlap.calibration;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.review.Analysis;
import blindlap.review.Days;
import blindlap.review.Finding;
import blindlap.stats.compare.Scale;
import blindlap.stats.order.Orders;
import blindlap.wording.FindingText;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;

/**
 * Days on which nothing does harm: so many watched measures of pure noise beside the primary,
 * sixteen stints in blocks of four, which carry them: with twelve the floor of 8 lies above .05.
 *
 * @param shown share of days whose headline says "did harm"
 * @param open share of days whose headline says neither that nor that every harm is ruled out
 */
record HarmDays(double shown, double open) {
  private static final Rule RULE = Rule.blocks(2, 16, 4);

  /**
   * @param watched number of watched measures
   * @param harm the harm declared, in standard deviations of the noise
   */
  static HarmDays simulate(int watched, String harm, int days, long seed) {
    int shown = 0;
    int open = 0;
    for (int day = 0; day < days; day++) {
      String headline =
          new FindingText(day(watched, harm, new Random(seed + day))).headline().text();
      boolean harmful = headline.contains("did harm");
      shown += harmful ? 1 : 0;
      open += harmful || headline.contains("every watched harm is ruled out") ? 0 : 1;
    }
    return new HarmDays((double) shown / days, (double) open / days);
  }

  private static Finding day(int watched, String harm, Random random) {
    List<Measure> measures = new ArrayList<>();
    measures.add(measure("lap time", Measure.Role.PRIMARY, "1"));
    for (int i = 1; i <= watched; i++) {
      measures.add(measure("sector " + i, Measure.Role.WATCH_FOR_HARM, harm));
    }
    Plan plan = Days.plan(RULE, measures);
    String order = Days.order(RULE, random);
    Map<String, double[]> values = new TreeMap<>();
    for (Measure each : measures) {
      values.put(
          each.name(), Days.values(Orders.parse(order), 90, new double[] {0, 0}, 1, 4, random));
    }
    return Analysis.of(Days.day(plan, order, values));
  }

  private static Measure measure(String name, Measure.Role role, String worthwhile) {
    return Days.measure(
        name,
        role == Measure.Role.PRIMARY ? Measure.Kind.LAP_TIME : Measure.Kind.SECTOR_TIME,
        role,
        Measure.Better.LOWER,
        worthwhile,
        Scale.RAW);
  }
}
