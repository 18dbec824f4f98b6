package blindlap.plot;

import java.util.List;

/**
 * A band on both sides of "no difference".
 *
 * @param halfWidth half its width in the unit of the difference, above 0
 * @param words what it is, one or two short lines
 */
public record Band(double halfWidth, List<String> words) {
  /** Checks the width. */
  public Band {
    words = List.copyOf(words);
    if (!(halfWidth > 0) || !Double.isFinite(halfWidth)) {
      throw new IllegalArgumentException("A band needs a width above 0, got " + halfWidth);
    }
  }
}
