package blindlap.exchange;

import blindlap.fault.Fault;

/** Why a data package cannot be read. Details are listed in their order. */
public enum PackageFault implements Fault {
  /** There is no opened key: the package is of a sealed session. */
  NO_KEY,
  /** It is the package of a series, which has one of every session in it. */
  OF_A_SERIES,
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
  /** The session of the opened key is not the id of one: what stands there. */
  KEY_SESSION,
  /** The opened key does not name the session it belongs to. */
  KEY_NO_SESSION,
  /** The opened key was drawn in a way that this program does not know: what stands there. */
  KEY_ALGORITHM,
  /** A row has another number of cells than the header: file, row, its cells, columns. */
  RAGGED_ROW,
  /** A quote is out of place: file, line. */
  BAD_TABLE,
  /** A column is missing: its name. */
  NO_COLUMN,
  /** Not a number: what stands there, its column. */
  NOT_A_NUMBER,
  /** A sureness that is none: as written. */
  NOT_A_SURENESS,
  /** Not the letter of a setup: what stands there. */
  NOT_A_SETUP,
  /** Not a kind of remark: what stands there. */
  NOT_A_REMARK,
  /** Not a time: file, what stands there. */
  NOT_A_TIME,
  /** A stint that the plan does not have: file, stint, stints of the plan. */
  NO_SUCH_STINT,
  /** Laps of a stint are counted from 1: file, what stands there. */
  NO_SUCH_LAP,
  /** Neither true nor false: its column, what stands there. */
  NOT_YES_OR_NO,
  /** Not the name of a setup of the plan: what stands there. */
  NO_SETUP_OF_PLAN,
  /** Not an event that makes a lap void: what stands there. */
  NOT_AN_EVENT,
  /** A lap twice: stint, lap. */
  LAP_TWICE,
  /** A value that cannot stand for its measure: measure. */
  NOT_A_VALUE,
  /** A file is larger than any that is written: its name. */
  TOO_LARGE,
  /** Bytes are not those of the hash beside the file's name. */
  FILE_CHANGED,
  /** A file gives its hash but for its line ends: which. */
  LINE_ENDS_CHANGED,
  /** A file that the description names is missing. */
  FILE_GONE,
  /** A file that answers come from, and that the description does not name. */
  FILE_ADDED,
  /** The description has hashes, but not what belongs to them. */
  NO_PROOF,
  /** The description says something else of the session than the session itself. */
  OTHER_SESSION,
  /** The session inside cannot be read: why. */
  SESSION_UNREADABLE,
  /** The session inside is still sealed, the package is not. */
  SESSION_SEALED,
  /** A fingerprint does not match the session inside. */
  FINGERPRINT_DIFFERS,
  /** A cell is not what follows from the session inside: what stands there, what follows. */
  CELL_DIFFERS,
  /** Rows of a table: those there, those that follow. */
  ROWS_DIFFER,
  /** A field is not what follows from the rest: what stands there, what follows. */
  FIELD_DIFFERS
}
