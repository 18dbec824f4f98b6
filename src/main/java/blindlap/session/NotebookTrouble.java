package blindlap.session;

import blindlap.fault.Fault;

/**
 * Why a notebook file, or a file that goes with it, cannot be used. Details are listed in their
 * order; the first is the file.
 */
public enum NotebookTrouble implements Fault {
  NOT_A_NOTEBOOK,
  /** Written by a newer program: its version, the latest known. */
  TOO_NEW,
  /** Another program holds it. */
  HELD,
  /** No room is left for the last entry. */
  DISK_FULL,
  NOT_READABLE,
  NOT_WRITABLE,
  /** The place does not keep what the database promises: setting, found, wanted. */
  UNSAFE_PLACE,
  /** Anything else the database says: its words. */
  UNUSABLE,
  /** Damaged: the file as it is typed in a command, what is damaged. */
  DAMAGED,
  NO_FOLDER,
  /** A notebook that was named is not there. */
  NO_NOTEBOOK,
  /** The folder of the user's own notebook cannot be made: the folder. */
  NO_DATA_FOLDER,
  /** The folder for temporary files is not there or cannot be written to: the folder. */
  NO_TEMPORARY_FOLDER,
  NOTHING_TO_BACK_UP,
  NOTHING_TO_CHECK,
  NOTHING_TO_READ,
  NOTHING_TO_RECOVER,
  NOTHING_TO_BRING_IN,
  /** Nothing verifies, so nothing was recovered. */
  NOTHING_VERIFIES,
  /** Something lies where the recovered notebook is to go. */
  PLACE_TAKEN,
  /** A copy cannot be written: what the system says. */
  COPY_FAILED,
  BACKUP_NOT_READABLE,
  /** Something that is not the file of a session lies where one is to go. */
  SESSION_PLACE_TAKEN,
  SESSION_NOT_WRITTEN,
  SESSION_NOT_READ
}
