package blindlap.desk;

import blindlap.exchange.DayHandlings;
import blindlap.exchange.DayRemarks;
import blindlap.exchange.HelperFits;
import blindlap.review.DayRecord;
import blindlap.session.SessionState;

/** What the analysis of an unsealed session uses, with the helper's opened records read. */
final class OpenedDays {
  private OpenedDays() {}

  static DayRecord of(SessionState state) {
    return DayRecord.of(
            state, HelperFits.read(state.openedHelperRecords(), state.plan()), DayRemarks.of(state))
        .with(DayHandlings.of(state));
  }
}
