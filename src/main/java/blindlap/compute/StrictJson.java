package blindlap.compute;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.io.JsonEOFException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

/** JSON as requests use it: no repeated fields, nothing after the end, shortest exact doubles. */
public final class StrictJson {
  public static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  private static final Pattern REPEATED =
      Pattern.compile("^Duplicate (?:Object property|field) [\"'](.*)[\"']$", Pattern.DOTALL);

  private StrictJson() {}

  /** Parses one document; the error of bad JSON names line and column. */
  public static JsonNode parse(String text) {
    try {
      JsonNode node = MAPPER.readTree(text);
      if (node.isMissingNode()) {
        throw new RequestException("text", "is empty; a request is a JSON object.");
      }
      return node;
    } catch (JsonProcessingException e) {
      var at = e.getLocation();
      String where =
          at == null ? "" : " at line " + at.getLineNr() + ", column " + at.getColumnNr();
      throw new RequestException("text", "is not JSON" + where + ": " + why(e) + ".");
    }
  }

  /** What the parser found, in words of ours: its own speak of tokens, sources and switches. */
  private static String why(JsonProcessingException found) {
    String text = String.valueOf(found.getOriginalMessage());
    String name = REPEATED.matcher(text).replaceFirst("$1");
    if (!name.equals(text)) {
      return "the field \"" + name + "\" stands twice";
    }
    if (found instanceof JsonEOFException) {
      return "it breaks off there";
    }
    if (found instanceof MismatchedInputException && text.startsWith("Trailing token")) {
      return "something stands behind its end";
    }
    return text.startsWith("Non-standard token")
        ? "a number is wanted, and this is none"
        : "a sign stands there that has no place there";
  }

  public static String print(JsonNode node) {
    try {
      return MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(node);
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The object, or each object of the array, with its path ({@code ""} or {@code "[i]."}). */
  static List<Rooted> objects(JsonNode document) {
    if (document.isObject()) {
      return List.of(new Rooted("", (ObjectNode) document));
    }
    if (!(document instanceof ArrayNode array) || array.isEmpty()) {
      throw new RequestException("text", "must be a request object or a non-empty array of them.");
    }
    List<Rooted> found = new ArrayList<>();
    for (int i = 0; i < array.size(); i++) {
      if (!(array.get(i) instanceof ObjectNode object)) {
        throw new RequestException("[" + i + "]", "must be a request object.");
      }
      found.add(new Rooted("[" + i + "].", object));
    }
    return List.copyOf(found);
  }

  static void refuseUnknown(ObjectNode object, String prefix, Set<String> known) {
    object
        .fieldNames()
        .forEachRemaining(
            name -> {
              if (!known.contains(name)) {
                throw new RequestException(prefix + name, "is not a known field.");
              }
            });
  }

  /** An object and the path before its field names. */
  record Rooted(String prefix, ObjectNode object) {}
}
