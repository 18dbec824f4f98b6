package blindlap.session;

import blindlap.plan.BlindLevel;
import blindlap.seal.Masks;
import blindlap.seal.SealedKey;
import blindlap.session.day.Step;
import java.util.List;

/** Decides on masked labels: which label is on which setup is sealed, guessed once, and read. */
public final class MaskCommands {
  private final SessionState state;

  public MaskCommands(SessionState state) {
    this.state = state;
  }

  /** Whether masks may be sealed now; the answer is a refusal, or null. */
  public @org.jspecify.annotations.Nullable Outcome maySeal() {
    if (!masked()) {
      return Outcome.refused(SessionFault.MASKS_NONE, "");
    }
    if (state.step() == Step.ABANDONED) {
      return Outcome.refused(SessionFault.IS_ABANDONED, "");
    }
    if (state.masks().isPresent()) {
      return Outcome.refused(SessionFault.MASKS_TWICE, "");
    }
    return state.shown().isEmpty() && state.step() == Step.COMMITTED
        ? null
        : Outcome.refused(SessionFault.MASKS_TOO_LATE, "");
  }

  /** A friend sealed which label is on which setup. */
  public Outcome seal(SealedKey key) {
    Outcome refusal = maySeal();
    return refusal == null ? Outcome.accepted(new MasksSealed(key)) : refusal;
  }

  /** Whether the rider may be asked for the guess now; the answer is a refusal, or null. */
  public @org.jspecify.annotations.Nullable Outcome mayGuess() {
    if (!masked()) {
      return Outcome.refused(SessionFault.MASKS_NONE, "");
    }
    if (state.masksGuessed().isPresent()) {
      return Outcome.refused(SessionFault.MASKS_GUESSED, "");
    }
    if (state.step().day()) {
      return Outcome.refused(SessionFault.MASKS_GUESS_EARLY, "", state.step());
    }
    if (state.step() == Step.ABANDONED) {
      return Outcome.refused(SessionFault.IS_ABANDONED, "");
    }
    if (state.unsealed() || state.masksRead().isPresent()) {
      return Outcome.refused(SessionFault.MASKS_GUESS_LATE, "");
    }
    return null;
  }

  /**
   * The rider's one guess, after the day is closed and before any finding is shown.
   *
   * @param setups by label, 0 = A; empty if the rider does not guess
   */
  public Outcome guess(List<Integer> setups) {
    Outcome refusal = mayGuess();
    if (refusal != null) {
      return refusal;
    }
    return setups.isEmpty() || fits(setups)
        ? Outcome.accepted(new MasksGuessed(setups))
        : noMapping();
  }

  /** Whether masks may be read now; the answer is a refusal, or null. */
  public @org.jspecify.annotations.Nullable Outcome mayRead() {
    if (!masked()) {
      return Outcome.refused(SessionFault.MASKS_NONE, "");
    }
    if (state.masksRead().isPresent()) {
      return Outcome.refused(SessionFault.MASKS_READ_TWICE, "");
    }
    return switch (state.step()) {
      case ABANDONED -> Outcome.refused(SessionFault.IS_ABANDONED, "");
      case REVIEW_CLOSED, UNSEALED, REPORTED -> null;
      case COMMITTED, RIDING, CUT_SHORT, DAY_CLOSED ->
          Outcome.refused(SessionFault.MASKS_READ_EARLY, "", state.step());
    };
  }

  /** Which label is on which setup was read. */
  public Outcome read(List<Integer> setups, MasksRead.From from) {
    Outcome refusal = mayRead();
    if (refusal != null) {
      return refusal;
    }
    return fits(setups) ? Outcome.accepted(new MasksRead(setups, from)) : noMapping();
  }

  private boolean masked() {
    return state.covered() && state.plan().blinding().level() == BlindLevel.MASKED;
  }

  private boolean fits(List<Integer> setups) {
    return Masks.isMapping(setups, state.plan().setups().size());
  }

  private Outcome noMapping() {
    return Outcome.refused(SessionFault.NOT_A_MAPPING, "", state.plan().setups().size());
  }
}
