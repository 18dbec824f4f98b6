package blindlap.seal;

import blindlap.fault.Unusable;
import blindlap.plan.Rule;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/**
 * The only door to the sealed order: draws and seals it, opens it with the helper's phrase or
 * sheet, verifies it. Bytes are specified in docs/sealing.md.
 */
public final class Sealing {
  private static final int NONCE_BYTES = 32;

  private final SealingSources sources;
  private final SealParameters parameters;

  /**
   * A door with its secure sources.
   *
   * @param sources asked in the order that {@link SealingSources} documents
   * @param parameters for new keys; {@link SealParameters#standard} outside tests
   */
  public Sealing(SealingSources sources, SealParameters parameters) {
    this.sources = sources;
    this.parameters = parameters;
  }

  /**
   * First step of a sealing: draws the phrase and nothing else, so that it can be out before there
   * is anything that it opens.
   *
   * @param rule the plan's rule
   * @throws Unusable if the rule admits no order, or too few to draw one by trying: known before
   *     anyone writes a phrase down
   */
  public PhraseAsked drawPhrase(Rule rule) {
    Draw.refuseHopeless(rule);
    return PhraseAsked.draw(sources.phrase());
  }

  /**
   * Second step: draws the order and seals it.
   *
   * @param planBytes the plan as it will be stored
   * @param rule the plan's rule
   * @param sessionId the session the key is bound to
   * @param kind comparison or concealed null run
   * @param phrase of the first step, after it was out
   * @throws Unusable if the rule admits no order, or too few to draw one by trying, or the null run
   *     names no setup of the plan
   */
  public Sealed seal(
      byte[] planBytes, Rule rule, String sessionId, SessionKind kind, HelperPhrase phrase) {
    byte[] seed = sources.orderSeed().exactly(OrderStream.SEED_BYTES);
    String order = Draw.order(rule, seed);
    List<Integer> codes = Codes.draw(rule.stints(), sources.codes());
    byte[] nonce = sources.nonce().exactly(NONCE_BYTES);
    SealedPart part = kind.seal(rule.setups(), sources.warmUp());
    OpenKey key = OpenKey.of(Draw.algorithm(rule), order, codes, seed, nonce, part);
    byte[] salt = sources.salt().exactly(SealedKey.SALT_BYTES);
    HelperLock lock = HelperLock.derive(phrase, salt, parameters);
    SealedKey sealed =
        lock.seal(
            sessionId,
            Fingerprint.sha256(planBytes),
            key.text().getBytes(StandardCharsets.UTF_8),
            parameters,
            salt,
            sources.iv().exactly(Ciphering.IV_BYTES));
    return new Sealed(
        sealed,
        PlanFingerprint.of(planBytes, key),
        codes,
        phrase,
        HelperSchedule.of(key),
        KeySheet.of(key),
        lock);
  }

  /**
   * Draws the order as ever, to be covered and not sealed: there is no phrase.
   *
   * @param planBytes the plan as it will be stored
   * @param rule the plan's rule
   * @param sessionId the session whose order it is
   * @throws Unusable if the rule admits no order, or too few to draw one by trying
   */
  public CoveredOrder cover(byte[] planBytes, Rule rule, String sessionId) {
    Draw.refuseHopeless(rule);
    byte[] seed = sources.orderSeed().exactly(OrderStream.SEED_BYTES);
    String order = Draw.order(rule, seed);
    List<Integer> codes = Codes.draw(rule.stints(), sources.codes());
    byte[] nonce = sources.nonce().exactly(NONCE_BYTES);
    SealedPart part = SessionKind.comparison().seal(rule.setups(), sources.warmUp());
    byte[] k0 = sources.salt().exactly(Cover.K0_BYTES);
    OpenKey key = OpenKey.of(Draw.algorithm(rule), order, codes, seed, nonce, part);
    return new CoveredOrder(sessionId, k0, key, PlanFingerprint.of(planBytes, key));
  }

