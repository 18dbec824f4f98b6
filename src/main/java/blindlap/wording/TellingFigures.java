package blindlap.wording;

import blindlap.review.TellingFinding;
import blindlap.stats.distribution.Interval;
import blindlap.stats.tell.Telling;
import blindlap.stats.tell.TellingTrials;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.Optional;

/** The numbers of a telling run as they are said; none lands on or crosses what decides. */
final class TellingFigures {
  private static final Words WORDS = Words.of("telling");
  private static final double WHOLE = 1e-9;
  private static final String ONE_DECIMAL = "0.0";

  /** Below it a p is only said to be below it. */
  private static final double LEAST_SAID = 0.0001;

  private final Telling telling;
  private final boolean nullRun;
  private final TellingTrials run;

  TellingFigures(TellingFinding finding) {
    this.telling = finding.telling();
    this.run = telling.run();
    this.nullRun = finding.nullRun();
  }

  /** A mean count: whole, or with one decimal. */
  private static String mean(double count) {
    return Figures.number(count, Math.abs(count - Math.rint(count)) < WHOLE ? 0 : 1);
  }

  String guessed() {
    return mean(run.guessed());
  }

  String mattering() {
    return mean(run.mattering());
  }

  /** "11 of 15 trials". */
  String of() {
    return WORDS.say("of", telling.right(), run.number());
  }

  /** A p on its side of the level. */
  static String p(double p) {
    String plain = Figures.p(p);
    boolean level = plain.equals(Figures.p(TellingTrials.LEVEL));
    return level && p != TellingTrials.LEVEL
        ? Figures.outward(p, 3, p > TellingTrials.LEVEL, TellingTrials.LEVEL).substring(1)
        : plain;
  }

  /** How often guessing gives as much. */
  private static String many(double p) {
    if (p > 0.995) {
      return WORDS.say(p == 1 ? "many.all" : "many.nearly");
    }
    if (p < 0.0005) {
      return WORDS.say("many.rarely");
    }
    return p < 0.01
        ? WORDS.say("many.thousand", Figures.number(1000 * p, 0))
        : WORDS.say("many.hundred", Figures.number(100 * p, 0));
  }

  /** "guessing gives 11 or more in about 2 of 1,000 such runs (p = .0018)". */
  String chance() {
    return guessing("chance.more", telling.p());
  }

  /** The same of as few. */
  String fewer() {
    return guessing("chance.fewer", telling.pFewer());
  }

  private String guessing(String key, double p) {
    String said = WORDS.say(p < LEAST_SAID ? "p.below" : "p.is", p(p));
    return WORDS.say(key, telling.right(), many(p), said);
  }

  /** "really told in 23 to 86 % of the trials (90 % limits)"; in a null run what may have told. */
  String limits() {
    return WORDS.say(
        nullRun ? "limits.null" : "limits",
        perCent(telling.limits().low()),
        perCent(telling.limits().high()));
  }

  private String perCent(double share) {
    return Figures.alike(100 * share, "0", 0, 100 * run.matters(), 100);
  }

  /** "half of the trials". */
  String declared() {
    if (run.matters() == TellingTrials.USUAL_SHARE) {
      return WORDS.say("share.half");
    }
    BigDecimal share = BigDecimal.valueOf(run.matters()).movePointRight(2);
    return run.matters() == 1
        ? WORDS.say("share.all")
        : WORDS.say("share.per.cent", share.stripTrailingZeros().toPlainString());
  }

  /** "6.7 to 13.8 of 15". */
  String interval() {
    Interval wide = telling.rightLimits(0.95);
    return WORDS.say("axis.interval.of", count(wide.low()), count(wide.high()), run.number());
  }

  private String count(double count) {
    return Figures.alike(count, ONE_DECIMAL, 0, run.guessed(), run.mattering(), run.number());
  }

  /** d′ with its interval; empty where no answer can be read as telling the two apart. */
  Optional<String> distance() {
    if (nullRun || telling.fewer()) {
      return Optional.empty();
    }
    double d = telling.sensitivity().dPrime();
    Interval interval = telling.sensitivity().interval95();
    String low = distance(interval.low());
    if (Double.isNaN(d)) {
      return Optional.of(WORDS.say("distance.all", low));
    }
    String range =
        Double.isNaN(interval.high())
            ? WORDS.say("distance.from", low)
            : WORDS.say("distance.to", low, distance(interval.high()));
    return Optional.of(WORDS.say("distance", distance(d), range));
  }

  private static String distance(double d) {
    return d == 0 ? "0" : Figures.alike(d, ONE_DECIMAL, 0);
  }
}
