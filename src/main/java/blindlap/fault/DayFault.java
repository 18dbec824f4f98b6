package blindlap.fault;

/** Why a day, or a measure of it, cannot be compared. Details are listed in their order. */
public enum DayFault implements Fault {
  /** Fewer than two setups. */
  NOTHING_TO_COMPARE,
  /** No measure is primary. */
  NO_PRIMARY,
  /** No trial of a telling run was answered. */
  NO_TRIAL_ANSWERED,
  /** The worthwhile difference is not above 0: what it is. */
  WORTHWHILE_NOT_POSITIVE,
  /** Other than two setups where two are compared: setups. */
  NOT_TWO_SETUPS,
  /** The order ridden has another number of stints than the plan: its own, the plan's. */
  ORDER_LENGTH,
  /** The order ridden could not have been drawn: the order. */
  ORDER_NOT_ADMISSIBLE,
  /** No stint that counts has a value. */
  NO_VALUE,
  /** Too few stints have a value: how many have, how many are needed. */
  TOO_FEW_STINTS,
  /** On the stints left one setup is missing or follows the drift. */
  SETUPS_NOT_APART,
  /** Two levels of a setting are the same number: the number. */
  LEVEL_TWICE,
  /** On the stints left there is one level, or levels follow the drift. */
  LEVELS_NOT_APART,
  /** Argument: number of the covariate, from 1. */
  COVARIATE_HOLDS_NOTHING,
  /** A value is beyond all numbers. */
  NOT_FINITE,
  /** A value has no logarithm: the value. */
  NOT_ABOVE_ZERO,
  /** A count is below 0: the count. */
  NEGATIVE_COUNT,
  /** No stint of a setup has a count: its letter. */
  NO_COUNT_ON_SETUP,
  /** All values are the same once setups and drift are removed. */
  NO_VARIATION,
  /** Which label was on which setup has not been read, and a series is over setups. */
  MASKS_UNREAD,
  /** More setups over several days than intervals are known for: how many, most. */
  FIELD_TOO_WIDE,
  /** Every rider ranks all setups alike. */
  ALL_TIED
}