  /** Opens a key: one PBKDF2, so up to a second of work. */
  public Opening open(SealedKey sealed, HelperPhrase phrase) {
    HelperLock lock = HelperLock.derive(phrase, sealed.saltBytes(), sealed.parameters());
    if (!lock.opens(sealed)) {
      return new Opening.WrongPhrase();
    }
    Optional<byte[]> text = lock.decryptKey(sealed);
    if (text.isEmpty()) {
      return new Opening.Damaged();
    }
    return new Opening.Opened(OpenKey.read(new String(text.get(), StandardCharsets.UTF_8)), lock);
  }

  /**
   * Opens a session from the helper's sheet when the phrase is lost.
   *
   * @param sheet the rows of the sheet, typed or scanned
   * @param planBytes the plan as stored
   * @param fingerprint of the plan, as stored or as given away
   */
  public SheetReading openFromSheet(String sheet, byte[] planBytes, Fingerprint fingerprint) {
    OpenKey key;
    try {
      key = SheetReader.read(sheet);
    } catch (SheetReader.Slip slip) {
      return new SheetReading.Mistyped(slip.row, slip.what, slip.detail);
    }
    Fingerprint computed = PlanFingerprint.of(planBytes, key);
    return computed.equals(fingerprint)
        ? new SheetReading.Opened(key)
        : new SheetReading.OfAnother(computed);
  }

  /**
   * Checks an opened key: that plan and key give the fingerprint, and that the seed draws this
   * order under the plan's rule.
   *
   * @param planBytes the plan as stored
   * @param rule the rule in that plan
   * @param fingerprint as it was given away before riding
   */
  public Verification verify(byte[] planBytes, Rule rule, OpenKey key, Fingerprint fingerprint) {
    return verified(planBytes, rule, key, fingerprint);
  }

  /** The same for whoever seals nothing: it takes neither secret nor source. */
  public static Verification verified(
      byte[] planBytes, Rule rule, OpenKey key, Fingerprint fingerprint) {
    if (!PlanFingerprint.of(planBytes, key).equals(fingerprint)) {
      return Verification.OTHER_FINGERPRINT;
    }
    if (!OpenKey.knows(key.algorithm())) {
      return Verification.UNKNOWN_DRAW;
    }
    return key.algorithm().equals(Draw.algorithm(rule)) && drawn(rule, key)
        ? Verification.MATCHES
        : Verification.NOT_THE_DRAW;
  }

  private static boolean drawn(Rule rule, OpenKey key) {
    try {
      return Draw.order(rule, key.seed()).equals(key.order());
    } catch (Unusable e) {
      return false; // under a rule that draws nothing, no order was drawn
    }
  }

  /** The fingerprint of a plan with its opened key, to compare with the one given away. */
  public Fingerprint fingerprint(byte[] planBytes, OpenKey key) {
    return PlanFingerprint.of(planBytes, key);
  }

  /** The fingerprint of a closed review; see {@link Fingerprint#ofReview}. */
  public Fingerprint reviewFingerprint(
      String sessionId, Fingerprint plan, Collection<ChainHead> heads) {
    return ReviewFingerprint.of(sessionId, plan, heads);
  }

  /** What the helper may see of an opened key. */
  public HelperSchedule schedule(OpenKey key) {
    return HelperSchedule.of(key);
  }

  /** The sheet of an opened key, for a reprint. */
  public KeySheet sheet(OpenKey key) {
    return KeySheet.of(key);
  }

  /**
   * Encrypts what the helper entered for a stint, with a fresh IV.
   *
   * @param stint from 1; 0 = the warm-up
   * @param text at most {@link HelperRecord#ROOM} bytes of UTF-8
   * @throws RecordTooLong if it is longer
   */
  public HelperRecord record(HelperLock lock, String sessionId, int stint, String text) {
    return lock.encryptRecord(sessionId, stint, text, sources.iv().exactly(Ciphering.IV_BYTES));
  }
}
