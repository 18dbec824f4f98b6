package blindlap.exchange;

import blindlap.fault.Unreadable;
import blindlap.session.EntryFault;
import blindlap.session.day.LapId;
import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.Locale;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Fields of the bodies of entries as what they stand for. Anything unexpected is an exception. */
final class BodyFields {
  /** Letters of an unknown word that are repeated in a sentence. */
  private static final int MOST_SAID = 40;

  private BodyFields() {}

  static JsonNode field(JsonNode body, String name) {
    JsonNode value = body.get(name);
    if (value == null) {
      throw new Unreadable(EntryFault.NOT_IN_FORM, name);
    }
    return value;
  }

  static String text(JsonNode body, String name) {
    JsonNode value = field(body, name);
    if (!value.isTextual()) {
      throw new Unreadable(EntryFault.NOT_IN_FORM, name);
    }
    return value.textValue();
  }

  static boolean truth(JsonNode body, String name) {
    JsonNode value = field(body, name);
    if (!value.isBoolean()) {
      throw new Unreadable(EntryFault.NOT_IN_FORM, name);
    }
    return value.booleanValue();
  }

  /** A text that stands for something else; what it cannot stand for is the field's fault. */
  static <T> T parsed(JsonNode body, String name, Function<String, T> reader) {
    String text = text(body, name);
    try {
      return reader.apply(text);
    } catch (RuntimeException e) {
      throw new Unreadable(EntryFault.NOT_IN_FORM, name);
    }
  }

  /** One of several words, to which a newer program may have added. */
  static <T> T known(JsonNode body, String name, Function<String, T> reader) {
    String text = text(body, name);
    try {
      return reader.apply(text);
    } catch (RuntimeException e) {
      throw new Unreadable(EntryFault.UNKNOWN_VALUE, name, brief(text));
    }
  }

  private static String brief(String text) {
    return text.length() <= MOST_SAID ? text : text.substring(0, MOST_SAID) + "…";
  }

  static int whole(JsonNode body, String name) {
    return parsed(body, name, Integer::parseInt);
  }

  static @Nullable BigDecimal decimal(JsonNode body, String name) {
    return field(body, name).isNull() ? null : parsed(body, name, BigDecimal::new);
  }

  static LapId lap(JsonNode body) {
    return new LapId(whole(body, "stint"), whole(body, "lap"));
  }

  static <E extends Enum<E>> E option(JsonNode body, String name, Class<E> options) {
    return known(
        body, name, text -> Enum.valueOf(options, text.toUpperCase(Locale.ROOT).replace(' ', '_')));
  }
}
