package blindlap.session;

import blindlap.seal.SealedKey;

/**
 * Which label is on which setup was sealed under a friend's phrase. Since version 5.
 *
 * @param key opens to the mapping
 */
public record MasksSealed(SealedKey key) implements Fact.OfOnePerson {
  @Override
  public <R> R accept(OnePersonVisitor<R> visitor) {
    return visitor.masksSealed(this);
  }
}
