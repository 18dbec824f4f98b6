package blindlap.desk;

import blindlap.fault.Fault;

/** What can go wrong between a command and a session. Details are listed in their order. */
public enum DeskFault implements Fault {
  /** No session has this id: typed. */
  NO_SUCH_SESSION,
  /** There is no session that "latest" could mean. */
  NO_LATEST_SESSION,
  /** Several sessions begin with this: typed, number. */
  SEVERAL_SESSIONS,
  /** A phrase word that is not in the list: position, similar words. */
  PHRASE_WORD,
  /** A phrase with another number of words than six: number. */
  PHRASE_COUNT,
  /** The phrase does not open this key. */
  WRONG_PHRASE,
  /** The phrase does not open what a friend sealed of masked labels. */
  MASKS_WRONG_PHRASE,
  /** What a friend sealed of masked labels is damaged. */
  MASKS_DAMAGED,
  /** The key is damaged. */
  KEY_DAMAGED,
  /** The key sheet belongs to another session. */
  SHEET_OF_ANOTHER,
  /** The session moved on while this was typed. */
  MOVED_ON,
  /** The session is unblinded or a noise run, and has no key: what. */
  NO_KEY,
  /** A notebook is to be brought into itself. */
  ITSELF,
  /** The finding cannot be made: why. */
  NO_FINDING,
  /** A helper's sheet is there already: detail file. */
  SHEET_EXISTS,
  /** A helper's sheet cannot be written: detail folder. */
  SHEET_NOT_WRITTEN,
  /** Items of the safety list are not confirmed: number. */
  CHECKS_OPEN,
  /** Settings are not measured: names. */
  MEASURES_OPEN,
  /** A measured value with both a decimal comma and a decimal point: setting, typed. */
  TWO_SIGNS,
  /** A setting outside its tolerance was accepted without a reason: name. */
  OUTSIDE_TOLERANCE,
  /** Nobody said whether the rider is fit to go on. */
  FIT_OPEN,
  /** The rider is not fit to go on. */
  RIDER_NOT_FIT,
  /** The helper's words are too long for one entry. */
  NOTE_TOO_LONG,
  /** A correction for a stint whose bike was not handed over yet: stint. */
  FIT_NOT_YET,
  /** What was on is corrected once it is recorded as mounted. */
  MOUNTED_NOT_YET,
  /** A correction that says what is recorded already: stint, setup. */
  FIT_AS_RECORDED,
  /** Not the number of a stint: typed. */
  FIT_NOT_A_STINT,
  /** A setup that the plan does not have: typed, names. */
  NO_SUCH_SETUP,
  /** A correction after the day was closed. */
  FIT_AFTER_DAY,
  /** A correction after the helper's day was closed. */
  FIT_AFTER_HELPER,
  /** The helper's day is closed while stints have no entry: the first of them. */
  HELPER_NOT_DONE,
  /** Every stint has its entry, so none is left to be kept on paper. */
  NOTHING_ON_PAPER,
  /** A stint from paper out of turn: stint, the stint that is next. */
  PAPER_OUT_OF_TURN,
  /** Ticks from paper without the name of whoever made them: stint. */
  PAPER_BY_MISSING,
  /** A measured value from paper that is not a number: setting, typed. */
  PAPER_NOT_A_NUMBER,
  /** A day PIN that has not four digits. */
  PIN_FORM,
  /** A wrong day PIN: tries left. */
  PIN_WRONG,
  /** Too many wrong PINs. */
  PIN_USED_UP,
  /** The time of every handling is not over yet: what is left. */
  TIME_NOT_OVER,
  /** A handling took longer than planned, and nobody said whether a mishap did it: time given. */
  MISHAP_OPEN,
  /** An old day with too few or too many laps: number, least, most. */
  PLAIN_DAY_LAPS,
  /** An old day without rider or trail. */
  PLAIN_DAY_WHO,
  /** A time whose unit is none of s, ms and min: measure, unit. */
  PLAIN_DAY_UNIT,
  /** No measure is named for a file of old days. */
  PLAIN_DAY_NO_MEASURE,
  /** No day is named, neither by a column nor for the whole file. */
  PLAIN_DAY_NO_DAY,
  /** A measure that earlier plans have as another kind or in another unit: name, kind, unit. */
  PLAIN_DAY_MEASURE,
  /** The same laps of the same day are in the notebook already: session. */
  PLAIN_DAY_TWICE,
  /** No session names this series: series. */
  NO_SUCH_SERIES,
  /** A report of a series before its end: series, unsealed, sessions. */
  SERIES_SEALED,
  /**
   * A session of a declared series whose other sessions are not closed yet: series, closed,
   * declared.
   */
  SERIES_UNFINISHED,
  /** A series is to be ended early, but the session is of no declared series. */
  NO_SERIES_TO_END,
  /** The review would be closed before a recording was brought in: detail measures. */
  RECORDING_AWAITED,
  /** The trail book has nothing: detail trail. */
  TRAIL_BOOK_EMPTY,
  /** The trail book has no trail of this name: detail trail, those it has. */
  NO_SUCH_TRAIL,
  /** The trail book has no version of this number: detail number, trail, those it has. */
  NO_SUCH_TRAIL_VERSION,
  /** The trail book has other gates under this number: detail number, trail. */
  TRAIL_VERSION_DIFFERS,
  /** No day of the notebook enters a field. */
  NO_FIELD,
  /** No field is of what was asked for: those that there are. */
  NO_SUCH_FIELD,
  /** More than one field is of what was asked for: those. */
  SEVERAL_FIELDS,
  /** A reference that is no setup of the field: typed, the field, its setups. */
  NO_SUCH_REFERENCE,
  /** A plan differs from what its series declared: here, declared, session, series. */
  SERIES_DIFFERS,
  /** A series has all its declared sessions: series, declared. */
  SERIES_FULL,
  /** A session of a series is unsealed, so none is added to it: session, series. */
  SERIES_RESULT_KNOWN,
  /** A series was ended early, so none is added to it: series. */
  SERIES_IS_ENDED,
  /** A concealed null run in a series: series. */
  SERIES_NULL_RUN,
  /** A concealed null run where the rider knows what is on, or fits it. */
  NULL_RUN_KNOWING,
  /** A concealed null run on a steps day. */
  NULL_RUN_STEPS,
  /** Levels are to be taken from a session that is no steps day. */
  NO_STEPS_DAY,
  /** A level is to be taken that is not offered: typed, levels that are. */
  LEVEL_NOT_OFFERED,
  /** The two best levels are to be compared where it is not known which they are. */
  NO_TWO_BEST,
  /** A session is to be abandoned that keeps its place in its series: series. */
  SERIES_KEEPS_PLACE,
  /** A series is to be ended early that has all its sessions: series, declared. */
  SERIES_COMPLETE,
  /** Another notebook keeps the covered order. */
  NO_COVER,
  /** The covered order does not open: it was changed, or lies beside other entries. */
  COVER_CHANGED,
  /** A covered order has no phrase. */
  NO_PHRASE,
  /** A helper's paper is keyed in of a day on which the rider swaps alone. */
  NO_HELPER_PAPER,
  /** A sealed order has no cover. */
  NOT_COVERED,
  /** A cover that did not hold, without words on it. */
  COVER_WORDS,
  /** A code that no stint of the session has: typed. */
  NO_SUCH_CODE,
  /** A wrong fit of prepared units is said as the unit that was mounted. */
  FIT_OF_UNITS,
  /** No friend prepares units in this session. */
  NOT_PREPARED,
  /** Records of too few units, or out of turn: given, needed. */
  UNITS_MISSING,
  /** The records of the units are written. */
  UNITS_WRITTEN,
  /** Every stint that is left was ridden or shown, so that no code is made. */
  ONE_STINT_NONE,
  /** More stints are left than words are made for: how many, most. */
  ONE_STINT_TOO_MANY,
  /** This notebook keeps no one-time code of a stint: stint. */
  ONE_STINT_NO_CODE,
  /** What was typed is not three words of the list. */
  ONE_STINT_WORDS,
  /** Three words, but not those of the slip: stint. */
  ONE_STINT_WRONG,
  /** Too many wrong codes: seconds to wait. */
  ONE_STINT_WAIT
}
