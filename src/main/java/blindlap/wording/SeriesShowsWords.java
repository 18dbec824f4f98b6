package blindlap.wording;

import blindlap.plan.SeriesShows;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Words;

/** What a declared series can show, in one sentence. */
final class SeriesShowsWords {
  private static final Words WORDS = Words.of("answer");

  private SeriesShowsWords() {}

  /**
   * @param words of the day, for its unit
   */
  static String say(SeriesShows shows, AnswerWords words) {
    String which =
        shows.standing() == 0
            ? WORDS.say("series.all", shows.declared())
            : WORDS.say(
                "series.standing",
                shows.declared(),
                shows.standing(),
                shows.declared() - shows.standing());
    if (Double.isNaN(shows.difference())) {
      return WORDS.say("series.nothing", which);
    }
    Interval range = shows.range();
    String shown =
        range == null
            ? WORDS.say("series.shows", which, words.amount(shows.difference()))
            : WORDS.say(
                "series.shows.range",
                which,
                words.amount(shows.difference()),
                words.amount(range.low()),
                words.amount(range.high()));
    if (Double.isNaN(shows.worthwhile())) {
      return shown;
    }
    boolean enough = shows.difference() <= shows.worthwhile();
    return shown + " " + WORDS.say(enough ? "series.enough" : "series.short", words.declared());
  }
}
