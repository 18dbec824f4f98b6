package blindlap.command;

import blindlap.wording.day.Words;

/** What a command answers to the shell; docs/exit-codes.md is the page of it. */
public final class ExitCode {
  /** Done. */
  public static final int DONE = 0;

  /** A check failed. */
  public static final int CHECK_FAILED = 1;

  /** Bad input or usage. */
  public static final int BAD_INPUT = 2;

  /** A file, or standard output, could not be read or written. */
  public static final int FILE_TROUBLE = 3;

  private ExitCode() {}

  /** All of them in the line that ends every help. */
  static String all() {
    return Words.of("usage").say("exit.codes", DONE, CHECK_FAILED, BAD_INPUT, FILE_TROUBLE);
  }
}
