package blindlap.phone;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TestDay;
import blindlap.desk.day.DayResult;
import blindlap.desk.day.PhoneActs;
import blindlap.desk.day.PhoneBook;
import blindlap.desk.day.PhoneDays;
import blindlap.plan.BlindLevel;
import blindlap.session.day.ByPhone;
import blindlap.session.day.PhoneRole;
import blindlap.session.day.SessionId;
import blindlap.wording.day.RideWords;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Function;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a page needs of the state to ask the right thing, and what the laptop keeps of phones. */
class PhoneStateTest {
  private static final String ONE = "1".repeat(32);

  private @TempDir(factory = RamFolder.class) Path folder;
  private ServedDay served;
  private TestPhone rider;

  @BeforeEach
  void on() {
    served = new ServedDay(folder, TestDay.EIGHT, 1);
    rider = served.phone(ONE, PhoneRole.RIDER);
    rider.hello();
    rider.state();
    rider.say("plate", "stint", "0");
    rider.say("warm-up");
    rider.say("plate", "stint", "1");
  }

  @AfterEach
  void off() {
    served.close();
  }

  private static String[] lap(int stint, String... more) {
    return java.util.stream.Stream.concat(
            java.util.stream.Stream.of("stint", "" + stint, "lap", "1"),
            java.util.Arrays.stream(more))
        .toArray(String[]::new);
  }

  @Test
  void aLapThatMayBeOpenedAgainIsNamedUntilTheNextIsSpokenOf() {
    assertThat(rider.state().body().get("reopenable").isNull()).isTrue();
    rider.say("ridden", lap(1));
    assertThat(rider.state().body().get("reopenable").asText()).isEqualTo("1.1");
    rider.say("plate", "stint", "2");
    rider.say("score", lap(2, "measure", "trust", "value", "4"));
    assertThat(rider.state().body().get("reopenable").isNull()).isTrue();
    assertThat(rider.state().body().at("/values").has("1.1")).isFalse();
  }

  /** A number stands on the plate, on the unit or on paper alone: the page asks where it is. */
  @Test
  void theDaySaysWhereANumberIs() {
    assertThat(rider.get("/day").body().get("plate").asText())
        .isEqualTo(RideWords.plate(BlindLevel.HELPER))
        .isNotEqualTo(RideWords.plate(BlindLevel.PREPARED));
  }

  /** The starter who is a lap ahead, and loads the page again, still has a running watch. */
  @Test
  void watchesAndConditionsOfAnyLapAreTold() {
    TestPhone starter = served.phone("2".repeat(32), PhoneRole.STARTER);
    starter.hello();
    starter.state();
    rider.say("plate", "stint", "2");
    String now = String.valueOf(served.day.clock().millis());
    assertThat(
            starter
                .say("watch-start", lap(2, "measure", "lap time", "at", now))
                .body()
                .get("done")
                .asBoolean())
        .isTrue();
    starter.say("conditions", lap(2, "name", "wind", "words", "some"));
    assertThat(starter.state().body().at("/watches/2.1/lap time/running").asText()).isEqualTo(now);
    assertThat(starter.state().body().at("/conditions/2.1/wind").asText()).isEqualTo("some");
  }

  @Test
  void aWatchTakesNoScaleAndAScoreNoTime() {
    TestPhone.Heard scored = rider.say("score", lap(1, "measure", "lap time", "value", "92"));
    assertThat(scored.body().get("refused").asText()).contains("understand");
    String now = String.valueOf(served.day.clock().millis());
    TestPhone.Heard timed = rider.say("watch-start", lap(1, "measure", "trust", "at", now));
    assertThat(timed.body().get("refused").asText()).contains("understand");
    assertThat(served.day.state().day().laps()).isEmpty();
  }

