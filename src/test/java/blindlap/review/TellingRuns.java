package blindlap.review;

import blindlap.session.day.Guess.Sureness;
import blindlap.stats.tell.Discrimination;
import blindlap.stats.tell.TellingTrials;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Invented telling runs. */
public final class TellingRuns {
  private TellingRuns() {}

  /** The first answers right and the others wrong; sureness and laps vary. */
  public static TellingFinding run(
      Discrimination task, int declared, int answered, int right, double matters, boolean nullRun) {
    Random random = new Random(31L * answered + right);
    int first = TellingFinding.first(task);
    int laps = TellingFinding.laps(task) - first + 1;
    List<TellingTrial> trials = new ArrayList<>();
    for (int i = 0; i < answered; i++) {
      int differed = random.nextInt(laps);
      int named = i < right ? differed : (differed + 1 + random.nextInt(laps - 1)) % laps;
      int sure = random.nextInt(4);
      trials.add(
          new TellingTrial(
              i + 1, first + differed, first + named, sure == 3 ? null : Sureness.values()[sure]));
    }
    return TellingFinding.of(TellingTrials.of(task, declared, matters), nullRun, trials, 0);
  }
}
