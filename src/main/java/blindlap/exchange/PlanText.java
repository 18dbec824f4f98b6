package blindlap.exchange;

import blindlap.fault.Problem;
import blindlap.plan.PlanFault;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A plan file as a tree of fields as typed, whether they make sense or not, and back. What cannot
 * be read as a plan is kept all the same: a draft is never lost for a mistake in it.
 */
public final class PlanText {
  private PlanText() {}

  /**
   * A plan file's fields.
   *
   * @param fields maps, lists, texts and nulls; empty if the text cannot be read
   * @param problems why it cannot be read; empty if it can
   */
  public record Fields(Map<String, Object> fields, List<Problem> problems) {
    public Fields {
      problems = List.copyOf(problems);
    }
  }

  /** Reads YAML or JSON without judging the fields. */
  public static Fields read(String text) {
    try {
      Located root = Located.read(text);
      if (root.fields() == null) {
        return new Fields(
            Map.of(),
            List.of(
                Problem.of(
                    PlanFault.NOT_READABLE, "line 1, column 1", FieldWords.NO_FIELDS.say())));
      }
      return new Fields(object(root.fields()), List.of());
    } catch (Located.Unreadable e) {
      String where = "line " + e.line + ", column " + e.column;
      return new Fields(
          Map.of(),
          List.of(Problem.of(PlanFault.NOT_READABLE, where, String.valueOf(e.getMessage()))));
    }
  }

  private static Map<String, Object> object(Map<String, Located> fields) {
    Map<String, Object> object = new LinkedHashMap<>();
    fields.forEach((name, value) -> object.put(name, value(value)));
    return object;
  }

  private static @Nullable Object value(Located value) {
    if (value.fields() != null) {
      return object(value.fields());
    }
    if (value.items() != null) {
      List<Object> items = new ArrayList<>();
      value.items().forEach(item -> items.add(value(item)));
      return items;
    }
    return value.text();
  }

  /** Fields as a YAML plan file; fields without a value are left out. */
  public static String yaml(Map<String, ?> fields) {
    StringWriter out = new StringWriter();
    YAMLFactory factory =
        YAMLFactory.builder()
            .disable(YAMLGenerator.Feature.WRITE_DOC_START_MARKER)
            .enable(YAMLGenerator.Feature.MINIMIZE_QUOTES)
            .enable(YAMLGenerator.Feature.ALWAYS_QUOTE_NUMBERS_AS_STRINGS)
            .build();
    try (JsonGenerator generator = factory.createGenerator(out)) {
      write(fields, generator);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }

  private static void write(Object value, JsonGenerator out) throws IOException {
    if (value instanceof Map<?, ?> map) {
      out.writeStartObject();
      for (Map.Entry<?, ?> field : map.entrySet()) {
        if (!empty(field.getValue())) {
          out.writeFieldName(String.valueOf(field.getKey()));
          write(field.getValue(), out);
        }
      }
      out.writeEndObject();
    } else if (value instanceof List<?> list) {
      out.writeStartArray();
      for (Object item : list) {
        if (item != null) {
          write(item, out);
        }
      }
      out.writeEndArray();
    } else {
      out.writeString(String.valueOf(value));
    }
  }

  private static boolean empty(@Nullable Object value) {
    return value == null
        || value instanceof String text && text.isEmpty()
        || value instanceof List<?> list && list.isEmpty()
        || value instanceof Map<?, ?> map && map.values().stream().allMatch(PlanText::empty);
  }
}
