package blindlap.session;

/**
 * Whoever was shown what to set for one stint said whether the rider saw or heard it. Since version
 * 5.
 *
 * @param stint from 1
 * @param riderSaw true if the rider knows; then {@link Fact.BlindBroken} stands beside it
 */
public record OneStintAnswered(int stint, boolean riderSaw) implements OneStintFact {
  @Override
  public <R> R accept(OnePersonVisitor<R> visitor) {
    return visitor.oneStintAnswered(this);
  }
}
