package blindlap.wording;

import blindlap.plan.DayAnswer;
import blindlap.plan.DeclaredNoise;
import blindlap.plan.NoiseKnown;
import blindlap.plan.Plan;
import blindlap.plan.StintShare;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.Optional;

/** Why what a day can show is a range: how much of the noise the laps of a stint share. */
final class SplitWords {
  private static final Words WORDS = Words.of("answer");

  private SplitWords() {}

  /** Empty where it is no range for that reason. */
  static Optional<String> why(Plan plan, DayAnswer day) {
    if (!day.noise().split()) {
      return Optional.empty();
    }
    DeclaredNoise noise = plan.noise();
    StintShare share =
        noise == null || day.noise().kind() == NoiseKnown.Kind.UNKNOWN ? null : noise.stintShare();
    return Optional.of(
        share == null ? WORDS.say("split.unknown") : WORDS.say("split.known", perCent(share)));
  }

  /** "12 to 60": a share in whole per cent. */
  static String perCent(StintShare share) {
    return range(
        Figures.number(share.from().doubleValue(), 0), Figures.number(share.to().doubleValue(), 0));
  }

  /** Days in a hundred at both ends of the noise, where they read differently. */
  static String inHundred(double one, double other) {
    return one <= other
        ? range(Figures.inHundred(one), Figures.inHundred(other))
        : range(Figures.inHundred(other), Figures.inHundred(one));
  }

  /** "12 to 60", or one of them if both read alike. */
  static String range(String low, String high) {
    return low.equals(high) ? low : WORDS.say("between", low, high);
  }
}
