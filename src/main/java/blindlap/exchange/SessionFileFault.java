package blindlap.exchange;

import blindlap.fault.Fault;

/** What can be wrong with the file of a session. Details are listed in their order. */
public enum SessionFileFault implements Fault {
  /** The file is not UTF-8 text. */
  NOT_UTF8,
  /** The first line does not say that this is a session. */
  NOT_A_SESSION,
  /** The file was written by a newer program: the form it names. */
  TOO_NEW,
  /** The closing line is missing: the file was cut off; number of entries found. */
  CUT_OFF,
  /** The closing line tells another number of entries: told, found. */
  COUNT_DIFFERS,
  /** What stands above the closing line does not give its hash: the file was changed. */
  CHANGED,
  /** A line is not an entry: why. */
  NOT_AN_ENTRY,
  /** An entry is of a kind that this program does not know: its kind. */
  UNKNOWN_KIND,
  /** A field of an entry holds a word that this program does not know: field, word, kind. */
  UNKNOWN_VALUE,
  /** A field of an entry is missing, or not as it is written: field, kind. */
  WRONG_FIELD;

  /** True if a line cannot be taken for an entry. */
  boolean ofOneEntry() {
    return switch (this) {
      case NOT_AN_ENTRY, UNKNOWN_KIND, UNKNOWN_VALUE, WRONG_FIELD -> true;
      case NOT_UTF8, NOT_A_SESSION, TOO_NEW, CUT_OFF, COUNT_DIFFERS, CHANGED -> false;
    };
  }
}
