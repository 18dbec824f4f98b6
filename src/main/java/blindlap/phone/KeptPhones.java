package blindlap.phone;

import blindlap.fault.CanonicalJson;
import blindlap.session.day.PhoneRole;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * The text by which a program that was started again knows its phones.
 *
 * @param port that was served last; 0 for none
 * @param phones all that came
 */
record KeptPhones(int port, List<Phone> phones) {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  static final KeptPhones NONE = new KeptPhones(0, List.of());

  KeptPhones {
    phones = List.copyOf(phones);
  }

  String text() {
    List<Map<String, String>> rows = new ArrayList<>();
    for (Phone phone : phones) {
      rows.add(
          Map.of(
              "client", phone.client,
              "role", phone.role.name(),
              "key", phone.key.hex(),
              "place", phone.place.name(),
              "heard", String.valueOf(phone.heard.toEpochMilli()),
              "unsent", String.valueOf(phone.unsent)));
    }
    return CanonicalJson.text(Map.of("port", String.valueOf(port), "phones", rows));
  }

  /** Reads it; what cannot be read is nothing: the phones scan once more. */
  static KeptPhones of(String text) {
    try {
      JsonNode tree = MAPPER.readTree(text);
      List<Phone> phones = new ArrayList<>();
      for (JsonNode row : tree.path("phones")) {
        Phone phone =
            new Phone(
                row.path("client").asText(),
                PhoneRole.valueOf(row.path("role").asText()),
                new Fingerprint(row.path("key").asText()),
                Phone.Place.valueOf(row.path("place").asText()),
                Instant.ofEpochMilli(row.path("heard").asLong()));
        phone.unsent = row.path("unsent").asLong();
        phones.add(phone);
      }
      return new KeptPhones(Integer.parseInt(tree.path("port").asText("0")), phones);
    } catch (JsonProcessingException | IllegalArgumentException e) {
      return NONE;
    }
  }
}
