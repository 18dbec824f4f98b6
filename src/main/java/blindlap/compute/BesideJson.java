package blindlap.compute;

import blindlap.plan.BlindLevel;
import blindlap.plan.PlanJson;
import blindlap.review.Beside;
import blindlap.review.FirstLook;
import blindlap.review.QuestionHistory;
import blindlap.review.RecordedFinding;
import blindlap.session.day.Step;
import blindlap.stats.compare.Verdict;
import blindlap.stats.tell.TellingVerdict;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** What stands beside a finding, in the JSON of the finding and back from it. */
public final class BesideJson {
  private static final String HISTORY = "history";
  private static final String UNSEALED = "unsealed_under";

  private static final String LOOK = "first_look";

  private static final String SERIES = "series";

  private BesideJson() {}

  static void write(ObjectNode root, Beside beside) {
    ArrayNode history = root.putArray(HISTORY);
    beside.history().past().forEach(past -> past(history.addObject(), past));
    beside.unsealed().ifPresent(found -> unsealed(root.putObject(UNSEALED), found));
    beside.look().ifPresent(look -> look(root.putObject(LOOK), look));
    beside.series().ifPresent(place -> SeriesPlaceJson.write(root.putObject(SERIES), place));
  }

  private static void look(ObjectNode node, FirstLook look) {
    node.put("edition", look.edition());
    node.put("at", look.at().map(Instant::toString).orElse(null));
    node.put("same", look.same());
  }

  private static void past(ObjectNode node, QuestionHistory.Past past) {
    node.put("session", past.session());
    node.put("day", past.day().toString());
    node.put("rider", past.rider());
    node.put("trail", past.trail());
    node.put("state", PlanJson.word(past.step()));
    node.put("reason", past.reason());
    node.put("primary", past.primary());
    node.put("told", PlanJson.word(past.told()));
    node.put("verdict", past.verdictText().orElse(null));
    node.put("alike", past.alike());
    node.put("known_before", past.knownBefore());
    if (past.level() != BlindLevel.HELPER) {
      node.put("level", PlanJson.word(past.level()));
    }
    // Only where it is so, so that packages from before it existed are not called altered.
    if (past.trend()) {
      node.put("trend", true);
    }
    if (past.telling().isPresent()) {
      node.put("telling", true);
    }
  }

  private static void unsealed(ObjectNode node, RecordedFinding found) {
    node.put("edition", found.edition());
    node.put("source", PlanJson.word(found.source()));
    node.put("at", found.at().map(Instant::toString).orElse(null));
    node.put("verdict", found.verdict().orElse(null));
    ObjectNode figures = node.putObject("figures");
    found.figures().forEach((name, figure) -> figures.put(name, figure.doubleValue()));
  }

  /** The edition of a finding as JSON; the first did not say so. */
  public static int edition(JsonNode root, int first) {
    return root.path("edition").asInt(first);
  }

  /**
   * Reads back what stands beside a finding. One that does not say what it was at unsealing stands
   * for that itself.
   *
   * @throws IllegalArgumentException if it was not written by {@link #write}
   * @throws java.time.DateTimeException if a time or a day is none
   */
  public static Beside read(JsonNode root, int edition) {
    List<QuestionHistory.Past> past = new ArrayList<>();
    root.path(HISTORY).forEach(node -> past.add(past(node)));
    JsonNode unsealed = root.path(UNSEALED);
    return new Beside(
        new QuestionHistory(past),
        unsealed.isObject() ? Optional.of(unsealed(unsealed)) : itself(root, edition),
        Optional.of(root.path(LOOK)).filter(JsonNode::isObject).map(BesideJson::look),
        Optional.of(root.path(SERIES)).filter(JsonNode::isObject).map(SeriesPlaceJson::read));
  }

  private static QuestionHistory.Past past(JsonNode node) {
    boolean trend = node.path("trend").asBoolean();
    boolean telling = node.path("telling").asBoolean();
    return new QuestionHistory.Past(
        node.path("session").asText(),
        LocalDate.parse(node.path("day").asText()),
        node.path("rider").asText(),
        node.path("trail").asText(),
        option(node, "state", Step.class),
        node.path("reason").asText(),
        node.path("primary").asText(),
        option(node, "told", QuestionHistory.Told.class),
        telling ? Optional.empty() : text(node, "verdict").map(Verdict::parse),
        node.path("alike").asBoolean(),
        node.path("known_before").asBoolean(),
        node.has("level") ? option(node, "level", BlindLevel.class) : BlindLevel.HELPER,
        trend,
        telling ? text(node, "verdict").map(TellingVerdict::parse) : Optional.empty());
  }

  private static RecordedFinding unsealed(JsonNode node) {
    Map<String, BigDecimal> figures = new LinkedHashMap<>();
    node.path("figures")
        .properties()
        .forEach(e -> figures.put(e.getKey(), BigDecimal.valueOf(e.getValue().doubleValue())));
    return new RecordedFinding(
        node.path("edition").asInt(),
        option(node, "source", RecordedFinding.Source.class),
        text(node, "at").map(Instant::parse),
        text(node, "verdict"),
        figures);
  }

  private static FirstLook look(JsonNode node) {
    return new FirstLook(
        node.path("edition").asInt(),
        text(node, "at").map(Instant::parse),
        node.path("same").asBoolean());
  }

  private static Optional<RecordedFinding> itself(JsonNode root, int edition) {
    for (JsonNode measure : root.path("measures")) {
      if (measure.path("role").asText().equals("primary") && measure.has("estimate")) {
        Map<String, BigDecimal> figures = new LinkedHashMap<>();
        put(figures, "estimate", measure.path("estimate"));
        put(figures, "p", measure.path("p"));
        for (String level : List.of("95", "90")) {
          put(figures, "low_" + level, measure.path("interval_" + level).path(0));
          put(figures, "high_" + level, measure.path("interval_" + level).path(1));
        }
        return Optional.of(
            new RecordedFinding(
                edition,
                RecordedFinding.Source.PACKAGE,
                Optional.empty(),
                text(measure, "verdict"),
                figures));
      }
    }
    return Optional.empty();
  }

  private static void put(Map<String, BigDecimal> figures, String name, JsonNode number) {
    if (number.isNumber()) {
      figures.put(name, BigDecimal.valueOf(number.doubleValue()));
    }
  }

  private static Optional<String> text(JsonNode node, String name) {
    return node.path(name).isTextual() ? Optional.of(node.path(name).asText()) : Optional.empty();
  }

  private static <E extends Enum<E>> E option(JsonNode node, String name, Class<E> options) {
    return Enum.valueOf(
        options, node.path(name).asText().toUpperCase(Locale.ROOT).replace(' ', '_'));
  }
}
