package blindlap.compute;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigInteger;
import java.util.List;

/**
 * The fields of a result, in the order in which they are added. A number that is NaN or infinite is
 * written as null: not defined, or unbounded.
 *
 * <p>A builder: it belongs to the evaluation that fills it.
 */
public final class ResultFields {
  private final ObjectNode fields = StrictJson.NODES.objectNode();

  public ResultFields number(String field, double value) {
    fields.set(field, node(value));
    return this;
  }

  public ResultFields whole(String field, long value) {
    fields.put(field, value);
    return this;
  }

  /** A whole number of any size. */
  public ResultFields whole(String field, BigInteger value) {
    fields.put(field, value);
    return this;
  }

  public ResultFields flag(String field, boolean value) {
    fields.put(field, value);
    return this;
  }

  public ResultFields text(String field, String value) {
    fields.put(field, value);
    return this;
  }

  /** A field that is not defined here. */
  public ResultFields none(String field) {
    fields.putNull(field);
    return this;
  }

  /** {@code [low, high]}, each end null where it is unbounded or not defined. */
  public ResultFields interval(String field, double low, double high) {
    return numbers(field, low, high);
  }

  public ResultFields numbers(String field, double... values) {
    fields.set(field, list(values));
    return this;
  }

  /** Whole numbers; a negative one stands for "none" and is written as null. */
  public ResultFields wholesOrNone(String field, int... values) {
    ArrayNode list = fields.putArray(field);
    for (int value : values) {
      if (value < 0) {
        list.addNull();
      } else {
        list.add(value);
      }
    }
    return this;
  }

  public ResultFields texts(String field, List<String> values) {
    ArrayNode list = fields.putArray(field);
    values.forEach(list::add);
    return this;
  }

  /** A list of lists of numbers. */
  public ResultFields table(String field, double[]... rows) {
    ArrayNode list = fields.putArray(field);
    for (double[] row : rows) {
      list.add(list(row));
    }
    return this;
  }

  public ResultFields object(String field, ResultFields value) {
    fields.set(field, value.fields);
    return this;
  }

  public ResultFields objects(String field, List<ResultFields> values) {
    ArrayNode list = fields.putArray(field);
    values.forEach(value -> list.add(value.fields));
    return this;
  }

  ObjectNode toJson() {
    return fields.deepCopy();
  }

  private static ArrayNode list(double[] values) {
    ArrayNode list = StrictJson.NODES.arrayNode();
    for (double value : values) {
      list.add(node(value));
    }
    return list;
  }

  private static JsonNode node(double value) {
    return Double.isFinite(value)
        ? StrictJson.NODES.numberNode(value)
        : StrictJson.NODES.nullNode();
  }
}
