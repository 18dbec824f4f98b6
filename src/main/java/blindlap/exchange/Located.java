package blindlap.exchange;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A YAML or JSON text as a tree that remembers where each value stands, so that messages can name
 * line and column.
 *
 * @param line from 1
 * @param column from 1
 * @param text the scalar as written; null for null, lists and objects
 * @param items the items of a list; null otherwise
 * @param fields the fields of an object in order; null otherwise
 */
record Located(
    int line,
    int column,
    @Nullable String text,
    @Nullable List<Located> items,
    @Nullable Map<String, Located> fields) {

  private static final int DEEPEST = 20;
  private static final JsonFactory YAML = new YAMLFactory();
  private static final JsonFactory JSON = new JsonFactory();

  /** What a text could not be read for. */
  static final class Unreadable extends Exception {
    private static final long serialVersionUID = 1L;
    final int line;
    final int column;

    Unreadable(int line, int column, String message) {
      super(message);
      this.line = line;
      this.column = column;
    }
  }

  /**
   * Reads a text; JSON is read as the YAML it is.
   *
   * @throws Unreadable with the place, if it is neither
   */
  static Located read(String text) throws Unreadable {
    return read(text.startsWith("\uFEFF") ? text.substring(1) : text, YAML);
  }

  /**
   * Reads JSON as JSON: YAML folds or refuses some characters that may stand in a JSON string.
   *
   * @throws Unreadable with the place, if it is not JSON
   */
  static Located readJson(String text) throws Unreadable {
    return read(text, JSON);
  }

  private static Located read(String text, JsonFactory form) throws Unreadable {
    try (JsonParser parser = form.createParser(text)) {
      JsonToken first = parser.nextToken();
      if (first == null) {
        throw new Unreadable(1, 1, FieldWords.EMPTY_FILE.say());
      }
      Located tree = value(parser, 0);
      if (parser.nextToken() != null) {
        throw at(parser.currentTokenLocation(), FieldWords.SECOND_DOCUMENT.say());
      }
      return tree;
    } catch (JsonProcessingException e) {
      throw at(e.getLocation(), ours(e.getOriginalMessage()));
    } catch (IOException e) {
      throw new Unreadable(1, 1, FieldWords.NOT_YAML.say());
    }
  }

  private static Unreadable at(@Nullable JsonLocation place, String message) {
    return place == null
        ? new Unreadable(1, 1, message)
        : new Unreadable(Math.max(1, place.getLineNr()), Math.max(1, place.getColumnNr()), message);
  }

  /**
   * What a parser found, in words of ours: its own speak of tokens, streams and classes. What is
   * not known here is said in a sentence that holds for any slip; the place stands beside it
   * anyway. Lines that begin with a blank quote the file, which may say anything.
   */
  private static String ours(@Nullable String found) {
    String text = found == null ? "" : found.replaceAll("(?m)^ .*$", "");
    FieldWords words;
    if (text.contains("Expected a field name")) {
      words = FieldWords.NAME_WANTED;
    } else if (text.contains("\\t(TAB)")) {
      words = FieldWords.TAB;
    } else if (text.contains("mapping values are not allowed")) {
      words = FieldWords.SECOND_COLON;
    } else if (text.contains("could not find expected ':'")) {
      words = FieldWords.NO_COLON;
    } else if (text.contains("quoted scalar")) {
      words = FieldWords.OPEN_QUOTE;
    } else if (text.contains("parsing a flow")) {
      words = FieldWords.OPEN_BRACKET;
    } else if (text.contains("expected <block end>")) {
      words = FieldWords.INDENT;
    } else {
      words = FieldWords.NOT_YAML;
    }
    return words.say();
  }

  private static Located value(JsonParser parser, int depth) throws IOException, Unreadable {
    JsonLocation place = parser.currentTokenLocation();
    if (depth > DEEPEST) {
      throw at(place, FieldWords.TOO_DEEP.say());
    }
    int line = Math.max(1, place.getLineNr());
    int column = Math.max(1, place.getColumnNr());
    return switch (parser.currentToken()) {
      case START_OBJECT -> new Located(line, column, null, null, object(parser, depth));
      case START_ARRAY -> new Located(line, column, null, array(parser, depth), null);
      case VALUE_NULL -> new Located(line, column, null, null, null);
      default -> new Located(line, column, whole(parser.getText(), place), null, null);
    };
  }

  /** Half a character has no bytes, so no file could hold it. */
  private static String whole(String text, JsonLocation place) throws Unreadable {
    if (text.codePoints().anyMatch(c -> Character.getType(c) == Character.SURROGATE)) {
      throw at(place, FieldWords.HALF_CHARACTER.say());
    }
    return text;
  }

  private static Map<String, Located> object(JsonParser parser, int depth)
      throws IOException, Unreadable {
    Map<String, Located> fields = new LinkedHashMap<>();
    while (parser.nextToken() != JsonToken.END_OBJECT) {
      JsonLocation place = parser.currentTokenLocation();
      String name = whole(parser.currentName(), place);
      parser.nextToken();
      if (fields.put(name, value(parser, depth + 1)) != null) {
        throw at(place, FieldWords.FIELD_TWICE.say(name));
      }
    }
    return fields;
  }

  private static List<Located> array(JsonParser parser, int depth) throws IOException, Unreadable {
    List<Located> items = new ArrayList<>();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      items.add(value(parser, depth + 1));
    }
    return items;
  }

  /** True for null. */
  boolean isNull() {
    return text == null && items == null && fields == null;
  }
}
