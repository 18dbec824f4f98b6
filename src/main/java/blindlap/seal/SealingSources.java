package blindlap.seal;

/**
 * One source for each secret, so that none is computed from another and each can be fixed alone in
 * a test. One sealing asks them in this order, the phrase in its first step and all others in its
 * second:
 *
 * <ol>
 *   <li>{@code phrase}: 12 bytes, once (2 for each word), then 1 byte per try, until two places in
 *       it are drawn;
 *   <li>{@code orderSeed}: 32 bytes, once;
 *   <li>{@code codes}: 2 bytes per try, until every stint has a code of its own;
 *   <li>{@code nonce}: 32 bytes, once;
 *   <li>{@code warmUp}: 1 byte per try, until the warm-up setup is drawn;
 *   <li>{@code salt}: 16 bytes, once; for a covered order, which has neither phrase nor IV, the 32
 *       bytes of its k0 instead;
 *   <li>{@code iv}: 12 bytes, once for the key and once for every helper record.
 * </ol>
 */
public record SealingSources(
    SecureBytes orderSeed,
    SecureBytes codes,
    SecureBytes nonce,
    SecureBytes warmUp,
    SecureBytes phrase,
    SecureBytes salt,
    SecureBytes iv) {

  /** Every purpose asks the same system source, each with calls of its own. */
  public static SealingSources allFrom(SecureBytes system) {
    return new SealingSources(system, system, system, system, system, system, system);
  }
}
