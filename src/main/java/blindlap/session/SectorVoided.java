package blindlap.session;

import blindlap.plan.Sector;
import blindlap.session.day.LapId;
import blindlap.session.day.VoidEvent;

/**
 * One sector of a lap was declared void because of an event: its value and the lap's time are
 * masked, other sectors stay. Since version 6.
 *
 * @param words further words; may be empty
 * @param afterValuesSeen true if made once the values of the day could be seen
 */
public record SectorVoided(
    LapId lap, Sector sector, VoidEvent event, String words, boolean afterValuesSeen)
    implements RecordingFact {
  @Override
  public <R> R accept(RecordingVisitor<R> visitor) {
    return visitor.sectorVoided(this);
  }
}
