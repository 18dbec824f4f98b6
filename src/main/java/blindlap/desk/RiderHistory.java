package blindlap.desk;

import blindlap.compute.NoiseJson;
import blindlap.plan.DeclaredNoise;
import blindlap.plan.EarlierNoise;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.review.NoiseRecord;
import blindlap.session.Notebook;
import blindlap.session.SessionState;
import blindlap.session.SessionSummary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the notebook knows of riders on trails: their noise, for the next plan. */
public final class RiderHistory {
  private final Notebook notebook;
  private final Sessions sessions;
  private final SeriesBook series;

  RiderHistory(Notebook notebook, Sessions sessions, SeriesBook series) {
    this.notebook = notebook;
    this.sessions = sessions;
    this.series = series;
  }

  /**
   * A rider on a trail.
   *
   * @param rider who
   * @param trail where
   * @param sessions number of sessions, whatever became of them
   */
  public record Where(String rider, String trail, int sessions) {
    boolean is(String otherRider, String otherTrail) {
      return rider.strip().equalsIgnoreCase(otherRider.strip())
          && trail.strip().equalsIgnoreCase(otherTrail.strip());
    }
  }

  /** Riders and trails of the notebook, the latest first; from the list alone. */
  public List<Where> everywhere() {
    Map<String, Where> found = new LinkedHashMap<>();
    for (SessionSummary each : notebook.summaries()) {
      String key =
          (each.rider().strip() + "\n" + each.trail().strip()).toLowerCase(java.util.Locale.ROOT);
      found.merge(
          key,
          new Where(each.rider(), each.trail(), 1),
          (a, b) -> new Where(a.rider(), a.trail(), a.sessions() + 1));
    }
    return List.copyOf(found.values());
  }

  /** The rider's noise on the trail, a record a measure, primary measures first. */
  public List<NoiseRecord> records(String rider, String trail) {
    Where where = new Where(rider, trail, 0);
    List<SessionState> states = new ArrayList<>();
    for (SessionSummary each : notebook.summaries()) {
      if (where.is(each.rider(), each.trail())) {
        // Of an unfinished series nothing is told, not even how its days scattered.
        sessions
            .state(each.id())
            .filter(state -> !state.unsealed() || !series.unfinished(state))
            .ifPresent(states::add);
      }
    }
    return NoiseRecord.of(states, Reviews::day);
  }

  /** The same of several riders and trails as JSON. */
  public String json(List<Where> wanted) {
    return NoiseJson.write(
        wanted.stream().flatMap(where -> records(where.rider(), where.trail()).stream()).toList());
  }

  /**
   * The noise for the next plan, pooled over the rider's days on the trail, with its degrees of
   * freedom and where it comes from; empty if nothing is known.
   *
   * @param measure the planned primary measure
   * @param scoredLaps planned scored laps a stint
   */
  public Optional<DeclaredNoise> suggestNoise(
      String rider, String trail, Measure measure, int scoredLaps) {
    return earlier(rider, trail).of(measure, scoredLaps);
  }

  /**
   * The same for any measure of the next plan, looked up once; reads every day of the rider. Days
   * with as many scored laps a stint come first; where there are none, those with the number of
   * which most is known.
   */
  public EarlierNoise earlier(String rider, String trail) {
    return new EarlierDays(records(rider, trail));
  }

  /** What earlier days tell a plan. */
  public EarlierNoise earlier(Plan plan) {
    return earlier(plan.rider(), plan.trail());
  }

  /** As {@link #suggestNoise(String, String, Measure, int)} with one scored lap a stint. */
  public Optional<DeclaredNoise> suggestNoise(String rider, String trail, Measure measure) {
    return suggestNoise(rider, trail, measure, 1);
  }
}
