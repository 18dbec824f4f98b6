package blindlap.plan;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** How options, numbers and objects of a plan are written. */
final class JsonText {
  private JsonText() {}

  static String word(Enum<?> option) {
    return option.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  static @Nullable String number(@Nullable Number value) {
    if (value == null) {
      return null;
    }
    BigDecimal decimal = value instanceof BigDecimal big ? big : new BigDecimal(value.toString());
    return decimal.signum() == 0 ? "0" : decimal.stripTrailingZeros().toPlainString();
  }

  /** Names and values in turn. */
  static Map<String, Object> object(@Nullable Object... pairs) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < pairs.length; i += 2) {
      map.put((String) Objects.requireNonNull(pairs[i]), pairs[i + 1]);
    }
    return map;
  }
}
