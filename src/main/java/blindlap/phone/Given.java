package blindlap.phone;

import blindlap.plan.Plan;
import blindlap.session.day.LapId;
import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.text.Normalizer;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Fields of an object as a phone writes them: texts, true and false, and null. */
final class Given {
  /** Years 1970 to 2286: whatever a phone's clock says, an entry can hold it. */
  private static final String MILLIS = "-?[0-9]{1,13}";

  private final JsonNode object;

  Given(JsonNode object) {
    this.object = object;
  }

  boolean has(String field) {
    return object.hasNonNull(field);
  }

  Given inside(String field) throws Turned {
    JsonNode inside = object.path(field);
    if (!inside.isObject()) {
      throw Turned.form();
    }
    return new Given(inside);
  }

  /** A text, in the form in which entries hold it. */
  String text(String field) throws Turned {
    JsonNode text = object.path(field);
    if (!text.isTextual() || halfACharacter(text.textValue())) {
      throw Turned.form();
    }
    return Normalizer.normalize(text.textValue(), Normalizer.Form.NFC);
  }

  private static boolean halfACharacter(String text) {
    return text.codePoints().anyMatch(c -> c >= Character.MIN_SURROGATE && c <= 0xDFFF);
  }

  /** The same; empty where the field is null or left out. */
  Optional<String> maybe(String field) throws Turned {
    return has(field) ? Optional.of(text(field)) : Optional.empty();
  }

  /** A whole number, not below 0. */
  long number(String field) throws Turned {
    String text = text(field);
    if (!text.matches("[0-9]{1,15}")) {
      throw Turned.form();
    }
    return Long.parseLong(text);
  }

  int small(String field) throws Turned {
    long number = number(field);
    if (number > 10_000) {
      throw Turned.form();
    }
    return (int) number;
  }

  /** Milliseconds, which may be below 0. */
  long millis(String field) throws Turned {
    String text = text(field);
    if (!text.matches(MILLIS)) {
      throw Turned.form();
    }
    return Long.parseLong(text);
  }

  BigDecimal decimal(String field) throws Turned {
    String text = text(field);
    if (!text.matches("-?[0-9]{1,9}(\\.[0-9]{1,9})?")) {
      throw Turned.form();
    }
    return new BigDecimal(text);
  }

  @Nullable BigDecimal maybeDecimal(String field) throws Turned {
    return has(field) ? decimal(field) : null;
  }

  boolean yes(String field) {
    return object.path(field).asBoolean(false);
  }

  LapId lap() throws Turned {
    int stint = small("stint");
    int lap = small("lap");
    if (stint < 1 || lap < 1) {
      throw Turned.form();
    }
    return new LapId(stint, lap);
  }

  /** A measure that is asked for: one of those with a watch, or one of the others. */
  String measure(Plan plan, boolean timed) throws Turned {
    String name = text("measure");
    boolean asked =
        plan.askedOnTheDay().stream()
            .anyMatch(each -> each.name().equals(name) && each.kind().timed() == timed);
    if (!asked) {
      throw Turned.form();
    }
    return name;
  }

  <E extends Enum<E>> E one(Class<E> type, String field) throws Turned {
    String word = text(field).toUpperCase(Locale.ROOT);
    for (E each : type.getEnumConstants()) {
      if (each.name().equals(word)) {
        return each;
      }
    }
    throw Turned.form();
  }

  <E extends Enum<E>> @Nullable E maybeOne(Class<E> type, String field) throws Turned {
    return has(field) ? one(type, field) : null;
  }
}
