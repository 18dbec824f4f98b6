package blindlap.phone;

import blindlap.fault.CanonicalJson;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * An answer.
 *
 * @param status of HTTP
 * @param type of the body
 * @param body empty for none
 * @param kept true for what a phone may keep for a day
 */
record Reply(int status, String type, byte[] body, boolean kept) {
  static final String JSON = "application/json";

  /** A tree as JSON, which nobody keeps. */
  static Reply json(int status, Map<String, ? extends @Nullable Object> tree) {
    return new Reply(status, JSON, CanonicalJson.bytes(tree), false);
  }

  /** Refused for a reason of the wire. */
  static Reply why(int status, String why) {
    return json(status, Map.of("why", why));
  }

  /** Without a body. */
  static Reply bare(int status) {
    return new Reply(status, "", new byte[0], false);
  }
}
