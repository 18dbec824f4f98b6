package blindlap.compute;

import blindlap.stats.compare.Scale;
import blindlap.stats.distribution.Interval;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import java.util.OptionalDouble;

/** Numbers and intervals in the JSON of a finding: in full, null where there is none. */
final class JsonNumbers {
  private JsonNumbers() {}

  static Interval back(Scale scale, Interval shifts) {
    return new Interval(scale.back(shifts.low()), scale.back(shifts.high()));
  }

  static void number(ObjectNode node, String name, double value) {
    if (Double.isFinite(value)) {
      node.put(name, value);
    } else {
      node.putNull(name);
    }
  }

  static void optional(ObjectNode node, String name, OptionalDouble value) {
    if (value.isPresent()) {
      number(node, name, value.getAsDouble());
    } else {
      node.putNull(name);
    }
  }

  static void interval(ObjectNode node, String name, Optional<Interval> interval) {
    if (interval.isEmpty()) {
      node.putNull(name);
      return;
    }
    ArrayNode ends = node.putArray(name);
    end(ends, interval.get().low());
    end(ends, interval.get().high());
  }

  private static void end(ArrayNode ends, double value) {
    if (Double.isFinite(value)) {
      ends.add(value);
    } else {
      ends.addNull();
    }
  }
}
