package blindlap.plan;

/**
 * What keeps the rider blind, in the tester's words; every field may be empty.
 *
 * @param level what the rider knows while riding
 * @param helper who swaps and knows the key
 * @param othersWhoKnow anyone else who knows the key
 * @param cover how the hardware is covered
 * @param ballast how mass differences are hidden
 * @param noise how sounds are hidden
 * @param riderWaits where the rider waits during a swap
 * @param bikeMovedBy who moves the bike up
 * @param leversTouchedBy who may touch levers and lockouts
 * @param remainingCues what the rider might still notice
 * @param guessesTyped whether the plan asks for a guess after every stint; {@link #guesses} says
 *     whether the rider is asked
 * @param helperWaits where the helper waits while the rider rides and scores
 * @param timedBy who takes the times and how
 * @param times when the rider may learn the times
 * @param recordOf whose record counts where two machines recorded different values for one lap;
 *     since version 4
 * @param preparation what a friend does beforehand; since version 5
 */
public record Blinding(
    BlindLevel level,
    String helper,
    String othersWhoKnow,
    String cover,
    String ballast,
    String noise,
    String riderWaits,
    String bikeMovedBy,
    String leversTouchedBy,
    String remainingCues,
    boolean guessesTyped,
    String helperWaits,
    String timedBy,
    Times times,
    RecordOf recordOf,
    Preparation preparation) {

  /** Whose record counts where two machines recorded different values for one lap. */
  public enum RecordOf {
    /** The starter's; the rider's where the starter has none. */
    STARTER,
    /** The rider's; the starter's where the rider has none. */
    RIDER
  }

  /** When the rider may learn the times of his laps. */
  public enum Times {
    /** Hidden until the review. */
    AT_THE_REVIEW,
    /** Shown once scores, notes and guess of the lap are saved. */
    AFTER_SCORING
  }

  /** Blind with a helper, with nothing said about how. */
  public static final Blinding BLIND = at(BlindLevel.HELPER, Preparation.NONE);

  /** A level with nothing said about how; a guess is asked wherever there is something to guess. */
  public static Blinding at(BlindLevel level, Preparation preparation) {
    return new Blinding(
        level,
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        level.blind(),
        "",
        "",
        Times.AT_THE_REVIEW,
        RecordOf.STARTER,
        preparation);
  }

  /**
   * Whether the rider is asked to guess after every stint: never where he is told what to mount, so
   * that there is nothing to guess, whatever the plan says.
   */
  public boolean guesses() {
    return guessesTyped && level.blind();
  }

  /** True where the rider does not know while riding what is on. */
  public boolean blinded() {
    return level.blind();
  }
}
