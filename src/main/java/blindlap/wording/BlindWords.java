package blindlap.wording;

import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.review.Finding;
import blindlap.review.Guesses;
import blindlap.stats.compare.VoidBalance;
import blindlap.stats.distribution.Interval;
import blindlap.stats.tell.GuessTest;
import blindlap.stats.tell.LevelGuessTest;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Guesses, voids and measured settings in sentences. */
final class BlindWords {
  private static final Words WORDS = FindingWords.WORDS;

  private final Finding finding;
  private final Plan plan;

  BlindWords(Finding finding) {
    this.finding = finding;
    this.plan = finding.day().plan();
  }

  String guesses() {
    Guesses guesses = finding.guesses();
    if (plan.level() == BlindLevel.MASKED) {
      return MaskWords.guess(finding.day());
    }
    if (!guesses.any()) {
      String key = plan.blinding().guesses() ? "guesses.none" : "guesses.not.asked";
      return WORDS.say(plan.blinding().blinded() ? key : "guesses.unblinded");
    }
    if (!plan.level().blind()) {
      return WORDS.say("guesses.known", guesses.right(), guesses.wrong(), guesses.unknown());
    }
    if (guesses.levelTest().isPresent()) {
      return ends(guesses, guesses.levelTest().get());
    }
    if (guesses.test().isEmpty() || finding.day().nullRun()) {
      int setups = plan.setups().size();
      return WORDS.say(
          setups > 2 && !finding.day().nullRun() ? "guesses.many" : "guesses.count",
          guesses.right(),
          guesses.wrong(),
          guesses.unknown(),
          setups);
    }
    GuessTest test = guesses.test().get();
    return WORDS.say(
        test.flagged() ? "guesses.flagged" : "guesses.held",
        guesses.right(),
        guesses.wrong(),
        guesses.unknown(),
        Figures.p(test.midP()),
        index(test));
  }

  private static String ends(Guesses guesses, LevelGuessTest test) {
    return WORDS.say(
        test.flagged() ? "guesses.ends.flagged" : "guesses.ends.held",
        guesses.right(),
        guesses.wrong(),
        guesses.unknown(),
        guesses.neither() == 0 ? "" : WORDS.say("guesses.ends.neither", guesses.neither()),
        Figures.number(test.t(), 2),
        Figures.p(test.midP()));
  }

  private static String index(GuessTest test) {
    if (Double.isNaN(test.indexMean())) {
      return WORDS.say("guesses.index.none");
    }
    String index = Figures.number(test.indexMean(), 2);
    // Blocks that all came out alike say nothing of how far the index might be off.
    return test.meanInterval95()
        .filter(i -> i.high() > i.low())
        .map(i -> WORDS.say("guesses.index.interval", index, Intervals.interval(cut(i), 1)))
        .orElseGet(() -> WORDS.say("guesses.index", index));
  }

  /** No index lies beyond −1 or 1, though a t interval may. */
  private static Interval cut(Interval interval) {
    return new Interval(Math.max(-1, interval.low()), Math.min(1, interval.high()));
  }

  /** Void laps per setup; whole stints beside them where a stint holds several scored laps. */
  String voids() {
    VoidBalance laps = finding.voidLaps();
    VoidBalance stints = finding.voids();
    if (total(laps) == 0) {
      return WORDS.say("voids.none");
    }
    if (!plan.level().blind()) {
      return voids(laps.flagged() ? "voids.known.uneven" : "voids.known", laps);
    }
    if (total(laps) == total(stints)) {
      return voids(stints.flagged() ? "voids.uneven" : "voids.even", stints);
    }
    String whole =
        total(stints) == 0
            ? WORDS.say("voids.stints.none")
            : voids(stints.flagged() ? "voids.stints.uneven" : "voids.stints.even", stints);
    return voids(laps.flagged() ? "voids.laps.uneven" : "voids.laps.even", laps) + " " + whole;
  }

  private static int total(VoidBalance voids) {
    return IntStream.of(voids.voids()).sum();
  }

  private String voids(String key, VoidBalance voids) {
    String each =
        IntStream.range(0, voids.voids().length)
            .mapToObj(i -> WORDS.say("voids.setup", plan.setups().get(i).name(), voids.voids()[i]))
            .collect(Collectors.joining(", "));
    return WORDS.say(key, total(voids), each, Figures.p(voids.p()));
  }

  List<String> parity() {
    return new ParityWords(finding.day(), finding.parity()).lines();
  }
}
