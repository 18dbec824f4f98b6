package blindlap.plan;

import blindlap.fault.TypedNumber;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * Real swaps that were practised and timed before the day, three each way. The longest and a tenth
 * is what every handling should take: a swap that overruns tells the rider that it was real.
 *
 * @param seconds how long each took, in seconds, in the order in which they were practised
 */
public record Practised(List<BigDecimal> seconds) {
  /** Nothing was practised. */
  public static final Practised NONE = new Practised(List.of());

  /** Most swaps that are listed. */
  public static final int MOST = 60;

  private static final BigDecimal AND_A_TENTH = new BigDecimal("1.1");
  private static final BigDecimal SIXTY = BigDecimal.valueOf(60);
  private static final BigDecimal HALF = new BigDecimal("0.5");

  public Practised {
    seconds = List.copyOf(seconds);
  }

  /**
   * Reads times as they are typed: {@code m:ss} or seconds, parted by commas, semicolons or spaces.
   *
   * @return empty if one of them is no time above zero, or there are more than {@value #MOST}
   */
  public static Optional<Practised> read(String typed) {
    List<BigDecimal> seconds = new ArrayList<>();
    for (String each : typed.strip().split("[\\s,;]+")) {
      Optional<BigDecimal> time = each.isEmpty() ? Optional.empty() : TypedNumber.time(each);
      if (time.isPresent() && time.get().signum() > 0) {
        seconds.add(time.get().stripTrailingZeros());
      } else if (!each.isEmpty()) {
        return Optional.empty();
      }
    }
    return seconds.size() > MOST ? Optional.empty() : Optional.of(new Practised(seconds));
  }

  /** The same with one swap more. */
  public Practised with(BigDecimal more) {
    List<BigDecimal> all = new ArrayList<>(seconds);
    all.add(more);
    return new Practised(all);
  }

  /** The same without the last. */
  public Practised withoutLast() {
    return seconds.isEmpty() ? this : new Practised(seconds.subList(0, seconds.size() - 1));
  }

  /** The times as they stand in files: "5:40, 6:20". */
  public String text() {
    return String.join(", ", seconds.stream().map(Practised::text).toList());
  }

  /** A time as m:ss, with decimals where it has some. */
  public static String text(BigDecimal seconds) {
    BigDecimal[] parts = seconds.divideAndRemainder(SIXTY);
    String rest = parts[1].stripTrailingZeros().toPlainString();
    boolean one = parts[1].compareTo(BigDecimal.TEN) < 0;
    return parts[0].toBigInteger() + ":" + (one ? "0" : "") + rest;
  }

  /** True if anything was practised. */
  public boolean any() {
    return !seconds.isEmpty();
  }

  /** The longest, in seconds; zero if there is none. */
  public BigDecimal longest() {
    return seconds.isEmpty() ? BigDecimal.ZERO : Collections.max(seconds);
  }

  /** Minutes that every swap should take: the longest and a tenth, up to the next half minute. */
  public BigDecimal minutes() {
    BigDecimal halves =
        longest().multiply(AND_A_TENTH).divide(SIXTY.multiply(HALF), 0, RoundingMode.CEILING);
    return halves.multiply(HALF).stripTrailingZeros();
  }

  /** True if a swap of so many minutes is shorter than the longest practised one and a tenth. */
  public boolean longerThan(BigDecimal minutes) {
    return longest().multiply(AND_A_TENTH).compareTo(minutes.multiply(SIXTY)) > 0;
  }
}
