package blindlap.compute;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What a calculation is given: typed reading of the fields of one JSON object.
 *
 * <p>Every reader throws {@link RequestException}, naming the field, if the field is missing or has
 * another type. A field whose value is {@code null} counts as left out.
 */
public final class Given {
  private final String path;
  private final ObjectNode fields;

  Given(String path, ObjectNode fields) {
    this.path = path;
    this.fields = fields;
  }

  /** Refuses fields that are not among {@code known}. */
  public void allowOnly(Set<String> known) {
    StrictJson.refuseUnknown(fields, path + ".", known);
  }

  String path() {
    return path;
  }

  public boolean has(String field) {
    return fields.hasNonNull(field);
  }

  /** An error about one of these fields ({@code field} may carry an index: {@code groups[2]}). */
  public RequestException refuse(String field, String why) {
    return new RequestException(path + "." + field, why);
  }

  /** A finite number. */
  public double number(String field) {
    return number(field, needed(field));
  }

  public double number(String field, double otherwise) {
    return has(field) ? number(field) : otherwise;
  }

  /** A whole number within the range of {@code int}. */
  public int whole(String field) {
    return whole(field, needed(field));
  }

  /** A whole number within the range of {@code long}. */
  public long longWhole(String field) {
    JsonNode node = needed(field);
    if (!node.isNumber() || !node.canConvertToExactIntegral() || !node.canConvertToLong()) {
      throw refuse(field, "must be a whole number.");
    }
    return node.longValue();
  }

  public boolean flag(String field) {
    JsonNode node = needed(field);
    if (!node.isBoolean()) {
      throw refuse(field, "must be true or false.");
    }
    return node.booleanValue();
  }

  public boolean flag(String field, boolean otherwise) {
    return has(field) ? flag(field) : otherwise;
  }

  public String text(String field) {
    return text(field, needed(field));
  }

  /** One of the constants of an enum, written in small letters with hyphens: {@code two-sided}. */
  public <E extends Enum<E>> E option(String field, Class<E> options) {
    return option(field, options, List.of());
  }

  /** As above; {@code besides} are words that the caller knows and has dealt with. */
  public <E extends Enum<E>> E option(String field, Class<E> options, List<String> besides) {
    String word = text(field);
    for (E option : options.getEnumConstants()) {
      if (word(option).equals(word)) {
        return option;
      }
    }
    String known =
        Stream.concat(Arrays.stream(options.getEnumConstants()).map(Given::word), besides.stream())
            .collect(Collectors.joining(", "));
    throw refuse(field, "\"" + word + "\" is none of " + known + ".");
  }

  public <E extends Enum<E>> E option(String field, Class<E> options, E otherwise) {
    return has(field) ? option(field, options) : otherwise;
  }

  /** Whether the field is there and is an array. */
  public boolean isList(String field) {
    return fields.path(field).isArray();
  }

  /** Finite numbers. */
  public double[] numbers(String field) {
    return numbers(field, needed(field));
  }

  /** Finite numbers; a null element becomes NaN. */
  public double[] numbersWithGaps(String field) {
    return numbersWithGaps(field, needed(field));
  }

  /** Whole numbers. */
  public int[] wholes(String field) {
    JsonNode list = list(field, needed(field));
    int[] values = new int[list.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = whole(field + "[" + i + "]", list.get(i));
    }
    return values;
  }

  /** Booleans; a null element counts as false. */
  public boolean[] flags(String field) {
    JsonNode list = list(field, needed(field));
    boolean[] values = new boolean[list.size()];
    for (int i = 0; i < values.length; i++) {
      JsonNode node = list.get(i);
      if (!node.isBoolean() && !node.isNull()) {
        throw refuse(field + "[" + i + "]", "must be true or false.");
      }
      values[i] = node.booleanValue();
    }
    return values;
  }

  public List<String> texts(String field) {
    JsonNode list = list(field, needed(field));
    List<String> values = new ArrayList<>();
    for (int i = 0; i < list.size(); i++) {
      values.add(text(field + "[" + i + "]", list.get(i)));
    }
    return List.copyOf(values);
  }

  /** Lists of finite numbers, not necessarily of one length. */
  public double[][] table(String field) {
    JsonNode list = list(field, needed(field));
    double[][] rows = new double[list.size()][];
    for (int i = 0; i < rows.length; i++) {
      rows[i] = numbers(field + "[" + i + "]", list.get(i));
    }
    return rows;
  }

  /** As {@link #table}; a null element becomes NaN. */
  public double[][] tableWithGaps(String field) {
    JsonNode list = list(field, needed(field));
    double[][] rows = new double[list.size()][];
    for (int i = 0; i < rows.length; i++) {
      rows[i] = numbersWithGaps(field + "[" + i + "]", list.get(i));
    }
    return rows;
  }

  public Given object(String field) {
    return object(field, needed(field));
  }

  public List<Given> objects(String field) {
    JsonNode list = list(field, needed(field));
    List<Given> values = new ArrayList<>();
    for (int i = 0; i < list.size(); i++) {
      values.add(object(field + "[" + i + "]", list.get(i)));
    }
    return List.copyOf(values);
  }

  private JsonNode needed(String field) {
    @Nullable JsonNode node = fields.get(field);
    if (node == null || node.isNull()) {
      throw refuse(field, "is missing.");
    }
    return node;
  }

  private double number(String field, JsonNode node) {
    if (!node.isNumber()) {
      throw refuse(field, "must be a number.");
    }
    double value = node.doubleValue();
    if (!Double.isFinite(value)) {
      throw refuse(field, "is too large to be a number here.");
    }
    return value;
  }

  private int whole(String field, JsonNode node) {
    if (!node.isNumber() || !node.canConvertToExactIntegral()) {
      throw refuse(field, "must be a whole number.");
    }
    if (!node.canConvertToInt()) {
      throw refuse(field, "is beyond the whole numbers up to " + Integer.MAX_VALUE + ".");
    }
    return node.intValue();
  }

  private String text(String field, JsonNode node) {
    if (!node.isTextual()) {
      throw refuse(field, "must be a text.");
    }
    return node.textValue();
  }

  private double[] numbers(String field, JsonNode node) {
    JsonNode list = list(field, node);
    double[] values = new double[list.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = number(field + "[" + i + "]", list.get(i));
    }
    return values;
  }

  private double[] numbersWithGaps(String field, JsonNode node) {
    JsonNode list = list(field, node);
    double[] values = new double[list.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = list.get(i).isNull() ? Double.NaN : number(field + "[" + i + "]", list.get(i));
    }
    return values;
  }

  private JsonNode list(String field, JsonNode node) {
    if (!node.isArray()) {
      throw refuse(field, "must be a list.");
    }
    return node;
  }

  private Given object(String field, JsonNode node) {
    if (!(node instanceof ObjectNode object)) {
      throw refuse(field, "must be an object.");
    }
    return new Given(path + "." + field, object);
  }

  /** The name of an option in requests: lower case, words joined. */
  static String word(Enum<?> option) {
    return option.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
