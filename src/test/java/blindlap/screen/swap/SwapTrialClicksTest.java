package blindlap.screen.swap;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TellingTestDay;
import blindlap.desk.TestDay;
import blindlap.plan.TellingTask;
import blindlap.screen.Models;
import blindlap.screen.Window;
import blindlap.screen.part.Fonts;
import blindlap.screen.ride.RideModel;
import blindlap.session.SafetyCheck;
import blindlap.session.day.LapId;
import blindlap.session.day.Trial;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A telling run at the Swap page and the Ride page: by trial, counted out, a void one passed. */
class SwapTrialClicksTest {
  private static final String PIN = "4711";

  private @TempDir(factory = RamFolder.class) Path folder;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static SwapSheet sheet(SwapModel swap) {
    return Objects.requireNonNull(swap.work().sheetProperty().get());
  }

  private static int number(List<String> steps, String pattern) {
    Matcher found = Pattern.compile(pattern).matcher(String.join("\n", steps));
    return found.find() ? Integer.parseInt(found.group(1)) : 0;
  }

  private static void handle(TestDay day, SwapModel swap, SwapSheet now) {
    SwapWork work = swap.work();
    work.begin();
    day.clock().move(Duration.ofMinutes(3));
    swap.touch();
    swap.tick();
    for (SafetyCheck check : SafetyCheck.values()) {
      work.confirm(check.name(), true);
    }
    if (now.fitAsked()) {
      work.riderFit(true);
    }
    work.fitted(now.fitted());
    day.helper()
        .settings(now.stint(), now.fitted())
        .forEach(setting -> work.measured(setting.name(), setting.value()));
    if (work.overrunProperty().get()) {
      work.mishap(false, "");
    }
    work.handOver();
    assertThat(work.troubleProperty().get()).isEmpty();
  }

  /** In trial 2 the rider falls on the first lap: the page goes on with trial 3. */
  @Test
  void theHelperIsLedTrialByTrialAndPastAVoidOne() {
    try (TestDay day = new TestDay(folder, TellingTestDay.levels(TellingTask.TRIANGLE, 4), 2)) {
      SwapModel swap = Models.swap(day);
      RideModel ride = Models.ride(day);
      swap.phrase(day.phrase());
      swap.choosePin(PIN);
      List<String> heads = new ArrayList<>();
      int on = -1;
      while (swap.phaseProperty().get() == SwapModel.Phase.OPEN) {
        SwapSheet now = sheet(swap);
        heads.add(now.head().replaceFirst(", code \\d+$", ""));
        int in = number(now.steps(), "Count (\\d+) clicks? to the end");
        int detour = number(now.steps(), "Count (\\d+) out and \\d+ back");
        int out = number(now.steps(), "Count (\\d+) clicks? out: that is");
        int beside = String.join(" ", now.steps()).contains("beside the bike") ? 1 : 0;
        assertThat(in).isEqualTo(Math.max(0, on));
        assertThat(in + 2 * detour + out + beside).isEqualTo(22);
        on = out;
        handle(day, swap, now);
        ride.tick();
        ride(ride, now.stint());
        swap.bikeReturned();
        swap.reopen(PIN);
      }
      assertThat(swap.phaseProperty().get()).isEqualTo(SwapModel.Phase.ALL_DONE);
      assertThat(heads)
          .containsExactly(
              "Warm-up laps, never analysed",
              "Trial 1 of 4, lap 1 of 3",
              "Trial 1 of 4, lap 2 of 3",
              "Trial 1 of 4, lap 3 of 3",
              "Trial 2 of 4, lap 1 of 3",
              "Trial 3 of 4, lap 1 of 3",
              "Trial 3 of 4, lap 2 of 3",
              "Trial 3 of 4, lap 3 of 3",
              "Trial 4 of 4, lap 1 of 3",
              "Trial 4 of 4, lap 2 of 3",
              "Trial 4 of 4, lap 3 of 3");
      assertThat(Trial.of(day.state().day()))
          .extracting(Trial::standing)
          .containsExactly(
              Trial.Standing.ANSWERED,
              Trial.Standing.VOID,
              Trial.Standing.ANSWERED,
              Trial.Standing.ANSWERED);
      assertThat(day.state().day().ridden(new LapId(5, 1))).isFalse();
    }
  }

  private static void ride(RideModel ride, int stint) {
    if (stint == 0) {
      ride.warmUpRidden();
      return;
    }
    if (stint == 4) {
      ride.voids().spoiled("CRASH");
    } else {
      if (ride.sheetProperty().get().guessAsked()) {
        ride.guess().sureness("CERTAIN");
        ride.guess().choose(1);
      }
      ride.lapDone();
    }
    assertThat(ride.troubleProperty().get()).isEmpty();
    ride.next();
  }
}
