package blindlap.session;

import java.util.List;

/**
 * The rider's one guess at the end, which label is on which setup. Since version 5.
 *
 * @param setups by label, 0 = A; empty if the rider does not guess
 */
public record MasksGuessed(List<Integer> setups) implements Fact.OfOnePerson {
  public MasksGuessed {
    setups = List.copyOf(setups);
  }

  @Override
  public <R> R accept(OnePersonVisitor<R> visitor) {
    return visitor.masksGuessed(this);
  }
}
