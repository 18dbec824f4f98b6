package blindlap.review;

import blindlap.plan.Plan;
import blindlap.seal.ChainHead;
import blindlap.seal.Fingerprint;
import blindlap.seal.ReviewFingerprint;
import blindlap.seal.SealedKey;
import blindlap.seal.Sealing;
import blindlap.seal.Verification;
import blindlap.session.Entry;
import blindlap.session.Fact;
import blindlap.session.Head;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The fingerprints of a session held against the file they stand in: computed again from its
 * entries as far as its seal allows. Whoever writes every entry anew gets a file that matches
 * itself; only a number that somebody kept from before tells it from the one that was ridden.
 *
 * @param plan as the commit states it
 * @param ofPlan whether plan and key give it
 * @param review as the closing of the review states it; empty while the review is open
 * @param ofReview whether the entries that the closing had seen give it; {@link Held#SEALED} while
 *     there is none
 */
public record FileFingerprints(
    Fingerprint plan, Held ofPlan, Optional<Fingerprint> review, Held ofReview) {
  /** Digits that must be there to compare: by chance one of 2^64 has them all. */
  public static final int LEAST_DIGITS = 16;

  /** What came of computing a fingerprint again. */
  public enum Held {
    /** It is what the file gives. */
    MATCHES,
    /** The file gives another. */
    DIFFERS,
    /** What it is made of is still sealed, or not there yet. */
    SEALED
  }

  /** The fingerprints of a session as it stands. */
  public static FileFingerprints of(SessionState state) {
    Held ofReview =
        closings(state)
            .filter(closing -> closing.fact() == counted(state))
            .map(closing -> gives(state, closing) ? Held.MATCHES : Held.DIFFERS)
            .findFirst()
            .orElse(Held.SEALED);
    return new FileFingerprints(
        state.planFingerprint(), ofPlan(state), state.reviewFingerprint(), ofReview);
  }

  private static @org.jspecify.annotations.Nullable Fact counted(SessionState state) {
    Optional<Fingerprint> review = state.reviewFingerprint();
    return closings(state)
        .map(Entry::fact)
        .filter(Fact.ReviewClosed.class::isInstance)
        .map(Fact.ReviewClosed.class::cast)
        .filter(closed -> review.filter(f -> f == closed.fingerprint()).isPresent())
        .findFirst()
        .orElse(null);
  }

  /** True if both were computed again and match; also if there is no review to be closed. */
  public boolean match() {
    return ofPlan == Held.MATCHES && ofReview == Held.MATCHES;
  }

  /** True if one was computed again and the file gives another. */
  public boolean differ() {
    return ofPlan == Held.DIFFERS || ofReview == Held.DIFFERS;
  }

  private static Held ofPlan(SessionState state) {
    Plan plan = state.plan();
    byte[] bytes = state.planText().getBytes(StandardCharsets.UTF_8);
    Fingerprint stated = state.planFingerprint();
    if (!state.hasKey()) {
      return Fingerprint.sha256(bytes).equals(stated) ? Held.MATCHES : Held.DIFFERS;
    }
    if (!state.covered() && !belongs(state.sealedKey(), state, bytes)) {
      return Held.DIFFERS;
    }
    return state
        .openKey()
        .map(key -> Sealing.verified(bytes, plan.rule(), key, stated))
        .map(found -> found == Verification.MATCHES ? Held.MATCHES : Held.DIFFERS)
        .orElse(Held.SEALED);
  }

  private static boolean belongs(SealedKey sealed, SessionState state, byte[] plan) {
    return sealed.planHash().equals(Fingerprint.sha256(plan))
        && sealed.sessionId().equals(state.id().text());
  }

  private static java.util.stream.Stream<Entry> closings(SessionState state) {
    return state.entries().stream()
        .map(StoredEntry::entry)
        .filter(entry -> entry.fact() instanceof Fact.ReviewClosed);
  }

  private static boolean gives(SessionState state, Entry closing) {
    return closing.fact() instanceof Fact.ReviewClosed closed
        && of(state, closing).equals(closed.fingerprint());
  }

  /** The fingerprint of the review as a closing had seen it. */
  private static Fingerprint of(SessionState state, Entry closing) {
    List<Head> heads = new ArrayList<>(closing.seen());
    if (closing.number() > 1) {
      heads.add(new Head(closing.notebook(), closing.number() - 1, closing.previous()));
    }
    return ReviewFingerprint.of(
        state.id().text(),
        state.planFingerprint(),
        heads.stream()
            .map(
                head ->
                    new ChainHead(
                        head.notebook().text(),
                        head.number(),
                        Fingerprint.parse(head.hash().hex())))
            .toList());
  }

  /** What somebody's number is to a file. */
  public enum Answer {
    /** The fingerprint of its plan, and plan and key give it. */
    PLAN,
    /** The fingerprint that it states for its plan; plan and order are still sealed. */
    PLAN_SEALED,
    /** The fingerprint of its closed review. */
    REVIEW,
    /** Of a closing of the review that is in the file, but another closing counts. */
    OTHER_CLOSING,
    /** The file states it, but its entries give another. */
    STATED_ONLY,
    /** The file notes that it was given to someone, but gives no such fingerprint. */
    NOTED_ONLY,
    /** Not of this file. */
    NO;

    /** True if the file gives this number, as far as can be computed now. */
    public boolean yes() {
      return switch (this) {
        case PLAN, PLAN_SEALED, REVIEW, OTHER_CLOSING -> true;
        case STATED_ONLY, NOTED_ONLY, NO -> false;
      };
    }
  }

  /**
   * Compares what someone was given.
   *
   * @param digits the first hexadecimal digits of a fingerprint or all, in lower case, at least
   *     {@link #LEAST_DIGITS}
   */
  public static Answer compare(SessionState state, String digits) {
    FileFingerprints file = of(state);
    if (begins(file.plan, digits)) {
      return switch (file.ofPlan) {
        case MATCHES -> Answer.PLAN;
        case SEALED -> Answer.PLAN_SEALED;
        case DIFFERS -> Answer.STATED_ONLY;
      };
    }
    if (file.review.filter(f -> begins(f, digits)).isPresent()) {
      return file.ofReview == Held.MATCHES ? Answer.REVIEW : Answer.STATED_ONLY;
    }
    // What a note says of a number proves nothing: only what the entries give does.
    if (closings(state).anyMatch(c -> gives(state, c) && begins(of(state, c), digits))) {
      return Answer.OTHER_CLOSING;
    }
    boolean noted =
        state.fingerprintsGiven().stream()
            .map(Fact.FingerprintGiven::value)
            .anyMatch(value -> value != null && begins(value, digits));
    return noted ? Answer.NOTED_ONLY : Answer.NO;
  }

  private static boolean begins(Fingerprint fingerprint, String digits) {
    return fingerprint.hex().startsWith(digits);
  }
}
