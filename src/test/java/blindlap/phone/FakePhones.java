package blindlap.phone;

import blindlap.session.day.PhoneRole;
import blindlap.session.day.SessionId;
import java.io.IOException;
import java.net.BindException;
import java.net.InetSocketAddress;
import java.net.URI;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Phones as a test lets them come, without a network. */
public final class FakePhones implements Phones {
  private final SessionId session;
  private final List<Known> known = new ArrayList<>();
  private final List<Integer> taken = new ArrayList<>();
  private Optional<InetSocketAddress> at = Optional.empty();
  private Runnable told = () -> {};
  private int used;
  private boolean closed;

  public FakePhones(SessionId session) {
    this.session = session;
  }

  /** A phone comes, or says something new. */
  public synchronized void come(String id, PhoneRole role, boolean in, Instant heard, long unsent) {
    Known now = new Known(id, role, in, heard, unsent);
    int place = place(id);
    if (place < 0) {
      known.add(now);
      used++;
    } else {
      known.set(place, now);
    }
    told.run();
  }

  /** Something else is served at this port. */
  public void take(int port) {
    taken.add(port);
  }

  private int place(String id) {
    return known.stream().map(Known::id).toList().indexOf(id);
  }

  @Override
  public SessionId session() {
    return session;
  }

  @Override
  public synchronized void on(InetSocketAddress where) throws IOException {
    if (taken.contains(where.getPort())) {
      throw new BindException("taken");
    }
    at = Optional.of(where);
    told.run();
  }

  @Override
  public synchronized void off() {
    at = Optional.empty();
    told.run();
  }

  @Override
  public synchronized Optional<InetSocketAddress> at() {
    return at;
  }

  @Override
  public synchronized Optional<URI> link(PhoneRole role) {
    return at.map(
        where ->
            URI.create(
                "http://%s:%d/%s#%s"
                    .formatted(
                        where.getAddress().getHostAddress(),
                        where.getPort(),
                        role == PhoneRole.RIDER ? "ride" : "start",
                        String.valueOf(used).repeat(32).substring(0, 32))));
  }

  @Override
  public synchronized List<Known> known() {
    return List.copyOf(known);
  }

  @Override
  public synchronized void letIn(String id) {
    Known before = known.get(place(id));
    known.set(place(id), new Known(id, before.role(), true, before.heard(), before.unsent()));
    told.run();
  }

  @Override
  public synchronized void throwOut(String id) {
    known.remove(place(id));
    told.run();
  }

  @Override
  public void whenChanged(Runnable now) {
    told = now;
  }

  /** True once it is closed. */
  public boolean closed() {
    return closed;
  }

  @Override
  public synchronized void close() {
    closed = true;
    at = Optional.empty();
  }
}
