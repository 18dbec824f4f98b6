package blindlap.plan;

import blindlap.fault.Fault;

/** What a plan may hold, but its tester should know of. */
public enum PlanHint implements Fault {
  /** Settings are listed, and none differs. */
  NOTHING_DIFFERS,
  /** Setups differ in more than one setting, with a reason: detail settings, reason. */
  COMPARES_PACKAGES,
  /** The same of a telling run: details settings, reason. */
  TELLS_PACKAGES,
  /** A telling run before which the rider has not written what he or she would notice. */
  NOTHING_CLAIMED,
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
  /** The rider knows the whole order. */
  UNBLINDED,
  /** The rider is shown each setup when it is to be mounted. */
  DRAWN,
  /**
   * What blocks give away of what comes: detail stints foreseen, stints, by a whole-day shuffle.
   */
  BLOCKS_FORESEEN,
  /** The rider knows the label and not the part. */
  MASKED,
  /** Labels are read from marks, so that nothing is sealed. */
  MARKS_NOT_SEALED,
  /** Fewer units that look alike than stints, and nobody covers again: detail units, stints. */
  UNITS_TOO_FEW,
  /** The day on which a friend prepares is not said. */
  PREPARED_WHEN,
  /** Guesses are asked for where there is nothing to guess: detail level. */
  GUESSES_NOT_ASKED,
  /** Whoever judges a measure afterwards knows the key: detail measure, name. */
  ASSESSOR_KNOWS,
  /** Nobody is named who swaps. */
  NO_HELPER,
  /** A limit without a place in the maker's manual: detail what. */
  LIMIT_WITHOUT_SOURCE,
  /** Rides all the same, though nothing can be shown: detail the reason given. */
  OVERRIDDEN,
  /** Bikes are never changed over: detail stint of the half day. */
  BIKES_KEPT,
  /** A rule of three or four setups shows less a stint: detail setups. */
  MANY_SETUPS,
  /**
   * A recorder cannot show what is worthwhile: detail measure, worthwhile seconds, what the
   * recorder leaves between two setups over the day, metres a second assumed.
   */
  RECORDER_HIDES,
  /** What a recorder leaves: detail measure, of one time, between two setups, metres a second. */
  RECORDER_LEAVES
}
