package blindlap.wording;

import blindlap.plan.DayAnswer;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.StepsDay;
import blindlap.wording.day.Words;
import java.util.Optional;
import java.util.function.DoubleFunction;

/**
 * What a steps day can show, where it reads otherwise than of setups: one difference from the
 * lowest to the highest level, what that is a click, and whether a bend could be seen.
 */
final class StepsAnswer {
  private static final Words WORDS = Words.of("answer");

  private StepsAnswer() {}

  /** A sentence or label of a plan; of a steps day its own, where there is one. */
  static String say(Plan plan, String key, Object... arguments) {
    return WORDS.say(key(plan, key), arguments);
  }

  /** The key of it. */
  static String key(Plan plan, String key) {
    return plan.steps() != null && WORDS.has(key + ".levels") ? key + ".levels" : key;
  }

  /**
   * What the difference is for each click or unit; empty for other plans.
   *
   * @param shown a difference with its unit, as well as the noise is known
   */
  static Optional<String> step(Plan plan, DayAnswer day, DoubleFunction<String> shown) {
    StepsDay steps = plan.steps();
    return steps == null
        ? Optional.empty()
        : day.steps()
            .map(
                shows ->
                    WORDS.say(
                        steps.way() == StepsDay.Way.CLICKS
                            ? "steps.click"
                            : steps.unit().isBlank() ? "steps.one" : "steps.unit",
                        lowest(plan),
                        plan.ends().get(1),
                        shown.apply(shows.perUnit(day.chosen().difference())),
                        steps.unit(),
                        steps.setting()));
  }

  private static String lowest(Plan plan) {
    return String.valueOf(PlanJson.number(plan.levels().orElseThrow().get(plan.place(false))));
  }

  /** Whether a bend could be seen, and from which size on; empty for other plans. */
  static Optional<String> bend(DayAnswer day, DoubleFunction<String> shown) {
    return day.steps()
        .map(
            shows ->
                shows.bendSeen()
                    ? WORDS.say(
                        shows.atLeast() ? "steps.bend.few" : "steps.bend",
                        shown.apply(shows.bend()))
                    : WORDS.say("steps.bend.none"));
  }
}
