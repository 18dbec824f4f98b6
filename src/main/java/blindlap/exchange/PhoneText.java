package blindlap.exchange;

import static blindlap.exchange.BodyFields.option;
import static blindlap.exchange.BodyFields.parsed;
import static blindlap.exchange.BodyFields.text;

import blindlap.plan.PlanJson;
import blindlap.session.day.ByPhone;
import blindlap.session.day.PhoneRole;
import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Which message of which phone said an entry, as it stands in the entry's text. */
final class PhoneText {
  private PhoneText() {}

  static Map<String, Object> tree(ByPhone phone) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("client", phone.client());
    tree.put("number", String.valueOf(phone.number()));
    tree.put("role", PlanJson.word(phone.role()));
    tree.put("given", phone.given().toString());
    tree.put("sent", phone.sent().toString());
    tree.put("offset_ms", String.valueOf(phone.offset().toMillis()));
    Long knew = phone.knew();
    if (knew != null) {
      tree.put("knew", String.valueOf(knew));
    }
    return tree;
  }

  static ByPhone read(JsonNode tree) {
    return new ByPhone(
        text(tree, "client"),
        parsed(tree, "number", Long::valueOf),
        option(tree, "role", PhoneRole.class),
        parsed(tree, "given", Instant::parse),
        parsed(tree, "sent", Instant::parse),
        Duration.ofMillis(parsed(tree, "offset_ms", Long::valueOf)),
        knew(tree));
  }

  private static @Nullable Long knew(JsonNode tree) {
    return tree.has("knew") ? parsed(tree, "knew", Long::valueOf) : null;
  }
}
