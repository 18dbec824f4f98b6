package blindlap.phone;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TestDay;
import blindlap.session.day.LapId;
import blindlap.session.day.PhoneRole;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpRequest;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is refused is noted once, and an honest rider scores during it and afterwards. */
class PhoneAttacksTest {
  private @TempDir(factory = RamFolder.class) Path folder;
  private ServedDay served;
  private TestPhone rider;
  private int value;

  @BeforeEach
  void on() {
    served = new ServedDay(folder, TestDay.EIGHT, 1);
    rider = served.phone("1".repeat(32), PhoneRole.RIDER);
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

  /** An honest answer, found in the notebook. */
  private void theDayGoesOn() {
    value++;
    String[] said = {"stint", "1", "lap", "1", "measure", "grip in the rocks", "value", "" + value};
    assertThat(rider.say("score", said).body().path("done").asBoolean()).isTrue();
    assertThat(
            served.day.state().lap(new LapId(1, 1)).orElseThrow().values().get("grip in the rocks"))
        .isEqualByComparingTo(String.valueOf(value));
  }

  private void notedOnce(Refusal why) {
    assertThat(served.server.refusals()).filteredOn(each -> each.why() == why).hasSize(1);
  }

  private Socket socket() throws IOException {
    Socket socket = new Socket(InetAddress.getLoopbackAddress(), served.port);
    socket.setSoTimeout(20_000);
    return socket;
  }

  /** What is answered to these lines, to its end. */
  private String raw(String head) throws IOException {
    try (Socket socket = socket()) {
      socket.getOutputStream().write(head.getBytes(StandardCharsets.ISO_8859_1));
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
    }
  }

  private String get(String path, String more) throws IOException {
    return raw("GET " + path + " HTTP/1.1\r\n" + more + "Connection: close\r\n\r\n");
  }

  private String own() {
    return "Host: 127.0.0.1:" + served.port + "\r\n";
  }

  @ParameterizedTest
  @ValueSource(strings = {"/day", "/state?unsent=0"})
  void withoutAKeyNothingIsTold(String path) {
    TestPhone stranger = served.phone("2".repeat(32), PhoneRole.RIDER);
    for (String key : List.of("", "0".repeat(32), "x", rider.key.toUpperCase() + "0")) {
      stranger.key = key;
      TestPhone.Heard heard = stranger.get(path);
      assertThat(heard.status()).isEqualTo(401);
      assertThat(heard.body().toString()).isEqualTo("{\"why\":\"out\"}");
      theDayGoesOn();
    }
    assertThat(stranger.send(stranger.message(1, rider.run, "warm-up")).status()).isEqualTo(401);
    notedOnce(Refusal.KEY);
    assertThat(served.day.state().warmUps()).isEqualTo(1);
  }

  @Test
  void aCodeIsGoodForOnePhoneAndOneRole() {
    String token = served.server.link(PhoneRole.STARTER).orElseThrow().getFragment();
    TestPhone wrong = served.phone("3".repeat(32), PhoneRole.RIDER);
    assertThat(wrong.hello(token).status()).isEqualTo(403);
    TestPhone starter = served.phone("4".repeat(32), PhoneRole.STARTER);
    assertThat(starter.hello(token).status()).isEqualTo(200);
    TestPhone late = served.phone("5".repeat(32), PhoneRole.STARTER);
    assertThat(late.hello(token).body().get("why").asText()).isEqualTo("token");
    assertThat(served.server.link(PhoneRole.STARTER).orElseThrow().getFragment())
        .isNotEqualTo(token);
    starter.state(); // from here on the code is of no use to the same page either
    assertThat(starter.hello(token).status()).isEqualTo(403);
    theDayGoesOn();
    notedOnce(Refusal.TOKEN);
  }

  @Test
  void aStarterNeitherScoresNorGuesses() {
    TestPhone starter = served.phone("4".repeat(32), PhoneRole.STARTER);
    starter.hello();
    starter.state();
    List<TestPhone.Heard> heard =
        List.of(
            starter.say(
                "score", "stint", "1", "lap", "1", "measure", "grip in the rocks", "value", "99"),
            starter.say("guess", "stint", "1", "setup", "1"),
            starter.say("note", "stint", "1", "lap", "1", "text", "mine"),
            starter.say("not-fit", "stint", "1"),
            starter.say("saw", "stint", "1", "what", "all"));
    assertThat(heard).allMatch(each -> each.status() == 403);
    assertThat(heard).allMatch(each -> each.body().get("why").asText().equals("role"));
    assertThat(rider.say("conditions", "stint", "1", "lap", "1", "name", "wind", "words", "x"))
        .matches(each -> each.status() == 403);
    theDayGoesOn();
    notedOnce(Refusal.ROLE);
  }

  @ParameterizedTest
  @ValueSource(strings = {"Host: evil.example\r\n", "", "Host: 127.0.0.1\r\n"})
  void anotherHostIsRefused(String host) throws IOException {
    for (int i = 0; i < 2; i++) {
      assertThat(get("/words.json", host)).startsWith("HTTP/1.1 4").doesNotContain("Lap {0}");
      theDayGoesOn();
    }
    assertThat(served.server.refusals().size()).isLessThanOrEqualTo(1);
  }

  @Test
  void aPageFromElsewhereIsRefused() throws IOException {
    String key = "Authorization: Bearer " + rider.key + "\r\n";
    for (String origin : List.of("http://evil.example", "null", "https://127.0.0.1:1")) {
      assertThat(get("/state", own() + key + "Origin: " + origin + "\r\n"))
          .startsWith("HTTP/1.1 403")
          .contains("\"origin\"");
      theDayGoesOn();
    }
    assertThat(get("/state", own() + key + "Origin: http://127.0.0.1:" + served.port + "\r\n"))
        .startsWith("HTTP/1.1 200")
        .doesNotContain("Access-Control");
    notedOnce(Refusal.ORIGIN);
  }

  @Test
  void aFormOfAnotherPageCannotSend() {
    HttpRequest form =
        rider
            .request("/send")
            .header("Content-Type", "text/plain")
            .POST(HttpRequest.BodyPublishers.ofString(rider.message(9, rider.run, "warm-up")))
            .build();
    assertThat(TestPhone.hear(form).status()).isEqualTo(415);
    assertThat(served.day.state().warmUps()).isEqualTo(1);
    theDayGoesOn();
    notedOnce(Refusal.FORM);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/../ride.js",
        "/%2e%2e/words.json",
        "/words.json/",
        "/%77ords.json",
        "/./words.json",
        "/words.json%00",
        "/blindlap/wording/swap.properties",
        "/ride.html",
        "/words.json?x",
        "/..%2f..%2fetc%2fpasswd",
        "/"
      })
  void noPathLeadsAnywhereElse(String path) throws IOException {
    assertThat(get(path, own())).startsWith("HTTP/1.1 404").endsWith("\r\n\r\n");
    theDayGoesOn();
    assertThat(get(path, own())).startsWith("HTTP/1.1 404");
    notedOnce(Refusal.PATH);
  }

