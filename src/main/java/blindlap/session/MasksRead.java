package blindlap.session;

import java.util.List;

/**
 * After the review was closed it was read which label is on which setup. Since version 5.
 *
 * @param setups by label, 0 = A
 * @param from how it was read
 */
public record MasksRead(List<Integer> setups, From from) implements Fact.OfOnePerson {
  /** How it was read. */
  public enum From {
    /** Opened with the friend's phrase: it was sealed before riding. */
    PHRASE,
    /** Read from marks under tape: it was not sealed. */
    MARKS
  }

  public MasksRead {
    setups = List.copyOf(setups);
  }

  @Override
  public <R> R accept(OnePersonVisitor<R> visitor) {
    return visitor.masksRead(this);
  }
}
