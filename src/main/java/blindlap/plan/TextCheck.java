package blindlap.plan;

import blindlap.fault.TypedText;
import java.util.List;
import java.util.Map;

/**
 * Limits on the length of texts and lists, so that sheets, records and screens can hold them, and
 * the rule for the characters of texts.
 */
final class TextCheck {
  /** Most characters of a name, unit or other short text. */
  static final int SHORT = 60;

  /** Most characters of any other text. */
  static final int LONG = 2000;

  /** Most items of a list. */
  static final int ITEMS = 40;

  private static final java.util.Set<String> SHORT_FIELDS =
      java.util.Set.of(
          "name",
          "unit",
          "component",
          "low_words",
          "high_words",
          "rider",
          "trail",
          "id",
          "value",
          "mass",
          "currency",
          "first",
          "second",
          "prepared_by",
          "assessor",
          "from_gate",
          "to_gate",
          "setup",
          "setup_id",
          "setting",
          "attribute",
          "more");

  private final FoundProblems problems;

  TextCheck(FoundProblems problems) {
    this.problems = problems;
  }

  /** Walks the plan as it is written, so that no field is forgotten. */
  void all(Plan plan) {
    Map<String, Object> tree = PlanJson.tree(plan);
    tree.remove("protocol"); // checked as a rule; its patterns may be many
    object("", tree);
  }

  private void object(String path, Map<?, ?> object) {
    object.forEach(
        (name, value) -> value(path.isEmpty() ? name + "" : path + "." + name, name + "", value));
  }

  private void value(String path, String name, @org.jspecify.annotations.Nullable Object value) {
    if (value instanceof String text) {
      int most = SHORT_FIELDS.contains(name) ? SHORT : LONG;
      if (text.codePointCount(0, text.length()) > most) {
        problems.add(PlanFault.TOO_LONG, path, most);
      }
      TypedText.Form form = most == SHORT ? TypedText.Form.LINE : TypedText.Form.WORDS;
      TypedText.flaw(text, form, path).ifPresent(problems.list::add);
    } else if (value instanceof Map<?, ?> object) {
      object(path, object);
    } else if (value instanceof List<?> list) {
      if (list.size() > ITEMS) {
        problems.add(PlanFault.TOO_MANY_ITEMS, path, ITEMS);
        return;
      }
      for (int i = 0; i < list.size(); i++) {
        value(path + "[" + (i + 1) + "]", name, list.get(i));
      }
    }
  }
}
