package blindlap.desk;

import blindlap.plan.Plan;
import blindlap.plan.Setting;
import blindlap.session.AloneCommands;
import java.util.ArrayList;
import java.util.List;

/** What is dialled anew and measured before a stint. */
final class StintSettings {
  private StintSettings() {}

  /** With this setup on. */
  static List<Setting> of(Plan plan, int stint, int setup) {
    List<Setting> all = new ArrayList<>(plan.setups().get(setup).settings());
    all.addAll(plan.bike());
    return ofStint(plan, stint, all);
  }

  /** Whatever is on: settings that all setups have alike, and those of the bike. */
  static List<Setting> alike(Plan plan, int stint) {
    List<Setting> all = new ArrayList<>(plan.setups().get(0).settings());
    plan.setups().forEach(setup -> all.retainAll(setup.settings()));
    all.addAll(plan.bike());
    return ofStint(plan, stint, all);
  }

  private static List<Setting> ofStint(Plan plan, int stint, List<Setting> all) {
    boolean ends = stint == AloneCommands.firstStint(plan) || stint == plan.stints();
    return all.stream()
        .filter(each -> ends || each.check() != Setting.Check.START_AND_END)
        .toList();
  }
}
