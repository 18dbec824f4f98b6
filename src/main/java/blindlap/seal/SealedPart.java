package blindlap.seal;

import blindlap.stats.order.Orders;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What is sealed beside the order: whether this is a concealed null run, which setup is then truly
 * ridden under every name, and the setup of the warm-up laps. Setups are indices, 0 = A.
 */
public final class SealedPart {
  /** Length of the padded form, whatever is inside. */
  public static final int PADDED_BYTES = 64;

  private static final Pattern FORM =
      Pattern.compile("null-run=(no|yes) ridden=([-A-Z]) warm-up=([A-Z]) *");
  private static final int NONE = -1;

  private final int ridden;
  private final int warmUp;

  private SealedPart(int ridden, int warmUp) {
    this.ridden = ridden;
    this.warmUp = warmUp;
  }

  /** An ordinary comparison whose warm-up laps are on that setup. */
  static SealedPart ordinary(int warmUp) {
    return new SealedPart(NONE, warmUp);
  }

  /** A concealed null run: one setup is ridden under every name. */
  static SealedPart nullRun(int ridden, int warmUp) {
    return new SealedPart(ridden, warmUp);
  }

  /**
   * Reads the padded form.
   *
   * @throws IllegalArgumentException if it is not one
   */
  static SealedPart parse(byte[] padded) {
    Matcher form = FORM.matcher(new String(padded, StandardCharsets.US_ASCII));
    if (padded.length != PADDED_BYTES || !form.matches()) {
      throw new IllegalArgumentException("the sealed part of the key cannot be read");
    }
    boolean nullRun = form.group(1).equals("yes");
    boolean names = !form.group(2).equals("-");
    if (nullRun != names) {
      throw new IllegalArgumentException("the sealed part of the key contradicts itself");
    }
    return new SealedPart(
        names ? form.group(2).charAt(0) - 'A' : NONE, form.group(3).charAt(0) - 'A');
  }

  /** True if one setup was ridden under every name. */
  public boolean nullRun() {
    return ridden != NONE;
  }

  /** The setup that is ridden throughout a null run; empty in an ordinary session. */
  public OptionalInt ridden() {
    return nullRun() ? OptionalInt.of(ridden) : OptionalInt.empty();
  }

  /** The name drawn for the warm-up laps; {@link #fitted} says what that means on the bike. */
  public int warmUp() {
    return warmUp;
  }

  /** What is truly fitted when the order names a setup. */
  public int fitted(int named) {
    return nullRun() ? ridden : named;
  }

  /** The bytes that are sealed and fingerprinted, always {@value #PADDED_BYTES}. */
  byte[] padded() {
    String text =
        "null-run="
            + (nullRun() ? "yes" : "no")
            + " ridden="
            + (nullRun() ? Orders.letter(ridden) : '-')
            + " warm-up="
            + Orders.letter(warmUp);
    byte[] bytes = text.getBytes(StandardCharsets.US_ASCII);
    byte[] padded = Arrays.copyOf(bytes, PADDED_BYTES);
    Arrays.fill(padded, bytes.length, PADDED_BYTES, (byte) ' ');
    return padded;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof SealedPart that && ridden == that.ridden && warmUp == that.warmUp;
  }

  @Override
  public int hashCode() {
    return 31 * ridden + warmUp;
  }

  /** Says nothing of what is inside. */
  @Override
  public String toString() {
    return "SealedPart[sealed]";
  }
}
