package blindlap.seal;

import blindlap.stats.order.Orders;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The opened key of a session: which stint is on which setup. Whoever holds one knows the key, so
 * it is never named by anything the rider sees, and it prints nothing of what it holds.
 */
public final class OpenKey {
  /** First line of the text form. */
  static final String TEXT_VERSION = "blindlap-key-1";

  private static final Pattern FORM =
      Pattern.compile(
          TEXT_VERSION
              + "\nalgorithm=(?<algorithm>[^\n]+)\norder=(?<order>[A-Z]+)\ncodes=(?<codes>[0-9,]+)"
              + "\nseed=(?<seed>[0-9a-f]{64})\nnonce=(?<nonce>[0-9a-f]{64})"
              + "\nsealed=(?<sealed>[^\n]+)\n");

  private static final Pattern LETTERS = Pattern.compile("[A-Z]+");
  private static final int NONCE_BYTES = 32;

  private final String algorithm;
  private final String order;
  private final List<Integer> codes;
  private final byte[] seed;
  private final byte[] nonce;
  private final SealedPart sealedPart;

  private OpenKey(
      String algorithm,
      String order,
      List<Integer> codes,
      byte[] seed,
      byte[] nonce,
      SealedPart sealedPart) {
    this.algorithm = algorithm;
    this.order = order;
    this.codes = codes;
    this.seed = seed;
    this.nonce = nonce;
    this.sealedPart = sealedPart;
  }

  /**
   * A key of its parts.
   *
   * @throws IllegalArgumentException if they do not fit together; the message names no content
   */
  static OpenKey of(
      String algorithm,
      String order,
      List<Integer> codes,
      byte[] seed,
      byte[] nonce,
      SealedPart sealedPart) {
    boolean fits =
        LETTERS.matcher(order).matches()
            && codes.size() == order.length()
            && codes.stream().distinct().count() == codes.size()
            && codes.stream().allMatch(c -> c >= Codes.FIRST && c < Codes.FIRST + Codes.COUNT)
            && seed.length == OrderStream.SEED_BYTES
            && nonce.length == NONCE_BYTES;
    if (!fits) {
      throw new IllegalArgumentException(
          "the parts of the key do not fit together: it needs one letter and one code of its own"
              + " per stint, and 32 bytes each of seed and nonce");
    }
    return new OpenKey(
        algorithm, order, List.copyOf(codes), seed.clone(), nonce.clone(), sealedPart);
  }

  /**
   * An opened key as it stands in files for anyone, such as a data package.
   *
   * @param seed 64 hexadecimal digits
   * @param nonce 64 hexadecimal digits
   * @param warmUp the name drawn for the warm-up laps, 0 = A
   * @param nullRun the setup that was ridden throughout; empty in an ordinary session
   * @throws IllegalArgumentException if they do not fit together; the message names no content
   */
  public static OpenKey opened(
      String algorithm,
      String order,
      List<Integer> codes,
      String seed,
      String nonce,
      int warmUp,
      Optional<Integer> nullRun) {
    return of(
        algorithm,
        order,
        codes,
        HexFormat.of().parseHex(seed),
        HexFormat.of().parseHex(nonce),
        nullRun
            .map(ridden -> SealedPart.nullRun(ridden, warmUp))
            .orElseGet(() -> SealedPart.ordinary(warmUp)));
  }

  /** True for a way of drawing that this program knows, and can draw again. */
  public static boolean knows(String algorithm) {
    return algorithm.equals(Draw.ALGORITHM) || algorithm.equals(Draw.TRIALS);
  }

  /** The name drawn for the warm-up laps, 0 = A. */
  public int warmUp() {
    return sealedPart.warmUp();
  }

  /** The setup that was ridden under every name; empty in an ordinary session. */
  public Optional<Integer> nullRun() {
    return sealedPart.ridden().stream().boxed().findFirst();
  }

  /**
   * Reads the text form of an opened key, as it stands in an entry after unsealing.
   *
   * @throws IllegalArgumentException if it is anything else
   */
  public static OpenKey read(String text) {
    Matcher form = FORM.matcher(text);
    if (!form.matches()) {
      throw new IllegalArgumentException("the opened key is not in the form " + TEXT_VERSION);
    }
    List<Integer> codes =
        Arrays.stream(form.group("codes").split(",", -1)).map(Integer::valueOf).toList();
    return of(
        form.group("algorithm"),
        form.group("order"),
        codes,
        HexFormat.of().parseHex(form.group("seed")),
        HexFormat.of().parseHex(form.group("nonce")),
        SealedPart.parse(form.group("sealed").getBytes(StandardCharsets.US_ASCII)));
  }

  /** The text form, for the entry that records the unsealing. */
  public String text() {
    return String.join(
        "\n",
        TEXT_VERSION,
        "algorithm=" + algorithm(),
        "order=" + order(),
        "codes=" + codesText(),
        "seed=" + HexFormat.of().formatHex(seed()),
        "nonce=" + HexFormat.of().formatHex(nonce()),
        "sealed=" + new String(sealedPart().padded(), StandardCharsets.US_ASCII),
        "");
  }

  /** Number of stints. */
  public int stints() {
    return order.length();
  }

  /** The order as letters, one per stint: what was drawn, and what the analysis uses. */
  public String order() {
    return order;
  }

  /** The order as setup indices (0 = A), one per stint. */
  public int[] setups() {
    return Orders.parse(order);
  }

  /**
   * The setup the order names for a stint.
   *
   * @param stint from 1
   * @return its index, 0 = A
   */
  public int setup(int stint) {
    return order.charAt(place(stint)) - 'A';
  }

  /**
   * The code of a stint.
   *
   * @param stint from 1
   */
  public int code(int stint) {
    return codes.get(place(stint));
  }

  /** The codes in ridden order. */
  public List<Integer> codes() {
    return codes;
  }

  /** What was sealed beside the order. */
  public SealedPart sealedPart() {
    return sealedPart;
  }

  /** Name and version of the draw. */
  public String algorithm() {
    return algorithm;
  }

  /** The 32 bytes the order was drawn from. */
  public byte[] seed() {
    return seed.clone();
  }

  /** The 32 bytes that keep the fingerprint from being guessed before the seal is opened. */
  public byte[] nonce() {
    return nonce.clone();
  }

  /** The codes as the fingerprint has them: decimal, with commas. */
  String codesText() {
    return codes.stream().map(String::valueOf).collect(Collectors.joining(","));
  }

  private int place(int stint) {
    if (stint < 1 || stint > stints()) {
      throw new IndexOutOfBoundsException(
          "there is no stint " + stint + "; the key has stints 1 to " + stints());
    }
    return stint - 1;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof OpenKey that
        && algorithm.equals(that.algorithm)
        && order.equals(that.order)
        && codes.equals(that.codes)
        && Arrays.equals(seed, that.seed)
        && Arrays.equals(nonce, that.nonce)
        && sealedPart.equals(that.sealedPart);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(nonce);
  }

  /** Says nothing of what is inside. */
  @Override
  public String toString() {
    return "OpenKey[" + stints() + " stints]";
  }
}
