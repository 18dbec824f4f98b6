package blindlap.seal;

import blindlap.fault.Unusable;

/**
 * What the tester asks to be sealed beside the order. What it is shows nowhere until the seal is
 * opened.
 */
public final class SessionKind {
  private static final int NONE = -1;

  private final int ridden;

  private SessionKind(int ridden) {
    this.ridden = ridden;
  }

  /** An ordinary comparison: what the order names is ridden. */
  public static SessionKind comparison() {
    return new SessionKind(NONE);
  }

  /**
   * A concealed null run.
   *
   * @param setup index of the setup that is ridden under every name, 0 = A
   */
  public static SessionKind nullRun(int setup) {
    if (setup < 0) {
      throw new IllegalArgumentException("a null run rides one of the setups, not number " + setup);
    }
    return new SessionKind(setup);
  }

  /** True of a concealed null run; for whoever asked for it alone. */
  public boolean isNullRun() {
    return ridden != NONE;
  }

  /** Draws the warm-up setup: one byte v, rejected at or above the largest multiple of setups. */
  SealedPart seal(int setups, SecureBytes source) {
    if (ridden >= setups) {
      throw new Unusable(
          "kind",
          "rides one of the plan's " + setups + " setups, not number " + (ridden + 1) + ".",
          DrawFault.NO_SUCH_SETUP,
          ridden + 1,
          setups);
    }
    int value;
    do {
      value = source.exactly(1)[0] & 0xff;
    } while (value >= 256 - 256 % setups);
    int warmUp = value % setups;
    return ridden == NONE ? SealedPart.ordinary(warmUp) : SealedPart.nullRun(ridden, warmUp);
  }

  /** Says nothing of what is inside. */
  @Override
  public String toString() {
    return "SessionKind[sealed]";
  }
}
