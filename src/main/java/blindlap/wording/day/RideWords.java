package blindlap.wording.day;

import java.math.BigDecimal;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Words of the Ride page. Nothing here depends on the order. */
public final class RideWords {
  private static final Words WORDS = Words.of("ride");
  private static final DateTimeFormatter CLOCK =
      DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);
  private static final Pattern TIME =
      Pattern.compile("(?:(\\d{1,3}):)?(\\d{1,5}(?:[.,]\\d{1,3})?)");
  private static final double LEVEL = 0.05 + 1e-12;

  private RideWords() {}

  /** A sentence of the bundle. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
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

  /** What a day cut short after a stint has left, said at once. */
  public static String cutShort(int last, double smallestP) {
    return smallestP <= LEVEL
        ? WORDS.say("cut.can", last, Figures.p(smallestP))
        : WORDS.say("cut.cannot", last);
  }

  /** A typed time in seconds: seconds or m:ss.s; null if it is neither. */
  public static @Nullable BigDecimal seconds(String typed) {
    Matcher form = TIME.matcher(typed.strip());
    if (!form.matches()) {
      return null;
    }
    BigDecimal seconds = new BigDecimal(form.group(2).replace(',', '.'));
    if (form.group(1) != null) {
      if (seconds.compareTo(BigDecimal.valueOf(60)) >= 0) {
        return null;
      }
      seconds = seconds.add(BigDecimal.valueOf(60L * Integer.parseInt(form.group(1))));
    }
    return seconds.signum() > 0 ? seconds : null;
  }

  /** A time as it is shown once it may be: m:ss.s. */
  public static String time(BigDecimal seconds) {
    return Figures.time(seconds.doubleValue(), 1);
  }
}
