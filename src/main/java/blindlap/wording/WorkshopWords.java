package blindlap.wording;

import blindlap.fault.Problem;
import blindlap.fault.TypedNumber;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

/** Words of the workshop arithmetic. */
public final class WorkshopWords {
  private static final Words WORDS = Words.of("workshop");

  /** Beyond any length, rate, pressure or mass on a bike. */
  private static final double MOST = 1e6;

  private WorkshopWords() {}

  /** What a calculation works out. */
  public static String title(String kind) {
    return WORDS.say(kind + ".title");
  }

  /** Its formula. */
  public static String formula(String kind) {
    return WORDS.say(kind + ".formula");
  }

  /** Names of the numbers it takes. */
  public static List<String> inputs(String kind) {
    return List.of(WORDS.say(kind + ".inputs").split("; ", -1));
  }

  /**
   * A result.
   *
   * @param words the result with its unit, or why there is none of any use
   * @param typed the number as it would be typed into a field; empty if it is of no use there
   * @param unit its unit as it would be typed; empty if it is that of what was given
   */
  public record Answer(String words, String typed, String unit) {
    /** True if it can be taken over. */
    public boolean usable() {
      return !typed.isEmpty();
    }
  }

  /** A result in words; what no bike has, and nothing at all, is said as such. */
  public static Answer answer(String kind, double value) {
    int decimals = kind.startsWith("CLICKS") ? 0 : Math.abs(value) < 10 ? 2 : 1;
    if (!Double.isFinite(value) || Math.abs(value) > MOST) {
      return new Answer(WORDS.say("too.large"), "", "");
    }
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
    if (rounded.signum() == 0 && value != 0) {
      return new Answer(WORDS.say("too.small"), "", "");
    }
    if (value < 0) {
      return new Answer(
          WORDS.has(kind + ".below")
              ? WORDS.say(kind + ".below", Figures.number(-value, decimals))
              : WORDS.say("below"),
          "",
          "");
    }
    String typed = rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    boolean nothing = rounded.signum() == 0 && WORDS.has(kind + ".zero");
    return new Answer(
        nothing
            ? WORDS.say(kind + ".zero")
            : WORDS.say(kind + ".result", Figures.number(value, decimals)),
        typed,
        unit(kind));
  }

  /** The unit of a result as it would be typed; empty if it is that of what was given. */
  public static String unit(String kind) {
    return WORDS.has(kind + ".unit") ? WORDS.say(kind + ".unit") : "";
  }

  /** On the button that takes a result over into a field. */
  public static String use(Answer answer) {
    return answer.unit().isEmpty()
        ? WORDS.say("use", answer.typed())
        : WORDS.say("use.unit", answer.typed(), answer.unit());
  }

  /** Other words of the workshop. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** What was typed is no number. */
  public static String notANumber(String typed) {
    return WORDS.say(TypedNumber.twoSigns(typed) ? "two.signs" : "not.a.number", typed);
  }

  /** The numbers cannot be. */
  public static String impossible(Problem why) {
    return WORDS.say("impossible", Problems.sentence(why));
  }
}
