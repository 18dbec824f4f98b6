package blindlap.seal;

import java.util.Optional;

/** Seals which label is on which setup under a friend's phrase, and opens it with that phrase. */
public final class MaskSealing {
  private final SealingSources sources;
  private final SealParameters parameters;

  /**
   * The same sources and parameters as {@link Sealing}.
   *
   * @param sources {@code phrase}, then {@code codes} for a drawn mapping, {@code salt}, {@code iv}
   */
  public MaskSealing(SealingSources sources, SealParameters parameters) {
    this.sources = sources;
    this.parameters = parameters;
  }

  /** Draws the friend's phrase and nothing else. */
  public PhraseAsked drawPhrase() {
    return PhraseAsked.draw(sources.phrase());
  }

  /** Draws a mapping of so many labels. */
  public Masks draw(int labels) {
    return Masks.drawn(labels, sources.codes());
  }

  /**
   * Seals a mapping.
   *
   * @param plan SHA-256 of the plan's bytes
   */
  public SealedKey seal(Masks masks, String sessionId, Fingerprint plan, HelperPhrase phrase) {
    byte[] salt = sources.salt().exactly(SealedKey.SALT_BYTES);
    byte[] iv = sources.iv().exactly(Ciphering.IV_BYTES);
    HelperLock lock = HelperLock.derive(phrase, salt, parameters);
    return lock.seal(sessionId, plan, masks.text(), parameters, salt, iv);
  }

  /** What became of an attempt to open sealed masks. */
  public sealed interface Opened {
    /** They are open. */
    record Read(Masks masks) implements Opened {}

    /** The words are of the list, but not the words of these masks. */
    record WrongPhrase() implements Opened {}

    /** The phrase is right, but what was sealed was changed. */
    record Damaged() implements Opened {}
  }

  /** Opens masks: one PBKDF2, so up to a second of work. */
  public Opened open(SealedKey sealed, HelperPhrase phrase) {
    HelperLock lock = HelperLock.derive(phrase, sealed.saltBytes(), sealed.parameters());
    if (!lock.opens(sealed)) {
      return new Opened.WrongPhrase();
    }
    Optional<Masks> masks = lock.decryptKey(sealed).flatMap(Masks::read);
    return masks.<Opened>map(Opened.Read::new).orElseGet(Opened.Damaged::new);
  }
}
