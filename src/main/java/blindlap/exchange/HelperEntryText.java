package blindlap.exchange;

import blindlap.fault.CanonicalJson;
import blindlap.plan.BlindLevel;
import blindlap.plan.Labels;
import blindlap.plan.Plan;
import blindlap.session.HelperEntry;
import blindlap.session.SafetyCheck;
import blindlap.session.day.DayEvent;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * The text of a helper's entry before it is encrypted: canonical JSON with the fields {@code form,
 * stint, helper, planned, fitted} (ids of setups), {@code begun, done} (times), {@code measured}
 * (by setting), {@code outside} (setting, aim, measured, by, reason), {@code safety} (confirmed
 * items), {@code rider_fit} (by laps ridden), {@code events} (stint, event, words) {@code note},
 * where the handling was timed {@code timing} (given and took in seconds, mishap, words), where an
 * earlier stint is corrected {@code corrections} (stint, fitted, words, noticed), and where the
 * stint was kept on paper {@code paper} (confirmed_by). {@link HelperFits} reads it, too.
 */
public final class HelperEntryText {
  /** Form of the text. */
  public static final String VERSION = "blindlap-helper-entry-1";

  private static final ObjectMapper JSON = new ObjectMapper();

  private HelperEntryText() {}

  /** The text of an entry. */
  public static String write(HelperEntry entry, Plan plan) {
    return CanonicalJson.text(tree(entry, plan));
  }

  static Map<String, @Nullable Object> tree(HelperEntry entry, Plan plan) {
    Map<String, @Nullable Object> tree = new LinkedHashMap<>();
    tree.put("form", VERSION);
    tree.put("stint", String.valueOf(entry.stint()));
    tree.put("helper", entry.helper());
    tree.put("planned", word(entry.planned(), plan));
    tree.put("fitted", word(entry.fitted(), plan));
    tree.put("begun", time(entry.begun()));
    tree.put("done", time(entry.done()));
    tree.put("measured", entry.measured());
    tree.put("outside", entry.outside().stream().map(HelperEntryText::outside).toList());
    tree.put("safety", entry.confirmed().stream().map(HelperEntryText::word).toList());
    Map<String, @Nullable Object> fit = new LinkedHashMap<>();
    entry.fit().forEach((laps, yes) -> fit.put(String.valueOf(laps), yes));
    tree.put("rider_fit", fit);
    tree.put("events", entry.events().stream().map(HelperEntryText::said).toList());
    tree.put("note", entry.note());
    HelperEntry.Timing timing = entry.timing();
    if (timing != null) {
      tree.put("timing", timing(timing)); // since version 4; older records lack it
    }
    if (!entry.corrections().isEmpty()) { // since version 4, as what follows
      tree.put(
          "corrections", entry.corrections().stream().map(each -> correction(each, plan)).toList());
    }
    HelperEntry.Paper paper = entry.paper();
    if (paper != null) {
      tree.put("paper", Map.of("confirmed_by", paper.confirmedBy()));
    }
    return tree;
  }

  private static @Nullable String time(@Nullable Instant at) {
    return at == null ? null : at.toString();
  }

  private static Map<String, @Nullable Object> outside(HelperEntry.Outside each) {
    Map<String, @Nullable Object> tree = new LinkedHashMap<>();
    tree.put("setting", each.setting());
    tree.put("aim", each.aim());
    tree.put("measured", each.measured());
    BigDecimal by = each.by();
    tree.put("by", by == null ? null : by.toPlainString());
    tree.put("reason", each.reason());
    return tree;
  }

  private static Map<String, @Nullable Object> said(HelperEntry.Said each) {
    Map<String, @Nullable Object> tree = new LinkedHashMap<>();
    tree.put("stint", String.valueOf(each.stint()));
    tree.put("event", word(each.event()));
    tree.put("words", each.words());
    return tree;
  }

  private static Map<String, @Nullable Object> correction(HelperEntry.Correction each, Plan plan) {
    Map<String, @Nullable Object> tree = new LinkedHashMap<>();
    tree.put("stint", String.valueOf(each.stint()));
    tree.put("fitted", word(each.fitted(), plan));
    tree.put("words", each.words());
    tree.put("noticed", each.noticed().toString());
    return tree;
  }

  private static List<HelperEntry.Correction> corrections(JsonNode node, Plan plan) {
    List<HelperEntry.Correction> list = new ArrayList<>();
    for (JsonNode each : node) {
      list.add(
          new HelperEntry.Correction(
              Integer.parseInt(each.path("stint").asText()),
              setup(each.path("fitted").asText(), plan),
              each.path("words").asText(),
              Instant.parse(each.path("noticed").asText())));
    }
    return list;
  }

  private static HelperEntry.@Nullable Paper paper(JsonNode node) {
    return node.isObject() ? new HelperEntry.Paper(node.path("confirmed_by").asText("")) : null;
  }

