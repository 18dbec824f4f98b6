package blindlap.session;

import blindlap.fault.Problem;
import blindlap.plan.Measure;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.LapId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/**
 * Values timed or scored by someone who knows the key: the declared deviation that goes with them,
 * once a stint for whoever times, once a stint and measure for whoever scores. What is refused
 * stays refused.
 */
public final class KeyKnown {
  private final SessionState state;

  public KeyKnown(SessionState state) {
    this.state = state;
  }

  /**
   * A time.
   *
   * @param who who timed it
   */
  public Outcome timed(Outcome outcome, int stint, String who) {
    boolean known =
        state.deviations().stream()
            .anyMatch(d -> d.stint() == stint && d.kind() == DeviationKind.TIMEKEEPER_KNOWS_KEY);
    return known
        ? outcome
        : and(
            outcome,
            List.of(new Fact.DeviationNoted(stint, DeviationKind.TIMEKEEPER_KNOWS_KEY, who)));
  }

  /** A score. */
  public Outcome scored(Outcome outcome, int stint, String measure) {
    Fact.DeviationNoted said =
        new Fact.DeviationNoted(stint, DeviationKind.SCORER_KNOWS_KEY, measure);
    return state.deviations().contains(said) ? outcome : and(outcome, List.of(said));
  }

  /**
   * Values that come together, from a file or from paper.
   *
   * @param measures names of those that were timed or scored by someone who knows the key
   */
  public Outcome among(Outcome outcome, Collection<String> measures) {
    List<Problem> unknown = new ArrayList<>();
    for (String name : measures) {
      if (measure(name).isEmpty()) {
        unknown.add(Problem.of(SessionFault.UNKNOWN_MEASURE, "", name, names()));
      }
    }
    if (!unknown.isEmpty()) {
      return new Outcome.Refused(unknown);
    }
    if (!(outcome instanceof Outcome.Accepted accepted)) {
      return outcome;
    }
    List<Fact> said = new ArrayList<>();
    for (Fact fact : accepted.facts()) {
      if (fact instanceof Fact.ScoreGiven given) {
        add(given.lap(), given.measure(), measures, said);
      } else if (fact instanceof Fact.ScoreCorrected corrected && corrected.value() != null) {
        add(corrected.lap(), corrected.measure(), measures, said);
      }
    }
    return and(outcome, said);
  }

  private void add(LapId lap, String name, Collection<String> measures, List<Fact> said) {
    boolean timed = measure(name).filter(m -> m.kind().timed()).isPresent();
    Fact.DeviationNoted deviation =
        new Fact.DeviationNoted(
            lap.stint(),
            timed ? DeviationKind.TIMEKEEPER_KNOWS_KEY : DeviationKind.SCORER_KNOWS_KEY,
            name);
    if (measures.contains(name)
        && !said.contains(deviation)
        && !state.deviations().contains(deviation)) {
      said.add(deviation);
    }
  }

  private Optional<Measure> measure(String name) {
    return state.plan().measures().stream().filter(m -> m.name().equals(name)).findFirst();
  }

  private String names() {
    return String.join(", ", state.plan().measures().stream().map(Measure::name).toList());
  }

  private static Outcome and(Outcome outcome, List<Fact> more) {
    if (!(outcome instanceof Outcome.Accepted accepted)) {
      return outcome;
    }
    List<Fact> facts = new ArrayList<>(accepted.facts());
    facts.addAll(more);
    return new Outcome.Accepted(facts);
  }
}
