package blindlap.wording;

import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.plan.TellingRun;
import blindlap.wording.day.Words;
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

  /** The names of a plan. */
  public static TellingNames of(Plan plan) {
    TellingRun run = plan.telling();
    return ofSetups(
        plan.rider(),
        plan.setups().stream().map(Setup::name).toList(),
        run == null ? "" : run.attribute());
  }

  /** Names of a run between two setups. */
  public static TellingNames ofSetups(String rider, List<String> setups, String attribute) {
    return new TellingNames(rider, WORDS.say("two", setups.get(0), setups.get(1)), attribute);
  }
}
