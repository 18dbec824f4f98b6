package blindlap.wording;

import blindlap.plan.BlindLevel;
import blindlap.plan.Measure;
import blindlap.stats.compare.Verdict;
import blindlap.wording.day.Words;
import java.util.Arrays;
import java.util.stream.Stream;

/** Verdict phrases as people read them, no stronger than the blind level allows. */
final class VerdictWords {
  private static final Words VERDICTS = Words.of("verdicts");
  private static final Words FINDING = Words.of("finding");
  private static final String TREND = "TREND.";

  private VerdictWords() {}

  /** The phrase of a verdict where nothing caps it. */
  static String phrase(Verdict verdict) {
    return VERDICTS.say(verdict.name());
  }

  /** The phrase of a verdict of which no more is known than how blind its session was. */
  static String phrase(BlindLevel level, Verdict verdict) {
    String capped = cap(level) + verdict.name();
    return !cap(level).isEmpty() && VERDICTS.has(capped) ? VERDICTS.say(capped) : phrase(verdict);
  }

  /** The phrase of a verdict of a trend over levels: the middle may still be best. */
  static String ofTrend(Verdict verdict) {
    String key = TREND + verdict.name();
    return VERDICTS.has(key) ? VERDICTS.say(key) : phrase(verdict);
  }

  /** What got worse, or has no better, is never called worthwhile. */
  static String phrase(BlindLevel level, Measure measure, Verdict verdict) {
    return !capped(level)
            && verdict == Verdict.REAL_AND_WORTHWHILE
            && !Way.of(measure).firstIsBetter(measure)
        ? FINDING.say("phrase.matters")
        : phrase(level, verdict);
  }

  /** What ends the sentence of a difference that is shown, in place of the phrase. */
  static String tail(BlindLevel level) {
    return LevelWords.WORDS.say("tail." + cap(level).replace(".", ""));
  }

  /** What ends the headline of three and more setups, in place of its full stop. */
  static String tailOfMany(BlindLevel level) {
    return LevelWords.WORDS.say("tail.many." + cap(level).replace(".", ""));
  }

  /** True where a level says less than a blind day does. */
  static boolean capped(BlindLevel level) {
    return !cap(level).isEmpty();
  }

  /** All phrases of a verdict, those of every level. */
  static Stream<String> all(Verdict verdict) {
    return Stream.concat(
        Stream.of(phrase(verdict), ofTrend(verdict)),
        Arrays.stream(BlindLevel.values())
            .map(level -> cap(level) + verdict.name())
            .filter(VERDICTS::has)
            .map(VERDICTS::say));
  }

  private static String cap(BlindLevel level) {
    return switch (level) {
      case OPEN, DRAWN -> "OPEN.";
      case MASKED -> "MASKED.";
      case PREPARED, HELPER -> "";
    };
  }
}
