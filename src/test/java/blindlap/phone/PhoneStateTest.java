package blindlap.phone;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TestDay;
import blindlap.session.day.ByPhone;
import blindlap.session.day.PhoneRole;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
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
}
