package blindlap.desk;

import blindlap.seal.SealParameters;
import blindlap.seal.SecureBytes;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.PBEKeySpec;

/**
 * The four digits that bring a blanked helper's page back within one run of the program. Kept in
 * memory only, as a PBKDF2 hash with a salt of its own. It keeps a passing glance out, no more:
 * five wrong tries in a row and the page asks for the helper phrase.
 */
public final class DayPin {
  /** Wrong tries in a row after which the phrase is needed. */
  public static final int TRIES = 5;

  private static final String DERIVATION = "PBKDF2WithHmacSHA256";
  private static final int ROUNDS = 100_000;
  private static final int BYTES = 32;

  private final int rounds;
  private final byte[] salt;
  private final byte[] hash;
  private int wrong;

  /** What became of a try. */
  public enum Try {
    RIGHT,
    WRONG,
    /** Used up; only the phrase opens the page. */
    USED_UP
  }

  private DayPin(int rounds, byte[] salt, byte[] hash) {
    this.rounds = rounds;
    this.salt = salt;
    this.hash = hash;
  }

  /** True if these are four digits. */
  public static boolean valid(String digits) {
    return digits.matches("[0-9]{4}");
  }

  /**
   * A PIN as the helper chose it.
   *
   * @param parameters weaker ones than a real session may use make the PIN as quick; they are for
   *     tests
   * @throws IllegalArgumentException unless it has four digits
   */
  public static DayPin of(String digits, SecureBytes random, SealParameters parameters) {
    if (!valid(digits)) {
      throw new IllegalArgumentException("a day PIN has four digits");
    }
    byte[] salt = random.exactly(16);
    int rounds = parameters.strong() ? ROUNDS : Math.min(ROUNDS, parameters.rounds());
    return new DayPin(rounds, salt, hash(digits, salt, rounds));
  }

  /** Tries some digits. */
  public Try attempt(String digits) {
    if (wrong >= TRIES) {
      return Try.USED_UP;
    }
    if (MessageDigest.isEqual(hash, hash(digits, salt, rounds))) {
      wrong = 0;
      return Try.RIGHT;
    }
    wrong++;
    return wrong >= TRIES ? Try.USED_UP : Try.WRONG;
  }

  /** Tries left before the phrase is needed. */
  public int left() {
    return TRIES - wrong;
  }

  private static byte[] hash(String digits, byte[] salt, int rounds) {
    PBEKeySpec spec =
        new PBEKeySpec(
            digits.isEmpty() ? new char[] {'-'} : digits.toCharArray(), salt, rounds, BYTES * 8);
    try {
      return SecretKeyFactory.getInstance(DERIVATION).generateSecret(spec).getEncoded();
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every Java 17 has " + DERIVATION, e);
    } finally {
      spec.clearPassword();
    }
  }

  @Override
  public String toString() {
    return "DayPin[]";
  }
}
