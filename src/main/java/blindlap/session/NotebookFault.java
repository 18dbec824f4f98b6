package blindlap.session;

import blindlap.fault.Fault;

/** What a full check of a notebook can find, besides broken chains. Details in their order. */
public enum NotebookFault implements Fault {
  /** The database finds its own file damaged: what it says. */
  FILE_DAMAGED,
  /** The file cannot be read beyond some place: what the database says. */
  UNREADABLE,
  /** Tables or the triggers that protect entries are not as this program makes them: their name. */
  CHANGED_TABLES,
  /** An entry's text does not give its stored hash. */
  HASH_DIFFERS,
  /** An entry is not in a form that can be read: why. */
  NOT_AN_ENTRY,
  /** The columns beside an entry's text say something else than the text. */
  COLUMNS_DIFFER,
  /** A session whose entries cannot be folded: why. */
  CANNOT_FOLD,
  /** The list of sessions differs from the entries; it is not part of the record. */
  LIST_DIFFERS,
  /** Entries of a session that could not be recovered: number saved, number there were at least. */
  ENTRIES_LOST,
  /** A session of which nothing could be recovered. */
  SESSION_LOST,
  /** A covered order is missing, does not open, or is not the one that was committed. */
  COVER_DIFFERS,
  /** A covered order that could not be recovered. */
  COVER_LOST,
  /** A version of a trail does not give its hash, or is no trail. */
  TRAIL_DIFFERS,
  /** A version of a trail that could not be recovered: its name. */
  TRAIL_LOST,
  /** Positions of a recorded lap do not give their hash. */
  CONTENT_DIFFERS,
  /** A version of a profile does not give its hash, or is no profile. */
  PROFILE_DIFFERS,
  /** Versions of profiles that could not be recovered: how many. */
  PROFILES_LOST
}
