package blindlap.phone;

import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;

/** The body of a message: JSON, and not more than a message can hold. */
final class Body {
  /** A message with the longest note that anybody types. */
  static final int MOST = 16 * 1024;

  private static final ObjectMapper MAPPER =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  private Body() {}

  /** Its bytes. */
  static byte[] bytes(HttpExchange exchange) throws IOException, Turned {
    String length = exchange.getRequestHeaders().getFirst("Content-Length");
    boolean far =
        length != null && (!length.matches("[0-9]{1,9}") || Long.parseLong(length) > MOST);
    byte[] body = far ? new byte[0] : exchange.getRequestBody().readNBytes(MOST + 1);
    if (far || body.length > MOST) {
      throw new Turned(Refusal.TOO_LONG, Reply.why(413, "long"));
    }
    return body;
  }

  static Given given(byte[] body) throws Turned {
    try {
      JsonNode tree = MAPPER.readTree(body);
      if (tree != null && tree.isObject()) {
        return new Given(tree);
      }
    } catch (IOException e) {
      // not JSON: said below
    }
    throw Turned.form();
  }
}
