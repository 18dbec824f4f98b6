package blindlap.review;

import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where a session stands in its series, and what the series answers, beside the day's own finding.
 *
 * @param series its id
 * @param place which of its sessions, by commit, from 1
 * @param declared number of sessions declared before riding; empty if none was
 * @param pooled number of sessions pooled
 * @param riders number of riders pooled
 * @param setups names of the setups as the series' first plan has them
 * @param verdict of the series
 * @param noVerdict why there is none
 * @param end how it was ended early; empty for most
 * @param estimate second less first of these setups on the scale of the analysis
 * @param interval95 of the estimate
 */
public record SeriesPlace(
    String series,
    int place,
    Optional<Integer> declared,
    int pooled,
    int riders,
    List<String> setups,
    Optional<Verdict> verdict,
    Optional<SeriesFinding.NoVerdict> noVerdict,
    Optional<SeriesPeeks.Ended> end,
    OptionalDouble estimate,
    Optional<Interval> interval95) {
  public SeriesPlace {
    setups = List.copyOf(setups);
  }

  /**
   * The place of a session in what its series found.
   *
   * @param session its id; one of the parts of the finding
   */
  public static SeriesPlace of(SeriesFinding finding, String session) {
    List<String> ids = finding.parts().stream().map(SeriesFinding.Part::session).toList();
    boolean general = finding.general().isPresent() && finding.riders().size() > 1;
    return new SeriesPlace(
        finding.id(),
        ids.indexOf(session) + 1,
        finding.declared(),
        finding.pooled(),
        finding.riders().size(),
        finding.setups().stream().map(setup -> setup.name()).toList(),
        finding.verdict(),
        finding.noVerdict(),
        finding.end(),
        general
            ? OptionalDouble.of(finding.general().orElseThrow().estimate())
            : finding
                .these()
                .map(t -> OptionalDouble.of(t.estimate()))
                .orElse(OptionalDouble.empty()),
        general
            ? Optional.of(finding.general().orElseThrow().interval95())
            : finding.these().flatMap(t -> t.curve().interval(0.95)));
  }
}
