package blindlap.exchange;

import blindlap.fault.TypedText;
import blindlap.fault.Unreadable;
import blindlap.plan.Trail;
import blindlap.plan.TrailGate;
import blindlap.recording.ReferenceLine;
import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Reads the features of a trail: one line, and gates by their order. */
final class TrailReader {
  /** Most characters of the name of a trail or a gate. */
  static final int LONGEST_NAME = 60;

  private static final int DEGREE_PLACES = 7;
  private static final int HEIGHT_PLACES = 1;
  private static final int TIME_PLACES = 3;
  private static final int MOST_FEATURES = 1000;
  private static final int LONGEST_SHOWN = 40;
  private static final BigDecimal HALF_TURN = BigDecimal.valueOf(180);
  private static final BigDecimal TURN = BigDecimal.valueOf(360);
  private static final BigDecimal RIGHT_ANGLE = BigDecimal.valueOf(90);
  private static final BigDecimal HIGHEST = BigDecimal.valueOf(10_000);
  private static final BigDecimal LONGEST_TIME = BigDecimal.valueOf(86_400);
  private static final BigDecimal NOTHING = new BigDecimal("1e-9");

  private final SortedMap<Integer, Gate> gates = new TreeMap<>();
  private @Nullable String name;
  private @Nullable List<Trail.Place> line;

  /**
   * A trail as it was read, before anything of it is compared with anything else.
   *
   * @param gates in their order
   * @param directed which of them had a direction of their own
   */
  record Read(String name, List<Trail.Place> line, List<TrailGate> gates, List<Boolean> directed) {}

  private record Gate(TrailGate gate, boolean directed) {}

  Read read(JsonNode root) {
    JsonNode features = root.path("features");
    if (!root.path("type").asText().equals("FeatureCollection") || !features.isArray()) {
      throw new Unreadable(TrailFault.NO_COLLECTION);
    }
    if (features.size() > MOST_FEATURES) {
      throw new Unreadable(
          TrailFault.GATES, features.size() - 1, TrailCheck.LEAST_GATES, TrailCheck.MOST_GATES);
    }
    if (root.path("name").isTextual()) {
      name = name(root.path("name"));
    }
    for (int i = 0; i < features.size(); i++) {
      feature(features.get(i), i + 1);
    }
    if (line == null) {
      throw new Unreadable(TrailFault.NO_LINE);
    }
    if (name == null) {
      throw new Unreadable(TrailFault.NO_NAME);
    }
    return new Read(
        name,
        line,
        gates.values().stream().map(Gate::gate).toList(),
        gates.values().stream().map(Gate::directed).toList());
  }

  private static String name(JsonNode typed) {
    String text = Normalizer.normalize(typed.asText(), Normalizer.Form.NFC).strip();
    if (text.isEmpty()
        || text.codePointCount(0, text.length()) > LONGEST_NAME
        || TypedText.problem(text, TypedText.Form.LINE, "").isPresent()) {
      throw new Unreadable(TrailFault.NAME, shown(text), LONGEST_NAME);
    }
    return text;
  }

  private static String shown(String text) {
    return text.codePoints()
        .limit(LONGEST_SHOWN)
        .filter(c -> !TypedText.control(c) && !TypedText.noCharacter(c))
        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
        .toString();
  }

  private void feature(JsonNode feature, int number) {
    JsonNode geometry = feature.path("geometry");
    if (!feature.path("type").asText().equals("Feature") || !geometry.isObject()) {
      throw new Unreadable(TrailFault.NOT_IN_FORM, number, "geometry");
    }
    String type = geometry.path("type").asText();
    if (!type.equals("LineString")) {
      throw new Unreadable(TrailFault.NOT_A_LINE, number, shown(type));
    }
    JsonNode coordinates = geometry.path("coordinates");
    if (!coordinates.isArray()) {
      throw new Unreadable(TrailFault.NOT_IN_FORM, number, "coordinates");
    }
    JsonNode properties = feature.path("properties");
    if (properties.has("order")) {
      gate(coordinates, properties, number);
    } else {
      line(coordinates, properties, number);
    }
  }

