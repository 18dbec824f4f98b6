package blindlap.wording.day;

import blindlap.fault.TypedNumber;
import blindlap.plan.BlindLevel;
import blindlap.session.day.Day;
import blindlap.session.day.LapId;
import java.math.BigDecimal;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Words of the Ride page. Nothing here depends on the order. */
public final class RideWords {
  private static final Words WORDS = Words.of("ride");
  private static final DateTimeFormatter CLOCK =
      DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);
  private static final double LEVEL = 0.05 + 1e-12;

  private RideWords() {}

  /** A sentence of the bundle. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /**
   * What a stint's number is on: the bike's plate, a unit, or where nobody hides anything, paper.
   */
  public static String plate(BlindLevel level) {
    return WORDS.say(
        switch (level) {
          case HELPER -> "plate";
          case PREPARED -> "plate.unit";
          case MASKED, DRAWN, OPEN -> "plate.paper";
        });
  }

  /** What a broken blind does to the result, or that it came out which part bears which label. */
  public static String broken(BlindLevel level, int stint) {
    return WORDS.say(level == BlindLevel.MASKED ? "labels.out.done" : "blind.broken.done", stint);
  }

  /** "Saved 11:44:07". */
  public static String saved(ZonedDateTime at) {
    return WORDS.say("saved", CLOCK.format(at));
  }

  /** Hours, minutes and seconds. */
  public static String clock(ZonedDateTime at) {
    return CLOCK.format(at);
  }

  /** Nothing was saved, and why. */
  public static String notSaved(String why) {
    return WORDS.say("not.saved", why);
  }

  /** What is open on the sheet at a stage; empty if nothing is asked. */
  public static String open(String stage, int answers) {
    if (!stage.equals("SCORED")) {
      return "";
    }
    return switch (answers) {
      case 0 -> WORDS.say("open.none");
      case 1 -> WORDS.say("open.one");
      default -> WORDS.say("open.many", answers);
    };
  }

  /** Asks whether the rider is done though something is open. */
  public static String doneOpen(List<String> open) {
    return WORDS.say("done.open", String.join("; ", open));
  }

  /** What a day cut short after a stint has left, said at once. */
  public static String cutShort(int last, double smallestP) {
    return smallestP <= LEVEL ? WORDS.say("cut.can", last) : WORDS.say("cut.cannot", last);
  }

  /** A typed time in seconds: seconds or m:ss.s; null if it is neither, or not above 0. */
  public static @Nullable BigDecimal seconds(String typed) {
    return TypedNumber.time(typed).filter(seconds -> seconds.signum() > 0).orElse(null);
  }

  /** Why a typed time was not taken. */
  public static String notATime(String typed) {
    return WORDS.say(TypedNumber.twoSigns(typed) ? "time.signs" : "time.form", typed);
  }

  /** A time as it is shown once it may be: m:ss.s. */
  public static String time(BigDecimal seconds) {
    return Figures.time(seconds.doubleValue(), 1);
  }

  /** How many laps and stints of the day are not ridden. */
  static String missing(Day day) {
    int perStint = day.plan().laps().perStint();
    int of = day.lastStint();
    long ridden =
        java.util.stream.IntStream.rangeClosed(1, of)
            .filter(
                stint ->
                    java.util.stream.IntStream.rangeClosed(1, perStint)
                        .allMatch(lap -> day.ridden(new LapId(stint, lap))))
            .count();
    return say("close.missing", of * perStint - day.lapsRidden(), ridden, of);
  }
}
