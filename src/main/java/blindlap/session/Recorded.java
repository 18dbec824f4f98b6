package blindlap.session;

import blindlap.session.day.LapId;
import java.util.Collections;
import java.util.List;
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
}