  /** The platform reads a machine's name between two strokes, and answers of its own accord. */
  @Test
  void twoStrokesLeadNowhere() throws IOException {
    assertThat(get("//words.json", own()))
        .startsWith("HTTP/1.1 404")
        .doesNotContain("Lap {0}", "words");
    theDayGoesOn();
  }

  @Test
  void aBodyOfAHundredMegabytesIsNotRead() throws IOException {
    long most = 100L << 20;
    long sent = 0;
    byte[] piece = new byte[1 << 16];
    try (Socket socket = socket()) {
      OutputStream out = socket.getOutputStream();
      String head = "POST /send HTTP/1.1\r\n" + own() + "Content-Type: application/json\r\n";
      out.write((head + "Content-Length: " + most + "\r\n\r\n").getBytes(StandardCharsets.UTF_8));
      theDayGoesOn();
      try {
        for (; sent < most; sent += piece.length) {
          out.write(piece);
        }
      } catch (IOException closed) {
        // as it should be
      }
    }
    assertThat(sent).isLessThan(most / 4);
    theDayGoesOn();
    notedOnce(Refusal.TOO_LONG);
  }

  @Test
  void aBodyWithoutALengthIsReadNoFurtherThanAMessageGoes() {
    InputStream endless =
        new InputStream() {
          private long left = 100L << 20;

          @Override
          public int read() {
            return left-- > 0 ? ' ' : -1;
          }
        };
    HttpRequest request =
        rider
            .request("/send")
            .header("Content-Type", "application/json")
            .POST(HttpRequest.BodyPublishers.ofInputStream(() -> endless))
            .build();
    try {
      assertThat(TestPhone.hear(request).status()).isEqualTo(413);
    } catch (java.io.UncheckedIOException closed) {
      assertThat(closed).isNotNull(); // closed before all of it was written
    }
    theDayGoesOn();
    notedOnce(Refusal.TOO_LONG);
  }

  @Test
  void whoeverIsSlowIsCutOff() throws IOException {
    String head = "POST /send HTTP/1.1\r\n" + own() + "Content-Type: application/json\r\n";
    try (Socket body = socket();
        Socket start = socket()) {
      body.getOutputStream()
          .write((head + "Content-Length: 90\r\n\r\n{").getBytes(StandardCharsets.UTF_8));
      start.getOutputStream().write("GET /da".getBytes(StandardCharsets.UTF_8));
      theDayGoesOn();
      served.ahead.addAndGet(Duration.ofSeconds(7).toNanos());
      assertThat(ended(body)).isTrue();
      assertThat(ended(start)).isTrue();
    }
    theDayGoesOn();
    notedOnce(Refusal.TOO_SLOW);
  }

