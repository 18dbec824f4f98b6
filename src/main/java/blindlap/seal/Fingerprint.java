package blindlap.seal;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * A SHA-256 value that people write down and compare: of a plan with its sealed order, of a closed
 * review, or of the plan's bytes alone. Equality takes the same time wherever two differ.
 */
public final class Fingerprint {
  /** First field of every plan fingerprint. */
  public static final String PLAN_VERSION = "blindlap-plan-fingerprint-1";

  /** First field of every review fingerprint. */
  public static final String REVIEW_VERSION = "blindlap-review-fingerprint-1";

  private static final int BYTES = 32;
  private static final int GROUP = 8;
  private static final Pattern BETWEEN_GROUPS = Pattern.compile("[\\s\\-:]+");
  private static final Pattern HEX = Pattern.compile("[0-9a-f]{64}");

  private final byte[] value;

  private Fingerprint(byte[] value) {
    this.value = value;
  }

  /**
   * A fingerprint that was computed or stored.
   *
   * @param value 32 bytes
   */
  public static Fingerprint of(byte[] value) {
    if (value.length != BYTES) {
      throw new IllegalArgumentException("a fingerprint has 32 bytes, not " + value.length);
    }
    return new Fingerprint(value.clone());
  }

  /**
   * Reads a fingerprint as people write it: 64 hexadecimal digits, in groups or not, capitals or
   * not.
   *
   * @throws IllegalArgumentException if it is anything else; the message says what
   */
  public static Fingerprint parse(String text) {
    String digits = BETWEEN_GROUPS.matcher(text).replaceAll("").toLowerCase(Locale.ROOT);
    if (!HEX.matcher(digits).matches()) {
      throw new IllegalArgumentException(
          "a fingerprint is 64 digits 0-9 and a-f, in eight groups of eight, but this text has "
              + digits.length()
              + " characters"
              + (digits.length() == 2 * BYTES ? ", not all of them such digits" : ""));
    }
    return new Fingerprint(HexFormat.of().parseHex(digits));
  }

  /** SHA-256 of some bytes, as they are. */
  public static Fingerprint sha256(byte[] bytes) {
    return new Fingerprint(digest(bytes));
  }

  /**
   * The fingerprint of a committed plan: SHA-256 over the length-prefixed fields version, plan
   * bytes, sealed part, algorithm, order, codes, seed, nonce.
   *
   * @param planBytes the plan as stored
   * @param key the opened key
   */
  static Fingerprint ofPlan(byte[] planBytes, OpenKey key) {
    return sha256(
        new LengthPrefixed()
            .add(PLAN_VERSION)
            .add(planBytes)
            .add(key.sealedPart().padded())
            .add(key.algorithm())
            .add(key.order())
            .add(key.codesText())
            .add(key.seed())
            .add(key.nonce())
            .bytes());
  }

  /**
   * The fingerprint of a closed review: SHA-256 over the length-prefixed fields version, session
   * id, plan fingerprint, then notebook id, number and hash of every chain's head, sorted by the
   * UTF-8 bytes of the notebook id.
   *
   * @param heads the last entry of each chain of the session, in any order
   * @throws IllegalArgumentException if there is no head, or two of one notebook
   */
  public static Fingerprint ofReview(
      String sessionId, Fingerprint plan, Collection<ChainHead> heads) {
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
    LengthPrefixed fields = new LengthPrefixed().add(REVIEW_VERSION).add(sessionId).add(plan.value);
    for (ChainHead head : sorted) {
      fields.add(head.notebookId()).add(head.number()).add(head.hash().value);
    }
    return sha256(fields.bytes());
  }

  private static byte[] utf8(ChainHead head) {
    return head.notebookId().getBytes(StandardCharsets.UTF_8);
  }

  /** The 32 bytes. */
  public byte[] bytes() {
    return value.clone();
  }

  /** 64 lower-case hexadecimal digits. */
  public String hex() {
    return HexFormat.of().formatHex(value);
  }

  /** The digits in eight groups of eight, for reading aloud. */
  public String grouped() {
    String hex = hex();
    StringBuilder text = new StringBuilder(hex.substring(0, GROUP));
    for (int i = GROUP; i < hex.length(); i += GROUP) {
      text.append(' ').append(hex, i, i + GROUP);
    }
    return text.toString();
  }

  static byte[] digest(byte[] bytes) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(bytes);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Fingerprint that && MessageDigest.isEqual(value, that.value);
  }

  @Override
  public int hashCode() {
    return (value[0] & 0xff) << 24
        | (value[1] & 0xff) << 16
        | (value[2] & 0xff) << 8
        | (value[3] & 0xff);
  }

  @Override
  public String toString() {
    return hex();
  }
}
