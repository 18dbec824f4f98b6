package blindlap.session;

import blindlap.plan.Plan;
import blindlap.plan.Sector;
import blindlap.plan.TrailVersion;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Applies the facts of recordings. Of two recordings of a lap the later counts; a file that is
 * settled anew takes back all that it said before; what the closing of the review had not seen is
 * kept and shown but not applied.
 */
final class RecordingFolding implements RecordingVisitor<Boolean> {
  private final Folded folded;
  private final boolean reviewOpen;

  RecordingFolding(Folded folded, boolean reviewOpen) {
    this.folded = folded;
    this.reviewOpen = reviewOpen;
  }

  @Override
  public Boolean recordingBroughtIn(RecordingBroughtIn fact) {
    if (!reviewOpen) {
      return false;
    }
    folded.recordings.removeIf(before -> before.sha256().equals(fact.sha256()));
    folded.recordings.add(fact);
    folded.recorded.clear();
    folded.recordings.forEach(
        file -> file.laps().forEach(lap -> folded.recorded.put(lap.lap(), lap)));
    return true;
  }

  @Override
  public Boolean sectorVoided(SectorVoided fact) {
    Integer at = sector(fact.sector());
    if (!reviewOpen || at == null) {
      return false;
    }
    folded.sectorVoids.computeIfAbsent(fact.lap(), lap -> new TreeMap<>()).put(at, fact);
    return true;
  }

  @Override
  public Boolean sectorVoidWithdrawn(SectorVoidWithdrawn fact) {
    Integer at = sector(fact.sector());
    return reviewOpen
        && at != null
        && folded.sectorVoids.containsKey(fact.lap())
        && folded.sectorVoids.get(fact.lap()).remove(at) != null;
  }

  /** Index of a sector of the plan's trail, from 0. */
  private @Nullable Integer sector(Sector sector) {
    Fact.PlanCommitted committed = folded.committed;
    Plan plan = committed == null ? null : committed.plan();
    TrailVersion trail = plan == null ? null : plan.trailVersion();
    int at = trail == null ? -1 : trail.sectors().indexOf(sector);
    return at < 0 ? null : Integer.valueOf(at);
  }
}
