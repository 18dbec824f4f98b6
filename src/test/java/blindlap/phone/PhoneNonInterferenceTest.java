package blindlap.phone;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.compute.OrderSeeds;
import blindlap.desk.HelperDay;
import blindlap.desk.Sessions;
import blindlap.desk.StepsTestDay;
import blindlap.desk.TellingTestDay;
import blindlap.desk.TestDay;
import blindlap.plan.Setting;
import blindlap.session.HelperEntry;
import blindlap.session.SafetyCheck;
import blindlap.session.day.PhoneRole;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Nothing served to rider and starter hangs on the order. Clock, codes, keys, tokens and runs are
 * the same in all runs, and so is what both phones say; only the order differs, and with it what
 * the helper does. The port differs, and stands in no answer.
 */
class PhoneNonInterferenceTest {
  /** So many orders of each kind; DEVELOPERS.md has the command for all. */
  private static final int ORDERS = Integer.getInteger("orders", 6);

  /** There are no more of eight stints. */
  private static final int ALL_OF_EIGHT = 50;

  private static final List<String> SHELL =
      List.of("/ride", "/start", "/phone.css", "/ride.js", "/start.js", "/words.json", "/none");

  private @TempDir(factory = RamFolder.class) Path folder;

  /** Everything served on a day, and its order. */
  private record Served(String order, List<String> answers) {}

  private Served day(String plan, long seed) {
    List<String> answers = new ArrayList<>();
    try (ServedDay served = new ServedDay(folder, plan, seed)) {
      TestPhone rider = served.phone("a".repeat(32), PhoneRole.RIDER);
      TestPhone starter = served.phone("b".repeat(32), PhoneRole.STARTER);
      HelperDay helper = served.day.helper();
      SHELL.forEach(path -> answers.add(whole(rider.get(path))));
      for (TestPhone phone : List.of(rider, starter)) {
        answers.add(whole(phone.hello()));
        answers.add(whole(phone.get("/day")));
        answers.add(whole(phone.state()));
      }
      handle(served, helper, 0);
      answers.add(whole(rider.say("warm-up")));
      for (int stint = 1; stint <= helper.plan().stints(); stint++) {
        stint(served, helper, rider, starter, stint, answers);
      }
      served.day.desk().riderDays().closeDay(served.day.id());
      answers.add(whole(rider.say("note", "stint", "1", "lap", "1", "text", "too late")));
      answers.add(whole(rider.state()));
      answers.add(whole(starter.state()));
      return new Served(served.day.order(), answers);
    }
  }

  private static void stint(
      ServedDay served,
      HelperDay helper,
      TestPhone rider,
      TestPhone starter,
      int stint,
      List<String> answers) {
    String at = String.valueOf(stint);
    answers.add(whole(rider.say("ridden", "stint", at, "lap", "1"))); // refused: not handed over
    handle(served, helper, stint);
    answers.add(whole(rider.state()));
    String began = String.valueOf(served.day.clock().millis());
    String[] watch = {"stint", at, "lap", "1", "measure", "lap time", "at", began};
    answers.add(whole(starter.say("watch-start", watch)));
    served.day.clock().move(Duration.ofSeconds(90));
    String ended = String.valueOf(served.day.clock().millis());
    answers.add(
        whole(
            starter.say(
                "time",
                "stint",
                at,
                "lap",
                "1",
                "measure",
                "lap time",
                "started",
                began,
                "stopped",
                ended,
                "elapsed_ms",
                "90000",
                "by",
                "STARTER")));
    String[] grip = {
      "stint", at, "lap", "1", "measure", "grip in the rocks", "value", String.valueOf(40 + stint)
    };
    answers.add(whole(rider.say("score", grip)));
    String[] guess = {"stint", at, "setup", "1", "sureness", "HUNCH", "cue", "quiet"};
    answers.add(whole(rider.say("guess", guess)));
    answers.add(whole(rider.say("ridden", "stint", at, "lap", "1")));
    answers.add(whole(rider.say("guess", guess)));
    answers.add(whole(starter.state()));
  }

  /** What the helper does differs by the setup: other settings, other words. */
  private static void handle(ServedDay served, HelperDay helper, int stint) {
    HelperDay.Work work = helper.work(stint);
    Map<String, String> measured = new LinkedHashMap<>();
    for (Setting setting : work.settings()) {
      measured.put(setting.name(), setting.value());
    }
    served.day.clock().move(Duration.ofMinutes(7));
    HelperEntry entry =
        new HelperEntry(
            stint,
            "M. Oster",
            work.setup(),
            work.setup(),
            served.day.clock().instant(),
            null,
            measured,
            List.of(),
            EnumSet.allOf(SafetyCheck.class),
            new TreeMap<>(stint == 0 ? Map.of() : Map.of(stint, true)),
            List.of(),
            work.real() ? "bolts changed over" : "");
    helper.keep(entry);
    assertThat(helper.handOver(entry)).isNotInstanceOf(Sessions.Result.Refused.class);
  }

  /** Status, headers but the date, which the platform's clock alone gives, and every byte. */
  private static String whole(TestPhone.Heard heard) {
    Map<String, List<String>> headers = new TreeMap<>(heard.whole().headers().map());
    headers.remove("date");
    byte[] body = heard.whole().body();
    return heard.status()
        + " "
        + headers
        + " "
        + body.length
        + " "
        + new String(body, StandardCharsets.UTF_8);
  }

  private void everyDayIsServedTheSame(String plan, int orders) {
    Served first = null;
    List<String> drawn = new ArrayList<>();
    for (Map.Entry<String, Long> each : OrderSeeds.of(plan, orders).entrySet()) {
      Served served = day(plan, each.getValue());
      assertThat(served.order()).isEqualTo(each.getKey());
      drawn.add(served.order());
      if (first == null) {
        first = served;
        assertThat(first.answers()).hasSizeGreaterThan(60);
        assertThat(first.answers())
            .filteredOn(a -> a.contains("\"done\":true"))
            .hasSizeGreaterThan(39);
      }
      assertThat(served.answers()).as("order %s", served.order()).isEqualTo(first.answers());
    }
    assertThat(drawn).doesNotHaveDuplicates().hasSize(orders);
  }

  @Test
  void ordersOfEightStintsAreServedTheSame() {
    everyDayIsServedTheSame(TestDay.EIGHT, Math.min(ALL_OF_EIGHT, ORDERS));
  }

  @Test
  void ordersOfSixteenStintsAreServedTheSame() {
    everyDayIsServedTheSame(TestDay.SIXTEEN, ORDERS);
  }

  /** Trials: the answer is refused before the last lap and taken after it. */
  @Test
  void drawsOfATellingRunAreServedTheSame() {
    String plan =
        TellingTestDay.TRIANGLES
            + TestDay.EIGHT
                .substring(TestDay.EIGHT.indexOf("measures:"), TestDay.EIGHT.indexOf("protocol:"))
                .replace(", role: primary, worthwhile: 0.5", "");
    everyDayIsServedTheSame(plan, ORDERS);
  }

  /** Levels are no more told than setups are, and the guess is of an end. */
  @Test
  void ordersOfAStepsDayAreServedTheSame() {
    everyDayIsServedTheSame(StepsTestDay.NINE, ORDERS);
  }
}
