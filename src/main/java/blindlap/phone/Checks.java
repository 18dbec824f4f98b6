package blindlap.phone;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Whether a request is meant for this server, and comes from its own pages or from nobody's. */
final class Checks {
  private final Set<String> hosts;

  /**
   * Checks.
   *
   * @param also one more name of this machine; empty for none
   */
  Checks(InetSocketAddress at, String also) {
    String own = host(at.getAddress()) + ":" + at.getPort();
    hosts = also.isEmpty() ? Set.of(own) : Set.of(own, also + ":" + at.getPort());
  }

  /** An address as it stands in a URI. */
  static String host(InetAddress address) {
    String text = address.getHostAddress().replaceFirst("%.*", "");
    return address instanceof Inet6Address ? "[" + text + "]" : text;
  }

  void all(HttpExchange exchange) throws Turned {
    Headers sent = exchange.getRequestHeaders();
    List<String> host = sent.getOrDefault("Host", List.of());
    if (host.size() != 1 || !hosts.contains(host.get(0).toLowerCase(Locale.ROOT))) {
      throw new Turned(Refusal.HOST, Reply.why(403, "host"));
    }
    for (String origin : sent.getOrDefault("Origin", List.of())) {
      if (!origin.toLowerCase(Locale.ROOT).equals("http://" + host.get(0))) {
        throw new Turned(Refusal.ORIGIN, Reply.why(403, "origin"));
      }
    }
    boolean asks = exchange.getRequestMethod().equals("GET");
    if (!asks && !exchange.getRequestMethod().equals("POST")) {
      throw new Turned(Refusal.METHOD, Reply.bare(405));
    }
    String type = sent.getFirst("Content-Type");
    if (!asks && (type == null || !type.matches("(?i)application/json(; *charset=utf-8)?"))) {
      throw new Turned(Refusal.FORM, Reply.why(415, "type"));
    }
  }
}
