package blindlap.seal;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Seals what to set for one stint under a one-time code, and opens it with that code
 * (docs/sealing.md#one-stint). Sealing and opening derive once each, whether a code is right or
 * not.
 */
public final class StintViews {
  private static final Pattern TEXT = Pattern.compile("setup=([A-Z]) swap=(real|dummy) *");

  private final SealingSources sources;
  private final SealParameters parameters;
  private final Derivation derivation;

  /** Makes a key of a code. */
  @FunctionalInterface
  public interface Derivation {
    /** PBKDF2-HMAC-SHA-256, 32 bytes: up to a second of work. */
    byte[] key(String code, byte[] salt, int rounds);
  }

  /**
   * @param sources {@code phrase} for the words, {@code salt}, {@code iv}
   */
  public StintViews(SealingSources sources, SealParameters parameters) {
    this(sources, parameters, Ciphering::pbkdf2);
  }

  /** The same with a derivation that a test may count. */
  public StintViews(SealingSources sources, SealParameters parameters, Derivation derivation) {
    this.sources = sources;
    this.parameters = parameters;
    this.derivation = derivation;
  }

  /**
   * What was sealed.
   *
   * @param setup to be on in the stint, 0 = A
   * @param real true if it differs from what the order has on before
   */
  public record Shown(int setup, boolean real) {
    /** Says nothing of it. */
    @Override
    public String toString() {
      return "Shown[]";
    }
  }

  /** Draws a code. */
  public StintCode draw() {
    return StintCode.draw(sources.phrase());
  }

  /** Seals what to set for a stint under its code. */
  public StintView seal(String sessionId, int stint, Shown shown, StintCode code) {
    byte[] salt = sources.salt().exactly(StintView.SALT_BYTES);
    byte[] iv = sources.iv().exactly(Ciphering.IV_BYTES);
    byte[] key = derivation.key(code.text(), salt, parameters.rounds());
    byte[] associated = StintView.associatedData(sessionId, stint);
    return new StintView(
        stint,
        parameters.rounds(),
        HexFormat.of().formatHex(salt),
        HexFormat.of().formatHex(iv),
        Base64.getEncoder().encodeToString(Ciphering.encrypt(key, iv, associated, text(shown))));
  }

  private static byte[] text(Shown shown) {
    String words =
        "setup=" + (char) ('A' + shown.setup()) + " swap=" + (shown.real() ? "real" : "dummy");
    byte[] text = words.getBytes(StandardCharsets.US_ASCII);
    byte[] padded = Arrays.copyOf(text, StintView.ROOM);
    Arrays.fill(padded, text.length, padded.length, (byte) ' ');
    return padded;
  }

  /**
   * Opens what was sealed.
   *
   * @return empty if the code is another one, or the view was changed or is of another session
   */
  public Optional<Shown> open(String sessionId, StintView view, StintCode code) {
    byte[] key = derivation.key(code.text(), view.saltBytes(), view.rounds());
    return Ciphering.decrypt(
            key, view.ivBytes(), view.associatedData(sessionId), view.ciphertextBytes())
        .map(text -> TEXT.matcher(new String(text, StandardCharsets.US_ASCII)))
        .filter(Matcher::matches)
        .map(found -> new Shown(found.group(1).charAt(0) - 'A', found.group(2).equals("real")));
  }
}
