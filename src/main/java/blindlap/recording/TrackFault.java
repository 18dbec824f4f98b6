package blindlap.recording;

import blindlap.fault.Fault;

/** Why a recording cannot be used. Details are listed in their order. */
public enum TrackFault implements Fault {
  /** Bytes that are no text: another format. */
  BINARY,
  /** Text that is neither GPX nor TCX. */
  UNKNOWN_FORMAT,
  /** XML that ends early, is not well-formed, or holds letters that are none: the line. */
  NOT_WELL_FORMED,
  /** A document type, entities, elements far too deep or texts far too long: no recorder's. */
  NOT_ALLOWED,
  /** More points than anyone records in a day: the most. */
  TOO_MANY_POINTS,
  /** A place off the globe, or no number: number of the point, what stands there. */
  NO_PLACE,
  /** No two points have both place and time: how many points there are. */
  NO_POINTS,
  /** Most points share their time with another: how many of how many. */
  TIMES_EQUAL,
  /** A point is earlier than the one in front of it: its number among those with a time. */
  TIME_BACK,
  /** Fewer than two points lie between two times: from, to, the recording's last second. */
  NO_STRETCH,
  /** The recorder rested between two times, so that they hold more than one lap. */
  RESTS
}
