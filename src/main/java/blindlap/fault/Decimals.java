package blindlap.fault;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Numbers and times as people type them: one decimal sign per file, a comma only where the file
 * does not use it to part columns; times as seconds or as m:ss.s.
 */
public final class Decimals {
  private static final Pattern NUMBER = Pattern.compile("[+\\-−]?\\d{1,9}([.,]\\d{1,9})?");
  private static final Pattern TIME =
      Pattern.compile(
          "(?:(?<hours>\\d{1,2}):(?=\\d{2}:))?(?<minutes>\\d{1,3}):(?<seconds>[0-5]\\d([.,]\\d{1,9})?)");

  private final boolean commaAllowed;
  private char sign;
  private int firstLine;

  /**
   * @param commaAllowed false where the comma parts columns
   */
  public Decimals(boolean commaAllowed) {
    this.commaAllowed = commaAllowed;
  }

  /** Numbers with one sign, chosen beforehand. */
  public static Decimals only(char sign) {
    Decimals decimals = new Decimals(true);
    decimals.sign = sign;
    return decimals;
  }

  /** One number typed by itself, comma or point, any minus; null if it is none. */
  public static @Nullable BigDecimal alone(String typed) {
    try {
      return new BigDecimal(typed.strip().replace('−', '-').replace(',', '.'));
    } catch (NumberFormatException words) {
      return null;
    }
  }

  /** True if a cell uses another decimal sign than the file did so far. */
  public boolean mixed(String cell, int line) {
    int comma = cell.indexOf(',');
    int point = cell.indexOf('.');
    char here = comma >= 0 ? ',' : point >= 0 ? '.' : 0;
    if (here == 0) {
      return false;
    }
    if (sign == 0) {
      sign = here;
      firstLine = line;
    }
    return sign != here;
  }

  /** The line at which the file settled on its decimal sign; 0 if it was chosen beforehand. */
  public int firstLine() {
    return firstLine;
  }

  /** A plain number. */
  public Optional<BigDecimal> number(String text) {
    if (!NUMBER.matcher(text).matches() || (text.indexOf(',') >= 0 && !commaAllowed)) {
      return Optional.empty();
    }
    return Optional.of(new BigDecimal(text.replace(',', '.').replace('−', '-')));
  }

  /** A time in seconds: plain seconds, m:ss.s or h:mm:ss.s. */
  public Optional<BigDecimal> time(String text) {
    if (text.indexOf(':') < 0) {
      return number(text);
    }
    Matcher form = TIME.matcher(text);
    if (!form.matches() || (text.indexOf(',') >= 0 && !commaAllowed)) {
      return Optional.empty();
    }
    BigDecimal minutes = new BigDecimal(form.group("minutes"));
    String hours = form.group("hours");
    if (hours != null) {
      minutes = minutes.add(new BigDecimal(hours).multiply(BigDecimal.valueOf(60)));
    }
    BigDecimal seconds = new BigDecimal(form.group("seconds").replace(',', '.'));
    return Optional.of(minutes.multiply(BigDecimal.valueOf(60)).add(seconds));
  }
}
