package blindlap.desk;

import blindlap.compute.SeriesJson;
import blindlap.exchange.SeriesPackage;
import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.review.SeriesDeclaration;
import blindlap.review.SeriesFinding;
import blindlap.session.SessionState;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Data packages of series, with the packages of their sessions. Before the end there is none. */
public final class SeriesPackages {
  private final SeriesBook book;
  private final Reviews reviews;

  SeriesPackages(SeriesBook book, Reviews reviews) {
    this.book = book;
    this.reviews = reviews;
  }

  /** Makes the package of a series; files by their path inside its folder. */
  public SeriesReports.Result of(String series) {
    Optional<SeriesFinding> found = book.finding(series);
    Optional<Problem> refused = SeriesReports.refusal(series, found);
    if (refused.isPresent()) {
      return new SeriesReports.Result.Refused(List.of(refused.get()));
    }
    SeriesFinding finding = found.orElseThrow();
    Map<String, SessionState> states = new LinkedHashMap<>();
    book.of(series).forEach(state -> states.put(state.id().text(), state));
    Plan first =
        SeriesDeclaration.of(List.copyOf(states.values()))
            .map(SeriesDeclaration::plan)
            .orElseThrow();
    Map<String, SeriesPackage.Session> sessions = new LinkedHashMap<>();
    for (SeriesFinding.Part part : finding.parts()) {
      SessionState state = java.util.Objects.requireNonNull(states.get(part.session()));
      boolean numbers = part.fate() == SeriesFinding.Fate.POOLED || part.estimate().isPresent();
      sessions.put(
          part.session(),
          new SeriesPackage.Session(state.plan(), numbers ? reviews.export(state) : Map.of()));
    }
    return new SeriesReports.Result.Made(
        SeriesPackage.of(finding, SeriesJson.write(finding), first, sessions));
  }
}
