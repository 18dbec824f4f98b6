package blindlap.exchange;

import blindlap.fault.TypedNumber;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.review.HelperFit;
import blindlap.session.HelperEntry;
import blindlap.session.LookTaken;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Reads the helper's records once they are open. A record is a JSON object; {@code fitted} names
 * the setup that was on (id, name, letter or index), {@code measured} holds settings by name,
 * {@code note} further words, {@code events} words on events of the day. Measured values are read
 * as the swap page read them when they were typed. What cannot be read is kept as words, so that
 * nothing is lost. What later records correct counts as if it had been written down at the stint
 * itself; the record that closes the helper's day is of no stint and has no place here.
 */
public final class HelperFits {
  private static final ObjectMapper JSON = new ObjectMapper();

  private HelperFits() {}

  /** Records by stint, from their texts. */
  public static SortedMap<Integer, HelperFit> read(Map<Integer, String> texts, Plan plan) {
    SortedMap<Integer, HelperFit> fits = new TreeMap<>();
    texts.forEach((stint, text) -> fits.put(stint, read(stint, text, plan)));
    fits.remove(HelperEntry.closing(plan));
    fits.keySet().removeIf(LookTaken::isNumber);
    for (HelperCorrections.Made made : HelperCorrections.of(texts, plan)) {
      HelperEntry.Correction later = made.correction();
      fits.merge(
          later.stint(),
          new HelperFit(later.stint(), later.fitted(), Map.of(), ""),
          (known, alone) -> known.with(later.fitted()));
    }
    return fits;
  }

  private static HelperFit read(int stint, String text, Plan plan) {
    try {
      JsonNode node = JSON.readTree(text);
      if (node.isObject()) {
        return read(stint, node, plan);
      }
    } catch (JsonProcessingException e) {
      // Free words of a helper: they stay as they are.
    }
    return new HelperFit(stint, null, Map.of(), text);
  }

  private static HelperFit read(int stint, JsonNode node, Plan plan) {
    Integer fitted = setup(node.path("fitted"), plan);
    Map<String, BigDecimal> numbers = new LinkedHashMap<>();
    Map<String, String> words = new LinkedHashMap<>();
    node.path("measured")
        .properties()
        .forEach(
            field -> {
              String typed = text(field.getValue());
              TypedNumber.number(typed)
                  .ifPresentOrElse(
                      number -> numbers.put(field.getKey(), number),
                      () -> words.put(field.getKey(), typed));
            });
    words.values().removeIf(String::isBlank);
    return new HelperFit(stint, fitted, numbers, words, note(node, fitted == null));
  }

  private static String text(JsonNode value) {
    return value.isValueNode() ? value.asText("").strip() : value.toString();
  }

  /** The note, and what the helper said of events of the day. */
  private static String note(JsonNode node, boolean withFitted) {
    List<String> parts = new ArrayList<>();
    parts.add(text(node.path("note")));
    if (withFitted) {
      parts.add(text(node.path("fitted")));
    }
    if (!node.path("measured").isObject()) {
      parts.add(text(node.path("measured")));
    }
    for (JsonNode said : node.path("events")) {
      parts.add(
          said.path("event").asText()
              + ", stint "
              + said.path("stint").asText()
              + ": "
              + said.path("words").asText());
    }
    return parts.stream().filter(part -> !part.isBlank()).collect(Collectors.joining("; "));
  }

  private static @Nullable Integer setup(JsonNode fitted, Plan plan) {
    String word = fitted.asText("").strip();
    for (int i = 0; i < plan.setups().size(); i++) {
      Setup setup = plan.setups().get(i);
      if (word.equals(HelperEntryText.word(i, plan))
          || word.equals(setup.name())
          || word.equals(String.valueOf((char) ('A' + i)))
          || word.equals(String.valueOf(i))) {
        return i;
      }
    }
    return null;
  }
}
