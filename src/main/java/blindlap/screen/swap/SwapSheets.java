package blindlap.screen.swap;

import blindlap.desk.HelperDay;
import blindlap.plan.Plan;
import blindlap.plan.Setting;
import blindlap.plan.Setup;
import blindlap.plan.StepsDay;
import blindlap.session.HelperEntry;
import blindlap.wording.HandlingWords;
import blindlap.wording.SwapWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Makes the helper's sheets of words out of the open day. */
final class SwapSheets {
  private static final int AHEAD = 3;

  private SwapSheets() {}

  private static String swap(Plan plan, HelperDay.Work work, String form) {
    Integer off = work.comesOff();
    if (plan.oneSetting() != null) {
      return HandlingWords.swap(plan, off, work.real(), form);
    }
    if (off == null) {
      return SwapWords.say("swap.first" + form);
    }
    String key = work.real() ? "swap.real" : "swap.dummy";
    return SwapWords.say(key + form, plan.setups().get(off).name());
  }

  /**
   * The sheet of an entry.
   *
   * @param steps ticked off
   * @param laps ridden so far, warm-up included
   */
  static SwapSheet of(HelperDay day, HelperEntry entry, Set<Integer> steps, int laps) {
    Plan plan = day.plan();
    HelperDay.Work work = day.work(entry.stint(), entry);
    Setup setup = plan.setups().get(work.setup());
    return new SwapSheet(
        entry.stint(),
        SwapWords.within(plan, entry.stint()),
        head(plan, work),
        ride(plan, work),
        mark(plan, work),
        setup.name(),
        swap(plan, work, ""),
        swap(plan, work, ".brief"),
        steps(plan, work),
        steps,
        day.settings(entry.stint(), entry.fitted()).stream()
            .map(s -> SwapWords.row(s, entry))
            .toList(),
        limits(day, work),
        setup.cautions(),
        SwapWords.safety(entry.confirmed()),
        entry.stint() > day.firstStint(),
        entry.fit().get(laps),
        plan.setups().stream().map(each -> brief(plan, each)).toList(),
        entry.fitted(),
        entry.note(),
        entry.begun() != null,
        next(day, entry));
  }

  /** A level is a place along its setting and has no mark of its own. */
  private static int mark(Plan plan, HelperDay.Work work) {
    return plan.oneSetting() == null ? work.setup() : SwapSheet.NO_MARK;
  }

  /** What stands on a box to choose: of a level its number, since there can be six. */
  private static String brief(Plan plan, Setup setup) {
    StepsDay day = plan.oneSetting();
    return day == null
        ? setup.name()
        : setup.setting(day.setting()).map(Setting::value).orElseGet(setup::name);
  }

  private static List<String> steps(Plan plan, HelperDay.Work work) {
    if (plan.oneSetting() != null) {
      return HandlingWords.steps(plan, work.comesOff(), work.setup());
    }
    List<String> own = plan.setups().get(work.setup()).steps();
    return own.isEmpty() ? SwapWords.steps() : own;
  }

  private static List<String> limits(HelperDay day, HelperDay.Work work) {
    Plan plan = day.plan();
    List<String> limits = new ArrayList<>();
    if (plan.telling() != null) {
      limits.add(SwapWords.say("every.lap"));
    }
    if (day.afterPassedOver(work.stint())) {
      limits.add(SwapWords.say("passed.over"));
    }
    HandlingWords.all(plan, work.comesOff()).ifPresent(limits::add);
    HandlingWords.limits(plan).ifPresent(limits::add);
    plan.setups().get(work.setup()).limits().stream().map(SwapWords::limit).forEach(limits::add);
    return limits;
  }

  private static String head(Plan plan, HelperDay.Work work) {
    return work.stint() == 0
        ? SwapWords.say("head.warm.up")
        : SwapWords.head(plan, work.stint(), work.code());
  }

  private static String ride(Plan plan, HelperDay.Work work) {
    return SwapPace.ride(plan, work.stint())
        .map(at -> SwapWords.say("ride.at", SwapWords.clock(at)))
        .orElse("");
  }

  private static List<SwapSheet.Next> next(HelperDay day, HelperEntry entry) {
    int stint = entry.stint();
    Plan plan = day.plan();
    List<SwapSheet.Next> next = new ArrayList<>();
    for (int i = stint + 1; i <= Math.min(plan.stints(), stint + AHEAD); i++) {
      HelperDay.Work work = day.work(i, entry);
      String which = SwapWords.stint(plan, i);
      String head =
          SwapPace.from(plan, i)
              .map(from -> SwapWords.say("next.at", which, SwapWords.clock(from)))
              .orElse(which);
      String name = plan.setups().get(work.setup()).name();
      next.add(
          new SwapSheet.Next(
              head,
              mark(plan, work),
              SwapWords.say(work.real() ? "next.real" : "next.dummy", name)));
    }
    return next;
  }
}
