package blindlap.exchange;

import blindlap.fault.Problem;
import blindlap.plan.PlanFault;
import blindlap.plan.Setup;
import blindlap.plan.StepsDay;
import java.util.List;

/**
 * Reads what a plan says of one setting and its levels. A person types one setup and its levels,
 * from which the setups of the levels follow; a stored plan holds those setups.
 *
 * @param day what was said of the setting
 * @param setups the plan's setups
 */
record StepsReader(StepsDay day, List<Setup> setups) {

  static StepsReader read(FieldReader s, List<Setup> typed, List<Problem> problems) {
    List<String> levels = s.parted("levels", FieldWords.LEVELS.say());
    boolean one = typed.size() == 1;
    StepsDay day =
        new StepsDay(
            s.text("setup", one ? typed.get(0).name() : ""),
            s.text("setup_id", one ? typed.get(0).id() : ""),
            s.text("setting", ""),
            s.text("unit", ""),
            s.option("way", StepsDay.Way.class, StepsDay.Way.CLICKS),
            s.decimal("least"),
            s.decimal("most"),
            s.text("source", ""),
            s.decimal("low"),
            s.decimal("high"));
    if (s.value("levels") == null) {
      return new StepsReader(day, typed);
    }
    if (!one) {
      problems.add(Problem.of(PlanFault.STEPS_ONE_SETUP, "setups", typed.size()));
      return new StepsReader(day, typed);
    }
    Setup setup = typed.get(0);
    if (setup.setting(day.setting()).isPresent()) {
      // Left where it is, it would be a value that no stint is ridden at.
      problems.add(Problem.of(PlanFault.SETTING_TWICE, "setups[1].settings", day.setting()));
    }
    return new StepsReader(day, day.setups(setup, levels));
  }
}
