package blindlap.session;

import blindlap.plan.TellingRun;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Of an answer and a void of one trial that two machines wrote without seeing each other the first
 * counts, so that no trial is void after its answer. Other sessions have no such rule.
 */
final class TrialFolding {
  private TrialFolding() {}

  private static @Nullable TellingRun run(Folded folded) {
    return folded.committed == null ? null : folded.committed.plan().telling();
  }

  /** True if an answer at the end of a stint can count: no lap of its trial is void. */
  static boolean answers(Folded folded, int stint) {
    TellingRun run = run(folded);
    if (run == null) {
      return true;
    }
    int trial = run.trial(stint);
    return IntStream.rangeClosed(run.firstStint(trial), run.lastStint(trial))
        .mapToObj(lap -> folded.laps.get(new LapId(lap, 1)))
        .allMatch(lap -> lap == null || voidless(lap));
  }

  private static boolean voidless(LapState lap) {
    return lap.voided().isEmpty();
  }

  /** True if a void of a lap can count: its trial has no answer, and had none when it was done. */
  static boolean spoils(Folded folded, int stint) {
    TellingRun run = run(folded);
    if (run == null) {
      return true;
    }
    int last = run.lastStint(run.trial(stint));
    return !folded.guesses.containsKey(last) && !folded.answered.contains(last);
  }
}
