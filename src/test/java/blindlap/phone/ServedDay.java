package blindlap.phone;

import blindlap.desk.TestDay;
import blindlap.desk.day.PhoneDays;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Path;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;

/** A day with its phones switched on, on loopback. */
final class ServedDay implements AutoCloseable {
  static {
    System.setProperty("sun.net.httpserver.nodelay", "true"); // as Main does
  }

  final TestDay day;
  final PhoneDays days;

  /** Nanoseconds by which the clock that cannot be set is ahead. */
  final AtomicLong ahead = new AtomicLong();

  /** Where the clock that cannot be set stands still; null while it goes. */
  volatile @Nullable Long still;

  PhoneServer server;
  int port;

  ServedDay(Path folder, String plan, long seed) {
    this(folder, plan, seed, 0);
  }

  ServedDay(Path folder, String plan, long seed, int wanted) {
    day = new TestDay(folder, plan, seed);
    days = day.desk().phoneDays();
    server = server(21);
    on(wanted);
  }

  private PhoneServer server(int seed) {
    return new PhoneServer(
        days,
        day.desk().phoneBook(),
        day.id(),
        day.clock(),
        () -> (still == null ? System.nanoTime() : still) + ahead.get(),
        secrets(seed),
        Map.of("lap", "Lap {0}"));
  }

  /** The same bytes for the same seed. */
  private static Secrets secrets(int seed) {
    Random stream = new Random(seed);
    return count -> {
      byte[] bytes = new byte[count];
      stream.nextBytes(bytes);
      return bytes;
    };
  }

  private void on(int wanted) {
    try {
      server.on(new InetSocketAddress(InetAddress.getLoopbackAddress(), wanted));
      port = server.at().orElseThrow().getPort();
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The program is started again: another run on the same port, the same notebook and book. */
  void again() {
    server.close();
    server = server(22);
    on(port);
  }

  TestPhone phone(String client, blindlap.session.day.PhoneRole role) {
    return new TestPhone(this, client, role);
  }

  @Override
  public void close() {
    server.close();
    day.close();
  }
}
