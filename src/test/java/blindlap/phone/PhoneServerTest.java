package blindlap.phone;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TestDay;
import blindlap.session.day.LapId;
import blindlap.session.day.PhoneRole;
import blindlap.session.day.Step;
import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole wire, over real sockets. */
class PhoneServerTest {
  private static final String ONE = "1".repeat(32);
  private static final String TWO = "2".repeat(32);

  private @TempDir(factory = RamFolder.class) Path folder;
  private ServedDay served;
  private TestPhone rider;

  @BeforeEach
  void on() {
    served = new ServedDay(folder, TestDay.EIGHT, 1);
    rider = served.phone(ONE, PhoneRole.RIDER);
  }

  @AfterEach
  void off() {
    served.close();
  }

  private void ready() {
    assertThat(rider.hello().status()).isEqualTo(200);
    assertThat(rider.state().status()).isEqualTo(200);
  }

  @Test
  void aFirstPhoneIsInAtOnceAndIsToldTheDay() {
    TestPhone.Heard hello = rider.hello();
    assertThat(hello.body().get("in").asBoolean()).isTrue();
    assertThat(hello.body().get("session").asText()).isEqualTo(served.day.id().text());

    TestPhone.Heard day = rider.get("/day");
    assertThat(day.body().get("codes")).hasSize(8);
    assertThat(day.body().get("codes").get(2).asText())
        .isEqualTo(String.valueOf(served.day.state().code(3)));
    assertThat(day.body().get("questions")).hasSize(4);
    assertThat(day.body().get("timed").get(0).asText()).isEqualTo("lap time");
    assertThat(day.body().get("cap").asText()).isEqualTo("12");
    assertThat(day.body().get("setups").get(1).asText()).isEqualTo("Shock L");
    assertThat(day.body().get("alone").asBoolean()).isFalse();
    assertThat(day.whole().headers().firstValue("Cache-Control")).contains("no-store");
  }

  @Test
  void theStarterIsToldNoQuestionsAndNoAnswers() {
    TestPhone starter = served.phone(TWO, PhoneRole.STARTER);
    starter.hello();
    assertThat(starter.get("/day").body().has("questions")).isFalse();
    assertThat(starter.get("/day").body().has("setups")).isFalse();
    assertThat(starter.state().body().has("values")).isFalse();
    assertThat(starter.state().body().has("notes")).isFalse();
    assertThat(starter.state().body().has("guesses")).isFalse();
  }

  @Test
  void theShellMayBeKeptForADayAndHoldsNothingOfTheSession() {
    TestPhone.Heard words = rider.get("/words.json");
    assertThat(words.status()).isEqualTo(200);
    assertThat(words.body().get("lap").asText()).isEqualTo("Lap {0}");
    assertThat(words.whole().headers().firstValue("Cache-Control"))
        .contains("public, max-age=86400");
    assertThat(words.whole().headers().firstValue("Content-Security-Policy").orElseThrow())
        .startsWith("default-src 'none'; script-src 'self'")
        .doesNotContain("unsafe");
    assertThat(words.whole().headers().firstValue("Set-Cookie")).isEmpty();
  }

  @Test
  void aLapGoesFromThePlateToDone() {
    ready();
    assertThat(rider.say("plate", "stint", "0").body().get("done").asBoolean()).isTrue();
    rider.say("warm-up");
    rider.say("plate", "stint", "1");
    String[] grip = {"stint", "1", "lap", "1", "measure", "grip in the rocks", "value", "64"};
    TestPhone.Heard scored = rider.say("score", grip);
    assertThat(scored.body().at("/state/values/1.1/grip in the rocks").asText()).isEqualTo("64");
    assertThat(scored.body().at("/state/last").asText()).isEqualTo("4");
    rider.say("note", "stint", "1", "lap", "1", "text", "loose <b>stones</b>");
    assertThat(rider.state().body().at("/notes/1.1").asText()).isEqualTo("loose <b>stones</b>");
    TestPhone.Heard back =
        rider.send(
            rider.message(
                ++rider.number,
                rider.run,
                "score-back",
                "stint",
                "1",
                "lap",
                "1",
                "measure",
                "grip in the rocks",
                "from",
                "64.0",
                "to",
                null));
    assertThat(back.body().get("done").asBoolean()).isTrue();
    assertThat(back.body().at("/state/values/1.1").has("grip in the rocks")).isFalse();
    rider.say("ridden", "stint", "1", "lap", "1");
    assertThat(served.day.state().day().ridden(new LapId(1, 1))).isTrue();
    assertThat(rider.state().body().get("ridden").get(0).asText()).isEqualTo("1.1");
  }

