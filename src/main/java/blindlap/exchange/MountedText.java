package blindlap.exchange;

import blindlap.fault.CanonicalJson;
import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.session.HelperEntry;
import blindlap.session.MountedUnit;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What a rider who swaps alone mounted, in the clear: the form of a helper's entry. At masked
 * labels {@code planned} and {@code fitted} are labels (X, Y); of prepared units, which the rider
 * does not know, both are left out, and {@code unit} says of which stint the code was, and whether
 * the cover was whole.
 */
public final class MountedText {
  private static final ObjectMapper JSON = new ObjectMapper();

  private MountedText() {}

  /** The text of what was mounted from a shown order. */
  public static String write(HelperEntry entry, Plan plan) {
    return HelperEntryText.write(entry, plan);
  }

  /** The text of a prepared unit. */
  public static String write(HelperEntry entry, MountedUnit unit, Plan plan) {
    Map<String, @Nullable Object> tree = new LinkedHashMap<>(HelperEntryText.tree(entry, plan));
    tree.remove("planned");
    tree.remove("fitted");
    Map<String, @Nullable Object> seen = new LinkedHashMap<>();
    seen.put("stint", String.valueOf(unit.unitOf()));
    seen.put("whole", unit.whole());
    seen.put("words", unit.words());
    tree.put("unit", seen);
    return CanonicalJson.text(tree);
  }

  /** The entry of a shown order; empty for a prepared unit and for other texts. */
  public static Optional<HelperEntry> read(String text, Plan plan) {
    return plan.blinding().level() == BlindLevel.PREPARED
        ? Optional.empty()
        : HelperEntryText.read(text, plan);
  }

  /** What was seen of a prepared unit; empty for other texts. */
  public static Optional<MountedUnit> unit(String text) {
    try {
      JsonNode unit = JSON.readTree(text).path("unit");
      return unit.isObject()
          ? Optional.of(
              new MountedUnit(
                  Integer.parseInt(unit.path("stint").asText()),
                  unit.path("whole").asBoolean(),
                  unit.path("words").asText()))
          : Optional.empty();
    } catch (JsonProcessingException | NumberFormatException e) {
      return Optional.empty(); // of another form: it stays as it is
    }
  }
}
