package blindlap.session;

import blindlap.fault.Fault;

/**
 * What an entry says that cannot be, whatever its hash: held against the plan that its own session
 * holds. No program writes such entries. Details are listed in their order.
 */
public enum MeaningFault implements Fault {
  /** A lap that the plan does not have: stint, lap, stints, laps a stint. */
  NO_SUCH_LAP,
  /** A stint that the plan does not have: stint, stints. */
  NO_SUCH_STINT,
  /** A measure that the plan does not have: its name, measures of the plan. */
  NO_SUCH_MEASURE,
  /** A covariate that the plan does not have: its name, covariates of the plan. */
  NO_SUCH_COVARIATE,
  /** A covariate said for a lap where the plan has it once a stint, or the other way: its name. */
  NOT_A_PLACE,
  /** A value that cannot stand for its measure: measure, value. */
  NOT_A_VALUE,
  /** A number with more digits than anyone types or any watch shows: of what, most digits. */
  TOO_MANY_DIGITS,
  /** A watch that ran backwards, or for centuries: measure. */
  NOT_A_TIME,
  /** A setup that the plan does not have: its number, setups. */
  NO_SUCH_SETUP,
  /** Labels that are not each on a setup of its own: setups named, setups. */
  NO_MAPPING,
  /** A recorded lap with another number of gates or pieces than its trail has: gates, pieces. */
  NOT_A_RECORDING,
  /** A sector that the plan's trail does not have: from, to. */
  NO_SUCH_SECTOR,
  /** A warm-up lap that nobody rides: its number. */
  NO_SUCH_WARM_UP,
  /** The plan is larger than any that can be committed: stints, laps a stint. */
  PLAN_TOO_LARGE,
  /** A telling run whose stints are not the laps of its trials: stints. */
  NOT_TRIALS,
  /** An answer that is not at the end of a trial, or names none of its laps: lap of the day. */
  NO_SUCH_ANSWER,
  /** Another number of codes than stints: codes, stints. */
  CODES_COUNT,
  /** A code twice: the code. */
  CODE_TWICE,
  /** A code that is never drawn: the code. */
  NOT_A_CODE,
  /** A comparison without a sealed key. */
  KEY_MISSING,
  /** A noise run with a sealed key. */
  KEY_NOT_WANTED,
  /** The sealed key is that of another session or plan. */
  KEY_OF_ANOTHER,
  /** The work that one guess at the phrase costs: rounds, least, most. */
  ROUNDS,
  /** The opened key does not give the fingerprint of the plan. */
  OPENED_KEY,
  /** The entries before the closing do not give the fingerprint of the review. */
  CLOSED_REVIEW,
  /** An edition of the method that there cannot be: its number. */
  NO_SUCH_EDITION
}
