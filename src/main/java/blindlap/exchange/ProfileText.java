package blindlap.exchange;

import blindlap.fault.CanonicalJson;
import blindlap.plan.Profile;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A version of a profile as canonical JSON (docs/file-format.md#profiles). The time stands in the
 * text, so that the hash holds it: whether a profile came before a result hangs on it.
 */
public final class ProfileText {
  private static final JsonMapper JSON = new JsonMapper();
  private static final String AT = "at";
  private static final String NAME = "name";
  private static final String MEASURES = "measures";

  private ProfileText() {}

  /** What a text says. */
  public record Read(Profile profile, Instant at) {}

  /** The text of a version. */
  public static String of(Profile profile, Instant at) {
    return CanonicalJson.text(
        Map.of(AT, at.toString(), MEASURES, profile.measures(), NAME, profile.name()));
  }

  /** Reads a text; empty if it is none, or spelled otherwise. */
  public static Optional<Read> read(String text) {
    try {
      JsonNode root = JSON.readTree(text);
      List<String> measures = new ArrayList<>();
      root.path(MEASURES).forEach(each -> measures.add(each.asText()));
      Read read =
          new Read(
              new Profile(root.path(NAME).asText(), measures),
              Instant.parse(root.path(AT).asText()));
      return of(read.profile(), read.at()).equals(text) ? Optional.of(read) : Optional.empty();
    } catch (JsonProcessingException | DateTimeException | IllegalArgumentException e) {
      return Optional.empty();
    }
  }
}
