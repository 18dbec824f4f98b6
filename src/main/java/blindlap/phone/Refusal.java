package blindlap.phone;

/** Why the server refused what came to it. */
public enum Refusal {
  /** A code that was used, was never drawn, or is of the other role. */
  TOKEN,
  /** A phone that is not let in, or was thrown out. */
  KEY,
  /** A role asked for what is not its own. */
  ROLE,
  /** Asked for under another address than the one that is served. */
  HOST,
  /** Asked for by a page from elsewhere. */
  ORIGIN,
  /** An address that leads nowhere. */
  PATH,
  /** Neither asking nor sending. */
  METHOD,
  /** No JSON, or no message of a phone. */
  FORM,
  /** More than a message can hold. */
  TOO_LONG,
  /** Too many in too short a time. */
  TOO_MANY,
  /** It took too long to say what it wanted. */
  TOO_SLOW,
  /** The program itself failed; the phone sends again. */
  FAILED
}
