package blindlap.wording;

import blindlap.review.StintValues;
import blindlap.wording.day.Words;

/** How many stints entered, and what kept the others out. */
final class StintsUsed {
  private static final Words WORDS = Words.of("finding");

  private StintsUsed() {}

  /** "15 of 16 stints used; 1 void, 0 not ridden or without a value." */
  static String say(StintValues stints) {
    int voids = stints.voids();
    int used = stints.used();
    int all = stints.stints();
    int laps = stints.voidLaps();
    // A void lap may leave its stint a value from the others: then stints alone would hide it.
    boolean known = stints.voidsCount() && laps > 0;
    String said =
        WORDS.say(
            known ? "evidence.used.known" : laps == voids ? "evidence.used" : "evidence.used.laps",
            used,
            all,
            voids,
            known ? all - used : all - used - voids,
            laps);
    String uncovered =
        stints.uncovered() == 0 ? "" : " " + WORDS.say("evidence.uncovered", stints.uncovered());
    return stints.incomplete() == 0
        ? said + uncovered
        : said + uncovered + " " + WORDS.say("evidence.incomplete", stints.incomplete());
  }
}
