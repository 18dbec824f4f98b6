package blindlap.exchange;

import blindlap.fault.TypedNumber;
import blindlap.plan.Setting;
import blindlap.plan.Setup;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Reads the setups of a plan file and their settings. */
final class SetupReader {
  private static final Pattern MASS = Pattern.compile("(.*[^a-z])(g|kg|lb|oz)");

  private SetupReader() {}

  static Setup setup(FieldReader f) {
    String name = f.requiredText("name");
    BigDecimal grams = f.decimal("mass_g");
    String typed = f.text("mass", "");
    return new Setup(
        f.text("id", Setup.idOf(name)),
        name,
        f.text("component", ""),
        f.objects("settings", SetupReader::setting),
        typed.isEmpty() ? grams : mass(f, typed, grams),
        typed,
        f.decimal("ballast_g"),
        f.object(
            "price", p -> new Setup.Price(p.decimal("amount", "0"), p.requiredText("currency"))),
        f.texts("steps"),
        f.objects(
            "limits",
            l ->
                new Setup.Limit(
                    l.requiredText("what"), l.requiredText("value"), l.text("source", ""))),
        f.integer("most_refits"),
        f.texts("consumables"),
        f.texts("cautions"));
  }

  /** Grams of a mass as typed, to a tenth; must agree with mass_g where both stand. */
  private static @Nullable BigDecimal mass(
      FieldReader f, String typed, @Nullable BigDecimal grams) {
    BigDecimal fromTyped = grams(typed);
    if (fromTyped == null) {
      FieldWords expected = TypedNumber.twoSigns(typed) ? FieldWords.ONE_SIGN : FieldWords.MASS;
      f.wrong("mass", Objects.requireNonNull(f.value("mass")), expected.say());
      return grams;
    }
    if (grams != null && grams.subtract(fromTyped).abs().compareTo(BigDecimal.ONE) > 0) {
      f.wrong(
          "mass_g",
          Objects.requireNonNull(f.value("mass_g")),
          FieldWords.SAME_GRAMS.say(fromTyped.toPlainString()));
    }
    return fromTyped;
  }

  /** Grams to a tenth of "1.64 lb"; null if it is not of this form. */
  static @Nullable BigDecimal grams(String typed) {
    Matcher parts = MASS.matcher(typed.strip());
    BigDecimal number = parts.matches() ? TypedNumber.number(parts.group(1)).orElse(null) : null;
    if (number == null || number.signum() < 0) {
      return null;
    }
    // Pound 453.59237 g exactly (international yard and pound agreement, 1959), 16 ounces.
    String factor =
        switch (parts.group(2)) {
          case "kg" -> "1000";
          case "lb" -> "453.59237";
          case "oz" -> "28.349523125";
          case "g" -> "1";
          default -> throw new IllegalStateException("no mass is in " + parts.group(2));
        };
    return number.multiply(new BigDecimal(factor)).setScale(1, RoundingMode.HALF_EVEN);
  }

  static Setting setting(FieldReader f) {
    return settingWithValue(f, f.requiredText("value"));
  }

  static Setting settingWithValue(FieldReader f, String value) {
    return new Setting(
        f.requiredText("name"),
        value,
        f.text("unit", ""),
        f.decimal("tolerance"),
        f.option("check", Setting.Check.class, Setting.Check.EACH_STINT),
        f.bool("equal", false),
        f.decimal("range"),
        f.decimal("step"),
        f.integer("readings", 1));
  }
}
