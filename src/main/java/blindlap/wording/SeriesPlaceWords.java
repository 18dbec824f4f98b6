package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.review.SeriesFinding;
import blindlap.review.SeriesPlace;
import blindlap.stats.compare.Verdict;
import blindlap.wording.day.Words;
import java.util.List;
import java.util.Optional;

/** A session's place in its series, and the series' answer, in one sentence. */
public final class SeriesPlaceWords {
  private static final Words WORDS = Words.of("series");

  private SeriesPlaceWords() {}

  /**
   * @param plan of the session, for its primary measure
   */
  public static String line(Plan plan, SeriesPlace place) {
    String head =
        place
            .declared()
            .map(n -> WORDS.say("place.declared", place.place(), n, place.series()))
            .orElse(WORDS.say("place.undeclared", place.place(), place.series()));
    return head + " " + answer(plan, place);
  }

  private static String answer(Plan plan, SeriesPlace place) {
    Measure measure = plan.primary().orElse(null);
    if (measure == null || place.verdict().isEmpty() || place.estimate().isEmpty()) {
      if (place.end().isPresent()) {
        return WORDS.say("place.ended", SeriesPeekWords.ended(place.end().get()));
      }
      return WORDS.say(
          place.noVerdict().filter(SeriesFinding.NoVerdict.PEEKED::equals).isPresent()
              ? "place.peeked"
              : "place.none",
          place.pooled(),
          place.declared().map(String::valueOf).orElse(""));
    }
    Verdict verdict = place.verdict().get();
    DifferenceWords words =
        new DifferenceWords(
            place.setups(),
            measure,
            place.estimate().getAsDouble(),
            List.of(place.interval95(), Optional.empty()),
            0);
    boolean shown =
        switch (verdict) {
          case REAL_AND_WORTHWHILE, REAL_BUT_SMALL, DIRECTION_KNOWN -> true;
          case NO_WORTHWHILE_DIFFERENCE, NOT_SETTLED, NO_VARIATION, COULD_NOT_SHOW -> false;
        };
    return WORDS.say(
        place.riders() > 1 ? "place.answer.riders" : "place.answer",
        VerdictWords.phrase(plan.level(), measure, verdict),
        words.careful(shown),
        words.interval(place.interval95()),
        place.pooled(),
        place.riders());
  }

  /**
   * A session in a list: "session 2 of 4 of series k-or-l, unfinished"; at the end of the series
   * with its answer in a phrase. One that is not of the declared number has no number here.
   *
   * @param session its id
   */
  public static String inList(SeriesFinding finding, String session) {
    int place = 0;
    boolean counts = false;
    for (SeriesFinding.Part part : finding.parts()) {
      place += part.fate().counts() ? 1 : 0;
      if (part.session().equals(session)) {
        counts = part.fate().counts();
        break;
      }
    }
    String key =
        !counts ? "inlist.none" : finding.declared().isPresent() ? "inlist" : "inlist.open";
    String where = SeriesWords.say(key, place, finding.declared().orElse(0), finding.id());
    return finding.open()
        ? SeriesWords.say("inlist.answer", where, new SeriesWords(finding).headline().phrase())
        : SeriesWords.say("inlist.unfinished", where);
  }
}
