package blindlap.plan;

import blindlap.fault.Fault;

/** What can be wrong with a plan. */
public enum PlanFault implements Fault {
  /** The file cannot be read as YAML or JSON: detail line, column, what the parser says. */
  NOT_READABLE,
  /** A field that is not known: detail field, allowed fields. */
  UNKNOWN_FIELD,
  /** A field that must be there is not. */
  MISSING_FIELD,
  /** A field holds the wrong sort of value: detail found, expected. */
  WRONG_VALUE,
  /** No protocol of this name: detail name, known names. */
  UNKNOWN_PROTOCOL,
  /** The protocol is not made for this number of setups: detail protocol, number. */
  PROTOCOL_SETUPS,
  /** No order satisfies the rule. */
  NO_ADMISSIBLE_ORDER,
  /** Stints are not a multiple of the block: detail stints, block. */
  STINTS_NOT_MULTIPLE,
  /** Too many or too few stints: detail stints, least, most. */
  STINTS_RANGE,
  /** Fewer than two setups. */
  TOO_FEW_SETUPS,
  /** More setups than can be committed now: detail number. */
  TOO_MANY_SETUPS,
  /** Two setups share a name or id: detail name. */
  SAME_SETUP,
  /** No measure is primary. */
  NO_PRIMARY,
  /** More than one measure is primary: detail names. */
  TWO_PRIMARIES,
  /** Two measures share a name: detail name. */
  SAME_MEASURE,
  /** A measure's name is kept for a column of lap files: detail name. */
  RESERVED_MEASURE,
  /** A measure has no unit: detail measure. */
  NO_UNIT,
  /** The worthwhile difference is 0 or less: detail measure, value. */
  WORTHWHILE_NOT_POSITIVE,
  /** The primary or a watch-for-harm measure has no worthwhile difference: detail measure. */
  NO_WORTHWHILE,
  NO_WORTHWHILE_TREND,
  /** A watch-for-harm measure has no direction: detail measure. */
  HARM_WITHOUT_DIRECTION,
  /** A scale has no end words: detail measure. */
  NO_END_WORDS,
  /** The ratio scale needs values above 0: detail measure. */
  RATIO_NEEDS_POSITIVE,
  /** A median needs more scored laps a stint: detail measure, laps scored, laps needed. */
  MEDIAN_NEEDS_LAPS,
  /** Laps per stint out of range: detail what, value. */
  LAPS_RANGE,
  /** Setups differ in more than one setting and no reason is given: detail settings. */
  DIFFERENCES_WITHOUT_REASON,
  /** A setting meant to be equal is not within tolerance: detail setting, values, tolerance. */
  PARITY_BROKEN,
  /** The plan cannot reach the level and no override is given: detail smallest p. */
  CANNOT_SHOW_ANYTHING,
  /** A text is too long: detail field, most characters. */
  TOO_LONG,
  /** A list holds too much: detail most items. */
  TOO_MANY_ITEMS,
  /** A setup names a setting twice: detail setting. */
  SETTING_TWICE,
  /** A dial has no such position: detail setting, value, range. */
  OFF_THE_DIAL,
  /** A value lies between two positions of the dial: detail setting, value, step. */
  BETWEEN_STEPS,
  /** A number that must not be negative: detail value. */
  NEGATIVE,
  /** A timetable without the minutes of a lap. */
  LAP_MINUTES,
  /** A number that must be above 0: detail value. */
  NOT_POSITIVE,
  /** Readings out of range: detail value, least, most. */
  READINGS_RANGE,
  /** A part is handled more often than its maker allows: detail setup, handlings, most. */
  REFITS_EXCEEDED,
  /** Setups are changed by changing bikes, but the bikes are not described. */
  BIKES_MISSING,
  /** Bikes are described, but setups are not changed by changing bikes. */
  BIKES_UNASKED,
  /** Two bikes carry two setups: detail number of setups. */
  BIKES_TWO_SETUPS,
  /** The change of bikes lies outside the day: detail stint, last stint. */
  BIKES_CHANGE_RANGE,
  /** A duration is impossible: detail minutes, most. */
  DURATION_RANGE,
  /** The day is over after daylight: detail end, limit, ways to fit. */
  DAY_TOO_LONG,
  /** More laps than the rider agreed to: detail laps, budget, stints that fit. */
  LAP_BUDGET,
  /** The clock skips the start on this day: detail time. */
  START_SKIPPED,
  /** A day can be divided only against the clock, and the plan has no timetable. */
  DIVIDE_WITHOUT_TIMETABLE,
  /** A noise run compares nothing, so its day is not divided. */
  DIVIDE_NOISE_RUN,
  /** No division that can show anything fits: detail end of the shortest day, limit, its laps. */
  DIVIDE_NOTHING_FITS,
  /** The declared number of sessions of a series is impossible: detail number, least, most. */
  SERIES_RANGE,
  /** More covariates than a day can spare: detail number, most. */
  TOO_MANY_COVARIATES,
  /** A noise run compares nothing, so a covariate takes nothing out: detail covariate. */
  COVARIATE_OF_NOISE_RUN,
  /** A covariate's name is kept for a column of lap files: detail name. */
  RESERVED_COVARIATE,
  /** A covariate is called like a measure or another one: detail name. */
  SAME_COVARIATE,
  /** A covariate has neither unit nor words: detail covariate. */
  COVARIATE_WITHOUT_UNIT,
  /** Nobody says why no setup can change a covariate: detail covariate. */
  COVARIATE_WITHOUT_REASON,
  /** What the rider says is asked once a stint: detail covariate. */
  RIDER_PER_LAP,
  /** Neither a control sector nor the starter's judgement: detail covariate. */
  COVARIATE_PER_LAP,
  /** A control sector is timed while the rider rides it: detail covariate. */
  RIDER_TIMES_SECTOR,
  /** A stated correlation is impossible: detail covariate, value. */
  CORRELATION_RANGE,
  /** Looks on a day with too few stints: detail stints, least. */
  LOOKS_SHORT_DAY,
  /** Too many looks: detail number, most. */
  LOOKS_TOO_MANY,
  /** A look within a block: detail stint, block, stint of a possible look. */
  LOOK_INSIDE_BLOCK,
  /** The rule has one block, whose end is the end of the day. */
  LOOKS_ONE_BLOCK,
  /** A look before the first stint, or at the end and after: detail stint, last stint. */
  LOOK_RANGE,
  /** Looks do not come one after the other: detail stint, the one before. */
  LOOKS_ORDER,
  /** Looks at what is not a comparison of two setups. */
  LOOKS_TWO_SETUPS,
  /** Looks on a day of a series. */
  LOOKS_IN_SERIES,
  /** A look takes nothing out but drift, and the plan declares covariates. */
  LOOKS_WITH_COVARIATES,
  /** Looks where nobody with the phrase swaps on the day: detail level. */
  LOOKS_NEED_HELPER,
  /**
   * Labels on setups that differ by a dial of one part alone, and nobody masks: detail settings.
   */
  MASKED_DIAL,
  /** Nobody is named who masks or prepares: detail level. */
  FRIEND_MISSING,
  /** Two bikes are told apart by whoever rides them: detail level. */
  BIKES_TOLD_APART,
  /** Limits of parts that nobody may tell apart differ: detail which limits, level. */
  LIMITS_DIFFER,
  /** Prepared after the day of riding: detail day of preparing, day of riding. */
  PREPARED_AFTER,
  /** A trail version of which no gates are known: detail number, trail. */
  TRAIL_WITHOUT_GATES,
  /** A trail has a start and a finish: detail the only gate. */
  ONE_GATE,
  /** What should be a SHA-256 is none: detail what stands there. */
  NOT_A_SHA256,
  /** Two gates share a name: detail name. */
  SAME_GATE,
  /** A direction is neither 1 nor −1: detail value. */
  NOT_A_DIRECTION,
  /** Both ends of a gate are one place: detail gate. */
  GATE_WITHOUT_WIDTH,
  /** A place on Earth is none: detail value, most degrees, most decimals. */
  NOT_DEGREES,
  /** Gates are named for what a watch times: detail measure. */
  GATES_OF_A_WATCH,
  /** A recording gives times alone: detail measure. */
  RECORDING_OF_NO_TIME,
  /** A recording and an assessor would give one value: detail measure. */
  RECORDED_AND_ASSESSED,
  /** A look needs values that come after the day: detail measure. */
  LOOKS_WITH_RECORDING,
  /** A recording gives times at gates, and the plan has none: detail measure. */
  RECORDING_WITHOUT_TRAIL,
  /** A lap time goes from start to finish: detail measure. */
  GATES_OF_A_LAP,
  /** A sector has two gates: detail measure, gates. */
  SECTOR_MISSING,
  /** No gate of this name: detail name, gates. */
  UNKNOWN_GATE,
  /** A sector ends before it begins: detail measure, first, last, gates. */
  GATES_BACKWARDS,
  /** Two measures time one way: detail measure, the other. */
  SAME_WAY,
  /** The fields of a steps day in a plan of another kind: detail kind. */
  STEPS_UNASKED,
  /** A steps day whose setting is not said. */
  STEPS_MISSING,
  /** Levels are listed, and not exactly one setup: detail setups. */
  STEPS_ONE_SETUP,
  /** Too few or too many levels: detail levels, fewest, most. */
  LEVELS_RANGE,
  /** A level is no number: detail what was typed. */
  LEVEL_NOT_A_NUMBER,
  /** Two levels are one: detail value. */
  LEVELS_EQUAL,
  /** Some setup of a steps day has no value of the setting: detail setting. */
  LEVEL_MISSING,
  /** Levels differ in more than the one setting: detail setting, the others. */
  LEVELS_DIFFER_OTHERWISE,
  /** A level cannot be counted out in clicks: detail level. */
  LEVEL_NOT_CLICKS,
  /** A value lies below the maker's limit: detail value, limit. */
  BELOW_THE_LIMIT,
  /** A value lies above the maker's limit: detail value, limit. */
  ABOVE_THE_LIMIT,
  /** A lower limit is not below the upper one: detail lower, upper. */
  LIMITS_CROSSED,
  /** A pressure is set by way of a low and a high, and one is missing. */
  LOW_AND_HIGH_MISSING,
  /** A low or a high for what is no pressure. */
  LOW_AND_HIGH_UNASKED,
  /** A level that does not lie between low and high: detail level, low, high. */
  LEVEL_NOT_BETWEEN,
  /** A steps day on two bikes. */
  STEPS_TWO_BIKES,
  /** A steps day in a series. */
  STEPS_IN_SERIES,
  /** A steps day with looks before its end. */
  STEPS_WITH_LOOKS,
  /** A steps day at a level that keeps nothing from the rider's hands: detail level. */
  STEPS_NEED_HELPER,
  /** The fields of a telling run in a plan of another kind: detail kind. */
  TELLING_UNASKED,
  /** A telling run whose trials are not said. */
  TELLING_MISSING,
  /** A telling run between more than two setups: detail setups. */
  TELLING_TWO_SETUPS,
  /** A telling run between another number of levels than two: detail levels. */
  TELLING_TWO_LEVELS,
  /** A rest between the laps of a trial: details laps between rests, laps of a trial, examples. */
  TELLING_REST,
  /** More laps than the rider agreed to: details laps, budget, most trials. */
  TELLING_LAP_BUDGET,
  /** A part handled more often in its trials than it may be: details setup, handlings, cap. */
  TELLING_REFITS,
  /** A telling run on two bikes. */
  TELLING_TWO_BIKES,
  /** A telling run in a series. */
  TELLING_IN_SERIES,
  /** A telling run with looks before its end. */
  TELLING_WITH_LOOKS,
  /** A telling run with covariates: detail the first. */
  TELLING_WITH_COVARIATES,
  /** A measure of a telling run that is more than recorded: detail measure, role. */
  TELLING_MEASURE,
  /** A telling run at a level where somebody else than a helper swaps: detail level. */
  TELLING_NEEDS_HELPER,
  /** Guesses that are left out, of which the answer to a trial is one: no details. */
  TELLING_ANSWERS,
  /** A stint of a telling run that is not one scored lap: detail laps per stint. */
  TELLING_LAPS,
  /** A rule of its own in place of that of the task: detail task. */
  TELLING_RULE,
  /** Stints that are not those of the trials: detail stints, trials, laps of a trial, product. */
  TELLING_STINTS,
  /** Words of an attribute for a task that asks for none: detail task. */
  ATTRIBUTE_UNASKED,
  /** Two-choice trials without the words of what one lap has more of. */
  ATTRIBUTE_MISSING,
  /** The setup declared to have more is none of the plan: detail what was typed, setups. */
  MORE_UNKNOWN,
  /** The share of trials that would matter is impossible: detail value. */
  MATTERS_RANGE,
  /** Too few or too many trials: detail trials, least, most. */
  TRIALS_RANGE,
  /** Trials that could not show anything, and no override: detail trials, smallest p. */
  TRIALS_SHOW_NOTHING,
  /** A telling run has trials, so its day is not divided. */
  DIVIDE_TELLING_RUN
}
