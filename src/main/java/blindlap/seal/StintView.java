package blindlap.seal;

import java.util.Base64;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Optional;

/**
 * What to set for one stint, encrypted under a one-time code of its own
 * (docs/sealing.md#one-stint). All are of one length.
 *
 * @param stint from 1
 * @param rounds of the derivation
 * @param salt hexadecimal, 16 bytes
 * @param iv hexadecimal, 12 bytes
 * @param ciphertext Base64
 */
public record StintView(int stint, int rounds, String salt, String iv, String ciphertext) {
  /** First field of what every view is bound to. */
  public static final String VERSION = "blindlap-one-stint-1";

  static final int SALT_BYTES = 16;
  static final int ROOM = 32;
  private static final int CIPHERTEXT_BYTES = ROOM + 16;

  public StintView {
    boolean fits =
        stint >= 1
            && rounds >= 1
            && rounds <= SealParameters.MOST_ROUNDS
            && salt.matches("[0-9a-f]{" + 2 * SALT_BYTES + "}")
            && iv.matches("[0-9a-f]{" + 2 * Ciphering.IV_BYTES + "}")
            && Base64.getDecoder().decode(ciphertext).length == CIPHERTEXT_BYTES;
    if (!fits) {
      throw new IllegalArgumentException("the view of stint " + stint + " cannot be read");
    }
  }

  /** As it is kept: one line, as long as that of every other stint. */
  public String line() {
    return String.format(Locale.ROOT, "%04d %08d %s %s %s", stint, rounds, salt, iv, ciphertext);
  }

  /** A view as it was kept; empty if the line is none. */
  public static Optional<StintView> read(String line) {
    String[] parts = line.split(" ", -1);
    if (parts.length != 5 || !parts[0].matches("\\d{4}") || !parts[1].matches("\\d{8}")) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new StintView(
              Integer.parseInt(parts[0]),
              Integer.parseInt(parts[1]),
              parts[2],
              parts[3],
              parts[4]));
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  byte[] saltBytes() {
    return HexFormat.of().parseHex(salt);
  }

  byte[] ivBytes() {
    return HexFormat.of().parseHex(iv);
  }

  byte[] ciphertextBytes() {
    return Base64.getDecoder().decode(ciphertext);
  }

  byte[] associatedData(String sessionId) {
    return associatedData(sessionId, stint);
  }

  static byte[] associatedData(String sessionId, int stint) {
    return new LengthPrefixed().add(VERSION).add(sessionId).add((long) stint).bytes();
  }
}
