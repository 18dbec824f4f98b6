package blindlap.session;

import blindlap.plan.BlindLevel;
import blindlap.seal.ChainHead;
import blindlap.seal.Fingerprint;
import blindlap.seal.HelperRecord;
import blindlap.seal.OpenKey;
import blindlap.seal.ReviewFingerprint;
import blindlap.session.day.Step;
import blindlap.session.day.Trial;
import java.util.List;
import java.util.Map;

/** Decides on the steps of a session's life: cut short, closed, unsealed, reported, abandoned. */
public final class LifeCommands {
  private final SessionState state;

  public LifeCommands(SessionState state) {
    this.state = state;
  }

  /** The day ends after a stint. */
  public Outcome cutShort(int lastStint, String reason, String decidedBy, boolean knowsKey) {
    Outcome over = dayOver();
    if (over != null) {
      return over;
    }
    if (state.cutShort().isPresent()) {
      return Outcome.refused(
          SessionFault.ALREADY_CUT_SHORT, "", state.cutShort().orElseThrow().lastStint());
    }
    if (lastStint < 0 || lastStint > state.plan().stints()) {
      return Outcome.refused(SessionFault.NO_SUCH_STINT, "", lastStint, state.plan().stints());
    }
    if (reason.isBlank() || decidedBy.isBlank()) {
      return Outcome.refused(SessionFault.REASON_MISSING, "", ReasonFor.CUT_SHORT);
    }
    int latest = state.day().latestStint();
    if (latest > lastStint) {
      return Outcome.refused(SessionFault.LAPS_AFTER_CUT, "", lastStint, latest);
    }
    return Outcome.accepted(new Fact.DayCutShort(lastStint, reason, decidedBy, knowsKey));
  }

  private @org.jspecify.annotations.Nullable Outcome dayOver() {
    if (state.step() == Step.ABANDONED) {
      return Outcome.refused(SessionFault.IS_ABANDONED, "");
    }
    return state.step().day()
        ? null
        : Outcome.refused(SessionFault.RECORDING_IS_OVER, "", state.step());
  }

  /**
   * The helper's day is over: the one record that closes it, after those of all stints. It may be
   * written until the review is closed, so that a day which somebody else closed gets it, too.
   *
   * @param record under the number {@link HelperEntry#closing}
   */
  public Outcome helperOver(HelperRecord record) {
    if (state.step() == Step.ABANDONED) {
      return Outcome.refused(SessionFault.IS_ABANDONED, "");
    }
    if (state.step().ordinal() >= Step.REVIEW_CLOSED.ordinal()) {
      return Outcome.refused(SessionFault.REVIEW_IS_CLOSED, "");
    }
    return state.helperRecords().containsKey(record.stint())
        ? Outcome.refused(SessionFault.HELPER_OVER_TWICE, "")
        : Outcome.accepted(new Fact.StintHandled(record));
  }

  /** The rider saw or was told; of masked labels, that it came out which part is which. */
  public Outcome blindBroken(int stint, String what) {
    if (state.step() == Step.ABANDONED) {
      return Outcome.refused(SessionFault.IS_ABANDONED, "");
    }
    if (state.step().ordinal() >= Step.REVIEW_CLOSED.ordinal()) {
      return Outcome.refused(SessionFault.REVIEW_IS_CLOSED, "");
    }
    if (stint < 1 || stint > state.plan().stints()) {
      return Outcome.refused(SessionFault.NO_SUCH_STINT, "", stint, state.plan().stints());
    }
    if (state.covered() && state.plan().level() != BlindLevel.MASKED) {
      return Outcome.refused(SessionFault.BLIND_KNOWING, "");
    }
    if (what.isBlank()) {
      return Outcome.refused(SessionFault.REASON_MISSING, "", ReasonFor.BLIND_BROKEN);
    }
    return Outcome.accepted(new Fact.BlindBroken(stint, what));
  }

