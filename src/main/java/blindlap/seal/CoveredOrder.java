package blindlap.seal;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * An order that was just drawn to be covered: it lives until the commit is written and prints
 * nothing of what it holds.
 */
public final class CoveredOrder {
  private final String sessionId;
  private final byte[] k0;
  private final OpenKey key;
  private final Fingerprint fingerprint;

  CoveredOrder(String sessionId, byte[] k0, OpenKey key, Fingerprint fingerprint) {
    this.sessionId = sessionId;
    this.k0 = k0;
    this.key = key;
    this.fingerprint = fingerprint;
  }

  /** The fingerprint of plan and order, to give away before riding. */
  public Fingerprint fingerprint() {
    return fingerprint;
  }

  /** One code per stint, in ridden order. */
  public List<Integer> codes() {
    return key.codes();
  }

  /**
   * What is to be mounted for a stint, for a session whose rider knows the whole order.
   *
   * @param stint from 1; 0 = the warm-up
   * @return the setup, 0 = A
   */
  public int setup(int stint) {
    return stint == 0 ? key.warmUp() : key.setup(stint);
  }

  /**
   * The order covered.
   *
   * @param end hash of the last entry of the chain that the commit began
   */
  public Cover under(Fingerprint end) {
    List<byte[]> places = new ArrayList<>();
    for (int stint = 0; stint <= key.stints(); stint++) {
      places.add(new byte[] {(byte) ('A' + setup(stint))});
    }
    places.add(key.text().getBytes(StandardCharsets.UTF_8));
    return Cover.of(sessionId, end, k0, places);
  }

  /** Says nothing of what is inside. */
  @Override
  public String toString() {
    return "CoveredOrder[" + key.stints() + " stints]";
  }
}
