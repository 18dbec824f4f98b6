package blindlap.session;

import blindlap.fault.Fault;

/**
 * What can be wrong with the entries of a session as a whole. The place is "entry n of notebook x".
 */
public enum ChainFault implements Fault {
  /** An entry that follows nothing and is not the commit of the plan. */
  NO_COMMIT,
  /** An entry of another session: its session. */
  OTHER_SESSION,
  /** The entry before this one is missing. */
  GAP,
  /** The entry does not name its predecessor's hash: it or its predecessor was changed. */
  NOT_LINKED,
  /** An entry of another chain that this one had seen is missing: its number, its notebook. */
  SEEN_IS_MISSING,
  /** An entry of another chain is not the one that this one had seen: its number, its notebook. */
  SEEN_DIFFERS,
  /** Two different entries have one place: the notebook file was copied and both copies went on. */
  FORKED
}
