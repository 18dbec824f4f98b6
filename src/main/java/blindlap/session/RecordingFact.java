package blindlap.session;

/** Facts of recordings. */
public sealed interface RecordingFact extends Fact.OfRecordings
    permits RecordingBroughtIn, SectorVoided, SectorVoidWithdrawn {
  /** Calls the visitor's method for this kind of fact. */
  <R> R accept(RecordingVisitor<R> visitor);

  @Override
  default <R> R accept(FactVisitor<R> visitor) {
    return visitor.ofRecordings(this);
  }
}
