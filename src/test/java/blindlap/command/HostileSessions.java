package blindlap.command;

import blindlap.seal.ChainHead;
import blindlap.seal.Fingerprint;
import blindlap.seal.ReviewFingerprint;
import blindlap.session.Hash;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Files of sessions as somebody writes them who knows the form: every hash is made anew. */
final class HostileSessions {
  private static final Pattern PREVIOUS = Pattern.compile("\"previous\":\"[0-9a-f]{64}\"");
  private static final Pattern CLOSED =
      Pattern.compile("\"body\":\\{\"fingerprint\":\"[0-9a-f]{64}\"\\}");

  private HostileSessions() {}

  /** The texts of a file's entries. */
  static List<String> entries(String file) {
    List<String> lines = file.lines().toList();
    return lines.subList(1, lines.size() - 1);
  }

  private static String field(String text, String name) {
    Matcher found = Pattern.compile("\"" + name + "\":\"([^\"]*)\"").matcher(text);
    return found.find() ? found.group(1) : "";
  }

  /**
   * A file of one chain with new numbers, hashes and closing line.
   *
   * @param review true to make the fingerprint of the closed review anew, too
   */
  static String rewritten(List<String> texts, boolean review) {
    List<String> chain = new ArrayList<>();
    Hash previous = Hash.NONE;
    String plan = field(texts.get(0), "fingerprint");
    String session = lastField(texts.get(0), "session");
    for (String text : texts) {
      String next = PREVIOUS.matcher(text).replaceFirst("\"previous\":\"" + previous.hex() + "\"");
      next =
          next.replaceFirst(
              "\"number\":\"\\d+\",\"previous\"",
              "\"number\":\"" + (chain.size() + 1) + "\",\"previous\"");
      // A commit whose fingerprint another mutation took away has none to close the review with.
      if (review && !plan.isEmpty() && next.contains("\"kind\":\"ReviewClosed\"")) {
        ChainHead head =
            new ChainHead(field(next, "notebook"), chain.size(), Fingerprint.parse(previous.hex()));
        String made = ReviewFingerprint.of(session, Fingerprint.parse(plan), List.of(head)).hex();
        next = CLOSED.matcher(next).replaceFirst("\"body\":{\"fingerprint\":\"" + made + "\"}");
      }
      chain.add(next);
      previous = Hash.of(next);
    }
    return closed(session, chain);
  }

  private static String lastField(String text, String name) {
    Matcher found = Pattern.compile("\"" + name + "\":\"([^\"]*)\"").matcher(text);
    String last = "";
    while (found.find()) {
      last = found.group(1);
    }
    return last;
  }

  /** A file of these entries as they are, with the first and a closing line. */
  static String closed(String session, List<String> chain) {
    String above =
        "{\"form\":\"blindlap-session-1\",\"session\":\""
            + session
            + "\"}\n"
            + String.join("\n", chain)
            + "\n";
    return above
        + "{\"entries\":\""
        + chain.size()
        + "\",\"sha256\":\""
        + Hash.of(above).hex()
        + "\"}\n";
  }
}
