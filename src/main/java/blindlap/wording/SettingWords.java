package blindlap.wording;

import blindlap.plan.Differences;
import blindlap.plan.Setup;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** What the setups have in common and where they differ, in words. */
public final class SettingWords {
  private static final Words WORDS = Words.of("answer");

  private SettingWords() {}

  /** A fixed word, such as the name of a row. */
  public static String say(String key) {
    return WORDS.say(key);
  }

  /** What is to be said of a setting across the setups. */
  public static String difference(Differences.Row row) {
    BigDecimal tolerance = row.tolerance();
    String unit =
        row.values().stream()
            .flatMap(Optional::stream)
            .map(s -> s.unit())
            .filter(u -> !u.isBlank())
            .findFirst()
            .orElse("");
    return switch (row.status()) {
      case DIFFERS -> WORDS.say("setting.differs");
      case PARITY_BROKEN ->
          WORDS.say("setting.broken", tolerance == null ? "0" : tolerance.toPlainString(), unit);
      case SAME ->
          tolerance == null || tolerance.signum() == 0
              ? WORDS.say("setting.same")
              : WORDS.say("setting.within", tolerance.toPlainString(), unit);
    };
  }

  /** The mass of a setup as typed, with its ballast; "–" where it is not known. */
  public static String mass(Setup setup) {
    BigDecimal grams = setup.massGrams();
    if (grams == null) {
      return "–";
    }
    String typed =
        setup.massTyped().isEmpty()
            ? WORDS.say("setting.mass.grams", grams.toPlainString())
            : setup.massTyped();
    BigDecimal ballast = setup.ballastGrams();
    return ballast == null || ballast.signum() == 0
        ? typed
        : WORDS.say("setting.mass.ballast", typed, ballast.toPlainString());
  }

  /** How far apart masses are on the bike, in grams. */
  public static String massesApart(List<BigDecimal> grams) {
    BigDecimal apart = Collections.max(grams).subtract(Collections.min(grams));
    return apart.signum() == 0
        ? WORDS.say("setting.mass.same")
        : WORDS.say("setting.mass.apart", apart.stripTrailingZeros().toPlainString());
  }
}
