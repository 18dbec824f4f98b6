package blindlap.fault;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * Numbers and times of one file: read as {@link TypedNumber} reads them, with one decimal sign
 * throughout, and a comma only where the file does not use it to part columns.
 */
public final class Decimals {
  /** The sign between whole and part of the numbers of a file. */
  public enum Sign {
    /** Whichever the file uses first; both in one file are a mistake. */
    AS_WRITTEN,
    /** A comma; a point is a mistake. */
    COMMA,
    /** A point; a comma is a mistake. */
    POINT
  }

  private final boolean commaAllowed;
  private char sign;
  private int firstLine;

  /**
   * @param commaAllowed false where the comma parts columns
   */
  public Decimals(boolean commaAllowed) {
    this.commaAllowed = commaAllowed;
  }

  /**
   * Numbers with a chosen sign.
   *
   * @param commaAllowed false where the comma parts columns; of no effect if a sign is chosen
   */
  public static Decimals of(Sign sign, boolean commaAllowed) {
    Decimals decimals = new Decimals(commaAllowed || sign != Sign.AS_WRITTEN);
    decimals.sign = sign == Sign.COMMA ? ',' : sign == Sign.POINT ? '.' : 0;
    return decimals;
  }

  /**
   * True if a cell uses another decimal sign than the file did so far. A cell with both settles
   * nothing: {@link TypedNumber#twoSigns}.
   */
  public boolean mixed(String cell, int line) {
    int comma = cell.indexOf(',');
    int point = cell.indexOf('.');
    char here = comma >= 0 ? ',' : point >= 0 ? '.' : 0;
    if (here == 0 || TypedNumber.twoSigns(cell)) {
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
    return refused(text) ? Optional.empty() : TypedNumber.number(text);
  }

  /** A time in seconds: plain seconds, m:ss.s or h:mm:ss.s. */
  public Optional<BigDecimal> time(String text) {
    return refused(text) ? Optional.empty() : TypedNumber.time(text);
  }

  private boolean refused(String text) {
    return text.indexOf(',') >= 0 && !commaAllowed;
  }
}
