package blindlap.plan;

/**
 * What keeps the rider blind, in the tester's words; every field may be empty.
 *
 * @param blinded false for a session without a helper: random order, called unblinded everywhere
 * @param helper who swaps and knows the key
 * @param othersWhoKnow anyone else who knows the key
 * @param cover how the hardware is covered
 * @param ballast how mass differences are hidden
 * @param noise how sounds are hidden
 * @param riderWaits where the rider waits during a swap
 * @param bikeMovedBy who moves the bike up
 * @param leversTouchedBy who may touch levers and lockouts
 * @param remainingCues what the rider might still notice
 * @param guesses whether the rider is asked to guess after every stint
 */
public record Blinding(
    boolean blinded,
    String helper,
    String othersWhoKnow,
    String cover,
    String ballast,
    String noise,
    String riderWaits,
    String bikeMovedBy,
    String leversTouchedBy,
    String remainingCues,
    boolean guesses) {

  /** Blind, with nothing said about how. */
  public static final Blinding BLIND = new Blinding(true, "", "", "", "", "", "", "", "", "", true);
}
