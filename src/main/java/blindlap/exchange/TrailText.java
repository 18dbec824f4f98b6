package blindlap.exchange;

import blindlap.fault.CanonicalJson;
import blindlap.plan.Trail;
import blindlap.plan.TrailGate;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * Writes a trail in its one spelling: RFC 8785 with numbers. They are decimals with at most seven
 * places and at most ten digits, for which the shortest double of RFC 8785 is the decimal itself.
 */
final class TrailText {
  /** Below this RFC 8785 writes an exponent. */
  private static final BigDecimal PLAIN = new BigDecimal("0.000001");

  private TrailText() {}

  static String of(Trail trail) {
    StringBuilder out = new StringBuilder("{\"features\":[");
    line(trail.line(), out);
    for (int i = 0; i < trail.gates().size(); i++) {
      gate(trail.gates().get(i), i + 1, out);
    }
    return out.append("],\"name\":")
        .append(CanonicalJson.text(trail.name()))
        .append(",\"type\":\"FeatureCollection\"}")
        .toString();
  }

  private static void line(List<Trail.Place> line, StringBuilder out) {
    out.append("{\"geometry\":{\"coordinates\":[");
    out.append(line.stream().map(TrailText::place).collect(Collectors.joining(",")));
    out.append("],\"type\":\"LineString\"},\"properties\":{\"kind\":\"line\"");
    if (line.stream().allMatch(place -> place.seconds() != null)) {
      out.append(",\"seconds\":[");
      out.append(
          line.stream()
              .map(place -> number(Objects.requireNonNull(place.seconds())))
              .collect(Collectors.joining(",")));
      out.append(']');
    }
    out.append("},\"type\":\"Feature\"}");
  }

  private static String place(Trail.Place place) {
    BigDecimal height = place.height();
    String at = point(place.at());
    return height == null ? at : at.substring(0, at.length() - 1) + "," + number(height) + "]";
  }

  private static String point(TrailGate.Point at) {
    return "[" + number(at.longitude()) + "," + number(at.latitude()) + "]";
  }

  private static void gate(TrailGate gate, int order, StringBuilder out) {
    out.append(",{\"geometry\":{\"coordinates\":[")
        .append(point(gate.first()))
        .append(',')
        .append(point(gate.second()))
        .append("],\"type\":\"LineString\"},\"properties\":{\"direction\":")
        .append(gate.direction())
        .append(",\"kind\":\"gate\",\"name\":")
        .append(CanonicalJson.text(gate.name()))
        .append(",\"order\":")
        .append(order)
        .append("},\"type\":\"Feature\"}");
  }

  private static String number(BigDecimal number) {
    if (number.signum() == 0) {
      return "0";
    }
    BigDecimal plain = number.stripTrailingZeros();
    if (plain.abs().compareTo(PLAIN) >= 0) {
      return plain.toPlainString();
    }
    // One digit: there are seven places at most.
    return plain.setScale(7, RoundingMode.UNNECESSARY).unscaledValue() + "e-7";
  }
}
