package blindlap.seal;

/**
 * How much work one guess at the helper phrase costs. What was used is stored with the key.
 *
 * @param rounds rounds of PBKDF2-HMAC-SHA-256, at least 1
 */
public record SealParameters(int rounds) {

  /** The least number of rounds of a real session. */
  public static final int LEAST_ROUNDS = 600_000;

  /**
   * The largest number of rounds that a session from elsewhere may ask for: some ten seconds a
   * guess, and not an afternoon before anybody is told that the phrase was mistyped.
   */
  public static final int MOST_ROUNDS = 10_000_000;

  public SealParameters {
    if (rounds < 1) {
      throw new IllegalArgumentException("a key needs at least one round, not " + rounds);
    }
  }

  /** What every real session uses. */
  public static SealParameters standard() {
    return new SealParameters(LEAST_ROUNDS);
  }

  /** True if a real session may use these; fewer rounds are for tests. */
  public boolean strong() {
    return rounds >= LEAST_ROUNDS;
  }
}
