package blindlap.session.day;

import org.jspecify.annotations.Nullable;

/**
 * What the rider thinks was fitted in a stint, asked after its last scored lap and before any time.
 *
 * @param setup index of the guessed setup (0 = A); null for "don't know"
 * @param sureness how sure; null if not said
 * @param cue what gave it away; may be empty
 */
public record Guess(@Nullable Integer setup, @Nullable Sureness sureness, String cue) {
  /** How sure a guess is. */
  public enum Sureness {
    HUNCH,
    FAIRLY_SURE,
    CERTAIN
  }
}
