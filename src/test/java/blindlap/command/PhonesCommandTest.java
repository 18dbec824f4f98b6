package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.phone.FakeMaker;
import blindlap.phone.FakePhones;
import blindlap.session.day.PhoneRole;
import blindlap.session.day.SessionId;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.InetSocketAddress;
import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Phones at a terminal: what is printed, what is typed, when it ends, what is refused. */
class PhonesCommandTest {
  private static final Instant NOW = Instant.parse("2026-11-14T08:00:00Z");
  private static final String RIDER = "1a2b3c4d";
  private static final String OTHER = "1a5e6f70";

  @TempDir Path folder;
  private CommandLineSession day;
  private String session;
  private FakePhones phones;
  private final LinkedBlockingQueue<String> typed = new LinkedBlockingQueue<>();
  private final ExecutorService beside = Executors.newSingleThreadExecutor();
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @BeforeEach
  void commit() {
    day = new CommandLineSession(folder);
    session = day.commit(Plans.SMALL);
    phones = day.phones.phones(new SessionId(session));
    day.typedBeside = typed;
  }

  @AfterEach
  void end() {
    beside.shutdownNow();
  }

  private Future<Integer> begin(String... more) {
    String[] all = new String[more.length + 2];
    all[0] = "phones";
    all[1] = session;
    System.arraycopy(more, 0, all, 2, more.length);
    return beside.submit(
        () -> day.run(new PrintWriter(out, true), new PrintWriter(err, true), all));
  }

  private static int code(Future<Integer> ran) {
    try {
      return ran.get(30, TimeUnit.SECONDS);
    } catch (InterruptedException | ExecutionException | TimeoutException e) {
      throw new AssertionError(e);
    }
  }

  private void await(String words) {
    for (int i = 0; i < 600 && !out.toString().contains(words); i++) {
      try {
        Thread.sleep(50);
      } catch (InterruptedException e) {
        throw new IllegalStateException(e);
      }
    }
    assertThat(out.toString()).as(err.toString()).contains(words);
  }

  @Test
  void theOnlyAddressOfAnOwnNetworkIsTakenAndTwoLinksArePrintedUntilOff() {
    Future<Integer> ran = begin();
    await("Starter: http://192.168.43.117:8480/start#");
    assertThat(phones.at()).contains(new InetSocketAddress("192.168.43.117", 8480));
    assertThat(out.toString())
        .contains("Phones are on for session", "Rider: http://192.168.43.117:8480/ride#", "\u2588")
        .contains("Nothing of the order goes to a phone");
    typed.add("OFF ");
    assertThat(code(ran)).isZero();
    assertThat(out.toString()).contains("Phones are off.");
    assertThat(phones.at()).isEmpty();
    assertThat(phones.closed()).isTrue();
    assertThat(err.toString()).isEmpty();
  }

  @Test
  void whoComesIsToldLetInAndThrownOutByTheBeginningOfAnId() {
    Future<Integer> ran = begin("--port", "8481");
    await("Starter: http://192.168.43.117:8481/start#0");
    phones.come(RIDER, PhoneRole.RIDER, true, NOW, 0);
    await("Rider, 1a2b3c4d: connected, heard 0 s ago, nothing unsent");
    await("The next code for the rider:");
    phones.come(OTHER, PhoneRole.RIDER, false, NOW, 0);
    await("Rider, 1a5e6f70: waits to be let in");
    typed.add("in 1a");
    await("No phone, or more than one, has an id that begins with \"1a\"");
    assertThat(phones.known()).extracting("in").containsExactly(true, false);
    typed.add("in 1A5");
    await("Rider, 1a5e6f70: connected");
    typed.add("out");
    await("Type in ID, out ID, who, codes or off. Nothing was changed.");
    typed.add("out 1a2");
    typed.add("who");
    typed.add("");
    typed.add("off");
    assertThat(code(ran)).isZero();
    assertThat(phones.known()).extracting("id").containsExactly(OTHER);
    assertThat(out.toString().split("Rider, 1a2b3c4d", -1)).as("not listed by who").hasSize(2);
  }

  @Test
  void theEndOfTheDayEndsItThoughNobodyTypes() {
    Future<Integer> ran = begin();
    await("Starter: http");
    assertThat(day.run("record", session, day.file("laps.csv", Plans.laps(8)).toString()).code())
        .isZero();
    assertThat(day.run("close-day", session, "--yes").code()).isZero();
    phones.off(); // as they do once phones were told
    assertThat(code(ran)).isZero();
    assertThat(out.toString()).contains("The day is closed: phones are off.");
  }

  @Test
  void theEndOfInputEndsItAtATerminalAndNothingWithoutOne() throws Exception {
    Future<Integer> ran = begin();
    typed.add(CommandLineSession.NOBODY);
    assertThat(code(ran)).isZero();
    assertThat(out.toString()).contains("Phones are off.");

    day.present = false;
    ran = begin();
    typed.add(CommandLineSession.NOBODY);
    await("There is no more input; phones stay on");
    Thread.sleep(1200);
    assertThat(ran.isDone()).isFalse();
    assertThat(phones.at()).isPresent();
    phones.off();
    assertThat(code(ran)).isZero();
  }

  private void refused(String sentence, String... command) {
    CommandLineSession.Ran ran = day.run(command);
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err().strip().lines()).hasSize(1);
    assertThat(ran.err()).contains(sentence);
    assertThat(phones.at()).isEmpty();
  }

  @Test
  void whatCannotBeServedIsRefusedInOneSentence() {
    refused("No session", "phones", "ffffffff");
    phones.take(8480);
    refused("already uses port 8480 at 192.168.43.117", "phones", session);
    refused("\"0\" is no port", "phones", session, "--port", "0");
    refused("\"http\" is no port", "phones", session, "--port", "http");
    refused(
        "no address 10.1.2.3; it has: 192.168.43.117 (wlan0), 127.0.0.1 (lo)",
        "phones",
        session,
        "--address",
        "10.1.2.3");
    day.phones.addresses.add(FakeMaker.address("10.0.0.5", "eth0"));
    refused("10.0.0.5 (eth0), 192.168.43.117 (wlan0)", "phones", session);
    day.phones.addresses.removeIf(each -> !each.loopback());
    refused("on no network that a phone could reach", "phones", session);
    day.run("record", session, day.file("laps.csv", Plans.laps(8)).toString());
    day.run("close-day", session);
    refused("The day is closed", "phones", session);
  }

  @Test
  void anAddressThatIsNamedIsTakenThoughNoPhoneReachesIt() {
    typed.add("off");
    Future<Integer> ran = begin("--address", "127.0.0.1");
    assertThat(code(ran)).as(err.toString()).isZero();
    assertThat(out.toString()).contains("http://127.0.0.1:8480/ride#");
  }
}
