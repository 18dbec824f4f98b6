package blindlap.command;

import blindlap.wording.day.Words;

/** Refuses what does not go with a report to be written. */
final class AskedReport {
  private static final Words WORDS = Words.of("report");

  private AskedReport() {}

  /**
   * @param report true if a report is asked for
   * @param written true if any file is, which a report is too
   * @throws Complaint for numbers printed and files written in one call, and for the look of a
   *     report that is not asked for
   */
  static void check(boolean report, boolean written, boolean json, boolean black) {
    if (written && json) {
      throw new Complaint(ExitCode.BAD_INPUT, WORDS.say("asked.json"));
    }
    if (black && !report) {
      throw new Complaint(ExitCode.BAD_INPUT, WORDS.say("asked.black"));
    }
  }
}
