package blindlap.command;

import blindlap.wording.day.Words;

/** What a command has done so far, to be said where its own words cannot be written. */
enum Done {
  /** Nothing that anyone typed; what was only worked out may be kept for the next time. */
  NOTHING,
  /** Entries of a session are in the notebook. */
  SAVED,
  /** A session is committed and sealed. */
  SEALED,
  /** A session is committed, its order covered. */
  COVERED,
  /** An open noise run is committed. */
  FIXED,
  /** A seal is open. */
  OPENED,
  /** Files lie where they were asked for. */
  WRITTEN,
  /** A draft is in the notebook. */
  DRAFTED,
  /** What the helper said is in the helper's encrypted draft. */
  KEPT,
  /** One-time codes are kept; earlier ones open nothing any more. */
  CODES,
  /** Sessions of other notebooks, or old days, are in this one. */
  BROUGHT_IN,
  /** A version of a trail is in the notebook. */
  TRAIL,
  /** A version of a profile is in the notebook. */
  PROFILE,
  /** The demo's notebook and report are made. */
  SHOWN;

  /** One sentence: what was done, and that it could not be told. */
  String untold() {
    return Words.of("output").say(name());
  }
}
