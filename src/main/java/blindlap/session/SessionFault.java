package blindlap.session;

import blindlap.fault.Fault;

/** What can be wrong with a command on a session. Details are listed in their order. */
public enum SessionFault implements Fault {
  /** The day is over, nothing more is recorded: step. */
  RECORDING_IS_OVER,
  /** The day must be closed first: step. */
  DAY_NOT_CLOSED,
  /** The review is closed, voids and corrections are over. */
  REVIEW_IS_CLOSED,
  /** The review must be closed before unsealing: step. */
  REVIEW_NOT_CLOSED,
  /** The seal is already open. */
  ALREADY_UNSEALED,
  /** The seal must be opened first: step. */
  STILL_SEALED,
  /** The session was abandoned. */
  IS_ABANDONED,
  /** Every lap agreed to is ridden and no reason for another was given: most. */
  LAP_CAP,
  /** The answer was changed in another window meanwhile: measure. */
  CHANGED_MEANWHILE,
  /** Something was written elsewhere since the page was shown. */
  SHOWN_IS_OLD,
  /** A lap that the plan does not have: lap, most. */
  NO_SUCH_LAP,
  /** A stint that the plan does not have: stint, most. */
  NO_SUCH_STINT,
  /** A lap that is already recorded: lap. */
  LAP_TWICE,
  /** The same lap stands twice in one file: lap, the other line. */
  LAP_TWICE_IN_FILE,
  /** The lap has not been ridden yet: lap. */
  LAP_NOT_RIDDEN,
  /** A cell that no correction changes says something else than is recorded: column, lap. */
  NOT_CORRECTED,
  /** A lap after the stint at which the day was cut short: lap, last stint. */
  AFTER_CUT_SHORT,
  /** A measure that the plan does not have: name, known names. */
  UNKNOWN_MEASURE,
  /** A recording gives the values of a measure: detail measure. */
  RECORDING_GIVES,
  /** A covariate that the plan does not have: name, known names. */
  UNKNOWN_COVARIATE,
  /** What the rider says before the hand-over, said after it: covariate, stint. */
  COVARIATE_TOO_LATE,
  /** The same in a row of a file that is no first lap: covariate, stint, lap of the day. */
  COVARIATE_AFTER_LAP,
  /** A covariate of a stint in a row that is not its first lap's: covariate, stint, lap. */
  COVARIATE_ROW,
  /** A covariate that is said for scored laps: name. */
  COVARIATE_OF_LAPS,
  /** A covariate that is said once a stint: name. */
  COVARIATE_OF_STINTS,
  /** A value outside its scale: measure, value, least, most. */
  OUTSIDE_SCALE,
  /** A time that is not above 0: measure, value. */
  NOT_A_TIME,
  /** A value that must be whole: measure, value. */
  NOT_WHOLE,
  /** A void whose reason is not an event: reason, events. */
  NOT_AN_EVENT,
  /** The lap is already void: lap. */
  ALREADY_VOID,
  /** The lap is not void: lap. */
  NOT_VOID,
  /** A reason must be given: for what. */
  REASON_MISSING,
  /** The day has been cut short already: last stint. */
  ALREADY_CUT_SHORT,
  /** Laps after that stint are already recorded: last stint, latest recorded lap. */
  LAPS_AFTER_CUT,
  /** No lap has been recorded at all. */
  NOTHING_RECORDED,
  /** Two machines recorded different values, of which the plan says which counts: lap, measure. */
  TWO_VALUES,
  /** The same in an unblinded session, which leaves no choice: lap, measure. */
  TWO_VALUES_UNBLINDED,
  /** One value stands, there is nothing to choose: lap, measure. */
  NOT_TWICE,
  /** None of the values that were recorded: lap, measure. */
  NOT_RECORDED,
  /** The plan names who decides as someone who knows the key: name. */
  DECIDER_KNOWS,
  /** The plan declares no looks. */
  LOOKS_NONE,
  /** No look is declared after this stint: stint, those that are. */
  LOOK_NOT_DECLARED,
  /** The look was taken: stint. */
  LOOK_TWICE,
  /** The day is over: stint. */
  LOOK_DAY_OVER,
  /** A later look was taken: stint, the later one. */
  LOOK_PAST,
  /** A lap of the look's stints is not recorded: stint of the look, lap, its stint. */
  LOOK_LAP_MISSING,
  /** A lap has neither value nor void: stint of the look, lap, its stint, measure. */
  LOOK_LAP_OPEN,
  /** The plan has no guesses. */
  NO_GUESSES,
  /** The guess names a setup that the plan does not have: name. */
  UNKNOWN_SETUP,
  /** A guess of a steps day that names neither end of the levels: detail guess. */
  NOT_AN_END,
  /** An answer that names no lap of a trial: as typed, first lap that can be named, last. */
  NOT_A_LAP_OF_TRIAL,
  /** An answer at a lap that is not its trial's last: lap of the day, trial, last lap. */
  ANSWER_BEFORE_LAST,
  /** An answer that leaves open which lap: trial, first lap that can be named, last. */
  ANSWER_FORCED,
  /** An answer before all laps of its trial are ridden: trial, lap of the day. */
  TRIAL_NOT_RIDDEN,
  /** An answer to a trial that is void: trial. */
  TRIAL_IS_VOID,
  /** A void and an answer of one trial, typed together: trial. */
  TRIAL_VOID_AND_ANSWERED,
  /** Something typed of a lap after the void of its trial: trial, void lap, lap of the day. */
  LAP_AFTER_VOID,
  /** A void of a trial that was answered: trial. */
  TRIAL_IS_ANSWERED,
  /** A void that is withdrawn when the run has gone on: trial. */
  TRIAL_GONE_BY,
  /** The day is closed without one answered trial. */
  NO_TRIAL_ANSWERED,
  /** A sureness that is none: as typed. */
  NOT_A_SURENESS,
  /** The stint's entry by the helper exists already: stint. */
  HANDLED_TWICE,
  /** The record that closes the helper's day exists already. */
  HELPER_OVER_TWICE,
  /** The bike of a stint has not been handed over: stint. */
  NOT_HANDED_OVER,
  BIKE_WITH_HELPER,
  /** The opened key does not belong to this session. */
  FINGERPRINT_DIFFERS,
  /** An open noise run has no key. */
  OPEN_NOISE_RUN,
  /** A helper swaps in this session, not the rider. */
  NOT_ALONE,
  /** Every setup of the day was shown. */
  SHOWN_ALL,
  /** What was shown for an earlier stint is not mounted: stint. */
  SHOW_NOT_MOUNTED,
  /** Prepared units are mounted by code, and their order is sealed. */
  SHOW_PREPARED,
  /** A lap of the stint before is not ridden: stint, lap. */
  SHOW_NOT_RIDDEN,
  /** The setup of a stint was not shown yet: stint. */
  MOUNT_NOT_SHOWN,
  /** The stint is mounted: stint. */
  MOUNTED_TWICE,
  /** Laps wait until the rider has mounted the stint: stint. */
  NOT_MOUNTED,
  /** The rider knows what is on, so that nothing is guessed stint by stint. */
  GUESSES_KNOWING,
  /** The rider knows what is on, so that no blind can break. */
  BLIND_KNOWING,
  /** No labels are masked in this session. */
  MASKS_NONE,
  /** The masks are sealed already. */
  MASKS_TWICE,
  /** A measure that is scored by code is not given with the lap. */
  SCORED_LATER,
  /** The rider is asked for the guess once the day is closed. */
  MASKS_GUESS_EARLY,
  /** The labels are read once the review is closed. */
  MASKS_READ_EARLY,
  /** A label was shown already, so that the masks can no longer be sealed. */
  MASKS_TOO_LATE,
  /** The rider has guessed already, or said to guess nothing. */
  MASKS_GUESSED,
  /** The finding was shown, or the masks were read. */
  MASKS_GUESS_LATE,
  /** The masks were read already. */
  MASKS_READ_TWICE,
  /** No masks were sealed: there is nothing that a phrase opens. */
  MASKS_NOT_SEALED,
  /** Every label is on a setup of its own: number of setups. */
  NOT_A_MAPPING,
  /** Below prepared everybody sees what is on, so that no one-stint view is needed. */
  ONE_STINT_LEVEL,
  /** What to set for a stint was shown already: stint. */
  ONE_STINT_USED,
  /** A stint is handed over or ridden: stint. */
  ONE_STINT_BEGUN,
  /** Nobody's name is given who looks. */
  ONE_STINT_NOBODY,
  /** What to set for a stint was shown to nobody: stint. */
  ONE_STINT_NOT_SHOWN,
  /** It was said already whether the rider saw: stint. */
  ONE_STINT_ANSWERED,
  /** A recording of a day that is not ridden to its end. */
  RECORDING_TOO_EARLY,
  /** The plan fixes another version of the trail: trail, number of the version. */
  RECORDING_TRAIL_PLANNED,
  /** Recordings of a day share one trail version; an earlier one used another: its file. */
  RECORDING_OTHER_TRAIL,
  /** No lap of the day is in the recording, or all were left out. */
  RECORDING_EMPTY,
  /** The same recording was brought in before and says the same: file. */
  RECORDING_AGAIN,
  /** The plan has no trail version, so that there are no sectors. */
  SECTORS_NONE,
  /** A way between gates that the plan's trail does not have: from, to, those it has. */
  NO_SUCH_SECTOR,
  /** A sector of a lap is void already: lap, from, to. */
  SECTOR_ALREADY_VOID,
  /** A sector of a lap is not void: lap, from, to. */
  SECTOR_NOT_VOID
}
