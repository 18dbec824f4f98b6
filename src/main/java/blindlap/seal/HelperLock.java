package blindlap.seal;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Optional;

/**
 * The keys of one session that come from the helper phrase, derived once and used often: one
 * encrypts the sealed key, another the helper's records. Each is HMAC-SHA-256(root, label ‖ 01),
 * which is one step of HKDF-Expand (RFC 5869), of the root that PBKDF2 makes of the phrase.
 */
public final class HelperLock {
  private static final String KEY_LABEL = "blindlap-key-encryption-1";
  private static final String RECORD_LABEL = "blindlap-helper-records-1";
  private static final String CHECK_LABEL = "blindlap-phrase-check-1";

  private final byte[] keyEncryption;
  private final byte[] records;
  private final byte[] check;

  private HelperLock(byte[] root) {
    keyEncryption = expand(root, KEY_LABEL);
    records = expand(root, RECORD_LABEL);
    check = Arrays.copyOf(expand(root, CHECK_LABEL), SealedKey.CHECK_BYTES);
  }

  /** Derives the keys: one PBKDF2, so up to a second of work. */
  static HelperLock derive(HelperPhrase phrase, byte[] salt, SealParameters parameters) {
    return new HelperLock(Ciphering.pbkdf2(phrase.text(), salt, parameters.rounds()));
  }

  private static byte[] expand(byte[] root, String label) {
    byte[] info = label.getBytes(StandardCharsets.US_ASCII);
    byte[] message = Arrays.copyOf(info, info.length + 1);
    message[info.length] = 1;
    return Ciphering.hmac(root, message);
  }

  private String checkHex() {
    return HexFormat.of().formatHex(check);
  }

  boolean opens(SealedKey key) {
    return MessageDigest.isEqual(check, HexFormat.of().parseHex(key.phraseCheck()));
  }

  /**
   * What nobody opens but with the phrase of this lock.
   *
   * @param text what is sealed
   * @param parameters with which, and with this salt, the lock was derived
   * @param iv fresh for every sealing
   */
  SealedKey seal(
      String sessionId,
      Fingerprint planHash,
      byte[] text,
      SealParameters parameters,
      byte[] salt,
      byte[] iv) {
    byte[] associated = SealedKey.associatedData(sessionId, planHash);
    byte[] ciphertext = Ciphering.encrypt(keyEncryption, iv, associated, text);
    return new SealedKey(
        SealedKey.VERSION,
        sessionId,
        planHash,
        Ciphering.DERIVATION,
        parameters.rounds(),
        HexFormat.of().formatHex(salt),
        checkHex(),
        Ciphering.CIPHER,
        HexFormat.of().formatHex(iv),
        Base64.getEncoder().encodeToString(ciphertext));
  }

  Optional<byte[]> decryptKey(SealedKey key) {
    return Ciphering.decrypt(
        keyEncryption, key.ivBytes(), key.associatedData(), key.ciphertextBytes());
  }

  HelperRecord encryptRecord(String sessionId, int stint, String text, byte[] iv) {
    byte[] plain = HelperRecord.pad(text);
    byte[] associated = HelperRecord.associatedData(sessionId, stint);
    byte[] ciphertext = Ciphering.encrypt(records, iv, associated, plain);
    return new HelperRecord(
        stint, HexFormat.of().formatHex(iv), Base64.getEncoder().encodeToString(ciphertext));
  }

  /**
   * Opens one of the helper's records.
   *
   * @return its text; empty if it was changed, or is of another session, stint or phrase
   */
  public Optional<String> decrypt(String sessionId, HelperRecord record) {
    return Ciphering.decrypt(
            records,
            HexFormat.of().parseHex(record.iv()),
            HelperRecord.associatedData(sessionId, record.stint()),
            Base64.getDecoder().decode(record.ciphertext()))
        .map(HelperRecord::unpad);
  }

  @Override
  public String toString() {
    return "HelperLock[sealed]";
  }
}
