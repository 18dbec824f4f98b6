package blindlap.desk;

import blindlap.exchange.PlanText;
import blindlap.fault.CanonicalJson;
import blindlap.session.KeptOnPaper;
import blindlap.session.SafetyCheck;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A stint of the helper's paper, typed half way: kept in the draft, never a part of a record.
 *
 * @param stint which stint, 0 = the warm-up
 * @param fitted as {@link KeptOnPaper#otherwise}; null while it is not said
 * @param by who ticked the safety list, as typed
 * @param confirmed what is ticked
 * @param measured settings by name, as typed
 * @param note as typed
 */
public record PaperForm(
    int stint,
    @Nullable Integer fitted,
    String by,
    Set<SafetyCheck> confirmed,
    Map<String, String> measured,
    String note) {
  public PaperForm {
    confirmed =
        confirmed.isEmpty() ? Set.of() : Collections.unmodifiableSet(EnumSet.copyOf(confirmed));
    measured = Collections.unmodifiableMap(new LinkedHashMap<>(measured));
  }

  /** The form of a stint before anything is typed. */
  public static PaperForm empty(int stint) {
    return new PaperForm(stint, null, "", Set.of(), Map.of(), "");
  }

  /** What is to be recorded; empty while it is not said what was fitted. */
  public Optional<KeptOnPaper> whole() {
    return Optional.ofNullable(fitted)
        .map(on -> new KeptOnPaper(stint, on, by.strip(), confirmed, filled(), note.strip()));
  }

  private Map<String, String> filled() {
    Map<String, String> filled = new LinkedHashMap<>();
    measured.forEach(
        (name, typed) -> {
          if (!typed.isBlank()) {
            filled.put(name, typed.strip());
          }
        });
    return filled;
  }

  /** One line of text. */
  String text() {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("stint", String.valueOf(stint));
    fields.put("fitted", fitted == null ? "" : String.valueOf(fitted));
    fields.put("by", by);
    fields.put("confirmed", confirmed.stream().map(Enum::name).toList());
    fields.put("measured", List.copyOf(measured.keySet()));
    fields.put("values", List.copyOf(measured.values()));
    fields.put("note", note);
    return CanonicalJson.text(fields);
  }

  /** The form of a text; empty if it cannot be read. */
  static Optional<PaperForm> read(String text) {
    Map<String, Object> fields = PlanText.read(text).fields();
    String stint = String.valueOf(fields.get("stint"));
    String fitted = String.valueOf(fields.get("fitted"));
    List<String> names = words(fields.get("measured"));
    List<String> values = words(fields.get("values"));
    if (!stint.matches("[0-9]{1,3}") || names.size() != values.size()) {
      return Optional.empty();
    }
    Map<String, String> measured = new LinkedHashMap<>();
    for (int i = 0; i < names.size(); i++) {
      measured.put(names.get(i), values.get(i));
    }
    List<String> ticked = words(fields.get("confirmed"));
    Set<SafetyCheck> confirmed = EnumSet.noneOf(SafetyCheck.class);
    Arrays.stream(SafetyCheck.values())
        .filter(c -> ticked.contains(c.name()))
        .forEach(confirmed::add);
    return Optional.of(
        new PaperForm(
            Integer.parseInt(stint),
            fitted.matches("-1|[0-9]{1,2}") ? Integer.valueOf(fitted) : null,
            String.valueOf(fields.getOrDefault("by", "")),
            confirmed,
            measured,
            String.valueOf(fields.getOrDefault("note", ""))));
  }

  private static List<String> words(@Nullable Object list) {
    return list instanceof List<?> all ? all.stream().map(String::valueOf).toList() : List.of();
  }

  /** Says which stint only. */
  @Override
  public String toString() {
    return "PaperForm[stint " + stint + "]";
  }
}
