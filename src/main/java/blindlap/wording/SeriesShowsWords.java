package blindlap.wording;

import blindlap.plan.SeriesShows;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Words;
import java.util.function.DoubleFunction;

/** What a declared series can show, in one sentence. */
final class SeriesShowsWords {
  private static final Words WORDS = Words.of("answer");

  private SeriesShowsWords() {}

  /**
   * @param shown a difference with its unit, a range where it hangs on what laps share
   * @param amount a difference with its unit
   * @param declared the worthwhile difference with its unit
   */
  static String say(
      SeriesShows shows,
      DoubleFunction<String> shown,
      DoubleFunction<String> amount,
      String declared) {
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
    String said =
        range == null
            ? WORDS.say("series.shows", which, shown.apply(shows.difference()))
            : WORDS.say(
                "series.shows.range",
                which,
                shown.apply(shows.difference()),
                amount.apply(range.low()),
                amount.apply(range.high()));
    if (Double.isNaN(shows.worthwhile())) {
      return said;
    }
    boolean enough = shows.difference() <= shows.worthwhile();
    return said + " " + WORDS.say(enough ? "series.enough" : "series.short", declared);
  }
}
