package blindlap.phone;

import blindlap.fault.CanonicalJson;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Pages, styles, modules and words: the same for every session, so that a phone may keep them. */
final class Shell {
  /** Everything there is; nothing else is ever looked for. */
  private static final List<String> FILES =
      List.of(
          "ride.html",
          "start.html",
          "phone.css",
          "ride.js",
          "start.js",
          "outbox.js",
          "day.js",
          "keep.js",
          "link.js",
          "watch.js",
          "dom.js",
          "page.js",
          "scale.js",
          "words.js");

  private final Map<String, Reply> pages = new LinkedHashMap<>();

  /** Reads all of it once. */
  Shell(Map<String, String> words) {
    for (String name : FILES) {
      try (InputStream in = Shell.class.getResourceAsStream("/blindlap/phone/" + name)) {
        if (in != null) {
          pages.put(path(name), new Reply(200, type(name), in.readAllBytes(), true));
        }
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
    pages.put("/words.json", new Reply(200, Reply.JSON, CanonicalJson.bytes(words), true));
  }

  private static String path(String name) {
    return "/" + name.replace(".html", "");
  }

  private static String type(String name) {
    return switch (name.substring(name.indexOf('.') + 1)) {
      case "html" -> "text/html; charset=utf-8";
      case "css" -> "text/css; charset=utf-8";
      default -> "text/javascript; charset=utf-8";
    };
  }

  /** What stands at a path. */
  Optional<Reply> at(String path) {
    return Optional.ofNullable(pages.get(path));
  }
}
