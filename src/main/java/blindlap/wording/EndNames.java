package blindlap.wording;

import blindlap.plan.Plan;
import blindlap.plan.StepsDay;
import blindlap.wording.day.Words;
import java.util.List;

/**
 * What the two sides of a difference are called: setups, or the lowest and the highest level.
 *
 * @param names the two; the difference is second less first
 * @param bare the same where another level with its unit was said before: "13"
 * @param trend true for levels, of which some things are said otherwise
 */
public record EndNames(List<String> names, List<String> bare, boolean trend) {
  private static final Words WORDS = Words.of("finding");

  public EndNames {
    names = List.copyOf(names);
    bare = List.copyOf(bare);
  }

  /** Of two setups. */
  static EndNames of(List<String> setups) {
    return new EndNames(setups, setups, false);
  }

  /** Of a committed plan. */
  public static EndNames of(Plan plan) {
    StepsDay steps = plan.steps();
    return steps == null
        ? of(plan.ends())
        : new EndNames(
            plan.ends(), plan.ends().stream().map(each -> bare(steps, each)).toList(), true);
  }

  /** The name of a level without the unit: "13". */
  public static String bare(StepsDay steps, String level) {
    String unit = " " + steps.unit();
    return level.endsWith(unit) ? level.substring(0, level.length() - unit.length()) : level;
  }

  /** "3 to 12 clicks". */
  String range() {
    return WORDS.say("trend.range", bare.get(0), names.get(1));
  }

  /** The key of a sentence, or of what is said in its place of a trend. */
  String key(String key) {
    return trend && WORDS.has("trend." + key) ? "trend." + key : key;
  }
}
