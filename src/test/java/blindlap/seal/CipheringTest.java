package blindlap.seal;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;

class CipheringTest {
  private static byte[] bytes(String hex) {
    return HexFormat.of().parseHex(hex);
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  /**
   * RFC 7914 section 11; recalled from memory, each confirmed with Python's hashlib.pbkdf2_hmac.
   */
  @Test
  void derivationGivesTheVectorsOfRfc7914() {
    assertThat(Ciphering.pbkdf2("passwd", ascii("salt"), 1, 64))
        .isEqualTo(
            bytes(
                "55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc"
                    + "49ca9cccf179b645991664b39d77ef317c71b845b1e30bd509112041d3a19783"));
    assertThat(Ciphering.pbkdf2("Password", ascii("NaCl"), 80_000, 64))
        .isEqualTo(
            bytes(
                "4ddcd8f60b98be21830cee5ef22701f9641a4418d04c0414aeff08876b34ab56"
                    + "a1d425a1225833549adb841b51c9b3176a272bdebba1d078478f62b397f33c8d"));
  }

  /**
   * AES-256-GCM test cases 13, 14 and 16 of McGrew and Viega, "The Galois/Counter Mode of
   * Operation", submission to NIST, 2005, appendix B; recalled from memory, confirmed with the
   * Python package cryptography 48.
   */
  @Test
  void encryptionGivesThePublishedVectors() {
    byte[] zeroKey = new byte[32];
    byte[] zeroIv = new byte[12];
    assertThat(Ciphering.encrypt(zeroKey, zeroIv, new byte[0], new byte[0]))
        .isEqualTo(bytes("530f8afbc74536b9a963b4f1c4cb738b"));
    assertThat(Ciphering.encrypt(zeroKey, zeroIv, new byte[0], new byte[16]))
        .isEqualTo(bytes("cea7403d4d606b6e074ec5d3baf39d18d0d1c8a799996bf0265b98b5d48ab919"));
    byte[] key = bytes("feffe9928665731c6d6a8f9467308308feffe9928665731c6d6a8f9467308308");
    byte[] plain =
        bytes(
            "d9313225f88406e5a55909c5aff5269a86a7a9531534f7da2e4c303d8a318a72"
                + "1c3c0c95956809532fcf0e2449a6b525b16aedf5aa0de657ba637b39");
    byte[] associated = bytes("feedfacedeadbeeffeedfacedeadbeefabaddad2");
    assertThat(Ciphering.encrypt(key, bytes("cafebabefacedbaddecaf888"), associated, plain))
        .isEqualTo(
            bytes(
                "522dc1f099567d07f47f37a32a84427d643a8cdcbfe5c0c97598a2bd2555d1aa"
                    + "8cb08e48590dbb3da7b08b1056828838c5f61e6393ba7a0abcc9f662"
                    + "76fc6ece0f4e1768cddf8853bb2d551b"));
  }

  @Test
  void anotherKeyIvOrAssociatedDataDecryptsNothing() {
    byte[] key = new byte[32];
    byte[] iv = new byte[12];
    byte[] sealed = Ciphering.encrypt(key, iv, ascii("here"), ascii("text"));
    assertThat(Ciphering.decrypt(key, iv, ascii("here"), sealed)).contains(ascii("text"));
    assertThat(Ciphering.decrypt(key, iv, ascii("there"), sealed)).isEmpty();
    byte[] otherKey = new byte[32];
    otherKey[31] = 1;
    assertThat(Ciphering.decrypt(otherKey, iv, ascii("here"), sealed)).isEmpty();
    byte[] otherIv = new byte[12];
    otherIv[0] = 1;
    assertThat(Ciphering.decrypt(key, otherIv, ascii("here"), sealed)).isEmpty();
  }
}
