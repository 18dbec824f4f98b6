package blindlap.session;

/**
 * Without signal the rider read the code on the plate and rode: a hand-over said by the rider.
 * Since version 7.
 *
 * @param stint from 1; 0 = the warm-up
 */
public record PlateRead(int stint) implements Fact.OfPhones {
  @Override
  public <R> R accept(FactVisitor<R> visitor) {
    return visitor.plateRead(this);
  }
}
