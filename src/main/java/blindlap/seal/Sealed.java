package blindlap.seal;

import java.util.List;

/**
 * A session just sealed. Key, fingerprint and codes go into the notebook and to everyone; phrase,
 * schedule and sheet to the helper alone; the lock stays in memory for the helper's first records.
 * What is secret prints nothing of itself.
 *
 * @param key the encrypted key, for the notebook
 * @param fingerprint of the plan, to give away before riding
 * @param codes one code per stint, in ridden order, for the rider's card
 * @param phrase for the helper's paper
 * @param schedule for the helper
 * @param sheet for the helper's paper
 * @param lock for the helper's records
 */
public record Sealed(
    SealedKey key,
    Fingerprint fingerprint,
    List<Integer> codes,
    HelperPhrase phrase,
    HelperSchedule schedule,
    KeySheet sheet,
    HelperLock lock) {

  public Sealed {
    codes = List.copyOf(codes);
  }

  @Override
  public String toString() {
    return "Sealed[" + fingerprint + "]";
  }
}
