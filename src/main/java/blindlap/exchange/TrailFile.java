package blindlap.exchange;

import blindlap.fault.TypedText;
import blindlap.fault.Unreadable;
import blindlap.plan.Trail;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.charset.StandardCharsets;

/**
 * A trail as GeoJSON (RFC 7946), and the one spelling of it that its hash is taken over
 * (docs/trail-file.md). A file may be spelled in any way; what is read from it is checked whole, so
 * that a trail in hand is one that laps can be timed on.
 */
public final class TrailFile {
  private static final JsonMapper JSON =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .build();

  private TrailFile() {}

  /** The canonical text of a trail: GeoJSON, the same bytes for the same trail everywhere. */
  public static String text(Trail trail) {
    return TrailText.of(trail);
  }

  /**
   * Reads a file.
   *
   * @throws Unreadable with a {@link TrailFault} if it is no trail
   */
  public static Trail read(byte[] bytes) {
    return trail(TypedText.decoded(bytes).orElseThrow(() -> new Unreadable(TrailFault.NOT_UTF8)));
  }

  /** The same for a text. */
  public static Trail trail(String text) {
    return TrailCheck.checked(new TrailReader().read(tree(text)));
  }

  /** The bytes that a file of it has. */
  public static byte[] bytes(Trail trail) {
    return text(trail).getBytes(StandardCharsets.UTF_8);
  }

  private static JsonNode tree(String text) {
    try {
      return JSON.readTree(text);
    } catch (JsonProcessingException e) {
      var at = e.getLocation();
      throw new Unreadable(TrailFault.NOT_JSON, at == null ? 1 : Math.max(1, at.getLineNr()));
    }
  }
}
