package blindlap.paper;

import blindlap.review.Beside;
import blindlap.review.Finding;
import blindlap.session.SessionState;

/**
 * Everything a report is made of.
 *
 * @param state the unsealed session
 * @param finding its finding
 * @param engine version of the program
 * @param beside other sessions of the question, and what this one was at unsealing
 * @param ink colour, or black on white
 */
public record ReportInput(
    SessionState state, Finding finding, String engine, Beside beside, Ink ink) {
  /** What it is printed with. */
  public enum Ink {
    COLOUR,
    BLACK
  }
}