  @Test
  void aTimeIsKeptInTheLaptopsClockAndNeverToldBack() {
    ready();
    TestPhone starter = served.phone(TWO, PhoneRole.STARTER);
    starter.hello();
    starter.state();
    rider.say("plate", "stint", "0");
    rider.say("warm-up");
    rider.say("plate", "stint", "1");
    long began = served.day.clock().millis();
    String[] at = {"stint", "1", "lap", "1", "measure", "lap time", "at", "" + began};
    TestPhone.Heard running = starter.say("watch-start", at);
    assertThat(running.body().at("/state/watches/1.1/lap time/running").asText())
        .isEqualTo("" + began);
    served.day.clock().move(Duration.ofSeconds(93));
    TestPhone.Heard stopped =
        starter.say(
            "time",
            "stint",
            "1",
            "lap",
            "1",
            "measure",
            "lap time",
            "started",
            "" + began,
            "stopped",
            "" + (began + 93_210),
            "elapsed_ms",
            "93210.5",
            "by",
            "STARTER");
    assertThat(stopped.body().at("/state/watches/1.1/lap time/stopped").asBoolean()).isTrue();
    TimeRecord time =
        served.day.state().day().lap(new LapId(1, 1)).orElseThrow().times().get("lap time");
    assertThat(time.seconds()).isEqualByComparingTo(new BigDecimal("93.2105"));
    assertThat(time.started().toEpochMilli()).isEqualTo(began);
    for (TestPhone phone : new TestPhone[] {rider, starter}) {
      assertThat(new String(phone.state().whole().body(), java.nio.charset.StandardCharsets.UTF_8))
          .doesNotContain("93.2")
          .doesNotContain("93210")
          .doesNotContain("" + (began + 93_210));
    }
  }

  @Test
  void aGuessCountsSetupsFromOne() {
    ready();
    rider.say("plate", "stint", "0");
    rider.say("warm-up");
    rider.say("plate", "stint", "1");
    TestPhone.Heard guessed =
        rider.say("guess", "stint", "1", "setup", "2", "sureness", "HUNCH", "cue", "quiet");
    assertThat(guessed.body().at("/state/guesses/1/setup").asText()).isEqualTo("2");
    assertThat(served.day.state().guesses().get(1).setup()).isEqualTo(1);
  }

  @Test
  void aRefusalIsOneSentenceAndTheNextAnswerGoesOn() {
    ready();
    TestPhone.Heard early = rider.say("ridden", "stint", "1", "lap", "1");
    assertThat(early.status()).isEqualTo(200);
    assertThat(early.body().get("refused").asText()).endsWith(".");
    assertThat(early.body().at("/state/last").asText()).isEqualTo("0");
    assertThat(rider.say("no-such-act").body().get("refused").asText()).contains("understand");
    assertThat(rider.say("plate", "stint", "0").body().get("done").asBoolean()).isTrue();
  }

  @Test
  void aMessageSentTwiceIsEnteredOnce() {
    ready();
    rider.say("plate", "stint", "0");
    String warmUp = rider.message(2, rider.run, "warm-up");
    rider.send(warmUp);
    int entries = served.day.desk().notebook().entries(served.day.id()).size();
    assertThat(rider.send(warmUp).body().get("done").asBoolean()).isTrue();
    assertThat(served.day.desk().notebook().entries(served.day.id())).hasSize(entries);
    assertThat(served.day.state().warmUps()).isEqualTo(1);
  }