  /** True once the other side has closed, whatever it said before. */
  private static boolean ended(Socket socket) throws IOException {
    try {
      socket.getInputStream().readAllBytes();
      return true;
    } catch (java.net.SocketTimeoutException e) {
      return false;
    } catch (IOException reset) {
      return true;
    }
  }

  @Test
  void aThousandConnectionsDoNotStopTheDay() throws IOException {
    List<Socket> sockets = new ArrayList<>();
    try {
      for (int i = 0; i < 1_000; i++) {
        Socket socket = socket();
        sockets.add(socket);
        if (i % 2 == 0) { // half of them begin to ask, and never end
          socket.getOutputStream().write('G');
        }
        if (i % 250 == 249) {
          theDayGoesOn();
        }
      }
      theDayGoesOn();
    } finally {
      for (Socket socket : sockets) {
        socket.close();
      }
    }
    theDayGoesOn();
  }

  @Test
  void whoeverAsksTooOftenWaits() {
    served.still = System.nanoTime();
    int slow = 0;
    for (int i = 0; i < 900 && slow == 0; i++) {
      TestPhone.Heard heard = rider.get("/state?unsent=0");
      slow += heard.status() == 429 ? 1 : 0;
      assertThat(heard.status()).isIn(200, 429);
    }
    assertThat(slow).isEqualTo(1);
    served.ahead.addAndGet(Duration.ofSeconds(5).toNanos());
    theDayGoesOn();
    notedOnce(Refusal.TOO_MANY);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<script>alert(1)</script>",
        "\"],\"done\":true,\"x\":[\"",
        "</title><img src=x onerror=alert(1)>"
      })
  void aScriptInANoteIsTextAndNothingElse(String note) {
    TestPhone.Heard said = rider.say("note", "stint", "1", "lap", "1", "text", note);
    assertThat(said.body().path("done").asBoolean()).as(said.body().toString()).isTrue();
    TestPhone.Heard state = rider.state();
    assertThat(state.body().at("/notes/1.1").asText()).isEqualTo(note);
    assertThat(state.whole().headers().firstValue("Content-Type")).contains("application/json");
    assertThat(state.whole().headers().firstValue("X-Content-Type-Options")).contains("nosniff");
    theDayGoesOn();
  }

  @ParameterizedTest
  @ValueSource(strings = {"\u2028", "\u0000"})
  void whatNoPageCanShowIsRefusedInASentence(String note) {
    TestPhone.Heard said = rider.say("note", "stint", "1", "lap", "1", "text", note);
    assertThat(said.body().path("refused").asText()).contains("control character").endsWith(".");
    theDayGoesOn();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "[]",
        "{",
        "{\"run\":\"x\"}",
        "{\"run\":\"x\",\"run\":\"y\"}",
        "{\"unsent\":\"-1\"}",
        "{\"unsent\":\"0\",\"run\":\"\\ud800\"}"
      })
  void whatIsNoMessageIsRefused(String body) {
    assertThat(rider.send(body).status()).isEqualTo(400);
    theDayGoesOn();
    rider.send(body);
    notedOnce(Refusal.FORM);
  }

  @Test
  void aSecondPhoneWaitsAndAPhoneThrownOutSaysNothingMore() {
    TestPhone second = served.phone("2".repeat(32), PhoneRole.RIDER);
    assertThat(second.hello().body().get("in").asBoolean()).isFalse();
    assertThat(second.get("/day").status()).isEqualTo(403);
    assertThat(second.get("/state?unsent=0").body().get("why").asText()).isEqualTo("waiting");
    theDayGoesOn();
    served.server.letIn("22222222");
    assertThat(second.state().status()).isEqualTo(200);
    served.server.throwOut("22222222");
    assertThat(second.get("/day").status()).isEqualTo(401);
    assertThat(second.send(second.message(1, rider.run, "warm-up")).status()).isEqualTo(401);
    assertThat(second.hello().body().get("in").asBoolean()).isFalse();
    theDayGoesOn();
    assertThat(served.server.known()).hasSize(2);
    notedOnce(Refusal.KEY);
  }

  @Test
  void codesCannotBeTriedInGreatNumber() {
    TestPhone stranger = served.phone("2".repeat(32), PhoneRole.RIDER);
    int tried = 0;
    for (int i = 0; i < 60; i++) {
      tried += stranger.hello("0".repeat(32)).status() == 403 ? 1 : 0;
    }
    assertThat(tried).isLessThan(50);
    theDayGoesOn();
    notedOnce(Refusal.TOKEN);
    notedOnce(Refusal.TOO_MANY);
  }
}