  /** The phone's clock was set while an answer was on its way, so it has measured no offset. */
  @Test
  void aMessageWithoutAnOffsetIsTakenAtItsOwn() {
    String message =
        rider
            .message(4, rider.run, "note", lap(1, "text", "loose stones"))
            .replace("\"offset\":\"0\"", "\"offset\":\"null\"");
    served.day.clock().move(Duration.ofSeconds(2));
    assertThat(rider.send(message).body().get("done").asBoolean()).isTrue();
    assertThat(rider.state().body().at("/notes/1.1").asText()).isEqualTo("loose stones");
    List<ByPhone> said =
        served.day.state().entries().stream()
            .map(entry -> entry.entry().phone())
            .filter(by -> by != null && by.number() == 4)
            .toList();
    assertThat(said).extracting(ByPhone::offset).containsExactly(Duration.ofSeconds(2));
  }

  @Test
  void aPhoneWhoseIdIsAnothersIsNotTaken() {
    TestPhone other = served.phone("1".repeat(8) + "9".repeat(24), PhoneRole.RIDER);
    assertThat(other.hello().status()).isEqualTo(403);
    assertThat(served.server.known()).hasSize(1);
  }

  @Test
  void whenAPhoneWasHeardLastIsKnownAfterAnotherStart() {
    served.day.clock().move(Duration.ofMinutes(3));
    rider.get("/state?unsent=2");
    var heard = served.day.clock().instant();
    served.again();
    assertThat(served.server.known())
        .containsExactly(new Phones.Known("11111111", PhoneRole.RIDER, true, heard, 2));
  }

  /**
   * The notebook fails whenever the end of the day is looked for, and is closed before the phones.
   */
  @Test
  void aNotebookThatFailsNeitherSparesSlowOnesNorKeepsPhonesOn() throws IOException {
    AtomicBoolean closed = new AtomicBoolean();
    PhoneDays failing =
        new PhoneDays() {
          @Override
          public Optional<Seen> day(SessionId id) {
            return served.days.day(id);
          }

          @Override
          public long version() {
            throw new IllegalStateException("busy");
          }

          @Override
          public Taken act(SessionId id, ByPhone by, Function<PhoneActs, DayResult> act) {
            return served.days.act(id, by, act);
          }
        };
    PhoneBook book =
        new PhoneBook() {
          @Override
          public Optional<String> kept(SessionId id) {
            return Optional.empty();
          }

          @Override
          public void keep(SessionId id, String text) {
            if (closed.get()) {
              throw new IllegalStateException("closed");
            }
          }

          @Override
          public void forget(SessionId id) {
            throw new IllegalStateException("the day is not over");
          }
        };
    AtomicLong ahead = new AtomicLong();
    InetAddress loopback = InetAddress.getLoopbackAddress();
    try (PhoneServer server =
        new PhoneServer(
            failing,
            book,
            served.day.id(),
            served.day.clock(),
            () -> System.nanoTime() + ahead.get(),
            count -> new byte[count],
            Map.of())) {
      server.on(new InetSocketAddress(loopback, 0));
      int port = server.at().orElseThrow().getPort();
      ahead.addAndGet(Duration.ofSeconds(2).toNanos());
      try (Socket slow = new Socket(loopback, port)) {
        slow.setSoTimeout(20_000);
        slow.getOutputStream().write('G');
        slow.getOutputStream().flush();
        await(() -> ahead.addAndGet(Duration.ofSeconds(7).toNanos()), slow);
      }
      served.server = server;
      served.port = port;
      assertThat(served.phone("3".repeat(32), PhoneRole.RIDER).hello().status()).isEqualTo(200);
      closed.set(true);
      server.off();
      assertThat(server.at()).isEmpty();
    }
  }

  /** Time goes by until the other side has closed. */
  private static void await(Runnable time, Socket socket) throws IOException {
    socket.setSoTimeout(500);
    for (int i = 0; i < 40; i++) {
      try {
        assertThat(socket.getInputStream().read()).isEqualTo(-1);
        return;
      } catch (SocketTimeoutException open) {
        time.run();
      }
    }
    throw new AssertionError("never cut off");
  }
}
