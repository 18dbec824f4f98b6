package blindlap.wording.day;

import blindlap.plan.Measure;
import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * The only place that rounds. Digits follow from the uncertainty; a rounded limit never lands on or
 * crosses a value that decides something (docs/method.md#rounding).
 */
public final class Figures {
  private static final int MOST_DECIMALS = 6;

  /** Below it an uncertainty is what is left of calculating with equal numbers. */
  private static final double NO_SPREAD = 1e-9;

  private static final char MINUS = '−';

  private Figures() {}

  /** Decimals at which an uncertainty of this size still shows one or two digits. */
  public static int decimals(double uncertainty) {
    if (!(uncertainty > NO_SPREAD) || Double.isInfinite(uncertainty)) {
      return 1;
    }
    int decimals = (int) -Math.floor(Math.log10(uncertainty / 2));
    return Math.max(0, Math.min(MOST_DECIMALS, decimals));
  }

  /** A number in full, for exact figures: as many digits as read back the same. */
  public static String exact(double number) {
    String text = BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
    return text.startsWith("-") ? MINUS + text.substring(1) : text;
  }

  /** A whole number with thousands set apart. */
  public static String count(Number number) {
    return String.format(java.util.Locale.ROOT, "%,d", number);
  }

  /** A limit rounded to the nearest, or outward where that would land on or cross a value. */
  public static String outward(double limit, int decimals, boolean upper, double deciding) {
    BigDecimal nearest = round(limit, decimals);
    if (Math.signum(nearest.doubleValue() - deciding) == Math.signum(limit - deciding)) {
      return nearest.toPlainString();
    }
    BigDecimal outward =
        BigDecimal.valueOf(limit)
            .setScale(decimals, upper ? RoundingMode.CEILING : RoundingMode.FLOOR);
    return Math.signum(outward.doubleValue() - deciding) == Math.signum(limit - deciding)
            || decimals >= MOST_DECIMALS
        ? outward.toPlainString()
        : outward(limit, decimals + 1, upper, deciding);
  }

  private static boolean moves(double limit, int decimals, double... deciding) {
    double rounded = round(limit, decimals).doubleValue();
    for (double value : deciding) {
      if (Math.signum(limit - value) != Math.signum(rounded - value)) {
        return true;
      }
    }
    return false;
  }

  private static BigDecimal round(double value, int decimals) {
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
  }

  /** A number with a fixed number of decimals and a true minus sign. */
  public static String number(double value, int decimals) {
    BigDecimal rounded = round(value, decimals);
    String text = rounded.abs().toPlainString();
    return rounded.signum() < 0 ? MINUS + text : text;
  }

  /** A number to two digits or so, to more where that would land on or cross a deciding value. */
  public static String near(double value, double... deciding) {
    int decimals = decimals(Math.abs(value) / 5);
    while (decimals < MOST_DECIMALS && moves(value, decimals, deciding)) {
      decimals++;
    }
    return number(value, decimals);
  }

  /**
   * A number with as many decimals as another has, to more where it would land on or cross a
   * deciding value: for the other end of a range.
   */
  public static String alike(double value, String other, double... deciding) {
    int decimals = other.indexOf('.') < 0 ? 0 : other.length() - other.indexOf('.') - 1;
    while (decimals < MOST_DECIMALS && moves(value, decimals, deciding)) {
      decimals++;
    }
    return number(value, decimals);
  }

  /** A share as a whole number in a hundred; "–" for none at all. */
  public static String inHundred(double share) {
    return share < 0.0005 ? "–" : share < 0.01 ? "<1" : number(100 * share, 0);
  }

  /** A number with its sign, plus included. */
  public static String signed(double value, int decimals) {
    String text = number(value, decimals);
    return text.charAt(0) == MINUS || round(value, decimals).signum() == 0 ? text : "+" + text;
  }

  /** A p-value: three decimals, four below .01, "below .0001" beyond. */
  public static String p(double p) {
    if (p >= 1) {
      return "1";
    }
    if (p < 0.0001) {
      return "below .0001";
    }
    String text = round(p, p < 0.01 ? 4 : p < 0.1 ? 3 : 2).toPlainString();
    return text.startsWith("0.") ? text.substring(1) : text;
  }

  /** A time in seconds as m:ss.s. */
  public static String time(double seconds, int decimals) {
    BigDecimal rounded = round(Math.abs(seconds), decimals);
    long minutes = rounded.longValue() / 60;
    BigDecimal rest = rounded.subtract(BigDecimal.valueOf(minutes * 60));
    String text = rest.toPlainString();
    int whole = text.indexOf('.') < 0 ? text.length() : text.indexOf('.');
    return (seconds < 0 ? String.valueOf(MINUS) : "")
        + minutes
        + ":"
        + (whole < 2 ? "0" : "")
        + text;
  }

  /** A value of a measure as it stands on a sheet: times as m:ss.s, others with few decimals. */
  public static String value(Measure measure, double value) {
    if (Double.isNaN(value)) {
      return "–";
    }
    if (measure.kind().timed()) {
      return time(value, 1);
    }
    return number(value, value == Math.rint(value) ? 0 : 1);
  }
}
