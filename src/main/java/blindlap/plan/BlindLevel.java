package blindlap.plan;

/**
 * How blind a session is: what the rider knows while riding (docs/method.md#blind-levels). In the
 * order of what a finding can prove, least first. Since version 5 but the first and the last.
 */
public enum BlindLevel {
  /** The rider knows the whole order. */
  OPEN("unblinded (open)"),
  /** Each setup is shown only when it is to be mounted; the rider knows what is on. */
  DRAWN("unblinded (drawn as you go)"),
  /** Parts that look alike bear labels; the rider knows the label and not which part it is. */
  MASKED("masked labels"),
  /** A friend coded and covered the parts beforehand; the rider knows codes alone. */
  PREPARED("prepared beforehand"),
  /** A helper swaps out of sight on the day; the rider knows codes alone. */
  HELPER("");

  private final String title;

  BlindLevel(String title) {
    this.title = title;
  }

  /** As it stands behind a session's setups in lists; empty for the usual one, with a helper. */
  public String title() {
    return title;
  }

  /** True where the rider does not know while riding what is on: the words of a blind test. */
  public boolean blind() {
    return this == PREPARED || this == HELPER;
  }

  /**
   * True where a friend does beforehand what the rider must not see, and holds the phrase if there
   * is one; elsewhere that is the helper.
   */
  public boolean friend() {
    return this == MASKED || this == PREPARED;
  }

  /**
   * True where the rider swaps alone and is shown what to mount, one stint after the other, from a
   * covered order.
   */
  public boolean shown() {
    return this == OPEN || this == DRAWN || this == MASKED;
  }
}
