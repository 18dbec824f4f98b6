package blindlap;

import blindlap.phone.Phones;
import blindlap.session.day.PhoneRole;
import blindlap.session.day.SessionId;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.URI;
import java.util.List;
import java.util.Optional;

/** Phones of a program that has nothing to serve them with. */
record Unserved(SessionId session) implements Phones {
  @Override
  public void on(InetSocketAddress at) throws IOException {
    throw new IOException("nothing is served");
  }

  @Override
  public void off() {}

  @Override
  public Optional<InetSocketAddress> at() {
    return Optional.empty();
  }

  @Override
  public Optional<URI> link(PhoneRole role) {
    return Optional.empty();
  }

  @Override
  public List<Known> known() {
    return List.of();
  }

  @Override
  public void letIn(String id) {}

  @Override
  public void throwOut(String id) {}

  @Override
  public void whenChanged(Runnable told) {}

  @Override
  public void close() {}
}
