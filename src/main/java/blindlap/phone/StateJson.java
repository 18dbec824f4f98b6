package blindlap.phone;

import blindlap.desk.day.PhoneDays;
import blindlap.plan.Measure;
import blindlap.session.day.Day;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.PhoneRole;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Where the day stands, as one role may know it: no time of a lap, and answers only of the lap in
 * hand and of the one that may be opened again.
 */
final class StateJson {
  private final Day day;
  private final TreeSet<LapId> inHand = new TreeSet<>();
  private final Map<String, @Nullable Object> tree = new TreeMap<>();

  private StateJson(Day day) {
    this.day = day;
    day.nextLap().ifPresent(inHand::add);
    day.reopenable().ifPresent(inHand::add);
  }

  /**
   * The state.
   *
   * @param run of the server
   * @param now by the laptop's clock
   */
  static Map<String, @Nullable Object> of(
      PhoneDays.Seen seen, String client, PhoneRole role, String run, Instant now) {
    StateJson state = new StateJson(seen.day());
    state.tree.put("run", run);
    state.tree.put("version", String.valueOf(seen.entries()));
    state.tree.put("now", String.valueOf(now.toEpochMilli()));
    state.tree.put("last", String.valueOf(seen.last().getOrDefault(client, 0L)));
    state.progress();
    state.laps(role == PhoneRole.STARTER);
    if (role == PhoneRole.RIDER) {
      state.rider();
    }
    return state.tree;
  }

  private void progress() {
    tree.put("step", day.step().name());
    tree.put(
        "ridden",
        day.laps().values().stream().filter(LapState::ridden).map(l -> name(l.id())).toList());
    tree.put("warm_ups", String.valueOf(day.warmUps()));
    tree.put("handed_over", day.stintsHandedOver().stream().map(String::valueOf).toList());
    tree.put("helper_hands_over", day.helperHandsOver());
    tree.put("bike_out", text(day.bikeOut()));
    tree.put("past_cap", String.valueOf(day.reasonsPastCap()));
    tree.put("cut_after", text(day.cutAfter()));
    tree.put("locked", !day.mayStart(day.stintNow()));
    tree.put("reopenable", day.reopenable().map(StateJson::name).orElse(null));
  }

  /**
   * Laps.
   *
   * @param all true for the starter, who may be a lap ahead of what the rider said
   */
  private void laps(boolean all) {
    Map<String, Object> watches = new TreeMap<>();
    Map<String, Object> conditions = new TreeMap<>();
    Map<String, String> voids = new TreeMap<>();
    day.laps()
        .values()
        .forEach(lap -> lap.voided().ifPresent(v -> voids.put(name(lap.id()), v.event().name())));
    for (LapId id : all ? day.laps().keySet() : inHand) {
      day.lap(id)
          .ifPresent(
              lap -> {
                conditions.put(name(id), lap.conditions());
                watches.put(name(id), watches(lap));
              });
    }
    Map<String, String> covariates = new TreeMap<>();
    day.covariates()
        .forEach(
            (at, value) -> {
              if (all || inHand.stream().anyMatch(lap -> lap.stint() == at.stint())) {
                String place = at.covariate() + "@" + at.stint() + "." + at.lap();
                covariates.put(place, value.toPlainString());
              }
            });
    tree.put("watches", watches);
    tree.put("conditions", conditions);
    tree.put("voids", voids);
    tree.put("covariates", covariates);
  }

  /** Which watch runs and since when, and which was stopped: never what it took. */
  private static Map<String, Object> watches(LapState lap) {
    Map<String, Object> watches = new TreeMap<>();
    lap.times().keySet().forEach(measure -> watches.put(measure, Map.of("stopped", true)));
    lap.running()
        .forEach(
            (measure, since) ->
                watches.put(measure, Map.of("running", String.valueOf(since.toEpochMilli()))));
    return watches;
  }

  private void rider() {
    Map<String, Object> values = new TreeMap<>();
    Map<String, String> notes = new TreeMap<>();
    Map<String, Object> guesses = new TreeMap<>();
    for (LapId id : inHand) {
      day.lap(id)
          .ifPresent(
              lap -> {
                values.put(name(id), values(lap));
                notes.put(name(id), lap.note());
              });
      Guess guess = day.guesses().get(id.stint());
      if (guess != null) {
        guesses.put(String.valueOf(id.stint()), guess(guess));
      }
    }
    tree.put("values", values);
    tree.put("notes", notes);
    tree.put("guesses", guesses);
  }

  private Map<String, String> values(LapState lap) {
    Map<String, String> values = new TreeMap<>();
    for (Measure measure : day.plan().askedOnTheDay()) {
      BigDecimal value = lap.values().get(measure.name());
      if (value != null && !measure.kind().timed()) {
        values.put(measure.name(), value.toPlainString());
      }
    }
    return values;
  }

  private static Map<String, @Nullable Object> guess(Guess guess) {
    Map<String, @Nullable Object> tree = new TreeMap<>();
    Integer setup = guess.setup();
    tree.put("setup", setup == null ? null : String.valueOf(setup + 1));
    tree.put(
        "sureness", Optional.ofNullable(guess.sureness()).map(Guess.Sureness::name).orElse(null));
    tree.put("cue", guess.cue());
    return tree;
  }

  private static String name(LapId lap) {
    return lap.stint() + "." + lap.lap();
  }

  private static @Nullable String text(@Nullable Integer number) {
    return number == null ? null : String.valueOf(number);
  }
}
