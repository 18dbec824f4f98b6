package blindlap.screen.swap;

import blindlap.desk.HelperDay;
import blindlap.plan.Setting;
import blindlap.plan.Setup;
import blindlap.plan.TellingRun;
import blindlap.session.SessionState;
import blindlap.wording.SwapWords;
import blindlap.wording.day.SafetyRow;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * A stint that can be caught up from paper: words for the helper alone.
 *
 * @param stint 0 = the warm-up
 * @param head "Stint 3, code 417: scheduled Shock K"
 * @param standing where the day stands here, by the laps that are recorded
 * @param scheduled index of the setup that was scheduled
 * @param setups names of all setups
 * @param settings names of what is measured, by setup
 * @param checks the safety list: key and words, none of it ticked
 */
public record SwapPaper(
    int stint,
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
        head(day.plan().telling(), work, name),
        SwapWords.say("later.paper.standing", state.day().stintNow()),
        work.setup(),
        names,
        IntStream.range(0, names.size())
            .mapToObj(i -> day.settings(stint, i).stream().map(Setting::name).toList())
            .toList(),
        SwapWords.safety(Set.of()));
  }

  private static String head(@Nullable TellingRun run, HelperDay.Work work, String name) {
    int stint = work.stint();
    if (stint == 0) {
      return SwapWords.say("later.paper.warm.up", name);
    }
    return run == null
        ? SwapWords.say("later.paper.head", stint, work.code(), name)
        : SwapWords.say("later.paper.head.trial", run.trial(stint), stint, work.code(), name);
  }

  /** Says which stint only. */
  @Override
  public String toString() {
    return "SwapPaper[stint " + stint + "]";
  }
}
