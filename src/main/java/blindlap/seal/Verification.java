package blindlap.seal;

/** What comparing an opened key with a plan and its fingerprint shows. */
public enum Verification {
  /** Plan, key and fingerprint belong together, and the seed draws this order under this rule. */
  MATCHES,
  /** Plan and key do not give this fingerprint: one of the three was changed. */
  OTHER_FINGERPRINT,
  /** The fingerprint fits, but this program does not know the key's draw. */
  UNKNOWN_DRAW,
  /** The fingerprint fits, but the seed does not draw this order: it was not drawn by lot. */
  NOT_THE_DRAW
}
