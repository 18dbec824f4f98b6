package blindlap.screen;

import blindlap.desk.HelperDay;
import blindlap.desk.Sessions;
import blindlap.desk.TestDay;
import blindlap.plan.Measure;
import blindlap.plan.Setting;
import blindlap.plan.TellingRun;
import blindlap.ride.RideSheet;
import blindlap.screen.ride.RideModel;
import blindlap.session.HelperEntry;
import blindlap.session.SafetyCheck;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;

/**
 * One invented day: helper and rider take turns. The rider's part is the same whatever was drawn;
 * the helper's follows the order.
 */
public final class OneRideDay {
  private final TestDay day;
  private final HelperDay helper;
  private final RideModel ride;
  private final boolean brief;
  private final Consumer<String> looked;

  /**
   * @param brief true if the rider gives one answer a lap and no time
   * @param looked told of each moment at which the rider may look at the page
   */
  public OneRideDay(TestDay day, RideModel ride, boolean brief, Consumer<String> looked) {
    this.day = day;
    this.helper = day.helper();
    this.ride = ride;
    this.brief = brief;
    this.looked = looked;
  }

  /** The whole day, closed at its end. */
  public void ride() {
    ride.watches().timedBy("STARTER");
    look("waiting for the warm-up");
    handle(0);
    look("warm-up");
    ride.warmUpRidden();
    for (int stint = 1; stint <= helper.plan().stints(); stint++) {
      if (day.state().day().inVoidTrial(stint)) {
        continue;
      }
      look("waiting for stint " + stint);
      covariates(stint);
      handle(stint);
      look("empty sheet of stint " + stint);
      lap(stint);
    }
    look("all ridden");
    ride.events().closeDay();
    look("closed");
  }

  /** Nothing where the plan has none. */
  private void covariates(int stint) {
    ride.covariates()
        .asked()
        .forEach(asked -> ride.covariates().say(asked.at(), String.valueOf(1 + stint % 7)));
  }

  private void look(String moment) {
    looked.accept(moment);
  }

  /** What the helper does differs by the setup: other settings, other words, an odd wrong fit. */
  public void handle(int stint) {
    HelperDay.Work work = helper.work(stint);
    Map<String, String> measured = new LinkedHashMap<>();
    for (Setting setting : work.settings()) {
      measured.put(setting.name(), setting.value());
    }
    day.clock().move(Duration.ofMinutes(7));
    HelperEntry entry =
        new HelperEntry(
            stint,
            "M. Oster",
            work.setup(),
            work.setup(),
            day.clock().instant(),
            null,
            measured,
            List.of(),
            EnumSet.allOf(SafetyCheck.class),
            new TreeMap<>(stint == 0 ? Map.of() : Map.of(day.state().lapsSoFar(), true)),
            List.of(),
            work.real() ? "bolts changed over" : "");
    helper.keep(entry);
    if (helper.handOver(entry) instanceof Sessions.Result.Refused refused) {
      throw new AssertionError("refused: " + refused.problems());
    }
    ride.tick();
  }

  private void lap(int stint) {
    TellingRun run = helper.plan().telling();
    ride.scorer().knowsKey(stint == 3 && run == null);
    if (run != null) {
      trial(stint, run);
    } else if (brief) {
      day.clock().move(Duration.ofMillis(93_000 + 100L * stint));
      ride.answer(rated(), BigDecimal.valueOf(1 + stint % 8));
    } else {
      wholeSheet(stint);
    }
    look("full sheet of stint " + stint);
    ride.lapDone();
    look("done with stint " + stint);
    covariates(stint);
    if (ride.sheetProperty().get().stage() != RideSheet.Stage.DONE) {
      throw new AssertionError(ride.troubleProperty().get());
    }
    ride.next();
  }

  /** Answered after the last lap; the second trial is void after its first one. */
  private void trial(int stint, TellingRun run) {
    wholeSheet(stint);
    if (run.place(stint) == run.task().laps()) {
      ride.guess().choose(1);
      ride.guess().sureness("HUNCH");
      ride.guess().cue("the rear");
    } else if (stint == run.firstStint(2)) {
      ride.voids().spoiled("TRAFFIC");
    }
  }

  private String rated() {
    return helper.plan().measures().stream()
        .filter(measure -> !measure.kind().timed())
        .findFirst()
        .orElseThrow()
        .name();
  }

  private void wholeSheet(int stint) {
    for (Measure measure : helper.plan().measures()) {
      if (measure.kind().timed()) {
        ride.watches().start(measure.name());
      }
    }
    day.clock().move(Duration.ofMillis(93_000 + 100L * stint));
    look("watch running, stint " + stint);
    for (Measure measure : helper.plan().measures()) {
      if (measure.kind().timed()) {
        ride.watches().stop(measure.name());
      } else {
        ride.answer(measure.name(), BigDecimal.valueOf(1 + stint % 8));
      }
    }
    if (helper.plan().telling() == null) {
      ride.guess().choose(stint % 2);
      ride.guess().sureness("HUNCH");
    }
    ride.note("loose stones");
  }
}
