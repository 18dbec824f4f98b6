package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.day.PhoneDays.Taken;
import blindlap.desk.day.RiderDays;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.session.day.ByPhone;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.VoidEvent;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Window, helper's page and two phones on one session, phones with and without signal, in any
 * order: what was said is entered once, nothing is lost, and the entries alone tell the same day as
 * they told on the way. {@code -Dphones=2000} does as many histories.
 */
class PhoneHistoriesTest {
  private static final int HISTORIES = Integer.getInteger("phones", 25);

  @TempDir Path folder;

  @Test
  void whateverComesWheneverEachMessageIsEnteredOnceAndTheEntriesTellTheDay() throws Exception {
    int late = 0;
    int twice = 0;
    int outdated = 0;
    for (int seed = 1; seed <= HISTORIES; seed++) {
      try (TestDay day =
          new TestDay(
              Files.createDirectory(folder.resolve("d" + seed)).resolve("day.blindlap"),
              TestDay.EIGHT,
              seed,
              java.util.Optional.empty())) {
        History history = new History(day, new Random(seed));
        for (int act = 0; act < 60; act++) {
          history.step();
        }
        history.comeHome();
        SessionState state = day.state();
        onlyOnce(state, history.done);
        SessionState again = SessionState.of(state.entries());
        assertThat(again.day()).as("seed %d", seed).isEqualTo(state.day());
        assertThat(again.phones()).isEqualTo(state.phones());
        assertThat(again.notApplied()).isEqualTo(state.notApplied());
        late += (int) state.entries().stream().filter(PhoneHistoriesTest::late).count();
        twice += (int) state.laps().stream().filter(lap -> !lap.twice().isEmpty()).count();
        outdated += state.phones().conflicts().size();
      }
    }
    assertThat(late).as("late entries").isPositive();
    assertThat(twice).as("values that stand twice").isPositive();
    assertThat(outdated).as("conflicts").isPositive();
  }

  private static boolean late(StoredEntry entry) {
    ByPhone phone = entry.entry().phone();
    return phone != null && phone.late();
  }

  /** Entries of one message stand together, and no message has two writings. */
  private static void onlyOnce(SessionState state, Set<String> done) {
    Set<String> seen = new HashSet<>();
    String before = "";
    for (StoredEntry entry : state.entries()) {
      ByPhone phone = entry.entry().phone();
      String name = phone == null ? "" : phone.client() + "/" + phone.number();
      if (!name.isEmpty() && !name.equals(before)) {
        assertThat(seen.add(name)).as(name).isTrue();
        assertThat(done).as("answered as entered").contains(name);
      }
      before = name;
    }
  }

  /** One history. */
  private static final class History {
    private final TestDay day;
    private final Random random;
    private final HelperHand helper;
    private final List<PhoneHand> phones;
    private final List<List<PhoneHand.Kept>> kept = List.of(new ArrayList<>(), new ArrayList<>());
    private final boolean[] signal = {true, true};
    final Set<String> done = new HashSet<>();
    private int handled;

    History(TestDay day, Random random) {
      this.day = day;
      this.random = random;
      this.helper = new HelperHand(day);
      this.phones =
          List.of(
              new PhoneHand(day, 1, Duration.ofSeconds(random.nextInt(600) - 300)),
              new PhoneHand(day, 2, Duration.ZERO));
    }

    void step() {
      day.clock().move(Duration.ofSeconds(1 + random.nextInt(40)));
      switch (random.nextInt(10)) {
        case 0 -> helperDoes();
        case 1, 2 -> windowDoes(day.desk().riderDays());
        case 3 -> {
          int phone = random.nextInt(2);
          signal[phone] = !signal[phone];
        }
        default -> phoneDoes(random.nextInt(2));
      }
    }

    private LapId lap() {
      return new LapId(1 + random.nextInt(3), 1);
    }

    private void helperDoes() {
      Integer out = day.state().day().bikeOut();
      if (out != null) {
        day.desk().helperDays().bikeReturned(day.id(), out);
      } else if (handled < 3) {
        handled++;
        helper.handle(handled);
      }
    }

    private void windowDoes(RiderDays days) {
      LapId lap = lap();
      switch (random.nextInt(4)) {
        case 0 -> days.note(day.id(), lap, "window " + random.nextInt(99));
        case 1 -> days.guess(day.id(), lap.stint(), new Guess(random.nextInt(2), null, ""));
        default -> days.score(day.id(), lap, "grip in the rocks", value(), false);
      }
    }

    private BigDecimal value() {
      return BigDecimal.valueOf(random.nextInt(100));
    }

    private void phoneDoes(int which) {
      PhoneHand phone = phones.get(which);
      if (signal[which]) {
        send(which);
        phone.look();
      }
      LapId lap = lap();
      BigDecimal value = value();
      int words = random.nextInt(99);
      PhoneHand.Kept said =
          switch (random.nextInt(8)) {
            case 0 -> phone.say(a -> a.plateRead(day.id(), lap.stint()));
            case 1 -> phone.say(a -> a.note(day.id(), lap, "phone " + words));
            case 2 ->
                phone.say(a -> a.guess(day.id(), lap.stint(), new Guess(words % 2, null, "")));
            case 3 -> phone.say(a -> a.conditions(day.id(), lap, Map.of("wind", "w" + words)));
            case 4 -> phone.say(a -> a.ridden(day.id(), lap));
            case 5 -> phone.say(a -> a.spoiled(day.id(), lap, VoidEvent.TRAFFIC, ""));
            default -> phone.say(a -> a.score(day.id(), lap, "grip in the rocks", value, false));
          };
      kept.get(which).add(said);
      if (signal[which]) {
        send(which);
      }
    }

    private void send(int which) {
      for (PhoneHand.Kept message : kept.get(which)) {
        Taken taken = message.send();
        if (random.nextInt(3) == 0) {
          int before = day.state().entries().size();
          boolean refused = message.send() instanceof Taken.Refused;
          assertThat(refused || day.state().entries().size() == before).isTrue();
        }
        if (taken instanceof Taken.Done || taken instanceof Taken.Already) {
          done.add(message.name());
        }
      }
      kept.get(which).clear();
    }

    void comeHome() {
      day.clock().move(Duration.ofMinutes(1));
      send(0);
      send(1);
    }
  }
}
