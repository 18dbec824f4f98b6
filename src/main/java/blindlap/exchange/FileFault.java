package blindlap.exchange;

import blindlap.fault.Fault;

/** What can be wrong with a file of laps. Details are listed in their order. */
public enum FileFault implements Fault {
  /** The file is not UTF-8 text. */
  NOT_UTF8,
  /** The file has no rows. */
  NO_ROWS,
  /** A column that is neither known nor a measure: column, known columns. */
  UNKNOWN_COLUMN,
  /** A column twice: column. */
  COLUMN_TWICE,
  /** Neither lap nor code is among the columns: the columns found. */
  NO_LAP_COLUMN,
  /** Column code needs lap_in_stint where stints have more than one lap: laps per stint. */
  NO_LAP_IN_STINT,
  /** A row with another number of cells than the header: found, expected. */
  RAGGED_ROW,
  /** A lap number that is not a whole number of the day: typed, most. */
  NOT_A_LAP,
  /** A code that is not of this session: code. */
  UNKNOWN_CODE,
  /** Lap number and code name different stints: lap, code. */
  LAP_AND_CODE_DIFFER,
  /** A value that is not a number: measure, typed. */
  NOT_A_NUMBER,
  /** A time that is neither seconds nor m:ss.s: measure, typed. */
  NOT_A_TIME_FORM,
  /** Decimal commas and decimal points in one file: typed, the line of the other. */
  MIXED_DECIMALS,
  /** A number with the decimal sign that was not chosen: typed. */
  OTHER_DECIMALS,
  /** A value with both a decimal comma and a decimal point: measure, typed. */
  TWO_SIGNS,
  /** Not a date: typed. */
  NOT_A_DATE,
  /** Not the number of a lap: typed. */
  NOT_A_LAP_NUMBER,
  /** No stint is named. */
  NO_STINT,
  /** A lap of an old day twice: lap, the line of the other. */
  LAP_AGAIN,
  /** Laps of a day whose numbers lie too far apart: first, this, most. */
  LAPS_APART,
  /** A stint that goes on after another: stint. */
  STINT_AGAIN,
  /** Another setup within a stint: stint, setup, setup before. */
  SETUP_IN_STINT,
  /** A stint with another number of laps than the first: stint, laps, laps of the first. */
  UNEVEN_STINT,
  /** The file cannot be read: what. */
  CANNOT_READ,
  /** The helper's table is not UTF-8 text. */
  HELPER_NOT_UTF8,
  /** The helper's table has no rows. */
  HELPER_NO_ROWS,
  /** The helper's table cannot be read: what. */
  HELPER_CANNOT_READ,
  /** The helper's table has no column for the stint: the columns found. */
  NO_STINT_COLUMN,
  /** Not a stint that the helper handles: typed, first, last. */
  NOT_A_STINT,
  /** A stint twice: stint, the line of the other. */
  STINT_TWICE,
  /** A code of another stint: stint, code. */
  CODE_OF_ANOTHER,
  /** A stint under the number of a trial that is not its own: stint, number. */
  TRIAL_OF_ANOTHER,
  /** Nobody said what was fitted: stint. */
  FITTED_MISSING,
  /** What was fitted is none of the setups: typed, their names. */
  NOT_A_FIT,
  /** Neither a tick nor none: column, typed. */
  NOT_A_TICK
}
