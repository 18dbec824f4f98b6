package blindlap.screen.alone;

import blindlap.desk.AloneDay;
import blindlap.plan.BlindLevel;
import blindlap.plan.Labels;
import blindlap.plan.Plan;
import blindlap.plan.Setting;
import blindlap.plan.Setup;
import blindlap.session.HelperEntry;
import blindlap.session.SessionState;
import blindlap.wording.AloneWords;
import blindlap.wording.SwapWords;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Makes the sheet of a stint out of what was shown of it. */
final class AloneSheets {
  private AloneSheets() {}

  /**
   * The sheet of a stint that is to be mounted.
   *
   * @param whole what was said of cover and seal; null while nothing was
   * @param latest the session as it stands
   */
  static AloneSheet of(
      AloneDay day,
      AloneDay.Work work,
      HelperEntry entry,
      @Nullable Boolean whole,
      SessionState latest) {
    Plan plan = day.plan();
    boolean masked = plan.blinding().level() == BlindLevel.MASKED;
    Integer shown = work.setup();
    // What a masked or prepared part is, is not to be read off its steps and limits.
    Optional<Setup> known =
        shown == null || masked ? Optional.empty() : Optional.of(plan.setups().get(shown));
    List<Setup> any = known.map(List::of).orElseGet(plan::setups);
    return new AloneSheet(
        work.stint(),
        false,
        onPaper(latest, work.stint()),
        day.prepared(),
        known.isPresent() ? shown : null,
        name(plan, work),
        swap(plan, work),
        known.map(Setup::steps).filter(steps -> !steps.isEmpty()).orElseGet(AloneWords::steps),
        settings(day, work, entry).stream().map(s -> SwapWords.row(s, entry)).toList(),
        limits(any),
        any.stream().flatMap(setup -> setup.cautions().stream()).distinct().toList(),
        SwapWords.safety(entry.confirmed()),
        entry.stint() > day.firstStint(),
        entry.fit().get(latest.lapsSoFar()),
        shown == null
            ? List.of()
            : IntStream.range(0, plan.setups().size())
                .mapToObj(setup -> Labels.name(plan, setup))
                .toList(),
        entry.fitted(),
        whole);
  }

  private static List<String> limits(List<Setup> setups) {
    return setups.stream()
        .flatMap(setup -> setup.limits().stream())
        .map(SwapWords::limit)
        .distinct()
        .toList();
  }

  /** True if laps of a stint are on record before it was mounted here. */
  static boolean onPaper(SessionState latest, int stint) {
    return stint == 0 ? latest.warmUps() > 0 : latest.day().stintBegun(stint);
  }

  /** What is measured: of what was really mounted. */
  static List<Setting> settings(AloneDay day, AloneDay.Work work, HelperEntry entry) {
    return work.setup() == null ? work.settings() : day.settings(work.stint(), entry.fitted());
  }

  private static String name(Plan plan, AloneDay.Work work) {
    Integer setup = work.setup();
    if (setup != null) {
      return Labels.name(plan, setup);
    }
    return work.stint() == 0 ? AloneWords.say("unit.warm.up") : String.valueOf(work.code());
  }

  private static String swap(Plan plan, AloneDay.Work work) {
    if (work.setup() == null) {
      return AloneWords.say("swap.unit");
    }
    Integer off = work.comesOff();
    if (off == null) {
      return AloneWords.say("swap.first");
    }
    return AloneWords.say(work.real() ? "swap.real" : "swap.same", Labels.name(plan, off));
  }
}
