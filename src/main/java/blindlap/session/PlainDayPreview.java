package blindlap.session;

import blindlap.fault.Problem;
import java.util.List;

/**
 * A file of old days before anything is mapped.
 *
 * @param header names of its columns; one without a name is "column 3"
 * @param rows its first rows as texts
 * @param guess columns that speak for themselves
 * @param problems why it cannot be read; empty if it can
 */
public record PlainDayPreview(
    List<String> header, List<List<String>> rows, Guess guess, List<Problem> problems) {
  public PlainDayPreview {
    header = List.copyOf(header);
    rows = List.copyOf(rows);
    problems = List.copyOf(problems);
  }

  /**
   * Columns that speak for themselves: a suggestion for the boxes on screen, never more.
   *
   * @param date column whose cells are dates; empty if none
   * @param stint column called stint; empty if none
   * @param lap column called lap, of whole numbers; empty if none
   * @param setup column called setup; empty if none
   * @param voids column called void; empty if none
   * @param measure first column left whose cells are times or numbers; empty if none
   */
  public record Guess(
      String date, String stint, String lap, String setup, String voids, String measure) {
    /** Nothing is clear. */
    public static final Guess NOTHING = new Guess("", "", "", "", "", "");
  }
}