  private static Map<String, @Nullable Object> timing(HelperEntry.Timing timing) {
    Map<String, @Nullable Object> tree = new LinkedHashMap<>();
    Duration given = timing.given();
    tree.put("given", given == null ? null : seconds(given));
    tree.put("took", seconds(timing.took()));
    tree.put("mishap", timing.mishap());
    tree.put("words", timing.words());
    return tree;
  }

  private static String seconds(Duration time) {
    return BigDecimal.valueOf(time.toMillis(), 3).stripTrailingZeros().toPlainString();
  }

  private static Duration duration(String seconds) {
    return Duration.ofMillis(new BigDecimal(seconds).movePointRight(3).longValue());
  }

  private static HelperEntry.@Nullable Timing timing(JsonNode node) {
    if (!node.isObject()) {
      return null;
    }
    JsonNode given = node.path("given");
    JsonNode mishap = node.path("mishap");
    return new HelperEntry.Timing(
        given.isTextual() ? duration(given.textValue()) : null,
        duration(node.path("took").asText()),
        mishap.isBoolean() ? Boolean.valueOf(mishap.booleanValue()) : null,
        node.path("words").asText(""));
  }

  private static String word(Enum<?> option) {
    return option.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** The entry of a text; empty if the text is not of this form. */
  public static Optional<HelperEntry> read(String text, Plan plan) {
    try {
      JsonNode tree = JSON.readTree(text);
      if (!VERSION.equals(tree.path("form").asText())) {
        return Optional.empty();
      }
      return Optional.of(
          new HelperEntry(
              Integer.parseInt(tree.path("stint").asText()),
              tree.path("helper").asText(),
              setup(tree.path("planned").asText(), plan),
              setup(tree.path("fitted").asText(), plan),
              instant(tree.path("begun")),
              instant(tree.path("done")),
              measured(tree.path("measured")),
              outside(tree.path("outside")),
              confirmed(tree.path("safety")),
              fit(tree.path("rider_fit")),
              said(tree.path("events")),
              tree.path("note").asText(),
              timing(tree.path("timing")),
              corrections(tree.path("corrections"), plan),
              paper(tree.path("paper"))));
    } catch (JsonProcessingException | RuntimeException e) {
      return Optional.empty(); // of another form: the caller keeps the text as it is
    }
  }

  private static SortedMap<Integer, Boolean> fit(JsonNode node) {
    SortedMap<Integer, Boolean> answers = new TreeMap<>();
    node.properties()
        .forEach(e -> answers.put(Integer.valueOf(e.getKey()), e.getValue().booleanValue()));
    return answers;
  }

  private static List<HelperEntry.Said> said(JsonNode node) {
    List<HelperEntry.Said> list = new ArrayList<>();
    for (JsonNode each : node) {
      list.add(
          new HelperEntry.Said(
              Integer.parseInt(each.path("stint").asText()),
              DayEvent.valueOf(name(each.path("event").asText())),
              each.path("words").asText()));
    }
    return list;
  }

  private static String name(String word) {
    return word.toUpperCase(Locale.ROOT).replace(' ', '_');
  }

  /** The id of a setup; at masked labels the label, for what it is on is hidden. */
  static String word(int setup, Plan plan) {
    return plan.blinding().level() == BlindLevel.MASKED
        ? Labels.of(setup)
        : plan.setups().get(setup).id();
  }

  private static int setup(String id, Plan plan) {
    for (int i = 0; i < plan.setups().size(); i++) {
      if (word(i, plan).equals(id)) {
        return i;
      }
    }
    throw new IllegalArgumentException("no setup has the id " + id);
  }

  private static @Nullable Instant instant(JsonNode node) {
    return node.isTextual() ? Instant.parse(node.textValue()) : null;
  }

  private static Map<String, String> measured(JsonNode node) {
    Map<String, String> values = new LinkedHashMap<>();
    node.properties().forEach(e -> values.put(e.getKey(), e.getValue().asText()));
    return values;
  }

  private static List<HelperEntry.Outside> outside(JsonNode node) {
    List<HelperEntry.Outside> list = new ArrayList<>();
    for (JsonNode each : node) {
      JsonNode by = each.path("by");
      list.add(
          new HelperEntry.Outside(
              each.path("setting").asText(),
              each.path("aim").asText(),
              each.path("measured").asText(),
              by.isTextual() ? new BigDecimal(by.textValue()) : null,
              each.path("reason").asText()));
    }
    return list;
  }

  private static Set<SafetyCheck> confirmed(JsonNode node) {
    Set<SafetyCheck> checks = EnumSet.noneOf(SafetyCheck.class);
    for (JsonNode each : node) {
      checks.add(SafetyCheck.valueOf(name(each.asText())));
    }
    return checks;
  }
}
