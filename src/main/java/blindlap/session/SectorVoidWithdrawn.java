package blindlap.session;

import blindlap.plan.Sector;
import blindlap.session.day.LapId;

/** The void of a sector was taken back. Since version 6. */
public record SectorVoidWithdrawn(LapId lap, Sector sector, String reason)
    implements RecordingFact {
  @Override
  public <R> R accept(RecordingVisitor<R> visitor) {
    return visitor.sectorVoidWithdrawn(this);
  }
}
