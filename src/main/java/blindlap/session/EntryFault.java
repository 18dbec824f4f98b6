package blindlap.session;

import blindlap.fault.Fault;

/** Why a text is no entry, or entries are no session. Said as part of a longer sentence. */
public enum EntryFault implements Fault {
  /** It is not JSON. */
  NOT_JSON,
  /** It is of a form that this program does not know: its form. */
  UNKNOWN_FORM,
  /** It is of a kind that this program does not know: its kind. */
  UNKNOWN_KIND,
  /** A field holds a word that this program does not know: field, word, kind of entry. */
  UNKNOWN_VALUE,
  /**
   * A field is missing, or not as it is written: field and kind of entry, where it is one field.
   */
  NOT_IN_FORM,
  /** It is spelt otherwise than this program spells it. */
  NOT_CANONICAL,
  /** It does not give the hash that stands beside it. */
  HASH_DIFFERS,
  /** Entries name one another as those before them. */
  IN_A_CIRCLE,
  /** There is no plan that was committed. */
  NO_COMMIT
}
