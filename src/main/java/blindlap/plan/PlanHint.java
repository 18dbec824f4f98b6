package blindlap.plan;

import blindlap.fault.Fault;

/** What a plan may hold, but its tester should know of. */
public enum PlanHint implements Fault {
  /** Settings are listed, and none differs. */
  NOTHING_DIFFERS,
  /** Setups differ in more than one setting, with a reason: detail settings, reason. */
  COMPARES_PACKAGES,
  /** Setups differ in mass on the bike: detail grams between lightest and heaviest. */
  MASS_SHOWS,
  /** The mass of some setups is known, that of others not. */
  MASS_OF_SOME,
  /** Nothing is known of the rider's noise. */
  NO_NOISE,
  /** No timetable was made. */
  NO_TIMETABLE,
  /** The swap time is shorter than practice asks for: detail minutes, longest, proposal. */
  SWAP_TOO_SHORT,
  /** The session is unblinded. */
  UNBLINDED,
  /** Nobody is named who swaps. */
  NO_HELPER,
  /** A limit without a place in the maker's manual: detail what. */
  LIMIT_WITHOUT_SOURCE,
  /** Rides all the same, though nothing can be shown: detail the reason given. */
  OVERRIDDEN,
  /** Bikes are never changed over: detail stint of the half day. */
  BIKES_KEPT,
  /** A rule of three or four setups shows less a stint: detail setups. */
  MANY_SETUPS
}
