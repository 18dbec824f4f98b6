package blindlap.fault;

import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * One spelling for one content: the JSON Canonicalization Scheme of RFC 8785, restricted to
 * objects, arrays, strings, booleans and null. Numbers are written as decimal strings by the
 * caller, text is put into Unicode normal form C, so that the same plan has the same bytes
 * everywhere.
 */
public final class CanonicalJson {
  /** U+0300; Unicode Standard Annex 15: what lies below is its own form NFC. */
  private static final char FIRST_COMBINING = '\u0300';

  private CanonicalJson() {}

  /**
   * The bytes of a tree of {@code Map<String, ?>}, {@code List<?>}, {@code String}, {@code Boolean}
   * and null.
   *
   * @throws IllegalArgumentException if the tree holds anything else
   */
  public static byte[] bytes(@Nullable Object tree) {
    return text(tree).getBytes(StandardCharsets.UTF_8);
  }

  /** The same as text. */
  public static String text(@Nullable Object tree) {
    StringBuilder out = new StringBuilder();
    write(tree, out);
    return out.toString();
  }

  private static void write(@Nullable Object value, StringBuilder out) {
    if (value == null || value instanceof Boolean) {
      out.append(value);
    } else if (value instanceof String string) {
      writeString(composed(string), out);
    } else if (value instanceof List<?> list) {
      out.append('[');
      for (int i = 0; i < list.size(); i++) {
        if (i > 0) {
          out.append(',');
        }
        write(list.get(i), out);
      }
      out.append(']');
    } else if (value instanceof Map<?, ?> map) {
      writeObject(map, out);
    } else {
      throw new IllegalArgumentException(
          "canonical JSON holds texts, booleans, lists and objects, not a "
              + value.getClass().getSimpleName());
    }
  }

  private static void writeObject(Map<?, ?> map, StringBuilder out) {
    // String order compares UTF-16 code units, as RFC 8785 section 3.2.3 asks.
    Map<String, Object> sorted = new TreeMap<>();
    map.forEach((key, value) -> sorted.put(composed((String) key), value == null ? NULL : value));
    out.append('{');
    String comma = "";
    for (Map.Entry<String, Object> field : sorted.entrySet()) {
      out.append(comma);
      writeString(field.getKey(), out);
      out.append(':');
      write(field.getValue() == NULL ? null : field.getValue(), out);
      comma = ",";
    }
    out.append('}');
  }

  private static final Object NULL = new Object();

  /** Text in Unicode's form NFC. Letters before the first combining mark are in it already. */
  private static String composed(String text) {
    for (int i = 0; i < text.length(); i++) {
      if (text.charAt(i) >= FIRST_COMBINING) {
        return Normalizer.normalize(text, Normalizer.Form.NFC);
      }
    }
    return text;
  }

  private static void writeString(String text, StringBuilder out) {
    out.append('"');
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '"' -> out.append("\\\"");
        case '\\' -> out.append("\\\\");
        case '\b' -> out.append("\\b");
        case '\t' -> out.append("\\t");
        case '\n' -> out.append("\\n");
        case '\f' -> out.append("\\f");
        case '\r' -> out.append("\\r");
        default -> {
          if (c < 0x20) {
            out.append(String.format("\\u%04x", (int) c));
          } else if (loneSurrogate(text, i)) {
            throw new IllegalArgumentException("a text holds half of a character (lone surrogate)");
          } else {
            out.append(c);
          }
        }
      }
    }
    out.append('"');
  }

  /** RFC 8785 section 3.2.2.2: such a text has no bytes in UTF-8, so it has no hash either. */
  private static boolean loneSurrogate(String text, int at) {
    char c = text.charAt(at);
    if (Character.isHighSurrogate(c)) {
      return at + 1 == text.length() || !Character.isLowSurrogate(text.charAt(at + 1));
    }
    return Character.isLowSurrogate(c)
        && (at == 0 || !Character.isHighSurrogate(text.charAt(at - 1)));
  }
}
