package blindlap.desk;

import blindlap.fault.Fault;

/** Why a recording is not brought in, or not settled so. Details are listed in their order. */
public enum RecordingFault implements Fault {
  /** The plan fixes no trail version and none was chosen: names in the trail book. */
  NO_TRAIL,
  /** The trail book is empty, and the plan fixes no trail version. */
  NO_TRAIL_BOOK,
  /** The trail book has no such trail: name, names in the trail book. */
  TRAIL_UNKNOWN,
  /** A trail has no such version: name, number, numbers that it has. */
  TRAIL_VERSION_UNKNOWN,
  /** There is no such file: file. */
  FILE_MISSING,
  /** The file cannot be read: file. */
  FILE_UNREADABLE,
  /** No ride through two gates of the trail: trail. */
  NO_PASS,
  /** More rides than anyone takes on a day: number, most. */
  TOO_MANY_PASSES,
  /** Passes wait for a person: number. */
  WAITS,
  /** Several files, of which one is to be settled with answers given beforehand. */
  SETTLE_ONE_FILE,
  /** Not in the form of an answer: typed. */
  NOT_AN_ANSWER,
  /** No pass has this number: number, most. */
  NO_SUCH_PASS,
  /** The pass fits without doubt: pass. */
  PASS_IS_CLEAR,
  /** The pass is a lap, and is kept or left out: pass, lap. */
  PASS_IS_A_LAP,
  /** The pass fits no lap, so that nothing can be kept or left out: pass. */
  PASS_IS_NO_LAP,
  /** No such lap was ridden: lap. */
  LAP_NOT_OF_DAY,
  /** Passes and laps would be out of order: pass, lap, other pass, its lap. */
  OUT_OF_ORDER
}
