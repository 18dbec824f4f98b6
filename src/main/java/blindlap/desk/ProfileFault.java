package blindlap.desk;

import blindlap.fault.Fault;

/** Why a profile was not kept. Details in their order. */
public enum ProfileFault implements Fault {
  /** What was typed has no colon between name and measures. */
  NO_COLON,
  /** It has no name. */
  NO_NAME,
  /** A name, of the profile or of a measure, is too long: name, most characters. */
  LONG_NAME,
  /** The name holds a colon: name. */
  COLON,
  /** It names no measure: name. */
  NO_MEASURE,
  /** It names too many measures: name, how many, most. */
  MANY,
  /** It names a measure twice: name, measure. */
  TWICE,
  /** There is no profile of this name: name, those there are. */
  NO_SUCH,
  /** There is no profile at all: name. */
  NONE
}
