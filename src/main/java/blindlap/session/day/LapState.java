package blindlap.session.day;

import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What is known of one lap. It does not change: what is recorded more gives another one.
 *
 * @param id which lap
 * @param ridden true once the lap is recorded as ridden
 * @param values values by measure; a measure without a value is missing
 * @param times watch records by measure
 * @param running watches that run, by measure, with the wall clock at their start
 * @param conditions conditions by name
 * @param note the note; may be empty
 * @param voided the void that stands, if any
 * @param twice by measure, values that differ because machines recorded them apart
 */
public record LapState(
    LapId id,
    boolean ridden,
    Map<String, BigDecimal> values,
    Map<String, TimeRecord> times,
    Map<String, Instant> running,
    Map<String, String> conditions,
    String note,
    Optional<Voided> voided,
    Map<String, Twice> twice) {

  /**
   * Why a lap is void.
   *
   * @param event the event
   * @param words further words; may be empty
   * @param afterValuesSeen true if decided once values could be seen
   */
  public record Voided(VoidEvent event, String words, boolean afterValuesSeen) {}

  public LapState {
    values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    times = Collections.unmodifiableMap(new LinkedHashMap<>(times));
    running = Collections.unmodifiableMap(new LinkedHashMap<>(running));
    conditions = Collections.unmodifiableMap(new LinkedHashMap<>(conditions));
    twice = Collections.unmodifiableMap(new TreeMap<>(twice));
  }

  /** A lap of which nothing is known yet. */
  public static LapState untouched(LapId id) {
    return new LapState(
        id, false, Map.of(), Map.of(), Map.of(), Map.of(), "", Optional.empty(), Map.of());
  }

  private static <T> Map<String, T> changed(Map<String, T> map, Consumer<Map<String, T>> change) {
    Map<String, T> copy = new LinkedHashMap<>(map);
    change.accept(copy);
    return copy;
  }

  private static <T> Map<String, T> without(Map<String, T> map, String name) {
    return changed(map, all -> all.remove(name));
  }

  private LapState with(
      Map<String, BigDecimal> newValues,
      Map<String, TimeRecord> newTimes,
      Map<String, Instant> newRunning) {
    return new LapState(
        id, ridden, newValues, newTimes, newRunning, conditions, note, voided, twice);
  }

  /** True once a watch of it was started: it is ridden or was. */
  public boolean underWay() {
    return !running.isEmpty() || !times.isEmpty();
  }

  /** The same, recorded as ridden. */
  public LapState asRidden() {
    return new LapState(id, true, values, times, running, conditions, note, voided, twice);
  }

  /** The same with a value; null takes it out. */
  public LapState withValue(String measure, @Nullable BigDecimal value) {
    return with(valuesWith(measure, value), times, running);
  }

  private Map<String, BigDecimal> valuesWith(String measure, @Nullable BigDecimal value) {
    return value == null
        ? without(values, measure)
        : changed(values, all -> all.put(measure, value));
  }

  /** The same with a watch that runs; the time taken before is out. */
  public LapState withWatchStarted(String measure, Instant at) {
    return with(
        without(values, measure),
        without(times, measure),
        changed(running, all -> all.put(measure, at)));
  }

  /** The same with a watch at nought. */
  public LapState withWatchReset(String measure) {
    return with(without(values, measure), without(times, measure), without(running, measure));
  }

  /** The same with the time that a watch took; it gives the value, or none where it is doubtful. */
  public LapState withTime(String measure, TimeRecord time) {
    return with(
        valuesWith(measure, time.seconds()),
        changed(times, all -> all.put(measure, time)),
        without(running, measure));
  }

  /** The same with another note. */
  public LapState withNote(String words) {
    return new LapState(id, ridden, values, times, running, conditions, words, voided, twice);
  }

  /** The same with these conditions added or replaced. */
  public LapState withConditions(Map<String, String> more) {
    return new LapState(
        id,
        ridden,
        values,
        times,
        running,
        changed(conditions, all -> all.putAll(more)),
        note,
        voided,
        twice);
  }

  /** The same, void. */
  public LapState withVoid(Voided why) {
    return withVoided(Optional.of(why));
  }

  /** The same, no longer void. */
  public LapState withoutVoid() {
    return withVoided(Optional.empty());
  }

  private LapState withVoided(Optional<Voided> why) {
    return new LapState(id, ridden, values, times, running, conditions, note, why, twice);
  }

  /**
   * The same with the value that stands of those recorded, and its watch's record if it has one.
   */
  public LapState standing(String measure, @Nullable BigDecimal value, @Nullable TimeRecord time) {
    Map<String, TimeRecord> newTimes =
        time == null ? without(times, measure) : changed(times, all -> all.put(measure, time));
    return with(valuesWith(measure, value), newTimes, running);
  }

  /** The same with values of a measure that machines recorded apart. */
  public LapState withTwice(String measure, Twice values) {
    return withTwices(changed(twice, all -> all.put(measure, values)));
  }

  /** The same without: one value stands. */
  public LapState withoutTwice(String measure) {
    return twice.containsKey(measure) ? withTwices(without(twice, measure)) : this;
  }

  private LapState withTwices(Map<String, Twice> twices) {
    return new LapState(id, ridden, values, times, running, conditions, note, voided, twices);
  }

  /**
   * When the lap was started by a watch; empty where no watch was used or a time was typed, as then
   * nobody wrote down a start.
   */
  public Optional<Instant> startedAt() {
    return Stream.concat(
            running.values().stream(),
            times.values().stream().filter(t -> t.typed() == null).map(TimeRecord::started))
        .min(Comparator.naturalOrder());
  }
}
