package blindlap.phone;

import blindlap.desk.day.PhoneBook;
import blindlap.desk.day.PhoneDays;
import blindlap.session.day.PhoneRole;
import blindlap.session.day.SessionId;
import blindlap.wording.day.PhoneWords;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.URI;
import java.time.Clock;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/** Serves the phones of a session with the platform's own server (ADR 9). */
public final class PhoneServer implements Phones {
  /** Waiting for a thread of the platform's listener. */
  private static final int BACKLOG = 256;

  private final SessionId id;
  private final Clock clock;
  private final LongSupplier nanos;
  private final Admission admission;
  private final Refusals refusals;
  private final Shell shell;
  private final Deciding deciding;
  private final String also;
  private final DayEnd end;
  private volatile Runnable told = () -> {};
  private @Nullable Serving serving;

  /** What runs while it is on. */
  private record Serving(
      HttpServer server, Workers workers, ScheduledExecutorService watch, InetSocketAddress at) {}

  /**
   * Phones of a session, switched off.
   *
   * @param nanos the clock that cannot be set
   */
  public PhoneServer(
      PhoneDays days,
      PhoneBook book,
      SessionId id,
      Clock clock,
      LongSupplier nanos,
      Secrets secrets) {
    this(days, book, id, clock, nanos, secrets, PhoneWords.all());
  }

  /**
   * The same with other words.
   *
   * @param words what both pages say, by key
   */
  public PhoneServer(
      PhoneDays days,
      PhoneBook book,
      SessionId id,
      Clock clock,
      LongSupplier nanos,
      Secrets secrets,
      Map<String, String> words) {
    this(days, book, id, clock, nanos, secrets, words, "");
  }

  /**
   * The same on a machine with a name.
   *
   * @param also the name by which phones may ask for it beside its address; empty for none
   */
  public PhoneServer(
      PhoneDays days,
      PhoneBook book,
      SessionId id,
      Clock clock,
      LongSupplier nanos,
      Secrets secrets,
      Map<String, String> words,
      String also) {
    this.id = id;
    this.clock = clock;
    this.nanos = nanos;
    this.also = also;
    admission = new Admission(book, id, clock, secrets);
    refusals = new Refusals(clock);
    shell = new Shell(words);
    deciding = new Deciding(days, id, clock, HexFormat.of().formatHex(secrets.bytes(8)));
    end = new DayEnd(days, id, nanos);
  }

  @Override
  public SessionId session() {
    return id;
  }

  @Override
  public synchronized void on(InetSocketAddress at) throws IOException {
    off();
    HttpServer server = HttpServer.create(at, BACKLOG);
    InetSocketAddress bound = server.getAddress();
    Workers workers = new Workers(nanos);
    Checks checks = new Checks(bound, also);
    server.setExecutor(workers);
    server.createContext(
        "/", new Wire(checks, shell, admission, deciding, refusals, workers, nanos, this::changed));
    ScheduledExecutorService watch = Executors.newSingleThreadScheduledExecutor(Workers::thread);
    watch.scheduleWithFixedDelay(() -> look(workers), 100, 100, TimeUnit.MILLISECONDS);
    serving = new Serving(server, workers, watch, bound);
    server.start();
    admission.served(bound.getPort());
    changed();
  }

  private void look(Workers workers) {
    workers.look();
    if (over()) {
      admission.forget();
      off();
    }
  }

  /**
   * A notebook that cannot be read just now says nothing, and must not end the look after slow
   * ones.
   */
  private boolean over() {
    try {
      return end.reached(admission.known());
    } catch (RuntimeException unread) {
      return false;
    }
  }

  private void changed() {
    told.run();
  }

  @Override
  public synchronized void off() {
    Serving now = serving;
    if (now != null) {
      serving = null;
      now.watch().shutdown();
      now.server().stop(0);
      now.workers().close();
      rest();
      changed();
    }
  }

  /** A notebook that was closed before this keeps what it had; switching off never fails. */
  private void rest() {
    try {
      admission.rest();
    } catch (RuntimeException closed) {
      return;
    }
  }

  @Override
  public synchronized Optional<InetSocketAddress> at() {
    return Optional.ofNullable(serving).map(Serving::at);
  }

  /** The port that was served last, so that codes and pages of before still lead here. */
  public Optional<Integer> portBefore() {
    return Optional.of(admission.port()).filter(port -> port > 0);
  }

  @Override
  public synchronized Optional<URI> link(PhoneRole role) {
    return at().map(
            at -> {
              String page = role == PhoneRole.RIDER ? "ride" : "start";
              String host = also.isEmpty() ? Checks.host(at.getAddress()) : also;
              return URI.create(
                  "http://" + host + ":" + at.getPort() + "/" + page + "#" + admission.token(role));
            });
  }

  @Override
  public List<Known> known() {
    return admission.known();
  }

  @Override
  public List<Refused> refusals() {
    return refusals.all();
  }

  @Override
  public void letIn(String phone) {
    put(phone, Phone.Place.IN);
  }

  @Override
  public void throwOut(String phone) {
    put(phone, Phone.Place.OUT);
  }

  private void put(String phone, Phone.Place place) {
    if (admission.put(phone, place)) {
      changed();
    }
  }

  @Override
  public void whenChanged(Runnable listener) {
    told = listener;
  }

  @Override
  public void close() {
    told = () -> {};
    off();
  }
}
