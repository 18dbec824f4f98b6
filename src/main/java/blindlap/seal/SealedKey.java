package blindlap.seal;

import java.util.Base64;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * The encrypted key as a notebook keeps it: plain fields, everything needed to open it but the
 * helper phrase. For one number of stints every sealed key has fields of the same lengths.
 *
 * @param version {@link #VERSION}
 * @param sessionId whose key
 * @param planHash SHA-256 of the plan bytes
 * @param derivation how the phrase becomes keys
 * @param rounds how often
 * @param salt 16 bytes, lower-case hexadecimal
 * @param phraseCheck 16 bytes derived from the phrase, hexadecimal: tells a wrong phrase from
 *     damage
 * @param cipher how the key is encrypted
 * @param iv 12 bytes, hexadecimal
 * @param ciphertext with its tag, Base64
 */
public record SealedKey(
    String version,
    String sessionId,
    Fingerprint planHash,
    String derivation,
    int rounds,
    String salt,
    String phraseCheck,
    String cipher,
    String iv,
    String ciphertext) {
  /** Bytes of the check that tells a phrase from another. */
  static final int CHECK_BYTES = 16;

  /** The version this program writes, and the only one there is. */
  public static final String VERSION = "blindlap-sealed-key-1";

  static final int SALT_BYTES = 16;

  public SealedKey {
    require("version", version, VERSION);
    require("derivation", derivation, Ciphering.DERIVATION);
    require("cipher", cipher, Ciphering.CIPHER);
    if (rounds < 1) {
      throw unreadable("rounds", "is " + rounds);
    }
    requireHex("salt", salt, SALT_BYTES);
    requireHex("phrase_check", phraseCheck, CHECK_BYTES);
    requireHex("iv", iv, Ciphering.IV_BYTES);
    try {
      Base64.getDecoder().decode(ciphertext);
    } catch (IllegalArgumentException e) {
      throw unreadable("ciphertext", "is not Base64");
    }
  }

  /**
   * Reads the field map.
   *
   * @throws IllegalArgumentException if a field is missing, unknown or unreadable; the message
   *     names it
   */
  public static SealedKey of(Map<String, String> fields) {
    Set<String> names =
        Set.of(
            "version",
            "session",
            "plan_sha256",
            "derivation",
            "rounds",
            "salt",
            "phrase_check",
            "cipher",
            "iv",
            "ciphertext");
    for (String name : new TreeSet<>(names)) {
      if (!fields.containsKey(name)) {
        throw unreadable(name, "is missing");
      }
    }
    for (String name : new TreeSet<>(fields.keySet())) {
      if (!names.contains(name)) {
        throw unreadable(name, "is not known to this version");
      }
    }
    return new SealedKey(
        field(fields, "version"),
        field(fields, "session"),
        Fingerprint.parse(field(fields, "plan_sha256")),
        field(fields, "derivation"),
        number(field(fields, "rounds")),
        field(fields, "salt"),
        field(fields, "phrase_check"),
        field(fields, "cipher"),
        field(fields, "iv"),
        field(fields, "ciphertext"));
  }

  /** The fields by their enduring names, in their enduring order. */
  public Map<String, String> fields() {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("version", version);
    fields.put("session", sessionId);
    fields.put("plan_sha256", planHash.hex());
    fields.put("derivation", derivation);
    fields.put("rounds", String.valueOf(rounds));
    fields.put("salt", salt);
    fields.put("phrase_check", phraseCheck);
    fields.put("cipher", cipher);
    fields.put("iv", iv);
    fields.put("ciphertext", ciphertext);
    return fields;
  }

  /** What the phrase was put through. */
  public SealParameters parameters() {
    return new SealParameters(rounds);
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

  byte[] associatedData() {
    return associatedData(sessionId, planHash);
  }

  static byte[] associatedData(String sessionId, Fingerprint planHash) {
    return new LengthPrefixed().add(VERSION).add(sessionId).add(planHash.bytes()).bytes();
  }

  private static String field(Map<String, String> fields, String name) {
    return fields.getOrDefault(name, "");
  }

  private static int number(String text) {
    try {
      return Integer.parseInt(text);
    } catch (NumberFormatException e) {
      throw unreadable("rounds", "is no number");
    }
  }

  private static void require(String field, String value, String known) {
    if (!value.equals(known)) {
      throw unreadable(
          field, "is \"" + value + "\", and this version knows only \"" + known + "\"");
    }
  }

  private static void requireHex(String field, String value, int bytes) {
    if (!value.matches("[0-9a-f]{" + 2 * bytes + "}")) {
      throw unreadable(field, "is not " + bytes + " bytes in lower-case hexadecimal");
    }
  }

  private static IllegalArgumentException unreadable(String field, String how) {
    return new IllegalArgumentException(
        "the sealed key cannot be read: its field " + field + " " + how);
  }

  @Override
  public String toString() {
    return "SealedKey[session " + sessionId + ", plan " + planHash + "]";
  }
}
