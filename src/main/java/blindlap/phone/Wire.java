package blindlap.phone;

import blindlap.session.day.PhoneRole;
import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpHandler;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What is asked and answered over the network. */
final class Wire implements HttpHandler {
  private static final Pattern STATE = Pattern.compile("unsent=([0-9]{1,6})");
  private static final Pattern KEY = Pattern.compile("Bearer ([0-9a-f]{32})");
  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; img-src"
          + " 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

  private final Checks checks;
  private final Shell shell;
  private final Admission admission;
  private final Deciding deciding;
  private final Refusals refusals;
  private final Workers workers;
  private final Runnable changed;
  private final Rates addresses;
  private final Rates clients;
  private final Rates codes;

  Wire(
      Checks checks,
      Shell shell,
      Admission admission,
      Deciding deciding,
      Refusals refusals,
      Workers workers,
      LongSupplier nanos,
      Runnable changed) {
    this.checks = checks;
    this.shell = shell;
    this.admission = admission;
    this.deciding = deciding;
    this.refusals = refusals;
    this.workers = workers;
    this.changed = changed;
    addresses = new Rates(600, 120, nanos);
    clients = new Rates(300, 60, nanos);
    codes = new Rates(20, 1, nanos);
  }

  @Override
  public void handle(HttpExchange exchange) throws IOException {
    try (exchange) {
      String address = exchange.getRemoteAddress().getAddress().getHostAddress();
      Reply reply;
      try {
        reply = reply(exchange, address);
      } catch (Turned turned) {
        workers.read();
        refused(turned.why(), address);
        reply = turned.reply();
      } catch (RuntimeException failed) {
        refused(Refusal.FAILED, address);
        reply = Reply.why(503, "failed");
      }
      workers.writes();
      write(exchange, reply);
    }
  }

  private void refused(Refusal why, String who) {
    if (refusals.note(why, who)) {
      changed.run();
    }
  }

  private Reply reply(HttpExchange exchange, String address) throws IOException, Turned {
    if (!addresses.admits(address)) {
      throw new Turned(Refusal.TOO_MANY, Reply.why(429, "slow"));
    }
    checks.all(exchange);
    String path = exchange.getRequestURI().getRawPath();
    String query = exchange.getRequestURI().getRawQuery();
    boolean asks = exchange.getRequestMethod().equals("GET");
    byte[] body = asks ? new byte[0] : body(exchange, address);
    if (!workers.read()) {
      throw slow();
    }
    Optional<Reply> page = asks && query == null ? shell.at(path) : Optional.empty();
    if (page.isPresent()) {
      return page.get();
    }
    String what = exchange.getRequestMethod() + " " + path;
    return switch (what) {
      case "POST /hello" -> hello(Body.given(body), address);
      case "GET /day" -> DayJson.of(deciding.seen().day(), in(exchange).role);
      case "GET /state" -> state(exchange, query == null ? "" : query);
      case "POST /send" -> send(exchange, body);
      default -> throw new Turned(Refusal.PATH, Reply.bare(404));
    };
  }

  private static Turned slow() {
    return new Turned(Refusal.TOO_SLOW, Reply.bare(408));
  }

  private byte[] body(HttpExchange exchange, String address) throws IOException, Turned {
    try {
      return Body.bytes(exchange);
    } catch (IOException cut) {
      if (!workers.read()) {
        refused(Refusal.TOO_SLOW, address);
      }
      throw cut;
    }
  }

  private Reply hello(Given sent, String address) throws Turned {
    if (!codes.admits(address)) {
      throw new Turned(Refusal.TOO_MANY, Reply.why(429, "slow"));
    }
    PhoneRole role = sent.one(PhoneRole.class, "role");
    Admission.Hello hello =
        admission
            .hello(sent.text("token"), sent.text("client"), role)
            .orElseThrow(() -> new Turned(Refusal.TOKEN, Reply.why(403, "token")));
    changed.run();
    String session = deciding.seen().day().id().text();
    return Reply.json(200, Map.of("key", hello.key(), "in", hello.in(), "session", session));
  }

  /** The phone that asks, if it is in. */
  private Phone in(HttpExchange exchange) throws Turned {
    String sent = exchange.getRequestHeaders().getFirst("Authorization");
    Matcher key = KEY.matcher(sent == null ? "" : sent);
    Optional<Phone> found = key.matches() ? admission.of(key.group(1)) : Optional.empty();
    if (found.isEmpty() || admission.place(found.get()) == Phone.Place.OUT) {
      throw new Turned(Refusal.KEY, Reply.why(401, "out"));
    }
    Phone phone = found.get();
    if (!clients.admits(phone.client)) {
      throw new Turned(Refusal.TOO_MANY, Reply.why(429, "slow"));
    }
    if (admission.place(phone) == Phone.Place.WAITING) {
      admission.heard(phone, 0);
      throw new Turned(Refusal.KEY, Reply.why(403, "waiting"));
    }
    return phone;
  }

  private Reply state(HttpExchange exchange, String query) throws Turned {
    Phone phone = in(exchange);
    Matcher unsent = STATE.matcher(query);
    if (!query.isEmpty() && !unsent.matches()) {
      throw Turned.form();
    }
    heard(phone, query.isEmpty() ? 0 : Long.parseLong(unsent.group(1)));
    return Reply.json(200, deciding.state(phone, deciding.seen()));
  }

  private Reply send(HttpExchange exchange, byte[] body) throws Turned {
    Phone phone = in(exchange);
    Given message = Body.given(body);
    heard(phone, message.number("unsent"));
    return deciding.decide(phone, message);
  }

  private void heard(Phone phone, long unsent) {
    long before = phone.unsent;
    admission.heard(phone, unsent);
    if (before != unsent) {
      changed.run();
    }
  }

  private static void write(HttpExchange exchange, Reply reply) throws IOException {
    Headers headers = exchange.getResponseHeaders();
    headers.set("Content-Security-Policy", POLICY);
    headers.set("X-Content-Type-Options", "nosniff");
    headers.set("Referrer-Policy", "no-referrer");
    headers.set("Cross-Origin-Resource-Policy", "same-origin");
    headers.set("Cache-Control", reply.kept() ? "public, max-age=86400" : "no-store");
    if (reply.status() == 413 || reply.status() == 408) {
      headers.set("Connection", "close");
    }
    byte[] body = reply.body();
    if (body.length == 0) {
      exchange.sendResponseHeaders(reply.status(), -1);
      return;
    }
    headers.set("Content-Type", reply.type());
    exchange.sendResponseHeaders(reply.status(), body.length);
    exchange.getResponseBody().write(body);
  }
}
