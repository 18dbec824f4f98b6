package blindlap.desk;

import blindlap.plan.Fault;

/** What can go wrong between a command and a session. Details are listed in their order. */
public enum DeskFault implements Fault {
  /** No session has this id: typed. */
  NO_SUCH_SESSION,
  /** Several sessions begin with this: typed, number. */
  SEVERAL_SESSIONS,
  /** A phrase word that is not in the list: position, similar words. */
  PHRASE_WORD,
  /** A phrase with another number of words than six: number. */
  PHRASE_COUNT,
  /** The phrase does not open this key. */
  WRONG_PHRASE,
  /** The key is damaged. */
  KEY_DAMAGED,
  /** A row of the key sheet is mistyped: row, advice. */
  SHEET_MISTYPED,
  /** The key sheet belongs to another session. */
  SHEET_OF_ANOTHER,
  /** The order cannot be drawn: why. */
  CANNOT_DRAW,
  /** The session moved on while this was typed. */
  MOVED_ON,
  /** The session is unblinded or a noise run, and has no key: what. */
  NO_KEY,
  /** The finding cannot be made: why. */
  NO_FINDING,
  /** A helper's card is there already: detail file. */
  CARD_EXISTS,
  /** A helper's card cannot be written: detail folder. */
  CARD_NOT_WRITTEN
}
