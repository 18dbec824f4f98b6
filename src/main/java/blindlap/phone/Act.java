package blindlap.phone;

import blindlap.desk.day.DayResult;
import blindlap.desk.day.PhoneActs;
import blindlap.session.day.SessionId;

/** What a message says, ready to be done. */
@FunctionalInterface
interface Act {
  DayResult on(PhoneActs days, SessionId id);
}
