package blindlap.plan;

import blindlap.fault.TypedNumber;
import blindlap.stats.distribution.Interval;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which share of one lap's noise variance all laps of its stint have in common, in per cent, as
 * typed or as earlier days tell it (docs/method.md#lap-noise).
 *
 * @param from least that it may be, 0 to 100
 * @param to most that it may be; the same where it is known
 */
public record StintShare(BigDecimal from, BigDecimal to) {
  private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);
  private static final MathContext DIGITS = new MathContext(4);
  private static final Pattern RANGE =
      Pattern.compile("\\s*(.*?)\\s*(?:\\bto\\b|[–-])\\s*(.*?)\\s*");

  public StintShare {
    from = from.stripTrailingZeros();
    to = to.stripTrailingZeros();
  }

  /**
   * Reads "30", or "10 to 60".
   *
   * @return empty if it is neither, or does not lie within 0 and 100
   */
  public static Optional<StintShare> read(String typed) {
    Matcher range = RANGE.matcher(typed);
    boolean two = range.matches();
    Optional<BigDecimal> from = TypedNumber.number(two ? range.group(1) : typed.strip());
    Optional<BigDecimal> to = two ? TypedNumber.number(range.group(2)) : from;
    return from.flatMap(low -> to.map(high -> new StintShare(low, high)))
        .filter(s -> s.from.signum() >= 0 && s.to.compareTo(HUNDRED) <= 0)
        .filter(s -> s.from.compareTo(s.to) <= 0);
  }

  /** From a share of the method, 0 to 1, to four digits. */
  public static StintShare of(Interval share) {
    return new StintShare(perCent(share.low()), perCent(share.high()));
  }

  private static BigDecimal perCent(double share) {
    return BigDecimal.valueOf(100 * share).round(DIGITS).min(HUNDRED);
  }

  /** The share of the method, 0 to 1. */
  public Interval share() {
    return new Interval(from.doubleValue() / 100, to.doubleValue() / 100);
  }

  /** As it stands in files: "30", or "10 to 60". */
  public String text() {
    return from.equals(to)
        ? from.toPlainString()
        : from.toPlainString() + " to " + to.toPlainString();
  }
}
