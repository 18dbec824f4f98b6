package blindlap.session;

import blindlap.fault.Problem;
import blindlap.plan.BlindLevel;
import blindlap.session.day.Step;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Decides on the view of one stint for somebody who is not the helper: for which stints there may
 * be a code, whether one is shown, and what was answered. It knows nothing of the order.
 */
public final class OneStintCommands {
  private final SessionState state;

  public OneStintCommands(SessionState state) {
    this.state = state;
  }

  /** Whether anything may be shown in this session now; the answer is a refusal, or null. */
  public @Nullable Outcome mayShow() {
    BlindLevel level = state.plan().blinding().level();
    if (!state.hasKey() || state.covered() || !level.blind()) {
      return Outcome.refused(SessionFault.ONE_STINT_LEVEL, "");
    }
    if (state.step() == Step.ABANDONED) {
      return Outcome.refused(SessionFault.IS_ABANDONED, "");
    }
    return state.step().day()
        ? null
        : Outcome.refused(SessionFault.RECORDING_IS_OVER, "", state.step());
  }

  /** Stints that are still to ride and were shown to nobody. */
  public List<Integer> left() {
    return IntStream.rangeClosed(1, state.day().lastStint())
        .filter(stint -> !begun(stint) && !state.oneStint().containsKey(stint))
        .boxed()
        .toList();
  }

  /** A prepared unit has its record long before it is mounted; a helper's record ends a swap. */
  private boolean begun(int stint) {
    return state.day().handedOver(stint)
        || state.day().stintBegun(stint)
        || state.plan().blinding().level() == BlindLevel.HELPER
            && state.helperRecords().containsKey(stint);
  }

  /** Whether what to set for a stint may be shown; the answer is a refusal, or null. */
  public @Nullable Outcome mayShow(int stint) {
    Outcome refusal = mayShow();
    if (refusal != null) {
      return refusal;
    }
    if (stint < 1 || stint > state.day().lastStint()) {
      return Outcome.refused(SessionFault.NO_SUCH_STINT, "", stint, state.day().lastStint());
    }
    if (state.oneStint().containsKey(stint)) {
      return Outcome.refused(SessionFault.ONE_STINT_USED, "", stint);
    }
    return begun(stint) ? Outcome.refused(SessionFault.ONE_STINT_BEGUN, "", stint) : null;
  }

  /** Somebody is shown what to set for a stint. */
  public Outcome show(int stint, String name) {
    Outcome refusal = mayShow(stint);
    if (refusal != null) {
      return refusal;
    }
    return name.isBlank()
        ? Outcome.refused(SessionFault.ONE_STINT_NOBODY, "")
        : Outcome.accepted(new OneStintShown(stint, name.strip()));
  }

  /** The first stint that was shown and of which it was not said whether the rider saw. */
  public Optional<Integer> unanswered() {
    return state.oneStint().entrySet().stream()
        .filter(shown -> shown.getValue().open())
        .map(java.util.Map.Entry::getKey)
        .findFirst();
  }

  /**
   * Whether the rider saw; if so the blind is broken in that stint.
   *
   * @param what for the entry of the broken blind, if it is
   */
  public Outcome answer(int stint, boolean riderSaw, String what) {
    OneStint shown = state.oneStint().get(stint);
    if (shown == null) {
      return Outcome.refused(SessionFault.ONE_STINT_NOT_SHOWN, "", stint);
    }
    if (!shown.open()) {
      return Outcome.refused(SessionFault.ONE_STINT_ANSWERED, "", stint);
    }
    Outcome broken = new LifeCommands(state).blindBroken(stint, what);
    if (!(broken instanceof Outcome.Accepted accepted)) {
      return broken;
    }
    OneStintAnswered answered = new OneStintAnswered(stint, riderSaw);
    return riderSaw
        ? new Outcome.Accepted(List.of(answered, accepted.facts().get(0)))
        : Outcome.accepted(answered);
  }

  /** Why nothing may be shown, as problems. */
  public Optional<List<Problem>> refusal() {
    return mayShow() instanceof Outcome.Refused refused
        ? Optional.of(refused.problems())
        : Optional.empty();
  }
}
