package blindlap.wording;

import blindlap.plan.Plan;
import blindlap.plan.StepsDay;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** What is said of plans that follow from a steps day. */
public final class AfterStepsWords {
  private static final Words WORDS = Words.of("handling");

  private AfterStepsWords() {}

  /** A sentence or label of them. */
  public static String say(String key, Object... arguments) {
    return WORDS.say("after." + key, arguments);
  }

  /** What a level is called where it is a setup among others: "Shock K, rebound 4 clicks". */
  public static String name(Plan plan, int level) {
    StepsDay steps = Objects.requireNonNull(plan.steps());
    return say("name", steps.setup(), steps.setting(), plan.setups().get(level).name());
  }

  /** The question of a comparison of two levels, for the tester to put better. */
  public static String question(Plan plan, int first, int second) {
    return say("question", plan.trail(), name(plan, first), name(plan, second));
  }

  /** What a draft that compares two levels is, and what it leaves to be typed. */
  public static List<String> compared(Plan plan, int first, int second) {
    return with(
        plan,
        say("compare.said", plan.setups().get(first).name(), plan.setups().get(second).name()));
  }

  /** What a draft that takes a level is, and what it leaves to be typed. */
  public static List<String> taken(Plan plan, int level) {
    StepsDay steps = Objects.requireNonNull(plan.steps());
    return with(
        plan, say("take.said", steps.setup(), steps.setting(), plan.setups().get(level).name()));
  }

  /** The limits of the setting as a value of a setup's limits; empty where none were typed in. */
  public static String limits(StepsDay steps) {
    BigDecimal least = steps.least();
    BigDecimal most = steps.most();
    if (least == null && most == null) {
      return "";
    }
    String key = most == null ? "limits.least" : least == null ? "limits.most" : "limits";
    return say(key, plain(least), plain(most), steps.unit()).strip();
  }

  private static String plain(@Nullable BigDecimal value) {
    return value == null ? "" : value.toPlainString();
  }

  private static List<String> with(Plan plan, String said) {
    List<String> lines = new ArrayList<>(List.of(said));
    lines.add(say("worthwhile"));
    HandlingWords.limits(plan).ifPresent(lines::add);
    return lines;
  }
}
