package blindlap.session;

/**
 * An entry as it lies in a notebook.
 *
 * @param entry what it says
 * @param text its enduring text form, the bytes that were hashed
 * @param hash SHA-256 of the text
 */
public record StoredEntry(Entry entry, String text, Hash hash) {
  /** This entry as the head of its chain. */
  public Head head() {
    return new Head(entry.notebook(), entry.number(), hash);
  }
}
