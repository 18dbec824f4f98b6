package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.fault.TypedNumber;
import blindlap.plan.Setting;
import blindlap.session.HelperEntry;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Whether a measured setting lies where it should. */
public final class Tolerance {
  private Tolerance() {}

  /** True if something readable was typed: a number where the setting is one. */
  public static boolean readable(Setting setting, String typed) {
    return !typed.isBlank() && (setting.number() == null || TypedNumber.number(typed).isPresent());
  }

  /** What is still to be measured, by measured values as typed; nothing if all can be read. */
  static List<Problem> unread(List<Setting> settings, Map<String, String> measured) {
    List<Problem> problems = new ArrayList<>();
    List<String> open = new ArrayList<>();
    for (Setting setting : settings) {
      String typed = measured.getOrDefault(setting.name(), "");
      if (readable(setting, typed)) {
        continue;
      }
      if (TypedNumber.twoSigns(typed)) {
        problems.add(Problem.of(DeskFault.TWO_SIGNS, "", setting.name(), typed));
      } else {
        open.add(setting.name());
      }
    }
    if (!open.isEmpty()) {
      problems.add(0, Problem.of(DeskFault.MEASURES_OPEN, "", String.join(", ", open)));
    }
    return problems;
  }

  /** What was copied from paper and is no number where one is due; what is empty stays open. */
  static List<Problem> notNumbers(List<Setting> settings, Map<String, String> measured) {
    return settings.stream()
        .filter(each -> !measured.getOrDefault(each.name(), "").isEmpty())
        .filter(each -> !readable(each, measured.getOrDefault(each.name(), "")))
        .map(
            each ->
                Problem.of(
                    DeskFault.PAPER_NOT_A_NUMBER,
                    "",
                    each.name(),
                    measured.getOrDefault(each.name(), "")))
        .toList();
  }

  /**
   * How far a measured value lies outside its tolerance.
   *
   * @return empty if it lies inside, or if no tolerance was declared for a number
   */
  public static Optional<HelperEntry.Outside> outside(Setting setting, String typed) {
    BigDecimal aim = setting.number();
    BigDecimal measured = TypedNumber.number(typed).orElse(null);
    if (aim == null) {
      boolean same =
          setting
              .value()
              .strip()
              .toLowerCase(Locale.ROOT)
              .equals(typed.strip().toLowerCase(Locale.ROOT));
      return same ? Optional.empty() : Optional.of(of(setting, typed, null));
    }
    BigDecimal tolerance = setting.tolerance();
    if (measured == null || tolerance == null) {
      return Optional.empty();
    }
    BigDecimal by = measured.subtract(aim);
    return by.abs().compareTo(tolerance) <= 0
        ? Optional.empty()
        : Optional.of(of(setting, typed, by));
  }

  private static HelperEntry.Outside of(Setting setting, String typed, @Nullable BigDecimal by) {
    return new HelperEntry.Outside(setting.name(), setting.shown(), typed.strip(), by, "");
  }
}
