package blindlap.paper;

import blindlap.review.Finding;
import blindlap.session.SessionState;
import java.util.List;

/**
 * Everything a report is made of.
 *
 * @param state the unsealed session
 * @param finding its finding
 * @param engine version of the program
 * @param earlier other sessions that ask the same question, in words
 * @param ink colour, or black on white
 */
public record ReportInput(
    SessionState state, Finding finding, String engine, List<String> earlier, Ink ink) {
  /** What it is printed with. */
  public enum Ink {
    COLOUR,
    BLACK
  }

  public ReportInput {
    earlier = List.copyOf(earlier);
  }
}
