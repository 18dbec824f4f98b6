package blindlap.sample;

import blindlap.desk.AloneDay;
import blindlap.desk.Committing;
import blindlap.desk.Desk;
import blindlap.desk.LapFiles;
import blindlap.desk.MaskKeeping;
import blindlap.desk.Sessions;
import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.plan.Setting;
import blindlap.seal.HelperPhrase;
import blindlap.session.HelperEntry;
import blindlap.session.LifeCommands;
import blindlap.session.SafetyCheck;
import blindlap.session.SessionState;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;

/**
 * An invented day of one person: each setup is shown, mounted and ridden in turn from a covered
 * order, masked labels are sealed by a friend, guessed once and read.
 */
final class AloneSample {
  private final Desk desk;
  private final Plan plan;
  private final Properties events;

  /**
   * @param events {@code masks} and {@code masks_guess}: setups by letter in the order of the
   *     labels
   */
  AloneSample(Desk desk, Plan plan, Properties events) {
    this.desk = desk;
    this.plan = plan;
    this.events = events;
  }

  /** True if a sample's order is covered. Open ones are of before version 5, with a sealed one. */
  static boolean is(Plan plan) {
    return plan.blinding().level().shown() && plan.blinding().level() != BlindLevel.OPEN;
  }

  /** Commits the plan. */
  SessionState commit() {
    Committing.Result result = desk.committing().cover(plan, List.of(plan.rider()));
    if (result instanceof Committing.Result.Covered covered) {
      return covered.state();
    }
    throw new IllegalStateException("a sample's order is not covered: " + result);
  }

  /** Takes the day from its commit to the opened order and the labels read. */
  SessionState whole(byte[] laps) {
    SessionState state = commit();
    Optional<HelperPhrase> friend = sealed(state);
    ride(state, laps);
    done(desk.sessions().act(state.id(), latest -> new LifeCommands(latest).closeDay()));
    if (friend.isPresent()) {
      done(desk.masks().guess(now(state), setups("masks_guess")));
    }
    done(desk.keys().closeReview(state.id()));
    done(desk.keys().unsealCovered(now(state), Optional.empty()));
    friend.ifPresent(phrase -> done(desk.masks().read(now(state), phrase.text())));
    return now(state);
  }

  private Optional<HelperPhrase> sealed(SessionState state) {
    if (plan.blinding().level() != BlindLevel.MASKED) {
      return Optional.empty();
    }
    MaskKeeping masks = desk.masks();
    HelperPhrase phrase = masks.phrase().unasked();
    done(masks.seal(state, masks.typed(state, setups("masks")).orElseThrow(), phrase));
    return Optional.of(phrase);
  }

  private List<Integer> setups(String property) {
    return events.getProperty(property).chars().map(letter -> letter - 'A').boxed().toList();
  }

  private void ride(SessionState state, byte[] file) {
    AloneDay day = desk.aloneDays().day(state).orElseThrow();
    List<String> rows = new String(file, StandardCharsets.UTF_8).lines().toList();
    int perStint = plan.laps().perStint();
    for (int stint = day.firstStint(); stint <= plan.stints(); stint++) {
      mount(day);
      if (stint > 0) {
        List<String> laps = new ArrayList<>(List.of(rows.get(0)));
        laps.addAll(rows.subList(1 + (stint - 1) * perStint, 1 + stint * perStint));
        byte[] bytes = String.join("\n", laps).getBytes(StandardCharsets.UTF_8);
        done(new LapFiles(desk.sessions()).record(now(state), bytes));
      }
    }
  }

  private void mount(AloneDay day) {
    if (!(day.show() instanceof AloneDay.Shown.Setup shown)) {
      throw new IllegalStateException("a sample's setup is not shown");
    }
    Map<String, String> measured = new LinkedHashMap<>();
    for (Setting setting : shown.work().settings()) {
      measured.put(setting.name(), setting.value());
    }
    int setup = Objects.requireNonNull(shown.work().setup());
    done(
        day.mount(
            HelperEntry.untouched(shown.work().stint(), plan.rider(), setup)
                .withMeasured(measured, List.of())
                .withConfirmed(EnumSet.allOf(SafetyCheck.class))
                .withFit(shown.state().lapsSoFar(), true)));
  }

  private SessionState now(SessionState state) {
    return desk.sessions().state(state.id()).orElseThrow();
  }

  private static void done(Sessions.Result result) {
    if (result instanceof Sessions.Result.Refused refused) {
      throw new IllegalStateException("a sample is refused: " + refused.problems());
    }
  }
}
