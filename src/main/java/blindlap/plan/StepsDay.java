package blindlap.plan;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What a steps day adds to a plan (docs/method.md#steps-day): one setup, one setting, three to six
 * levels. A telling run between two levels of one setting says the same of it. The levels
 * themselves are the plan's setups, which differ in this setting and in nothing else; so order,
 * codes, seal and sheets are those of any comparison.
 *
 * @param setup name of the one setup
 * @param setupId its id, from which those of the levels are made
 * @param setting name of the setting, as the levels carry it
 * @param unit its unit, as typed; empty for a plain count
 * @param way how it is set so that the handling tells nothing
 * @param least the least value that the maker allows, as typed in; null if none was typed
 * @param most the largest one; null if none was typed
 * @param source where in the manual; may be empty
 * @param low what a pressure is let down to at every handling; null for other ways
 * @param high what it is pumped up to at every handling; null for other ways
 */
public record StepsDay(
    String setup,
    String setupId,
    String setting,
    String unit,
    Way way,
    @Nullable BigDecimal least,
    @Nullable BigDecimal most,
    String source,
    @Nullable BigDecimal low,
    @Nullable BigDecimal high) {

  /** Fewest levels that say more than a comparison of two setups. */
  public static final int FEWEST = 3;

  /** Most levels of one day. */
  public static final int MOST = 6;

  /** Which end of the levels a rider guesses to be nearer to; its place among the answers. */
  public enum End {
    LOW,
    HIGH
  }

  /** How a level is set, at a real and at a dummy swap alike. */
  public enum Way {
    /** Clicks of a dial, counted from one end: equally many at every handling. */
    CLICKS,
    /** A pressure: down to a low, up to a high, to the level. */
    PRESSURE,
    /** A position, a spring: taken off whole and fitted again. */
    REFIT
  }

  /** "Shock K, rebound at 4, 7, 10 clicks". */
  String title(List<String> levels) {
    return setup + ", " + setting + " at " + range(levels);
  }

  /** "Shock K, compression at 9 and 13 clicks". */
  String titleOfTwo(List<String> levels) {
    return setup + ", " + setting + " at " + range(levels, " and ");
  }

  /** The names of levels in one, the unit once: "4, 7, 10 clicks". */
  public static String range(List<String> levels) {
    return range(levels, ", ");
  }

  private static String range(List<String> levels, String between) {
    if (levels.isEmpty()) {
      return "";
    }
    String unit = levels.get(0).substring(Math.max(0, levels.get(0).indexOf(' ')));
    boolean all = unit.startsWith(" ") && levels.stream().allMatch(each -> each.endsWith(unit));
    return all
        ? String.join(
                between,
                levels.stream()
                    .map(each -> each.substring(0, each.length() - unit.length()))
                    .toList())
            + unit
        : String.join(between, levels);
  }

  /** True if the maker's limits, as far as they were typed in, allow a value. */
  boolean allows(BigDecimal value) {
    return (least == null || value.compareTo(least) >= 0)
        && (most == null || value.compareTo(most) <= 0);
  }

  /** The value of a level, if it is a number. */
  public Optional<BigDecimal> value(Setup level) {
    return level.setting(setting).map(Setting::number);
  }

  /**
   * The setups of a day's levels, from the lowest to the highest: each is the one setup with the
   * setting at one value, and is called by that value. Levels that are no numbers keep the order in
   * which they were typed; {@link PlanCheck} names them.
   *
   * @param one the one setup, without the setting
   * @param levels values as typed
   */
  public List<Setup> setups(Setup one, List<String> levels) {
    List<Setup> setups = new ArrayList<>();
    for (String typed : levels) {
      setups.add(at(one, typed));
    }
    if (setups.stream().allMatch(each -> value(each).isPresent())) {
      setups.sort(Comparator.comparing(each -> value(each).orElseThrow()));
    }
    return List.copyOf(setups);
  }

  /** The one setup, without the setting that makes it a level. */
  public Setup one(Setup level) {
    return with(
        level,
        setupId,
        setup,
        level.settings().stream().filter(each -> !each.isCalled(setting)).toList());
  }

  private Setup at(Setup one, String typed) {
    List<Setting> settings = new ArrayList<>();
    Setting level = new Setting(setting, typed, unit, null, Setting.Check.EACH_STINT, false);
    settings.add(level);
    one.settings().stream().filter(each -> !each.isCalled(setting)).forEach(settings::add);
    return with(one, id(setupId, typed), level.shown(), settings);
  }

  private static Setup with(Setup one, String id, String name, List<Setting> settings) {
    return new Setup(
        id,
        name,
        one.component(),
        settings,
        one.massGrams(),
        one.massTyped(),
        one.ballastGrams(),
        one.price(),
        one.steps(),
        one.limits(),
        one.mostRefits(),
        one.consumables(),
        one.cautions());
  }

  /** "shock-k-4"; a level below nought keeps its sign in words, since hyphens part words. */
  public static String id(String setupId, String typed) {
    String value = typed.strip().replaceFirst("^[−–-]", "minus ");
    return setupId + "-" + Setup.idOf(value);
  }
}
