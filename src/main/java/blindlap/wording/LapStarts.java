package blindlap.wording;

import blindlap.session.SessionState;
import blindlap.session.day.LapState;
import blindlap.wording.day.RideWords;

/** When laps were started, for those who read the whole record. */
public final class LapStarts {
  private LapStarts() {}

  /** Clock time at which a lap was started by a watch, in the zone of the day; empty if unknown. */
  public static String clock(SessionState state, LapState lap) {
    return lap.startedAt()
        .map(at -> RideWords.clock(at.atZone(state.entries().get(0).entry().zone())))
        .orElse("");
  }
}
