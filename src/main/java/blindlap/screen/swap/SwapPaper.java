package blindlap.screen.swap;

import blindlap.desk.HelperDay;
import blindlap.plan.Setting;
import blindlap.plan.Setup;
import blindlap.session.SessionState;
import blindlap.wording.SwapWords;
import blindlap.wording.day.SafetyRow;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * A stint that can be caught up from paper: words for the helper alone.
 *
 * @param stint 0 = the warm-up
 * @param called "stint 3"
 * @param head "Stint 3, code 417: scheduled Shock K"
 * @param standing where the day stands here, by the laps that are recorded
 * @param scheduled index of the setup that was scheduled
 * @param setups names of all setups
 * @param settings names of what is measured, by setup
 * @param checks the safety list: key and words, none of it ticked
 */
public record SwapPaper(
    int stint,
    String called,
    String head,
    String standing,
    int scheduled,
    List<String> setups,
    List<List<String>> settings,
    List<SafetyRow> checks) {
  public SwapPaper {
    setups = List.copyOf(setups);
    settings = List.copyOf(settings);
    checks = List.copyOf(checks);
  }

  static SwapPaper of(HelperDay day, SessionState state, int stint) {
    HelperDay.Work work = day.work(stint);
    List<String> names = day.plan().setups().stream().map(Setup::name).toList();
    String name = names.get(work.setup());
    return new SwapPaper(
        stint,
        SwapWords.within(day.plan(), stint),
        stint == 0
            ? SwapWords.say("later.paper.warm.up", name)
            : SwapWords.say(
                "later.paper.head", SwapWords.stint(day.plan(), stint), work.code(), name),
        SwapWords.say("later.paper.standing", SwapWords.within(day.plan(), state.day().stintNow())),
        work.setup(),
        names,
        IntStream.range(0, names.size())
            .mapToObj(i -> day.settings(stint, i).stream().map(Setting::name).toList())
            .toList(),
        SwapWords.safety(Set.of()));
  }

  /** Says which stint only. */
  @Override
  public String toString() {
    return "SwapPaper[stint " + stint + "]";
  }
}
