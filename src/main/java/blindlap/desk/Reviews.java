package blindlap.desk;

import blindlap.paper.ReportHtml;
import blindlap.plan.Problem;
import blindlap.review.Comparison;
import blindlap.review.Finding;
import blindlap.session.Fact;
import blindlap.session.Outcome;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
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
    return state.openKey().isPresent()
        ? Optional.empty()
        : Optional.of(List.of(Problem.of(SessionFault.STILL_SEALED, "", state.step())));
  }

  /** The finding of an unsealed session. */
  public Finding finding(SessionState state) {
    return Finding.of(state);
  }

  /** The verdict phrase of an unsealed session; empty while sealed or without a comparison. */
  public Optional<String> verdict(SessionState state) {
    return refuse(state).isPresent()
        ? Optional.empty()
        : finding(state).primary().flatMap(Comparison::verdict).map(FindingWords::phrase);
  }

  /** The difference in one sentence; empty while sealed or without a comparison. */
  public Optional<String> headline(SessionState state) {
    return refuse(state).isPresent()
        ? Optional.empty()
        : finding(state).primary().map(c -> new FindingWords(state.plan(), c).difference());
  }

  /** The finding in sentences. */
  public List<String> text(SessionState state) {
    Finding finding = finding(state);
    List<String> lines = new ArrayList<>();
    finding
        .primary()
        .ifPresent(
            primary -> {
              FindingWords words = new FindingWords(state.plan(), primary);
              lines.add(words.verdict());
              lines.add(words.lead());
              lines.addAll(words.evidence(finding));
            });
    for (Comparison other : finding.others()) {
      FindingWords words = new FindingWords(state.plan(), other);
      lines.add(words.difference() + ".");
      lines.addAll(words.evidence(finding).subList(0, 1));
    }
    for (Finding.Refusal refusal : finding.refusals()) {
      lines.add(
          blindlap.wording.Problems.sentence(
              Problem.of(DeskFault.NO_FINDING, "", refusal.measure().name(), refusal.reason())));
    }
    lines.add(Words.of("cautions").say("trust"));
    return lines;
  }

  /** The finding as JSON with fixed names. */
  public String json(SessionState state) {
    return FindingJson.write(finding(state));
  }

  /** The report, one HTML text that needs nothing else. */
  public String html(SessionState state) {
    return ReportHtml.write(finding(state));
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
