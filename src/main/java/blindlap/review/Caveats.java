package blindlap.review;

import blindlap.plan.Assessor;
import blindlap.plan.Measure;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** What a reader must know beside the numbers of a measure, for whatever number of setups. */
final class Caveats {
  private static final double MOST_AT_END = 0.30;

  private Caveats() {}

  /**
   * Of a measure.
   *
   * @param earlier true by the rules before edition 3
   */
  static Set<Caveat> of(DayRecord day, Measure measure, StintValues stints, boolean earlier) {
    Set<Caveat> caveats = new TreeSet<>();
    if (stints.missingShare() > Analysis.MOST_MISSING) {
      caveats.add(Caveat.MISSING);
    }
    if (!earlier && EarlyEnd.freely(day)) {
      caveats.add(Caveat.ENDED_FREELY);
    }
    if (stints.endShare() > MOST_AT_END) {
      caveats.add(Caveat.SCALE_END);
    }
    if (measure.kind().rating()) {
      caveats.add(Caveat.ANCHORED);
    }
    scored(day, measure).ifPresent(caveats::add);
    return caveats;
  }

  /** Who gives the values of a measure, and what that person knows. */
  private static Optional<Caveat> scored(DayRecord day, Measure measure) {
    Assessor assessor = measure.assessor();
    if (assessor != null) {
      return assessor.knowsKey() ? Optional.of(Caveat.SCORER_KNEW) : Optional.empty();
    }
    if (!measure.kind().rating()) {
      return Optional.empty();
    }
    return switch (day.plan().level()) {
      case OPEN, DRAWN -> Optional.of(Caveat.UNBLINDED_RATING);
      case MASKED -> Optional.of(Caveat.LABELLED_RATING);
      case PREPARED, HELPER -> Optional.empty();
    };
  }
}