  private void line(JsonNode coordinates, JsonNode properties, int feature) {
    if (line != null) {
      throw new Unreadable(TrailFault.TWO_LINES, feature);
    }
    if (coordinates.size() > ReferenceLine.MOST_PLACES) {
      throw new Unreadable(TrailFault.TOO_MANY_PLACES, ReferenceLine.MOST_PLACES);
    }
    JsonNode seconds = properties.path("seconds");
    boolean timed = seconds.isArray();
    if (timed && seconds.size() != coordinates.size()) {
      throw new Unreadable(TrailFault.TIMES, coordinates.size());
    }
    List<Trail.Place> places = new ArrayList<>();
    for (int i = 0; i < coordinates.size(); i++) {
      JsonNode place = coordinates.get(i);
      places.add(
          new Trail.Place(
              point(place, feature, i + 1),
              place.has(2) ? number(place.get(2), HEIGHT_PLACES, HIGHEST, feature, i + 1) : null,
              timed ? time(seconds.get(i), feature, i + 1) : null));
    }
    line = places;
    if (name == null && properties.path("name").isTextual()) {
      name = name(properties.path("name"));
    }
  }

  private static BigDecimal time(JsonNode seconds, int feature, int place) {
    return number(seconds, TIME_PLACES, LONGEST_TIME, feature, place);
  }

  private void gate(JsonNode coordinates, JsonNode properties, int feature) {
    JsonNode order = properties.path("order");
    if (!order.canConvertToExactIntegral() || !order.canConvertToInt()) {
      throw new Unreadable(TrailFault.NOT_IN_FORM, feature, "order");
    }
    if (!properties.path("name").isTextual()) {
      throw new Unreadable(TrailFault.NOT_IN_FORM, feature, "name");
    }
    String called = name(properties.path("name"));
    if (coordinates.size() != 2) {
      throw new Unreadable(TrailFault.TWO_ENDS, called, coordinates.size());
    }
    Gate gate =
        new Gate(
            new TrailGate(
                called,
                point(coordinates.get(0), feature, 1),
                point(coordinates.get(1), feature, 2),
                direction(properties.path("direction"), feature)),
            properties.hasNonNull("direction"));
    if (gates.put(order.intValue(), gate) != null) {
      throw new Unreadable(TrailFault.SAME_ORDER, order.intValue());
    }
  }

  private static int direction(JsonNode typed, int feature) {
    if (typed.isMissingNode() || typed.isNull()) {
      return 1;
    }
    int direction =
        typed.canConvertToExactIntegral() && typed.canConvertToInt() ? typed.intValue() : 0;
    if (Math.abs(direction) != 1) {
      throw new Unreadable(TrailFault.NOT_IN_FORM, feature, "direction");
    }
    return direction;
  }

  /** GeoJSON names the longitude first. */
  private static TrailGate.Point point(JsonNode place, int feature, int number) {
    if (!place.isArray() || place.size() < 2) {
      throw new Unreadable(TrailFault.NOT_IN_FORM, feature, "coordinates");
    }
    BigDecimal east = number(place.get(0), DEGREE_PLACES, null, feature, number);
    BigDecimal north = number(place.get(1), DEGREE_PLACES, null, feature, number);
    if (north.abs().compareTo(RIGHT_ANGLE) > 0
        || east.compareTo(HALF_TURN.negate()) < 0
        || east.compareTo(TURN) > 0) {
      throw new Unreadable(
          TrailFault.NO_PLACE,
          feature,
          number,
          shown(place.get(0).asText()),
          shown(place.get(1).asText()));
    }
    return new TrailGate.Point(north, east.compareTo(HALF_TURN) > 0 ? east.subtract(TURN) : east);
  }

  private static BigDecimal number(
      JsonNode typed, int places, @Nullable BigDecimal most, int feature, int place) {
    if (!typed.isNumber()) {
      throw new Unreadable(TrailFault.NO_NUMBER, feature, place, shown(typed.toString()));
    }
    BigDecimal number = typed.decimalValue();
    // Compared before it is rounded: a huge or tiny exponent would be written out.
    if (number.abs().compareTo(most == null ? HIGHEST : most) > 0) {
      throw new Unreadable(TrailFault.NO_NUMBER, feature, place, shown(typed.asText()));
    }
    BigDecimal rounded =
        number.abs().compareTo(NOTHING) < 0
            ? BigDecimal.ZERO
            : number.setScale(places, RoundingMode.HALF_EVEN).stripTrailingZeros();
    return rounded.signum() == 0 ? BigDecimal.ZERO : rounded;
  }
}
