package blindlap.seal;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/**
 * A covered order as a notebook keeps it, stint by stint under the end of a chain of its session
 * (docs/sealing.md#covered). It keeps the order from accidental sight only: what opens it lies
 * beside it. Of places, 0 is the warm-up, 1 to n are the stints, n + 1 is the whole key. It prints
 * nothing of what it holds.
 */
public final class Cover {
  /** First field of what every place is bound to. */
  public static final String VERSION = "blindlap-cover-1";

  static final int K0_BYTES = 32;

  /** Every key encrypts one text and never another: it hangs on the chain's end and the place. */
  private static final byte[] IV = new byte[Ciphering.IV_BYTES];

  private static final int LETTER_BYTES = 1 + 16;

  private final String sessionId;
  private final Fingerprint end;
  private final byte[] k0;
  private final List<byte[]> places;

  private Cover(String sessionId, Fingerprint end, byte[] k0, List<byte[]> places) {
    this.sessionId = sessionId;
    this.end = end;
    this.k0 = k0;
    this.places = places;
  }

  /** Covers plain places. */
  static Cover of(String sessionId, Fingerprint end, byte[] k0, List<byte[]> plain) {
    List<byte[]> places = new ArrayList<>();
    for (int place = 0; place < plain.size(); place++) {
      places.add(
          Ciphering.encrypt(
              key(k0, end, place), IV, associated(sessionId, place), plain.get(place)));
    }
    return new Cover(sessionId, end, k0.clone(), List.copyOf(places));
  }

  /**
   * A cover as it is kept.
   *
   * @param sessionId whose order
   * @param end hash of the entry that it was last wrapped under
   * @param k0 64 hexadecimal digits
   * @param places Base64, with spaces between
   * @throws IllegalArgumentException if it is not one; the message names no content
   */
  public static Cover read(String sessionId, Fingerprint end, String k0, String places) {
    if (!k0.matches("[0-9a-f]{" + 2 * K0_BYTES + "}")) {
      throw new IllegalArgumentException("the cover cannot be read: its k0 is not 32 bytes");
    }
    List<byte[]> read = new ArrayList<>();
    for (String place : places.split(" ", -1)) {
      read.add(Base64.getDecoder().decode(place));
    }
    if (read.size() < 3
        || read.subList(0, read.size() - 1).stream().anyMatch(p -> p.length != LETTER_BYTES)) {
      throw new IllegalArgumentException("the cover cannot be read: its places are not of a key");
    }
    return new Cover(sessionId, end, HexFormat.of().parseHex(k0), List.copyOf(read));
  }

  /** Its secret, for the notebook. */
  public String k0() {
    return HexFormat.of().formatHex(k0);
  }

  /** Its places, for the notebook; of one length for one number of stints. */
  public String places() {
    return places.stream()
        .map(Base64.getEncoder()::encodeToString)
        .collect(Collectors.joining(" "));
  }

  /** Number of stints. */
  public int stints() {
    return places.size() - 2;
  }

  /**
   * What is to be mounted for one stint; no other place is opened.
   *
   * @param stint from 1; 0 = the warm-up
   * @return the setup, 0 = A; empty if the cover was changed, or lies beside another chain
   */
  public OptionalInt setup(int stint) {
    if (stint < 0 || stint > stints()) {
      throw new IndexOutOfBoundsException(
          "there is no stint " + stint + "; the cover has stints 1 to " + stints());
    }
    return plain(stint).stream().mapToInt(letter -> letter[0] - 'A').findFirst();
  }

  /** The whole key; empty if the cover was changed, or lies beside another chain. */
  public Optional<OpenKey> key() {
    return plain(places.size() - 1)
        .map(text -> OpenKey.read(new String(text, StandardCharsets.UTF_8)));
  }

  /** True if it opens: it was wrapped under that entry, and nothing of it was changed. */
  public boolean opens() {
    return under(end).isPresent();
  }

  /**
   * The same order under a later end of a chain.
   *
   * @return empty if the cover was changed, or lies beside another chain
   */
  public Optional<Cover> under(Fingerprint later) {
    List<byte[]> plain = new ArrayList<>();
    for (int place = 0; place < places.size(); place++) {
      Optional<byte[]> text = plain(place);
      if (text.isEmpty()) {
        return Optional.empty();
      }
      plain.add(text.get());
    }
    return Optional.of(of(sessionId, later, k0, plain));
  }

  private Optional<byte[]> plain(int place) {
    return Ciphering.decrypt(
        key(k0, end, place), IV, associated(sessionId, place), places.get(place));
  }

  /** SHA-256(k0 ‖ hash ‖ place), the place in 8 bytes, big-endian. */
  private static byte[] key(byte[] k0, Fingerprint end, int place) {
    byte[] message = Arrays.copyOf(k0, k0.length + 32 + Long.BYTES);
    System.arraycopy(end.bytes(), 0, message, k0.length, 32);
    System.arraycopy(LengthPrefixed.eight(place), 0, message, k0.length + 32, Long.BYTES);
    return Fingerprint.digest(message);
  }

  private static byte[] associated(String sessionId, int place) {
    return new LengthPrefixed().add(VERSION).add(sessionId).add((long) place).bytes();
  }

  /** Says nothing of what is inside. */
  @Override
  public String toString() {
    return "Cover[" + stints() + " stints]";
  }
}
