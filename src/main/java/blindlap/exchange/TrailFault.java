package blindlap.exchange;

import blindlap.fault.Fault;

/** Why a trail cannot be used. Details are listed in their order; features count from 1. */
public enum TrailFault implements Fault {
  /** Not UTF-8. */
  NOT_UTF8,
  /** Not JSON: the line. */
  NOT_JSON,
  /** JSON, but no collection of features. */
  NO_COLLECTION,
  /** A feature lacks something or has it in another form: feature, field. */
  NOT_IN_FORM,
  /** A feature that is no line: feature, its geometry. */
  NOT_A_LINE,
  /** Gates without a line. */
  NO_LINE,
  /** A second line: feature. */
  TWO_LINES,
  /** A trail without a name. */
  NO_NAME,
  /** A name of no or too many characters, or with others than a line may hold: name, most. */
  NAME,
  /** A coordinate that is no number in its bounds: feature, place, what stands there. */
  NO_NUMBER,
  /** A place off the globe: feature, place, longitude, latitude. */
  NO_PLACE,
  /** A place of the line too near to a pole: place, highest latitude. */
  POLE,
  /** The line crosses the date line: place, next place. */
  DATE_LINE,
  /** More places than any line needs: the most. */
  TOO_MANY_PLACES,
  /** No two places half a metre apart. */
  TOO_SHORT,
  /** Longer than a plane is the ground: km, most. */
  TOO_LONG,
  /** Seconds that fall, or are not one a place: places. */
  TIMES,
  /** Fewer than two gates or too many: how many, least, most. */
  GATES,
  /** A gate with another number of places than two: gate, places. */
  TWO_ENDS,
  /** A gate whose ends are one place: gate. */
  ONE_PLACE,
  /** A gate that is too wide: gate, metres, most. */
  TOO_WIDE,
  /** Two gates of one name: name. */
  SAME_NAME,
  /** Two gates at one place of the order: order. */
  SAME_ORDER,
  /** A gate that the line does not go through: gate. */
  NOT_CROSSED,
  /** A gate that comes earlier on the line than the gate in front of it: gate, gate in front. */
  OUT_OF_ORDER,
  /** A gate whose direction is not the line's: gate, direction, the line's. */
  WRONG_WAY
}
