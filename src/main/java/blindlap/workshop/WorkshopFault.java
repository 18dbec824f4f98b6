package blindlap.workshop;

import blindlap.fault.Fault;

/**
 * Why workshop arithmetic has no answer. Details are listed in their order; a number that is at
 * fault is named as calculation requests name it.
 */
public enum WorkshopFault implements Fault {
  /** A number is infinite or none at all: which. */
  NOT_FINITE,
  /** A number is not above 0: which, what it is. */
  NOT_POSITIVE,
  /** A number is too small or too large: which, least, most, what it is. */
  OUTSIDE,
  /** The last rate of a progressive coil is below its first. */
  RATE_FALLS,
  /** The ramp of a progressive coil begins where the stroke ends. */
  RAMP_AT_END,
  /** A coil has the rate not in one place but along its whole straight part. */
  RATE_OF_STRAIGHT_PART,
  /** The spring would be fully compressed: its rate. */
  SPRING_TOO_SOFT,
  /** Clicks are counted in whole numbers: what was typed. */
  NOT_WHOLE,
  /** An adjuster has at least one click: what was typed. */
  NO_CLICKS,
  /** There is no mass. */
  NO_MASS,
  /** Two units measure different things: the units. */
  OTHER_KIND,
  /** A temperature lies below absolute zero: number, unit. */
  BELOW_ABSOLUTE_ZERO,
  /** No unit has this symbol: the symbol, those there are. */
  UNKNOWN_UNIT
}
