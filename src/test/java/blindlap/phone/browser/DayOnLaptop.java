package blindlap.phone.browser;

import blindlap.desk.Commits;
import blindlap.desk.Committing;
import blindlap.desk.Desk;
import blindlap.desk.FixedSources;
import blindlap.desk.HelperDay;
import blindlap.desk.HelperDays;
import blindlap.desk.Sessions;
import blindlap.desk.day.DayResult;
import blindlap.desk.day.PhoneActs;
import blindlap.desk.day.PhoneDays;
import blindlap.exchange.PlanReader;
import blindlap.phone.PhoneServer;
import blindlap.plan.Plan;
import blindlap.plan.Plans;
import blindlap.plan.Setting;
import blindlap.seal.SealParameters;
import blindlap.seal.SessionKind;
import blindlap.session.HelperEntry;
import blindlap.session.SafetyCheck;
import blindlap.session.SessionState;
import blindlap.session.day.ByPhone;
import blindlap.session.day.PhoneRole;
import blindlap.session.day.SessionId;
import blindlap.store.SqliteNotebook;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;

/** A laptop at the van with a day on it, a helper at its page, and phones that it serves. */
final class DayOnLaptop implements AutoCloseable {
  private static final Duration GIVEN = Duration.ofMinutes(7);

  private final Clock clock = Clock.system(ZoneId.of("Europe/Vienna"));
  private final Desk desk;
  private final SessionId id;
  private final String phrase;
  private PhoneServer phones;
  private int runs;
  private volatile boolean kill;
  private volatile int port;
  private final CountDownLatch killed = new CountDownLatch(1);

  DayOnLaptop(Path notebook, String planText) {
    desk =
        new Desk(
            SqliteNotebook.open(notebook, bytes(new Random(9), 16), clock.instant()),
            clock,
            FixedSources.order(5),
            new SealParameters(1),
            count -> bytes(new Random(count), count));
    Plan plan = PlanReader.read(planText, Plans.protocols()).plan();
    if (plan == null) {
      throw new AssertionError("the plan of the test is refused");
    }
    Committing.Result.Committed committed =
        Commits.commit(desk, plan, SessionKind.comparison(), List.of("R. Lind"));
    id = committed.state().id();
    phrase = committed.sealed().phrase().text();
    phones = server();
    on(0);
  }

  private static byte[] bytes(Random random, int count) {
    byte[] bytes = new byte[count];
    random.nextBytes(bytes);
    return bytes;
  }

  /** Ends the program after the next message is entered and before it is answered. */
  void killAfterNextEntry() {
    kill = true;
  }

  /** What the desk does, and then perhaps no more. */
  private final class Killed implements PhoneDays {
    private final PhoneDays days = desk.phoneDays();

    @Override
    public Optional<Seen> day(SessionId session) {
      return days.day(session);
    }

    @Override
    public long version() {
      return days.version();
    }

    @Override
    public Taken act(SessionId session, ByPhone by, Function<PhoneActs, DayResult> act) {
      Taken taken = days.act(session, by, act);
      if (kill && taken instanceof Taken.Done) {
        kill = false;
        port = port();
        phones.close();
        killed.countDown();
      }
      return taken;
    }
  }

  /** Waits until the program was killed, and starts it again. */
  void startAgainOnceKilled() throws InterruptedException {
    if (!killed.await(30, TimeUnit.SECONDS)) {
      throw new AssertionError("no message came");
    }
    phones = server();
    on(port);
  }

  private PhoneServer server() {
    Random secrets = new Random(++runs);
    return new PhoneServer(
        new Killed(),
        desk.phoneBook(),
        id,
        clock,
        System::nanoTime,
        count -> bytes(secrets, count),
        blindlap.wording.day.PhoneWords.all(),
        PhoneBrowser.HOST);
  }

  private void on(int port) {
    try {
      phones.on(new InetSocketAddress(InetAddress.getByName("127.0.0.1"), port));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  int port() {
    return phones.at().orElseThrow().getPort();
  }

  PhoneServer phones() {
    return phones;
  }

  Desk desk() {
    return desk;
  }

  SessionId id() {
    return id;
  }

  SessionState state() {
    return desk.sessions().state(id).orElseThrow();
  }

  /** What a phone scans, with the laptop's name in place of its address. */
  String link(PhoneRole role) {
    return phones.link(role).orElseThrow().toString().replace("127.0.0.1", PhoneBrowser.HOST);
  }

  /** The helper handles a stint and hands the bike over. */
  void handOver(int stint) {
    HelperDays.Opened opened = desk.helperDays().open(state(), phrase);
    HelperDay helper = ((HelperDays.Opened.Day) opened).day();
    int setup = helper.work(stint).setup();
    Map<String, String> measured = new LinkedHashMap<>();
    for (Setting setting : helper.settings(stint, setup)) {
      measured.put(setting.name(), setting.value());
    }
    HelperEntry entry =
        new HelperEntry(
                stint,
                "M. Oster",
                setup,
                setup,
                clock.instant(),
                null,
                measured,
                List.of(),
                EnumSet.allOf(SafetyCheck.class),
                new TreeMap<>(Map.of(state().lapsSoFar(), true)),
                List.of(),
                "")
            .withTiming(new HelperEntry.Timing(GIVEN, GIVEN, null, ""));
    if (helper.handOver(entry) instanceof Sessions.Result.Refused refused) {
      throw new AssertionError(refused.problems().toString());
    }
  }

  /** The bike is back with the helper. */
  void returned(int stint) {
    desk.helperDays().bikeReturned(id, stint);
  }

  @Override
  public void close() {
    phones.close();
    desk.close();
  }
}
