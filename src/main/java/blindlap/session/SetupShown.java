package blindlap.session;

/**
 * A rider who swaps alone was shown what to mount for a stint, from the covered order
 * (docs/sealing.md#covered). Since version 5.
 *
 * @param stint from 1; 0 = the warm-up
 * @param setup 0 = A; at masked labels the label, 0 = X
 */
public record SetupShown(int stint, int setup) implements Fact.OfOnePerson {
  @Override
  public <R> R accept(OnePersonVisitor<R> visitor) {
    return visitor.setupShown(this);
  }
}
