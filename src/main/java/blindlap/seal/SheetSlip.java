package blindlap.seal;

import blindlap.fault.Fault;

/** What is wrong with the rows of a key sheet as typed. Details: the row, and what is listed. */
public enum SheetSlip implements Fault {
  /** The row breaks off. */
  INCOMPLETE,
  /** Something that is no row comes before the first. */
  NO_ROW_AT_FIRST,
  /** Something that is no row: the row before it. */
  NO_ROW,
  /** The row does not fit its check. */
  CHECK_DIFFERS,
  /** The row stands there twice. */
  TWICE,
  /** The sheet is of another version: which. */
  OTHER_VERSION,
  /** The row of the sealed part is not in its form. */
  SEALED_PART,
  /** The rows fit their checks but make no key. */
  NOT_ONE_SHEET,
  /** The row is missing. */
  MISSING
}
