package blindlap.seal;

import java.security.GeneralSecurityException;
import java.security.spec.KeySpec;
import java.util.Optional;
import javax.crypto.AEADBadTagException;
import javax.crypto.Cipher;
import javax.crypto.Mac;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.PBEKeySpec;
import javax.crypto.spec.SecretKeySpec;

/** The published ciphers as Java has them, with this program's choices: AES-256-GCM, SHA-256. */
final class Ciphering {
  static final String DERIVATION = "PBKDF2-HMAC-SHA-256";
  static final String CIPHER = "AES-256-GCM";
  static final int KEY_BYTES = 32;
  static final int IV_BYTES = 12;
  private static final int TAG_BITS = 128;

  private Ciphering() {}

  /** PBKDF2 with HMAC-SHA-256 (RFC 8018, 5.2), 32 bytes. */
  static byte[] pbkdf2(String password, byte[] salt, int rounds) {
    return pbkdf2(password, salt, rounds, KEY_BYTES);
  }

  static byte[] pbkdf2(String password, byte[] salt, int rounds, int bytes) {
    try {
      KeySpec spec = new PBEKeySpec(password.toCharArray(), salt, rounds, Byte.SIZE * bytes);
      return SecretKeyFactory.getInstance("PBKDF2WithHmacSHA256").generateSecret(spec).getEncoded();
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("this Java cannot derive keys with PBKDF2", e);
    }
  }

  static byte[] hmac(byte[] key, byte[] message) {
    try {
      Mac mac = Mac.getInstance("HmacSHA256");
      mac.init(new SecretKeySpec(key, "HmacSHA256"));
      return mac.doFinal(message);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every Java has HMAC-SHA-256", e);
    }
  }

  /** Encrypts; the answer is the ciphertext with its 16-byte tag at the end. */
  static byte[] encrypt(byte[] key, byte[] iv, byte[] associated, byte[] plain) {
    try {
      return cipher(Cipher.ENCRYPT_MODE, key, iv, associated).doFinal(plain);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("this Java cannot encrypt with AES-256-GCM", e);
    }
  }

  /**
   * Decrypts; empty if key, IV, associated data, ciphertext or tag are not those of the sealing.
   */
  static Optional<byte[]> decrypt(byte[] key, byte[] iv, byte[] associated, byte[] ciphertext) {
    if (ciphertext.length < TAG_BITS / Byte.SIZE) {
      return Optional.empty(); // Java throws an unchecked exception here
    }
    try {
      return Optional.of(cipher(Cipher.DECRYPT_MODE, key, iv, associated).doFinal(ciphertext));
    } catch (AEADBadTagException e) {
      return Optional.empty();
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("this Java cannot decrypt with AES-256-GCM", e);
    }
  }

  private static Cipher cipher(int mode, byte[] key, byte[] iv, byte[] associated)
      throws GeneralSecurityException {
    Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding");
    cipher.init(mode, new SecretKeySpec(key, "AES"), new GCMParameterSpec(TAG_BITS, iv));
    cipher.updateAAD(associated);
    return cipher;
  }
}
