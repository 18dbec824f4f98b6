package blindlap.wording;

import blindlap.review.Remark;
import blindlap.wording.day.Words;

/** Where something was said or done: "Stint 3", "Warm-up", "Lap 12", "Day". */
final class RemarkPlace {
  private static final Words WORDS = Words.of("remarks");

  private RemarkPlace() {}

  static String words(Remark remark) {
    if (remark.lap() > 0) {
      return WORDS.say("lap", remark.lap());
    }
    return switch (remark.stint()) {
      case Remark.WHOLE_DAY -> WORDS.say("day");
      case 0 -> WORDS.say("warm.up");
      default -> WORDS.say("stint", remark.stint());
    };
  }
}
