package blindlap.fault;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The one reader of numbers and times that people type: in the window, in files of laps, old days
 * and plans, and after options of commands (docs/laps-file.md, "Numbers as they are typed"). What
 * programs write has its own strict form and is not read here.
 *
 * <p>A point or a comma is the decimal sign, never a mark of thousands; a text with both is refused
 * and not guessed at. Up to 15 digits before it and 12 after it; one side may be missing. A sign
 * may stand before: plus, hyphen, minus sign or en dash. Blanks around do not count, no-break and
 * thin ones neither; blanks inside, exponents, units and other digits than 0 to 9 are refused.
 */
public final class TypedNumber {
  private static final String SIGN = "[+\\-−–]?";
  private static final String FRACTION = "[.,]\\d{0,12}";
  private static final Pattern NUMBER =
      Pattern.compile(SIGN + "(?:\\d{1,15}(?:" + FRACTION + ")?|[.,]\\d{1,12})");
  private static final Pattern WHOLE = Pattern.compile(SIGN + "\\d{1,10}");
  private static final Pattern TIME =
      Pattern.compile(
          "(?:(?<hours>\\d{1,2}):(?=[0-5]\\d:))?(?<minutes>\\d{1,3}):(?<seconds>[0-5]\\d(?:"
              + FRACTION
              + ")?)");
  private static final Pattern BLANKS_AROUND =
      Pattern.compile("^[\\s\\p{Z}]+|[\\s\\p{Z}]+$", Pattern.UNICODE_CHARACTER_CLASS);
  private static final BigDecimal SIXTY = BigDecimal.valueOf(60);

  private TypedNumber() {}

  /** A number; empty if it is none. */
  public static Optional<BigDecimal> number(String typed) {
    String text = bare(typed);
    return NUMBER.matcher(text).matches() ? Optional.of(plain(text)) : Optional.empty();
  }

  /** A whole number of 32 bits; empty if it is none. */
  public static Optional<Integer> whole(String typed) {
    String text = bare(typed);
    return WHOLE.matcher(text).matches()
        ? Optional.of(plain(text))
            .filter(value -> value.compareTo(BigDecimal.valueOf(value.intValue())) == 0)
            .map(BigDecimal::intValue)
        : Optional.empty();
  }

  /**
   * A time in seconds: a number, m:ss.s or h:mm:ss.s, seconds and, after hours, minutes with two
   * digits; empty if it is none of these.
   */
  public static Optional<BigDecimal> time(String typed) {
    String text = bare(typed);
    if (text.indexOf(':') < 0) {
      return number(text);
    }
    Matcher form = TIME.matcher(text);
    if (!form.matches()) {
      return Optional.empty();
    }
    BigDecimal minutes = new BigDecimal(form.group("minutes"));
    String hours = form.group("hours");
    if (hours != null) {
      minutes = minutes.add(new BigDecimal(hours).multiply(SIXTY));
    }
    return Optional.of(minutes.multiply(SIXTY).add(plain(form.group("seconds"))));
  }

  /** True if a text has both decimal signs, so that nobody can say which of them is one. */
  public static boolean twoSigns(String typed) {
    return typed.indexOf(',') >= 0 && typed.indexOf('.') >= 0;
  }

  private static String bare(String typed) {
    return BLANKS_AROUND.matcher(typed).replaceAll("");
  }

  private static BigDecimal plain(String text) {
    return new BigDecimal(text.replace(',', '.').replace('−', '-').replace('–', '-'));
  }
}
