package blindlap.wording;

import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.Setup;
import blindlap.plan.StepsDay;
import blindlap.plan.TellingRun;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.List;

/**
 * The names that the sentences of a telling run use, as typed by the tester.
 *
 * @param rider the rider's name; blank if there is none
 * @param apart what is told apart, such as "4 clicks" or "Shock K and Shock L"
 * @param attribute what one of the two has more of, in a two-choice; blank in other tasks
 */
public record TellingNames(String rider, String apart, String attribute) {
  private static final Words WORDS = Words.of("telling");

  /** With a name for a rider who has none. */
  public TellingNames {
    rider = rider.isBlank() ? WORDS.say("rider") : rider;
  }

  /** Names of a committed run: of two levels of one setting the step between them is told apart. */
  public static TellingNames of(Plan plan) {
    TellingRun run = plan.telling();
    String attribute = run == null ? "" : run.attribute();
    StepsDay setting = plan.oneSetting();
    List<BigDecimal> levels = plan.levels().orElse(List.of());
    if (setting == null || levels.size() != 2) {
      List<String> names = plan.setups().stream().map(Setup::name).toList();
      return ofSetups(plan.rider(), names, attribute);
    }
    return new TellingNames(plan.rider(), apart(setting, levels.get(0), levels.get(1)), attribute);
  }

  /** "4 clicks"; of a plain count "position at 2 and 3". */
  private static String apart(StepsDay setting, BigDecimal low, BigDecimal high) {
    BigDecimal step = high.subtract(low);
    // How a unit is counted belongs to a level, and not to a step between two.
    String unit = setting.unit().strip().replaceFirst(" (from|out|in|of|off|on) .*| (out|in)$", "");
    if (unit.isEmpty()) {
      return WORDS.say("two.levels", setting.setting(), number(low), number(high));
    }
    boolean one = step.compareTo(BigDecimal.ONE) == 0 && unit.length() > 3 && unit.endsWith("s");
    return number(step) + " " + (one ? unit.substring(0, unit.length() - 1) : unit);
  }

  private static String number(BigDecimal value) {
    return String.valueOf(PlanJson.number(value));
  }

  /** Names of a run between two setups. */
  public static TellingNames ofSetups(String rider, List<String> setups, String attribute) {
    return new TellingNames(rider, WORDS.say("two", setups.get(0), setups.get(1)), attribute);
  }
}
