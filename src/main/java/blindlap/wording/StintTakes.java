package blindlap.wording;

import blindlap.plan.Plan;
import blindlap.plan.Timetable;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** How long a stint takes, and of what: "Every stint takes 19 min: swap 7, …". */
public final class StintTakes {
  private static final Words WORDS = Words.of("plan");

  private StintTakes() {}

  /** One sentence; empty without a timetable. */
  public static Optional<String> words(Plan plan) {
    Timetable table = plan.timetable();
    if (table == null || plan.kind() == Plan.Kind.TELLING_RUN) { // whose trials say what they take
      return Optional.empty();
    }
    BigDecimal laps = BigDecimal.valueOf(plan.laps().perStint());
    BigDecimal ride = table.lap().multiply(laps);
    BigDecimal climb = table.climb().multiply(laps);
    BigDecimal score = table.scoring().multiply(BigDecimal.valueOf(plan.laps().scored()));
    BigDecimal all = table.coolDown().add(table.swap()).add(ride).add(climb).add(score);
    List<String> parts = new ArrayList<>();
    part("cool", table.coolDown(), parts);
    part("swap", table.swap(), parts);
    part("ride", ride, parts);
    part("score", score, parts);
    part("climb", climb, parts);
    return parts.isEmpty()
        ? Optional.empty()
        : Optional.of(
            WORDS.say(
                "stint.takes", minutes(all), String.join(WORDS.say("stint.takes.and"), parts)));
  }

  private static void part(String key, BigDecimal minutes, List<String> parts) {
    if (minutes.signum() > 0) {
      parts.add(WORDS.say("stint.takes." + key, minutes(minutes)));
    }
  }

  private static String minutes(BigDecimal minutes) {
    return minutes.stripTrailingZeros().toPlainString();
  }
}
