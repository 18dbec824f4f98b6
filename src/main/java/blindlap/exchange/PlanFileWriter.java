package blindlap.exchange;

import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Writes a plan file as a person would: what is asked first, no value twice, numbers without
 * quotes, a remark where a word alone would not do. Reading it gives the plan that was written.
 */
final class PlanFileWriter {
  private static final Words WORDS = Words.of("planfile");

  /**
   * Fields that a plan cannot do without: written empty where they are missing, to be filled in.
   */
  private static final Set<String> NEEDED = Set.of("question", "rider", "trail", "day");

  private final StringBuilder out = new StringBuilder();
  private final Set<String> remarked = new HashSet<>();

  private PlanFileWriter() {}

  /** Fields as typed as the text of a plan file. */
  static String text(Map<String, ?> fields) {
    PlanFileWriter writer = new PlanFileWriter();
    writer.remark(0, "top");
    Map<String, Object> all = new LinkedHashMap<>(fields);
    NEEDED.forEach(name -> all.putIfAbsent(name, null));
    writer.object("", PlanFields.once(all), 0, false);
    return writer.out.toString();
  }

  /**
   * @param inItem true if the first field stands behind the dash of a list's item
   */
  private void object(String path, Map<?, ?> object, int indent, boolean inItem) {
    boolean first = inItem;
    for (Map.Entry<String, Object> field : PlanFields.ordered(path, object).entrySet()) {
      String name = field.getKey();
      String own = path.isEmpty() ? name : path + "." + name;
      boolean needed = path.isEmpty() && NEEDED.contains(name);
      if (PlanFields.empty(field.getValue()) && !needed) {
        continue;
      }
      if (path.isEmpty()) {
        remark(0, "head." + name);
      }
      if (!first) {
        out.append(" ".repeat(indent));
      }
      first = false;
      out.append(PlanScalar.of(name)).append(':');
      value(own, field.getValue(), indent);
    }
  }

  private void value(String path, @Nullable Object value, int indent) {
    if (value instanceof Map<?, ?> map) {
      behind(path);
      object(path, map, indent + 2, false);
    } else if (value instanceof List<?> list) {
      behind(path);
      list.forEach(item -> item(path, item, indent + 2));
    } else if (PlanFields.empty(value)) {
      behind(path + ".missing");
    } else {
      List<String> lines = PlanScalar.lines(String.valueOf(value));
      out.append(' ').append(lines.get(0));
      behind(path);
      lines.subList(1, lines.size()).forEach(line -> indented(line, indent + 2));
    }
  }

  private void indented(String line, int indent) {
    out.append(line.isEmpty() ? "" : " ".repeat(indent) + line).append('\n');
  }

  private void item(String path, @Nullable Object item, int indent) {
    if (item == null) {
      return;
    }
    out.append(" ".repeat(indent)).append('-');
    if (item instanceof Map<?, ?> map && !PlanFields.ordered(path, map).isEmpty()) {
      out.append(' ');
      int before = out.length();
      object(path, map, indent + 2, true);
      if (out.length() == before) {
        out.append("{}\n");
      }
    } else if (item instanceof List<?> list) {
      out.append('\n');
      list.forEach(each -> item(path, each, indent + 2));
    } else {
      out.append(' ').append(PlanScalar.of(item instanceof Map ? "" : String.valueOf(item)));
      out.append('\n');
    }
  }

  /** What a field takes, behind the first one of its name. */
  private void behind(String path) {
    if (WORDS.has(path) && remarked.add(path)) {
      out.append("  # ").append(WORDS.say(path));
    }
    out.append('\n');
  }

  /** Lines of their own, with a blank one before. */
  private void remark(int indent, String key) {
    if (!WORDS.has(key)) {
      return;
    }
    if (out.length() > 0) {
      out.append('\n');
    }
    for (String line : new ArrayList<>(WORDS.say(key).lines().toList())) {
      out.append(" ".repeat(indent)).append("# ").append(line).append('\n');
    }
  }
}
