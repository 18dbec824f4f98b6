package blindlap.desk.day;

import blindlap.session.day.SessionId;

/** What rider and starter do on a phone: all that they do on a page, and one thing more. */
public interface PhoneActs extends RiderDays {
  /**
   * Without signal the rider read the code on the plate and rode: a hand-over said by the rider. It
   * is one more departure from the plan only where the helper's page was waited for and did not
   * hand the bike over.
   *
   * @param stint from 1; 0 = the warm-up
   */
  DayResult plateRead(SessionId id, int stint);
}
