package blindlap.session;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import java.math.BigDecimal;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What recordings say of a day.
 *
 * @param files those brought in, in order; one that was settled anew stands once, as it was last
 * @param laps by lap, what counts
 * @param sectorVoids by lap and index of the sector from 0, the voids that stand
 */
public record Recorded(
    List<RecordingBroughtIn> files,
    SortedMap<LapId, RecordedLap> laps,
    SortedMap<LapId, SortedMap<Integer, SectorVoided>> sectorVoids) {
  public Recorded {
    files = List.copyOf(files);
    laps = Collections.unmodifiableSortedMap(new TreeMap<>(laps));
    sectorVoids = Collections.unmodifiableSortedMap(new TreeMap<>(sectorVoids));
  }

  /** What a recording says of a measure on a lap; empty if it says nothing of it. */
  public Optional<RecordedTime> time(Plan plan, Measure measure, LapId lap) {
    RecordedLap known = laps.get(lap);
    SortedMap<Integer, SectorVoided> voids = sectorVoids.get(lap);
    return known == null
        ? Optional.empty()
        : RecordedTime.of(known, voids == null ? Set.of() : voids.keySet(), plan, measure);
  }

  /**
   * The value of a measure that counts on a lap, a void one included: the recording's where the
   * plan says so, else what people gave.
   */
  public Optional<BigDecimal> counting(Plan plan, Measure measure, LapState lap) {
    return measure.recorded()
        ? time(plan, measure, lap.id()).map(RecordedTime::seconds)
        : Optional.ofNullable(lap.values().get(measure.name()));
  }
}
