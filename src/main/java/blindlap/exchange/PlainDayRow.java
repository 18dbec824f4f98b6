package blindlap.exchange;

import blindlap.fault.Problem;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;

/**
 * A row of a file of old days as read.
 *
 * @param line where it stands
 * @param stint what its cell says; empty without a column for it
 * @param lap its number; 0 without a column for it
 * @param setup what was on; empty without a column for it
 * @param values by measure, times in seconds
 * @param voided true if it is marked
 * @param problems its mistakes
 */
record PlainDayRow(
    int line,
    String stint,
    int lap,
    String setup,
    Map<String, BigDecimal> values,
    boolean voided,
    List<Problem> problems) {}
