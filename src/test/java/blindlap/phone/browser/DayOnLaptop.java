package blindlap.phone.browser;

import blindlap.desk.Commits;
import blindlap.desk.Committing;
import blindlap.desk.Desk;
import blindlap.desk.FixedSources;
import blindlap.desk.HelperDay;
import blindlap.desk.HelperDays;
import blindlap.desk.Sessions;
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
import java.util.Random;
import java.util.TreeMap;

/** A laptop at the van with a day on it, a helper at its page, and phones that it serves. */
final class DayOnLaptop implements AutoCloseable {
  private static final Duration GIVEN = Duration.ofMinutes(7);

  private final Clock clock = Clock.system(ZoneId.of("Europe/Vienna"));
  private final Desk desk;
  private final SessionId id;
  private final String phrase;
  private PhoneServer phones;
  private int runs;

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

  private PhoneServer server() {
    Random secrets = new Random(++runs);
    return new PhoneServer(
        desk.phoneDays(),
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

  /** The program is killed and started again, at the same address. */
  void startAgain() {
    int port = port();
    phones.close();
    phones = server();
    on(port);
  }

  /** The program is gone. */
  void gone() {
    phones.off();
  }

  /** It is back at a port. */
  void back(int port) {
    on(port);
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
