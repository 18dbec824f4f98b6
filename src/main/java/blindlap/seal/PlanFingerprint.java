package blindlap.seal;

/** The fingerprint of a committed plan and everything sealed with it. */
public final class PlanFingerprint {
  /** First field of every plan fingerprint. */
  public static final String VERSION = "blindlap-plan-fingerprint-1";

  private PlanFingerprint() {}

  /**
   * The fingerprint of a committed plan: SHA-256 over the length-prefixed fields version, plan
   * bytes, sealed part, algorithm, order, codes, seed, nonce.
   *
   * @param planBytes the plan as stored
   * @param key the opened key
   */
  static Fingerprint of(byte[] planBytes, OpenKey key) {
    return Fingerprint.sha256(
        new LengthPrefixed()
            .add(VERSION)
            .add(planBytes)
            .add(key.sealedPart().padded())
            .add(key.algorithm())
            .add(key.order())
            .add(key.codesText())
            .add(key.seed())
            .add(key.nonce())
            .bytes());
  }
}
