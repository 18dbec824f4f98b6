package blindlap.compute;

import blindlap.plan.PlanJson;
import blindlap.review.SeriesFinding;
import blindlap.review.SeriesPeeks;
import blindlap.review.SeriesPlace;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** A session's place in its series, in the JSON of its finding and back from it. */
final class SeriesPlaceJson {
  private SeriesPlaceJson() {}

  static void write(ObjectNode node, SeriesPlace place) {
    node.put("id", place.series());
    node.put("place", place.place());
    node.put("declared_sessions", place.declared().orElse(null));
    node.put("pooled_sessions", place.pooled());
    node.put("riders", place.riders());
    ArrayNode setups = node.putArray("setups");
    place.setups().forEach(setups::add);
    node.put("verdict", place.verdict().map(Verdict::text).orElse(null));
    node.put("no_verdict", place.noVerdict().map(PlanJson::word).orElse(null));
    place.end().ifPresent(end -> write(node.putObject("ended_early"), end));
    place.estimate().ifPresent(estimate -> node.put("estimate", estimate));
    place
        .interval95()
        .ifPresent(wide -> node.putArray("interval_95").add(wide.low()).add(wide.high()));
  }

  /**
   * @throws IllegalArgumentException if it was not written by {@link #write}
   */
  static SeriesPlace read(JsonNode node) {
    List<String> setups = new ArrayList<>();
    node.path("setups").forEach(setup -> setups.add(setup.asText()));
    JsonNode wide = node.path("interval_95");
    return new SeriesPlace(
        node.path("id").asText(),
        node.path("place").asInt(),
        node.path("declared_sessions").isInt()
            ? Optional.of(node.path("declared_sessions").asInt())
            : Optional.empty(),
        node.path("pooled_sessions").asInt(),
        node.path("riders").asInt(),
        setups,
        text(node, "verdict").map(Verdict::parse),
        text(node, "no_verdict")
            .map(word -> word.toUpperCase(Locale.ROOT).replace(' ', '_'))
            .map(SeriesFinding.NoVerdict::valueOf),
        node.path("ended_early").isObject()
            ? Optional.of(end(node.path("ended_early")))
            : Optional.empty(),
        node.path("estimate").isNumber()
            ? OptionalDouble.of(node.path("estimate").doubleValue())
            : OptionalDouble.empty(),
        wide.size() == 2
            ? Optional.of(new Interval(wide.get(0).doubleValue(), wide.get(1).doubleValue()))
            : Optional.empty());
  }

  private static void write(ObjectNode node, SeriesPeeks.Ended end) {
    node.put("session", end.session());
    node.put("at", end.at().toString());
    node.put("reason", end.reason());
    node.put("decided_by", end.decidedBy());
  }

  private static SeriesPeeks.Ended end(JsonNode node) {
    try {
      return new SeriesPeeks.Ended(
          node.path("session").asText(),
          Instant.parse(node.path("at").asText()),
          node.path("reason").asText(),
          node.path("decided_by").asText());
    } catch (DateTimeParseException e) {
      throw new IllegalArgumentException("at is no time", e);
    }
  }

  private static Optional<String> text(JsonNode node, String name) {
    return node.path(name).isTextual() ? Optional.of(node.path(name).asText()) : Optional.empty();
  }
}
