package blindlap.desk;

import blindlap.plan.Measure;
import blindlap.session.Fact;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.Source;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What was ridden on a day, in order: warm-up laps, then laps, void ones too; and when each was
 * entered, as far as a clock tells.
 *
 * @param laps null for a warm-up lap
 * @param entered seconds of the notebook's clock; NaN for what was kept on paper or in a file
 */
record RidesOfDay(List<@Nullable LapId> laps, double[] entered) {
  static RidesOfDay of(SessionState state) {
    Map<LapId, Instant> said = new HashMap<>();
    Map<Integer, Instant> warm = new HashMap<>();
    for (StoredEntry stored : state.entries()) {
      Fact fact = stored.entry().fact();
      Instant at = stored.entry().when();
      if (fact instanceof Fact.LapRidden lap && lap.source() == Source.SCREEN) {
        said.putIfAbsent(lap.lap(), at);
      } else if (fact instanceof Fact.WarmUpRidden lap) {
        warm.putIfAbsent(lap.number(), at);
      }
    }
    List<@Nullable LapId> laps = new ArrayList<>();
    List<@Nullable Instant> entered = new ArrayList<>();
    for (int lap = 1; lap <= state.warmUps(); lap++) {
      laps.add(null);
      entered.add(warm.get(lap));
    }
    for (LapState lap : state.laps()) {
      if (lap.ridden()) {
        laps.add(lap.id());
        entered.add(stopped(state, lap).orElse(said.get(lap.id())));
      }
    }
    double[] seconds =
        entered.stream().mapToDouble(at -> at == null ? Double.NaN : seconds(at)).toArray();
    return new RidesOfDay(laps, seconds);
  }

  /** A watch that was stopped at the finish knows better than who enters the lap afterwards. */
  private static Optional<Instant> stopped(SessionState state, LapState lap) {
    return state.plan().measures().stream()
        .filter(measure -> measure.kind() == Measure.Kind.LAP_TIME)
        .map(measure -> lap.times().get(measure.name()))
        .filter(time -> time != null && time.typed() == null && !time.doubtful())
        .map(time -> time.stopped())
        .findFirst();
  }

  private static double seconds(Instant at) {
    return at.getEpochSecond() + at.getNano() / 1e9;
  }

  /** Its number among all; −1 if it was not ridden. */
  int index(LapId lap) {
    return laps.indexOf(lap);
  }
}
