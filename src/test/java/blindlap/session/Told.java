package blindlap.session;

import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** All that a state tells anyone, by name, so that two can be compared. */
final class Told {
  private Told() {}

  static Map<String, Object> of(SessionState state) {
    Map<String, Object> told = new LinkedHashMap<>();
    told.put("step", state.step());
    told.put("entries", state.entries());
    told.put("heads", state.heads());
    told.put("not applied", state.notApplied());
    told.putAll(day(state));
    told.put("fingerprints given", state.fingerprintsGiven());
    told.put("amendments", state.amendments());
    told.put("review", state.reviewFingerprint());
    told.put("opened with", state.openedWith());
    told.put("helper's words", state.openedHelperRecords());
    told.put("looks", state.seenAgain());
    told.put("finding", state.recordedFinding());
    told.put("abandoned", state.abandonedBecause());
    told.put("plain day", state.plainDay());
    return told;
  }

  /** What the closing of the review fixes, and what follows from it. */
  static Map<String, Object> day(SessionState state) {
    Map<String, Object> told = new LinkedHashMap<>();
    Map<LapId, Object> laps = new TreeMap<>();
    // What comes after the review was closed is of no value.
    int end = new Recount(state.entries()).end();
    RecountValues wrote = new RecountValues(state.entries(), state.plan(), end);
    state.laps().forEach(lap -> laps.put(lap.id(), lap(wrote, lap)));
    told.put("laps", laps);
    told.put("guesses", new TreeMap<>(state.guesses()));
    told.put("covariates", new TreeMap<>(state.day().covariates()));
    told.put("handed over", handedOver(state));
    told.put("bike out", Optional.ofNullable(state.day().bikeOut()));
    told.put("handled", new TreeSet<>(state.helperRecords().keySet()));
    told.put("warm-ups", state.warmUps());
    told.put("laps ridden", state.lapsRidden());
    told.put("laps so far", state.lapsSoFar());
    told.put("cap reached", state.capReached());
    told.put("next lap", state.nextLap());
    told.put("cut short", state.cutShort());
    told.put("blind broken", state.blindBroken());
    told.put("deviations", state.deviations());
    told.put("expectations", state.expectations());
    told.put("corrections", state.corrections());
    return told;
  }

  private static Set<Integer> handedOver(SessionState state) {
    return IntStream.rangeClosed(0, state.plan().stints())
        .filter(state::handedOver)
        .boxed()
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** Of two records of one number it does not matter which stands: 126 is 126.000. */
  static @Nullable BigDecimal plain(@Nullable BigDecimal value) {
    return value == null ? null : value.stripTrailingZeros();
  }

  private static Map<String, Object> lap(RecountValues wrote, LapState lap) {
    Map<String, Object> told = new TreeMap<>();
    told.put("ridden", lap.ridden());
    told.put("note", lap.note());
    told.put(
        "void",
        lap.voided()
            .<List<Object>>map(v -> List.of(v.event(), v.words(), v.afterValuesSeen()))
            .orElse(List.of()));
    told.put("conditions", new TreeMap<>(lap.conditions()));
    Map<String, Object> stands = new TreeMap<>();
    lap.values().forEach((measure, value) -> stands.put(measure, plain(value)));
    told.put("values", stands);
    Map<String, Object> twice = new TreeMap<>();
    lap.twice()
        .forEach(
            (measure, values) -> {
              List<Object> numbers = new ArrayList<>();
              values.values().forEach(value -> numbers.add(plain(value.value())));
              twice.put(measure, List.of(numbers, values.decidedBy()));
            });
    told.put("twice", twice);
    // Of a value that several machines wrote of, which watch stands behind it hangs on the value.
    Map<String, Object> times = new TreeMap<>(lap.times());
    times.keySet().removeIf(measure -> !wrote.alone(lap.id(), measure));
    told.put("times", times);
    told.put("running", new TreeMap<>(lap.running()));
    return told;
  }
}
