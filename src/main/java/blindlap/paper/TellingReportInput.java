package blindlap.paper;

import blindlap.review.Beside;
import blindlap.review.TellingAnalysis;
import blindlap.session.SessionState;

/**
 * Everything the report of a telling run is made of.
 *
 * @param state the unsealed session
 * @param analysis its count
 * @param engine version of the program
 * @param beside other sessions of the question, and what this one was at unsealing
 * @param ink colour, or black on white
 */
public record TellingReportInput(
    SessionState state,
    TellingAnalysis analysis,
    String engine,
    Beside beside,
    ReportInput.Ink ink) {}