  /** The day is over and nothing has been looked at. */
  public Outcome closeDay() {
    Outcome over = dayOver();
    if (over != null) {
      return over;
    }
    if (state.lapsRidden() == 0) {
      return Outcome.refused(SessionFault.NOTHING_RECORDED, "");
    }
    List<Trial> trials = Trial.of(state.day());
    if (!trials.isEmpty()
        && trials.stream().noneMatch(trial -> trial.standing() == Trial.Standing.ANSWERED)) {
      return Outcome.refused(SessionFault.NO_TRIAL_ANSWERED, "");
    }
    return Outcome.accepted(new Fact.DayClosed());
  }

  /** Voids and corrections are over. The second fingerprint covers everything recorded so far. */
  public Outcome closeReview() {
    return switch (state.step()) {
      case ABANDONED -> Outcome.refused(SessionFault.IS_ABANDONED, "");
      case REVIEW_CLOSED -> Outcome.refused(SessionFault.REVIEW_IS_CLOSED, "");
      case UNSEALED, REPORTED -> Outcome.refused(SessionFault.ALREADY_UNSEALED, "");
      case DAY_CLOSED -> Outcome.accepted(new Fact.ReviewClosed(reviewFingerprint(state)));
      case COMMITTED, RIDING, CUT_SHORT ->
          Outcome.refused(SessionFault.DAY_NOT_CLOSED, "", state.step());
    };
  }

  /** The fingerprint of a review as the chains stood just before it was closed. */
  public static Fingerprint reviewFingerprint(SessionState state) {
    List<ChainHead> heads =
        state.headsBeforeReviewClosed().stream()
            .map(
                head ->
                    new ChainHead(
                        head.notebook().text(),
                        head.number(),
                        Fingerprint.parse(head.hash().hex())))
            .toList();
    return ReviewFingerprint.of(state.id().text(), state.planFingerprint(), heads);
  }

  /** Whether the seal may be opened now; the answer is a refusal, or null. */
  public @org.jspecify.annotations.Nullable Outcome mayUnseal() {
    if (!state.hasKey()) {
      return Outcome.refused(SessionFault.OPEN_NOISE_RUN, "");
    }
    return switch (state.step()) {
      case ABANDONED -> Outcome.refused(SessionFault.IS_ABANDONED, "");
      case UNSEALED, REPORTED -> Outcome.refused(SessionFault.ALREADY_UNSEALED, "");
      case REVIEW_CLOSED -> null;
      case COMMITTED, RIDING, CUT_SHORT, DAY_CLOSED ->
          Outcome.refused(SessionFault.REVIEW_NOT_CLOSED, "", state.step());
    };
  }

  /** The seal is opened with a key that was verified against the plan's fingerprint. */
  public Outcome unsealed(OpenKey key, OpenedWith with, Map<Integer, String> helperRecords) {
    Outcome refusal = mayUnseal();
    if (refusal != null) {
      return refusal;
    }
    if (!state.reviewFingerprint().equals(java.util.Optional.of(reviewFingerprint(state)))) {
      return Outcome.refused(SessionFault.FINGERPRINT_DIFFERS, "");
    }
    return Outcome.accepted(new Fact.SealOpened(key, with, helperRecords));
  }

  /** The session ends without a finding. */
  public Outcome abandon(String reason) {
    return abandon(reason, "");
  }

  /**
   * The session ends without a finding.
   *
   * @param unawareBy who declares to have decided it without knowing key or setups; empty if nobody
   *     does
   */
  public Outcome abandon(String reason, String unawareBy) {
    if (state.step() == Step.ABANDONED) {
      return Outcome.refused(SessionFault.IS_ABANDONED, "");
    }
    if (reason.isBlank()) {
      return Outcome.refused(SessionFault.REASON_MISSING, "", ReasonFor.ABANDONING);
    }
    return Outcome.accepted(new Fact.SessionAbandoned(reason, unawareBy.strip()));
  }

  /** Something is added after unsealing. */
  public Outcome amend(String text, String reason) {
    if (state.openKey().isEmpty()) {
      return Outcome.refused(SessionFault.STILL_SEALED, "", state.step());
    }
    if (text.isBlank() || reason.isBlank()) {
      return Outcome.refused(SessionFault.REASON_MISSING, "", ReasonFor.AMENDMENT);
    }
    return Outcome.accepted(new Fact.AmendmentMade(text, reason));
  }
}
