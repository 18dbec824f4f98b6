package blindlap.review;

import blindlap.session.day.Guess.Sureness;
import org.jspecify.annotations.Nullable;

/**
 * One answered trial of a telling run. Laps are counted from 1 within their trial.
 *
 * @param number its number in the run, from 1
 * @param differed the lap that was to be named: the one that differed (in a duo-trio from the
 *     reference, which is lap 1), or that had more of what was asked
 * @param named the lap that the rider named
 * @param sureness how sure the rider was; null if not said
 */
public record TellingTrial(int number, int differed, int named, @Nullable Sureness sureness) {
  /** True if the right lap was named. */
  public boolean right() {
    return differed == named;
  }
}
