package blindlap.exchange;

import blindlap.fault.Problem;
import blindlap.plan.PlanFault;
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

  /**
   * Fields as a YAML plan file, written as a person would: fields without a value, and those that
   * say again what another one says, are left out.
   */
  public static String yaml(Map<String, ?> fields) {
    return PlanFileWriter.text(fields);
  }
}
