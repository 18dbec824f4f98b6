package blindlap.session;

import blindlap.fault.Fault;

/** What is damaged about a notebook file. Said as part of a longer sentence. */
public enum Damage implements Fault {
  /** The database says so: its words. */
  DATABASE,
  /** Tables are missing or not as this program makes them: their names. */
  TABLES,
  /** Its version is none that was ever written: the version. */
  VERSION,
  /** It is empty although there are backups: their folder. */
  EMPTY,
  /** Its header says two ways of writing. */
  HEADER,
  /** Its header names a form that the database never wrote. */
  FORMAT,
  /** It has no id. */
  NO_ID,
  /** Chains break: session, place. */
  CHAINS,
  /** An entry cannot be read: name of the {@link EntryFault}. */
  NOT_AN_ENTRY,
  /** The full check found something, so that no backup was made: folder of earlier ones. */
  NO_BACKUP,
  /** A version of a trail does not give its hash: name, number. */
  TRAIL
}
