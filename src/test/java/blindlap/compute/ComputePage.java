package blindlap.compute;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** docs/compute.md, taken apart: a section a calculation, with tables and an example. */
final class ComputePage {
  private static final Path FILE = Path.of("docs", "compute.md");
  private static final MathContext PRINTED = new MathContext(6);
  private static final Pattern SECTION =
      Pattern.compile("^(##|###) (.+)\n((?:(?!^###? ).*\n?)*)", Pattern.MULTILINE);
  private static final Pattern ROW =
      Pattern.compile("^\\| `([^`]+)` \\| (.*) \\|$", Pattern.MULTILINE);
  private static final Pattern EXAMPLE =
      Pattern.compile(
          "Check `([^`]+)`:\n\n```json\n(.*?)```\n\nanswers\n\n```json\n(.*?)```", Pattern.DOTALL);

  /** What a field of a request is. */
  record Row(String what, String unit, String shape, String required) {
    /** Whether a value has this shape. */
    boolean fits(JsonNode value) {
      String plain = shape.replace(", null for a gap", "");
      boolean gaps = !plain.equals(shape);
      for (String one : plain.split(" or ", -1)) {
        if (is(one, value, gaps)) {
          return true;
        }
      }
      return false;
    }

    private static boolean is(String shape, JsonNode value, boolean gaps) {
      return switch (shape) {
        case "number" -> value.isNumber();
        case "whole number" -> value.isNumber() && value.canConvertToExactIntegral();
        case "text" -> value.isTextual();
        case "flag" -> value.isBoolean();
        case "object" -> value.isObject();
        case "list of numbers" -> all(value, each -> is("number", each, gaps) || gap(each, gaps));
        case "list of whole numbers" -> all(value, each -> is("whole number", each, gaps));
        case "list of flags" -> all(value, each -> is("flag", each, gaps) || gap(each, gaps));
        case "list of texts" -> all(value, JsonNode::isTextual);
        case "list of objects" -> all(value, JsonNode::isObject);
        case "list of lists of numbers" -> all(value, each -> is("list of numbers", each, gaps));
        default -> throw new AssertionError("no shape: " + shape);
      };
    }

    private static boolean gap(JsonNode value, boolean gaps) {
      return gaps && value.isNull();
    }

    private static boolean all(JsonNode list, Predicate<JsonNode> shape) {
      if (!list.isArray()) {
        return false;
      }
      for (JsonNode each : list) {
        if (!shape.test(each)) {
          return false;
        }
      }
      return true;
    }
  }

  /** A request that is printed. */
  record Example(String calculation, String check, String request) {}

  private final String text;
  private final Map<String, String> common = new LinkedHashMap<>();
  private final SortedMap<String, String> sections = new TreeMap<>();

  private ComputePage(String text) {
    this.text = text;
    for (MatchResult section : SECTION.matcher(text).results().toList()) {
      (section.group(1).equals("##") ? common : sections).put(section.group(2), section.group(3));
    }
  }

  static ComputePage read() throws IOException {
    return new ComputePage(Files.readString(FILE));
  }

  String text() {
    return text;
  }

  void write(String again) throws IOException {
    Files.writeString(FILE, again);
  }

  Set<String> names() {
    return new TreeSet<>(sections.keySet());
  }

  /** Rows of request fields, those that the section refers to among them. */
  Map<String, Row> given(String calculation) {
    Map<String, Row> rows = new LinkedHashMap<>();
    for (String[] row : rows(calculation)) {
      if (row.length == 5) {
        rows.put(row[0], new Row(row[1], row[2], row[3], row[4]));
      }
    }
    return rows;
  }

  /** Rows of answer fields. */
  Map<String, String> answers(String calculation) {
    Map<String, String> rows = new LinkedHashMap<>();
    for (String[] row : rows(calculation)) {
      if (row.length == 3) {
        rows.put(row[0], row[1]);
      }
    }
    return rows;
  }

  private List<String[]> rows(String calculation) {
    String section = Objects.requireNonNull(sections.get(calculation), calculation);
    StringBuilder all = new StringBuilder(section);
    common.forEach(
        (title, body) -> {
          String anchor = "](#" + title.toLowerCase(java.util.Locale.ROOT).replace(' ', '-') + ")";
          if (section
              .lines()
              .anyMatch(line -> line.startsWith("Besides") && line.contains(anchor))) {
            all.append(body);
          }
        });
    List<String[]> rows = new ArrayList<>();
    Matcher row = ROW.matcher(all);
    while (row.find()) {
      rows.add((row.group(1) + " | " + row.group(2)).split(" \\| ", -1));
    }
    return rows;
  }

  List<Example> examples() {
    List<Example> examples = new ArrayList<>();
    sections.forEach(
        (name, body) -> {
          List<MatchResult> found = EXAMPLE.matcher(body).results().toList();
          if (found.isEmpty()) {
            throw new AssertionError(name + " has no example.");
          }
          found.forEach(each -> examples.add(new Example(name, each.group(1), each.group(2))));
        });
    return examples;
  }

  /** The page with the answer of every request worked out again. */
  String withAnswers(Function<ObjectNode, CalculationAnswer> answers) {
    return EXAMPLE
        .matcher(text)
        .replaceAll(
            found -> {
              ObjectNode request = (ObjectNode) StrictJson.parse(found.group(2));
              JsonNode answer = StrictJson.parse(answers.apply(request).print());
              String block = found.group();
              String kept = block.substring(0, block.length() - found.group(3).length() - 3);
              return Matcher.quoteReplacement(kept + print(answer) + "```");
            });
  }

  /** Every field of the answer and of its result on a line of its own, numbers rounded. */
  private static String print(JsonNode answer) {
    StringBuilder lines = new StringBuilder("{\n");
    Iterator<Map.Entry<String, JsonNode>> fields = answer.fields();
    while (fields.hasNext()) {
      Map.Entry<String, JsonNode> field = fields.next();
      lines.append("  \"").append(field.getKey()).append("\": ");
      if (field.getKey().equals("result")) {
        lines.append("{\n");
        Iterator<Map.Entry<String, JsonNode>> inner = field.getValue().fields();
        while (inner.hasNext()) {
          Map.Entry<String, JsonNode> each = inner.next();
          lines.append("    \"").append(each.getKey()).append("\": ").append(flat(each.getValue()));
          lines.append(inner.hasNext() ? ",\n" : "\n");
        }
        lines.append("  }");
      } else {
        lines.append(flat(field.getValue()));
      }
      lines.append(fields.hasNext() ? ",\n" : "\n");
    }
    return lines.append("}\n").toString();
  }

  private static String flat(JsonNode node) {
    if (node.isArray()) {
      List<String> items = new ArrayList<>();
      node.forEach(each -> items.add(flat(each)));
      return "[" + String.join(", ", items) + "]";
    }
    if (node.isObject()) {
      List<String> items = new ArrayList<>();
      node.fields()
          .forEachRemaining(
              each -> items.add("\"" + each.getKey() + "\": " + flat(each.getValue())));
      return "{" + String.join(", ", items) + "}";
    }
    return node.isFloatingPointNumber() ? rounded(node.doubleValue()) : node.toString();
  }

  private static String rounded(double value) {
    BigDecimal six = new BigDecimal(value).round(PRINTED);
    boolean small = six.signum() != 0 && six.abs().compareTo(new BigDecimal("1e-6")) < 0;
    return small ? six.stripTrailingZeros().toString() : plain(six.stripTrailingZeros());
  }

  private static String plain(BigDecimal value) {
    return value.signum() == 0 ? "0" : value.toPlainString();
  }
}
