package blindlap.session;

/**
 * A rider who swaps alone has mounted what a stint is ridden on. Since version 5.
 *
 * @param stint from 1; 0 = the warm-up; one past the last for what was found out later
 * @param text what was fitted, measured and checked, in the form of a helper's record, in the clear
 */
public record StintMounted(int stint, String text) implements Fact.OfOnePerson {
  @Override
  public <R> R accept(OnePersonVisitor<R> visitor) {
    return visitor.stintMounted(this);
  }
}
