package blindlap.screen.plan;

import blindlap.screen.part.TypedForm;
import blindlap.wording.WorkshopWords;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Workshop arithmetic for one field: what can be worked out in its unit, and the result written
 * into it. A unit that stands there is never changed: tolerance and steps of the dial are in it.
 */
final class SettingAid {
  private final TypedForm.Entry value;
  private final Optional<TypedForm.Entry> unit;
  private final List<WorkshopModel.Line> lines =
      Arrays.stream(WorkshopModel.Kind.values()).map(WorkshopModel.Line::new).toList();

  private SettingAid(TypedForm.Entry value, Optional<TypedForm.Entry> unit) {
    this.value = value;
    this.unit = unit;
  }

  /** For the value of a setting, in its unit if it has one. */
  static SettingAid ofSetting(TypedForm setting) {
    return new SettingAid(setting.field("value"), Optional.of(setting.field("unit")));
  }

  /** For the ballast of a setup, in grams. */
  static SettingAid ofBallast(TypedForm setup) {
    return new SettingAid(setup.field("ballast_g"), Optional.empty());
  }

  /** What ends in the unit that stands there; everything while none does. */
  List<WorkshopModel.Line> lines() {
    String typed = unit.map(TypedForm.Entry::get).orElse("g").strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(WorkshopModel.Kind.values())
        .filter(kind -> unit.isEmpty() == (kind == WorkshopModel.Kind.BALLAST))
        .filter(kind -> typed.isEmpty() || fits(kind, typed))
        .map(kind -> lines.get(kind.ordinal()))
        .toList();
  }

  private static boolean fits(WorkshopModel.Kind kind, String unit) {
    String own = WorkshopWords.unit(kind.name()).toLowerCase(Locale.ROOT);
    if (own.isEmpty()) {
      // A rate has the unit of the rates that it is worked out from.
      return kind != WorkshopModel.Kind.LEVERAGE && List.of("n/mm", "lbf/in").contains(unit);
    }
    return unit.equals(own) || unit.equals("clicks") && own.startsWith("clicks");
  }

  /** Writes an answer into the field, and its unit where none stands there. */
  void use(WorkshopWords.Answer answer) {
    value.set(answer.typed());
    unit.filter(there -> there.get().isBlank() && !answer.unit().isEmpty())
        .ifPresent(there -> there.set(answer.unit()));
  }
}
