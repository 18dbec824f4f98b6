package blindlap.session;

import blindlap.session.day.LapId;
import blindlap.session.day.VoidEvent;
import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What is known of one lap. */
public final class LapState {
  private final LapId id;
  final Map<String, BigDecimal> values = new LinkedHashMap<>();
  final Map<String, TimeRecord> times = new LinkedHashMap<>();
  final Map<String, Instant> running = new LinkedHashMap<>();
  final Map<String, String> conditions = new LinkedHashMap<>();
  boolean ridden;
  String note = "";
  @Nullable Voided voided;

  LapState(LapId id) {
    this.id = id;
  }

  /** The same as it is now. */
  LapState(LapState other) {
    this(other.id);
    values.putAll(other.values);
    times.putAll(other.times);
    running.putAll(other.running);
    conditions.putAll(other.conditions);
    ridden = other.ridden;
    note = other.note;
    voided = other.voided;
  }

  /**
   * Why a lap is void.
   *
   * @param event the event
   * @param words further words; may be empty
   * @param afterValuesSeen true if decided once values could be seen
   */
  public record Voided(VoidEvent event, String words, boolean afterValuesSeen) {}

  /** Which lap. */
  public LapId id() {
    return id;
  }

  /** True once the lap is recorded as ridden. */
  public boolean ridden() {
    return ridden;
  }

  /** Values by measure; a measure without a value is missing. */
  public Map<String, BigDecimal> values() {
    return java.util.Collections.unmodifiableMap(values);
  }

  /** Watch records by measure. */
  public Map<String, TimeRecord> times() {
    return java.util.Collections.unmodifiableMap(times);
  }

  /** Watches that run, by measure, with the wall clock at their start. */
  public Map<String, Instant> running() {
    return java.util.Collections.unmodifiableMap(running);
  }

  /**
   * When the lap was started by a watch; empty where no watch was used or a time was typed, as then
   * nobody wrote down a start.
   */
  public Optional<Instant> startedAt() {
    return java.util.stream.Stream.concat(
            running.values().stream(),
            times.values().stream().filter(t -> t.typed() == null).map(TimeRecord::started))
        .min(java.util.Comparator.naturalOrder());
  }

  /** Conditions by name. */
  public Map<String, String> conditions() {
    return java.util.Collections.unmodifiableMap(conditions);
  }

  /** The note; may be empty. */
  public String note() {
    return note;
  }

  /** The void that stands, if any. */
  public Optional<Voided> voided() {
    return Optional.ofNullable(voided);
  }
}
