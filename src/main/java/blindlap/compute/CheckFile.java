package blindlap.compute;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A check: a request with an expectation and a tolerance. What is expected comes from outside (a
 * book, a standard, certified data, another library, a sum done by hand), or it is an own reference
 * vector: figures by a program of our own, or by a library that this program calls itself.
 *
 * <p>A number passes if |result − expect| ≤ abs + rel·|expect|; {@code tolerance.fields} replaces
 * the tolerance for one top-level field of {@code expect} and everything inside it. Texts and
 * booleans must be equal, arrays agree element by element and in length, objects in the fields that
 * {@code expect} holds; null asks for null.
 */
public final class CheckFile {
  /** How the source of an own vector begins, or what it names. */
  private static final Pattern OWN = Pattern.compile("(?is)own\\b.*|.*\\bBlindlap\\b.*");

  private static final Set<String> TOLERANCE_FIELDS = Set.of("rel", "abs", "fields");

  private final String id;
  private final String title;
  private final String source;
  private final CalculationRequest request;
  private final ObjectNode expect;
  private final Tolerance tolerance;
  private final Map<String, Tolerance> fieldTolerances;

  private CheckFile(StrictJson.Rooted rooted) {
    ObjectNode object = rooted.object();
    String prefix = rooted.prefix();
    request = CalculationRequest.from(rooted);
    id = text(object, prefix, "id");
    title = text(object, prefix, "title");
    source = text(object, prefix, "source");
    if (!(object.get("expect") instanceof ObjectNode expected) || expected.isEmpty()) {
      throw new RequestException(prefix + "expect", "must be an object with at least one field.");
    }
    expect = expected;
    ObjectNode general = objectOrEmpty(object, prefix, "tolerance");
    StrictJson.refuseUnknown(general, prefix + "tolerance.", TOLERANCE_FIELDS);
    tolerance = Tolerance.of(general, prefix + "tolerance.");
    fieldTolerances = new HashMap<>();
    ObjectNode single = objectOrEmpty(general, prefix + "tolerance.", "fields");
    StrictJson.refuseUnknown(single, prefix + "tolerance.fields.", names(expect));
    for (String name : names(single)) {
      String at = prefix + "tolerance.fields.";
      ObjectNode own = objectOrEmpty(single, at, name);
      StrictJson.refuseUnknown(own, at + name + ".", Set.of("rel", "abs"));
      fieldTolerances.put(name, Tolerance.of(own, at + name + "."));
    }
  }

  /**
   * Reads the check, or the array of checks, of one text.
   *
   * @throws RequestException if it is not JSON or a field is missing, unknown or of another type
   */
  public static List<CheckFile> parse(String text) {
    return StrictJson.objects(StrictJson.parse(text)).stream().map(CheckFile::new).toList();
  }

  public String id() {
    return id;
  }

  public String title() {
    return title;
  }

  public String source() {
    return source;
  }

  /** Whether what is expected is our own work, and so proves no more than that two ways agree. */
  public boolean own() {
    return OWN.matcher(source).matches();
  }

  public CalculationRequest request() {
    return request;
  }

  /** The number that a top-level field is expected to be; NaN if there is none. */
  public double expected(String field) {
    return expect.path(field).asDouble(Double.NaN);
  }

  /** One sentence for each place where the answer falls short; empty if the check passes. */
  public List<String> shortfalls(CalculationAnswer answer) {
    List<String> found = new ArrayList<>();
    ObjectNode result = answer.result().toJson();
    for (String name : names(expect)) {
      Tolerance allowed = fieldTolerances.getOrDefault(name, tolerance);
      new Comparison(allowed, found).compare(name, expect.get(name), result.get(name));
    }
    return List.copyOf(found);
  }

  private static Set<String> names(ObjectNode object) {
    Set<String> names = new LinkedHashSet<>();
    object.fieldNames().forEachRemaining(names::add);
    return names;
  }

  private static String text(ObjectNode object, String prefix, String field) {
    JsonNode node = object.path(field);
    if (!node.isTextual()) {
      throw new RequestException(prefix + field, "is missing or not a text; a check needs it.");
    }
    return node.textValue();
  }

  private static ObjectNode objectOrEmpty(ObjectNode object, String prefix, String field) {
    JsonNode node = object.path(field);
    if (node.isMissingNode()) {
      return StrictJson.NODES.objectNode();
    }
    if (!(node instanceof ObjectNode found)) {
      throw new RequestException(prefix + field, "must be an object.");
    }
    return found;
  }

  /** How far a number may be off. */
  private record Tolerance(double rel, double abs) {
    static Tolerance of(ObjectNode object, String prefix) {
      return new Tolerance(share(object, prefix, "rel"), share(object, prefix, "abs"));
    }

    double allowed(double expected) {
      return abs + rel * Math.abs(expected);
    }

    private static double share(ObjectNode object, String prefix, String field) {
      JsonNode node = object.path(field);
      if (node.isMissingNode()) {
        return 0;
      }
      if (!node.isNumber() || !(node.doubleValue() >= 0)) {
        throw new RequestException(prefix + field, "must be a number that is not negative.");
      }
      return node.doubleValue();
    }
  }

  /** Walks expectation and result side by side and collects the differences. */
  private record Comparison(Tolerance tolerance, List<String> found) {
    void compare(String path, JsonNode expected, @Nullable JsonNode got) {
      if (got == null) {
        found.add("result." + path + " is missing, expected " + shortened(expected));
      } else if (expected.isNumber() && got.isNumber()) {
        numbers(path, expected.doubleValue(), got.doubleValue());
      } else if (expected.isArray() && got.isArray() && expected.size() != got.size()) {
        found.add(
            "result.%s has %d elements, expected %d".formatted(path, got.size(), expected.size()));
      } else if (expected.isArray() && got.isArray()) {
        for (int i = 0; i < expected.size(); i++) {
          compare(path + "[" + i + "]", expected.get(i), got.get(i));
        }
      } else if (expected instanceof ObjectNode wanted && got.isObject()) {
        for (String name : names(wanted)) {
          compare(path + "." + name, wanted.get(name), got.get(name));
        }
      } else if (!expected.equals(got)) {
        found.add(
            "result.%s is %s, expected %s".formatted(path, shortened(got), shortened(expected)));
      }
    }

    private void numbers(String path, double expected, double got) {
      double off = Math.abs(got - expected);
      if (!(off <= tolerance.allowed(expected))) {
        found.add(
            "result.%s is %s, expected %s: off by %.3g, allowed %.3g"
                .formatted(path, got, expected, off, tolerance.allowed(expected)));
      }
    }

    private static String shortened(JsonNode node) {
      String text = node.toString();
      return text.length() <= 60 ? text : text.substring(0, 57) + "...";
    }
  }
}
