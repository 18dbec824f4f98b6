package blindlap.exchange;

import blindlap.fault.Unreadable;
import blindlap.plan.Plan;
import blindlap.wording.day.Shown;
import java.math.BigDecimal;
import java.util.Map;

/** Cells of a row of a data package's table, each refused by its column if it cannot be meant. */
final class PackageCells {
  /** Far more characters than any number that was written has. */
  private static final int LONGEST = 400;

  private PackageCells() {}

  /**
   * The text of a cell.
   *
   * @throws Unreadable if there is no such column
   */
  static String text(Map<String, String> row, String column) {
    String cell = row.get(column);
    if (cell == null) {
      // A name with what no table can show stands there as it is shown.
      cell = row.get(Shown.text(column));
    }
    if (cell == null) {
      throw new Unreadable(PackageFault.NO_COLUMN, column);
    }
    return cell;
  }

  /** True or false, and no other word. */
  static boolean yes(Map<String, String> row, String column) {
    String cell = text(row, column);
    if (!cell.equals("true") && !cell.equals("false")) {
      throw new Unreadable(PackageFault.NOT_YES_OR_NO, column, cell);
    }
    return cell.equals("true");
  }

  /** A whole number. */
  static int whole(Map<String, String> row, String column) {
    String typed = text(row, column);
    try {
      return number(typed, column).intValueExact();
    } catch (ArithmeticException e) {
      throw because(e, PackageFault.NOT_A_NUMBER, typed, column);
    }
  }

  /**
   * The stint of a row; the warm-up is stint 0 where that is the least.
   *
   * @param file name of the table
   */
  static int stint(Map<String, String> row, String file, int least, Plan plan) {
    return inside(whole(row, "stint"), file, least, plan);
  }

  /** A stint that the plan has, by the file that names it. */
  static int inside(int stint, String file, int least, Plan plan) {
    if (stint < least || stint > plan.stints()) {
      throw new Unreadable(PackageFault.NO_SUCH_STINT, file, stint, plan.stints());
    }
    return stint;
  }

  /** A number with no more digits and noughts than a hand or a machine writes. */
  static BigDecimal number(String text, String column) {
    try {
      BigDecimal number = new BigDecimal(text.length() > LONGEST ? "" : text.strip());
      if (Math.abs((long) number.scale()) > LONGEST) {
        throw new NumberFormatException("endless");
      }
      return number;
    } catch (NumberFormatException e) {
      throw because(e, PackageFault.NOT_A_NUMBER, text, column);
    }
  }

  /** A refusal that keeps what it came from. */
  static Unreadable because(Throwable cause, PackageFault fault, Object... details) {
    Unreadable refusal = new Unreadable(fault, details);
    refusal.initCause(cause);
    return refusal;
  }
}
