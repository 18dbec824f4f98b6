package blindlap.seal;

import blindlap.plan.Rule;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/** Holds a cover against what was committed; it answers yes or no and tells nothing else. */
public final class CoverProof {
  private CoverProof() {}

  /**
   * True if a cover is the order that was committed: it gives the fingerprint, its seed draws it,
   * and every place names what the key does.
   *
   * @param planBytes the plan as stored
   */
  public static boolean belongs(Cover cover, byte[] planBytes, Rule rule, Fingerprint fingerprint) {
    OpenKey key = cover.opens() ? cover.key().orElse(null) : null;
    return key != null
        && key.stints() == cover.stints()
        && Sealing.verified(planBytes, rule, key, fingerprint) == Verification.MATCHES
        && cover.setup(0).equals(OptionalInt.of(key.warmUp()))
        && IntStream.rangeClosed(1, key.stints())
            .allMatch(stint -> cover.setup(stint).equals(OptionalInt.of(key.setup(stint))));
  }
}