  @Test
  void aRefusalWhoseAnswerWasLostIsSaidAgainAndNotDecidedAgain() {
    ready();
    String early = rider.message(1, rider.run, "warm-up");
    String ridden = rider.message(1, rider.run, "ridden", "stint", "1", "lap", "1");
    String sentence = rider.send(ridden).body().get("refused").asText();
    assertThat(rider.send(early).body().get("refused").asText()).isEqualTo(sentence);
    assertThat(served.day.state().warmUps()).isZero();
  }

  @Test
  void aMessageThatWasOvertakenIsNotDecided() {
    ready();
    rider.send(rider.message(2, rider.run, "plate", "stint", "0"));
    TestPhone.Heard late = rider.send(rider.message(1, rider.run, "warm-up"));
    assertThat(late.status()).isEqualTo(409);
    assertThat(late.body().get("why").asText()).isEqualTo("number");
    assertThat(served.day.state().warmUps()).isZero();
  }

  @Test
  void afterAnotherStartThePhoneIsKnownAndAnOldRunIsNotLookedAt() {
    ready();
    rider.say("plate", "stint", "0");
    String before = rider.run;
    served.again();
    String warmUp = rider.message(2, before, "warm-up");
    TestPhone.Heard old = rider.send(warmUp);
    assertThat(old.status()).isEqualTo(409);
    assertThat(old.body().get("run").asText()).isNotEqualTo(before);
    assertThat(served.day.state().warmUps()).isZero();
    assertThat(rider.state().body().get("last").asText()).isEqualTo("1");
    String again = rider.message(1, rider.run, "plate", "stint", "0");
    int entries = served.day.desk().notebook().entries(served.day.id()).size();
    assertThat(rider.send(again).body().get("done").asBoolean()).isTrue();
    assertThat(served.day.desk().notebook().entries(served.day.id())).hasSize(entries);
    assertThat(rider.send(rider.message(2, rider.run, "warm-up")).status()).isEqualTo(200);
    assertThat(served.day.state().warmUps()).isEqualTo(1);
  }

  @Test
  void noKeyIsKeptInTheClear() {
    ready();
    assertThat(served.day.desk().phoneBook().kept(served.day.id()).orElseThrow())
        .contains(ONE)
        .contains(Fingerprint.of(rider.key).hex())
        .doesNotContain(rider.key);
  }

  @Test
  void whatIsSaidOfTheRiderEndsTheDayWithoutAKey() {
    ready();
    rider.say("plate", "stint", "0");
    rider.say("warm-up");
    rider.say("plate", "stint", "1");
    rider.say("ridden", "stint", "1", "lap", "1");
    rider.say("saw", "stint", "1", "what", "the cover slipped");
    TestPhone.Heard ended = rider.say("not-fit", "stint", "1", "words", "hit my head");
    assertThat(ended.body().at("/state/step").asText()).isEqualTo(Step.CUT_SHORT.name());
    assertThat(ended.body().at("/state/cut_after").asText()).isEqualTo("1");
    assertThat(served.day.desk().notebook().entries(served.day.id()))
        .anyMatch(entry -> entry.text().contains("not fit to go on: hit my head"));
  }

  @Test
  void offFreesThePortAtOnceAndPhonesNeedNoNewCode() throws java.io.IOException {
    ready();
    int port = served.port;
    served.server.off();
    assertThat(served.server.at()).isEmpty();
    assertThat(served.server.link(PhoneRole.RIDER)).isEmpty();
    new java.net.ServerSocket(port, 5, java.net.InetAddress.getLoopbackAddress()).close();
    served.server.on(
        new java.net.InetSocketAddress(java.net.InetAddress.getLoopbackAddress(), port));
    assertThat(rider.state().status()).isEqualTo(200);
  }
}
