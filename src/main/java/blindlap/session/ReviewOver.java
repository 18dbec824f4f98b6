package blindlap.session;

import blindlap.fault.Problem;
import java.util.List;

/** Why nothing of a day is changed any more. */
final class ReviewOver {
  private ReviewOver() {}

  /** Empty while the review is open. */
  static List<Problem> problems(SessionState state) {
    return switch (state.step()) {
      case ABANDONED -> List.of(Problem.of(SessionFault.IS_ABANDONED, ""));
      case REVIEW_CLOSED -> List.of(Problem.of(SessionFault.REVIEW_IS_CLOSED, ""));
      case UNSEALED, REPORTED -> List.of(Problem.of(SessionFault.ALREADY_UNSEALED, ""));
      case COMMITTED, RIDING, CUT_SHORT, DAY_CLOSED -> List.of();
    };
  }
}
