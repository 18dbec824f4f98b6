package blindlap.seal;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** The fingerprint of a closed review. */
public final class ReviewFingerprint {
  /** First field of every review fingerprint. */
  public static final String VERSION = "blindlap-review-fingerprint-1";

  private ReviewFingerprint() {}

  /**
   * The fingerprint of a closed review: SHA-256 over the length-prefixed fields version, session
   * id, plan fingerprint, then notebook id, number and hash of every chain's head, sorted by the
   * UTF-8 bytes of the notebook id.
   *
   * @param heads the last entry of each chain of the session, in any order
   * @throws IllegalArgumentException if there is no head, or two of one notebook
   */
  public static Fingerprint of(String sessionId, Fingerprint plan, Collection<ChainHead> heads) {
    Set<String> notebooks = new HashSet<>();
    for (ChainHead head : heads) {
      if (!notebooks.add(head.notebookId())) {
        throw new IllegalArgumentException(
            "the chain of notebook " + head.notebookId() + " has two heads");
      }
    }
    if (notebooks.isEmpty()) {
      throw new IllegalArgumentException("a review without entries has no fingerprint");
    }
    List<ChainHead> sorted =
        heads.stream().sorted((a, b) -> Arrays.compareUnsigned(utf8(a), utf8(b))).toList();
    LengthPrefixed fields = new LengthPrefixed().add(VERSION).add(sessionId).add(plan.bytes());
    for (ChainHead head : sorted) {
      fields.add(head.notebookId()).add(head.number()).add(head.hash().bytes());
    }
    return Fingerprint.sha256(fields.bytes());
  }

  private static byte[] utf8(ChainHead head) {
    return head.notebookId().getBytes(StandardCharsets.UTF_8);
  }
}
