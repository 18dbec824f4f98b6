package blindlap.session;

import org.jspecify.annotations.Nullable;

/**
 * What is known of the one-stint view of a stint.
 *
 * @param name of whoever looked
 * @param riderSaw whether the rider saw; null until it is answered
 */
public record OneStint(String name, @Nullable Boolean riderSaw) {
  /** True while it was not said whether the rider saw. */
  public boolean open() {
    return riderSaw == null;
  }
}
