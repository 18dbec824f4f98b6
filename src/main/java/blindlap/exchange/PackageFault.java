package blindlap.exchange;

import blindlap.fault.Fault;

/** Why a data package cannot be read. Details are listed in their order. */
public enum PackageFault implements Fault {
  /** There is no opened key: the package is of a sealed session. */
  NO_KEY,
  /** A file is missing: its name. */
  NO_FILE,
  /** A file is not JSON: its name. */
  NOT_JSON,
  /** The finding is not one that was written here: its file. */
  NOT_A_FINDING,
  /** The plan is not in the form that is written: its file, the first wrong place. */
  NOT_A_PLAN,
  /** The opened order is not one of the plan's setups for every stint: the order, stints. */
  ORDER_DOES_NOT_FIT,
  /** Codes, seed or nonce of the opened key are not what a key has: stints. */
  KEY_DOES_NOT_FIT,
  /** A row has another number of cells than the header: file, row, its cells, columns. */
  RAGGED_ROW,
  /** A quote is out of place: file, line. */
  BAD_TABLE,
  /** A column is missing: its name. */
  NO_COLUMN,
  /** Not a number: what stands there, its column. */
  NOT_A_NUMBER,
  /** Not the letter of a setup: what stands there. */
  NOT_A_SETUP,
  /** Not a kind of remark: what stands there. */
  NOT_A_REMARK,
  /** Not a time: file, what stands there. */
  NOT_A_TIME,
  /** A stint that the plan does not have: file, stint, stints of the plan. */
  NO_SUCH_STINT,
  /** Laps of a stint are counted from 1: file, what stands there. */
  NO_SUCH_LAP
}
