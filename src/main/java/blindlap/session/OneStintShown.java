package blindlap.session;

/**
 * Somebody who is not the helper was shown what to set for one stint, once, against a one-time code
 * (docs/sealing.md#one-stint). What was shown is not in it. Since version 5.
 *
 * @param stint from 1
 * @param name of whoever looked
 */
public record OneStintShown(int stint, String name) implements OneStintFact {
  @Override
  public <R> R accept(OnePersonVisitor<R> visitor) {
    return visitor.oneStintShown(this);
  }
}
