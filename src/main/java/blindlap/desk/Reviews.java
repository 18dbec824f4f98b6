package blindlap.desk;

import blindlap.paper.ReportHtml;
import blindlap.plan.Problem;
import blindlap.exchange.HelperFits;
import blindlap.review.Comparison;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.session.Fact;
import blindlap.session.Outcome;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import blindlap.wording.FindingText;
import blindlap.wording.FindingWords;
import blindlap.wording.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Findings of unsealed sessions: as text, as JSON, as a report. */
public final class Reviews {
  private final Sessions sessions;

  public Reviews(Sessions sessions) {
    this.sessions = sessions;
  }

  /** Why nothing that depends on the key may be shown, if so. */
  public Optional<List<Problem>> refuse(SessionState state) {
    return state.unsealed()
        ? Optional.empty()
        : Optional.of(List.of(Problem.of(SessionFault.STILL_SEALED, "", state.step())));
  }

  /** The finding of an unsealed session. */
  public Finding finding(SessionState state) {
    return Finding.of(day(state));
  }

  /** What the analysis of an unsealed session uses. */
  public static DayRecord day(SessionState state) {
    return DayRecord.of(state, HelperFits.read(state.openedHelperRecords(), state.plan()));
  }

  /** The verdict phrase of an unsealed session; empty while sealed or without a comparison. */
  public Optional<String> verdict(SessionState state) {
    return refuse(state).isPresent() || state.plan().setups().size() < 2
        ? Optional.empty()
        : Finding.verdictOnly(day(state)).flatMap(Comparison::verdict).map(FindingWords::phrase);
  }

  /** The difference in one sentence; empty while sealed or without a comparison. */
  public Optional<String> headline(SessionState state) {
    return refuse(state).isPresent() || state.plan().setups().size() < 2
        ? Optional.empty()
        : Finding.verdictOnly(day(state))
            .map(c -> new FindingWords(state.plan(), c).difference());
  }

  /** The finding in sentences. */
  public List<String> text(SessionState state) {
    List<String> lines = new ArrayList<>(new FindingText(finding(state)).lines());
    lines.add(Words.of("cautions").say("trust"));
    return lines;
  }

  /** The finding as JSON with fixed names. */
  public String json(SessionState state) {
    return FindingJson.write(finding(state));
  }

  /** The report, one HTML text that needs nothing else. */
  public String html(SessionState state) {
    return ReportHtml.write(state, finding(state));
  }

  /** A file name for the report that names no person. */
  public String reportName(SessionState state) {
    return "report-" + state.plan().day() + "-" + state.id().brief() + ".html";
  }

  /** Writes down that a report was written. */
  public void reported(SessionState state, String name) {
    sessions.act(state.id(), latest -> Outcome.accepted(new Fact.ReportWritten(name)));
  }
}
