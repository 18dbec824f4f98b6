package blindlap.screen.swap;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.CaughtUp;
import blindlap.desk.HelperDay;
import blindlap.desk.TellingTestDay;
import blindlap.desk.TestDay;
import blindlap.screen.Models;
import blindlap.screen.Window;
import blindlap.screen.part.Fonts;
import blindlap.screen.ride.RideModel;
import blindlap.session.SafetyCheck;
import blindlap.session.day.LapId;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The helper's day of a telling run: laps of trials, and what a void trial passes over. */
class SwapTrialsTest {
  private static final String PIN = "4711";

  private @TempDir(factory = RamFolder.class) Path folder;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static SwapModel opened(TestDay day) {
    SwapModel swap = Models.swap(day);
    swap.phrase(day.phrase());
    swap.choosePin(PIN);
    return swap;
  }

  private static SwapSheet sheet(SwapModel swap) {
    return Objects.requireNonNull(swap.work().sheetProperty().get());
  }

  private static void handle(TestDay day, SwapModel swap) {
    SwapWork work = swap.work();
    SwapSheet now = sheet(swap);
    work.begin();
    for (SafetyCheck check : SafetyCheck.values()) {
      work.confirm(check.name(), true);
    }
    if (now.fitAsked()) {
      work.riderFit(true);
    }
    day.helper()
        .settings(now.stint(), now.fitted())
        .forEach(setting -> work.measured(setting.name(), setting.value()));
    work.handOver();
    assertThat(work.troubleProperty().get()).isEmpty();
  }

  private static void back(SwapModel swap) {
    swap.bikeReturned();
    swap.reopen(PIN);
  }

  private static void lap(TestDay day, SwapModel swap, RideModel ride) {
    handle(day, swap);
    ride.tick();
    ride.lapDone();
    ride.next();
    back(swap);
  }

  private static RideModel warm(TestDay day, SwapModel swap) {
    RideModel ride = Models.ride(day);
    handle(day, swap);
    ride.tick();
    ride.warmUpRidden();
    back(swap);
    return ride;
  }

  @Test
  void aVoidTrialIsPassedOverAndTheNextBeginsWithWhatIsReallyOn() {
    int changed = 0;
    for (int seed = 1; seed <= 6; seed++) {
      try (TestDay day =
          new TestDay(
              folder.resolve("v" + seed), TellingTestDay.TRIANGLES, seed, Optional.empty())) {
        SwapModel swap = opened(day);
        RideModel ride = warm(day, swap);
        assertThat(sheet(swap).head()).startsWith("Trial 1 of 5, lap 1 of 3, code ");
        assertThat(sheet(swap).called()).isEqualTo("trial 1, lap 1");
        assertThat(sheet(swap).next().get(0).head()).isEqualTo("Trial 1, lap 2");
        int on = sheet(swap).fitted();
        handle(day, swap);
        ride.tick();
        ride.voids().spoiled("TRAFFIC");
        assertThat(ride.troubleProperty().get()).isEmpty();
        ride.next();
        back(swap);
        assertThat(sheet(swap).head()).startsWith("Trial 2 of 5, lap 1 of 3, code ");
        assertThat(sheet(swap).limits())
            .anyMatch(line -> line.startsWith("The trial before is void"));
        HelperDay.Work work = day.helper().work(4);
        assertThat(work.comesOff()).isEqualTo(on);
        assertThat(work.real()).isEqualTo(work.setup() != on);
        changed += work.real() ? 1 : 0;
        assertThat(sheet(swap).swap()).startsWith(work.real() ? "Real" : "Dummy");
        ride.voids().takeBack(new LapId(1, 1));
        swap.tick();
        assertThat(sheet(swap).head()).as("taken back").startsWith("Trial 1 of 5, lap 2 of 3");
      }
    }
    assertThat(changed).as("draws in which the way is another").isBetween(1, 5);
  }

  @Test
  void theHelpersDayEndsWithoutRecordsOfWhatWasPassedOver() {
    try (TestDay day =
        new TestDay(
            folder,
            TellingTestDay.plan("task: two-choice, trials: 6, attribute: grip, more: 6 clicks"),
            3)) {
      SwapModel swap = opened(day);
      RideModel ride = warm(day, swap);
      lap(day, swap, ride);
      handle(day, swap);
      ride.tick();
      ride.guess().choose(1);
      ride.done().press();
      ride.next();
      back(swap);
      for (int trial = 2; trial <= 6; trial++) {
        handle(day, swap);
        ride.tick();
        ride.voids().spoiled("MECHANICAL");
        ride.next();
        back(swap);
      }
      assertThat(swap.phaseProperty().get()).isEqualTo(SwapModel.Phase.ALL_DONE);
      assertThat(day.helper().next(day.state())).isEmpty();
      String form = new String(CaughtUp.form(day.state()), StandardCharsets.UTF_8);
      assertThat(form.lines().filter(line -> line.matches("\\d+,.*"))).isEmpty();
      swap.later().dayOver();
      assertThat(swap.later().saidProperty().get()).startsWith("The helper's day is closed");
      ride.events().closeDay();
      swap.tick();
      assertThat(swap.phaseProperty().get()).isEqualTo(SwapModel.Phase.OVER);
    }
  }

  /** Three hundred stints: a whole lap of helper and rider takes a moment of the machine's time. */
  @Test
  void aRunOfAHundredTrianglesIsAsQuickAsAnyDay() {
    String plan = TellingTestDay.plan("task: triangle, trials: 100");
    try (TestDay day = new TestDay(folder, plan, 2)) {
      SwapModel swap = opened(day);
      RideModel ride = warm(day, swap);
      long longest = 0;
      for (int lap = 1; lap <= 45; lap++) {
        long before = System.nanoTime();
        lap(day, swap, ride);
        longest = Math.max(longest, System.nanoTime() - before);
      }
      assertThat(sheet(swap).head()).startsWith("Trial 16 of 100, lap 1 of 3");
      assertThat(swap.later().stintsProperty().get()).as("stints to pick").hasSize(40);
      assertThat(longest).as("nanoseconds").isLessThan(1_000_000_000);
    }
  }
}
