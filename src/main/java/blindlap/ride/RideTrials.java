package blindlap.ride;

import blindlap.plan.Plan;
import blindlap.plan.TellingRun;
import blindlap.wording.day.RideWords;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What is asked after every trial of a telling run: one lap is named, sure or not.
 *
 * @param question which lap is to be named
 * @param first the first lap that can be named, from 1: a duo-trio begins with its reference
 * @param laps the laps that can be named, in words
 */
public record RideTrials(String question, int first, List<String> laps) {
  public RideTrials {
    laps = List.copyOf(laps);
  }

  /** What a plan asks; null of any other kind than a telling run. */
  static @Nullable RideTrials of(Plan plan) {
    TellingRun run = plan.telling();
    if (run == null) {
      return null;
    }
    int first = run.task().firstNamed();
    return new RideTrials(
        RideWords.say("trial.question." + run.task().name(), run.attribute()),
        first,
        IntStream.rangeClosed(first, run.task().laps())
            .mapToObj(lap -> RideWords.say("trial.lap", lap))
            .toList());
  }
}
