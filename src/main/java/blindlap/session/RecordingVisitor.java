package blindlap.session;

/**
 * One method for every kind of fact of recordings, as {@link FactVisitor} has for all.
 *
 * @param <R> what is made of a fact
 */
public interface RecordingVisitor<R> {
  R recordingBroughtIn(RecordingBroughtIn fact);

  R sectorVoided(SectorVoided fact);

  R sectorVoidWithdrawn(SectorVoidWithdrawn fact);
}
