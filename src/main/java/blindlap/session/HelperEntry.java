package blindlap.session;

import blindlap.plan.Plan;
import blindlap.session.day.DayEvent;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What the helper did and found before a stint. It goes into that stint's encrypted entry and is
 * read after unsealing only.
 *
 * @param stint from 1; 0 = before the warm-up laps
 * @param helper who swapped
 * @param planned the setup that was to be fitted, 0 = A
 * @param fitted the setup that was really fitted
 * @param begun when the handling began; null if not known
 * @param done when the bike was ready; null while it is not
 * @param measured settings as measured, by name, as typed
 * @param outside settings outside their tolerance that were accepted, each with its reason
 * @param confirmed items of the safety list
 * @param fit whether the rider was fit to go on, by laps ridden when it was asked, warm-up included
 * @param events what the helper said of events of the day; the events themselves are public
 * @param note further words
 * @param timing how long the handling took; null where nobody timed it
 * @param corrections what was found out later of what was really on, in the order it was said
 * @param paper whose ticks stand on paper, where the stint was kept there; null for one of the page
 */
public record HelperEntry(
    int stint,
    String helper,
    int planned,
    int fitted,
    @Nullable Instant begun,
    @Nullable Instant done,
    Map<String, String> measured,
    List<Outside> outside,
    Set<SafetyCheck> confirmed,
    SortedMap<Integer, Boolean> fit,
    List<Said> events,
    String note,
    @Nullable Timing timing,
    List<Correction> corrections,
    @Nullable Paper paper) {

  /**
   * Another setup than recorded was on in a stint, noticed after its bike was handed over.
   *
   * @param stint which stint, 0 = the warm-up
   * @param fitted the setup that was really on, 0 = A
   * @param words further words; may be empty
   * @param noticed when it was said
   */
  public record Correction(int stint, int fitted, String words, Instant noticed) {
    /** Says which stint only. */
    @Override
    public String toString() {
      return "Correction[stint " + stint + "]";
    }
  }

  /**
   * A stint was kept on paper, and this entry was made of it afterwards.
   *
   * @param confirmedBy who ticked the safety list there; empty if nobody did
   */
  public record Paper(String confirmedBy) {}

  /**
   * How long a handling took.
   *
   * @param given the time that every handling takes, real or dummy alike; null without a timetable
   * @param took from its beginning to the bike being ready, by a clock that cannot be set; zero
   *     while it is not
   * @param mishap whether an event made it longer; null where that was not asked
   * @param words what happened; may be empty
   */
  public record Timing(
      @Nullable Duration given, Duration took, @Nullable Boolean mishap, String words) {
    /**
     * By how much more than the time given a handling may take before it is called an overrun:
     * nobody presses a button in the very second in which a countdown ends.
     */
    public static final Duration GRACE = Duration.ofSeconds(30);

    /** How much longer than given it took; zero where it is no overrun. */
    public Duration overrun() {
      return over(given, took);
    }

    /** How much longer than given a handling takes; zero where it is no overrun. */
    public static Duration over(@Nullable Duration given, Duration took) {
      Duration over = given == null ? Duration.ZERO : took.minus(given);
      return over.compareTo(GRACE) > 0 ? over : Duration.ZERO;
    }

    /** True if a mishap was declared. */
    public boolean declared() {
      return Boolean.TRUE.equals(mishap);
    }
  }

  /**
   * A setting outside its tolerance.
   *
   * @param setting its name
   * @param aim value aimed at, with its unit
   * @param measured value as typed
   * @param by measured less aimed at, in the setting's unit; null where the value is words
   * @param reason why it was accepted; empty while it is not
   */
  public record Outside(
      String setting, String aim, String measured, @Nullable BigDecimal by, String reason) {
    /** The same, accepted for a reason. */
    public Outside because(String why) {
      return new Outside(setting, aim, measured, by, why);
    }
  }

  /**
   * The helper's words on an event.
   *
   * @param stint the stint it belongs to, 0 = the warm-up
   */
  public record Said(int stint, DayEvent event, String words) {}

  public HelperEntry {
    measured = Collections.unmodifiableMap(new LinkedHashMap<>(measured));
    outside = List.copyOf(outside);
    confirmed =
        confirmed.isEmpty() ? Set.of() : Collections.unmodifiableSet(EnumSet.copyOf(confirmed));
    fit = Collections.unmodifiableSortedMap(new TreeMap<>(fit));
    events = List.copyOf(events);
    corrections = List.copyOf(corrections);
  }

  /** An entry of a handling that nobody timed, with nothing of other stints in it. */
  public HelperEntry(
      int stint,
      String helper,
      int planned,
      int fitted,
      @Nullable Instant begun,
      @Nullable Instant done,
      Map<String, String> measured,
      List<Outside> outside,
      Set<SafetyCheck> confirmed,
      SortedMap<Integer, Boolean> fit,
      List<Said> events,
      String note) {
    this(
        stint, helper, planned, fitted, begun, done, measured, outside, confirmed, fit, events,
        note, null, List.of(), null);
  }

  /** The number under which the closing entry of a helper's day stands: one past the last stint. */
  public static int closing(Plan plan) {
    return plan.stints() + 1;
  }

  /** True if another setup was fitted than planned. */
  public boolean wrongFit() {
    return fitted != planned;
  }

  /** The same with the time at which the bike was ready. */
  public HelperEntry doneAt(Instant at) {
    return with(helper, fitted, begun, at, note);
  }

  /** The same, begun. */
  public HelperEntry begunAt(Instant at) {
    return with(helper, fitted, at, done, note);
  }

  /** The same by another helper. */
  public HelperEntry by(String who) {
    return with(who, fitted, begun, done, note);
  }

  /** The same with other words. */
  public HelperEntry withNote(String words) {
    return with(helper, fitted, begun, done, words);
  }

  /** The same with another setup really fitted; its settings are measured anew. */
  public HelperEntry withFitted(int setup) {
    return with(helper, setup, begun, done, note).with(Map.of(), List.of(), confirmed, fit, events);
  }

  /** The same with these settings measured. */
  public HelperEntry withMeasured(Map<String, String> values, List<Outside> beyond) {
    return with(values, beyond, confirmed, fit, events);
  }

  /** The same with a value as it stands in its field; how it lies to its tolerance is not said. */
  public HelperEntry typing(String setting, String value) {
    Map<String, String> values = new LinkedHashMap<>(measured);
    values.put(setting, value.strip());
    return withMeasured(values, outside);
  }

  /** By how much a setting lies outside its tolerance; empty where it does not. */
  public Optional<Outside> outside(String setting) {
    return outside.stream().filter(each -> each.setting().equals(setting)).findFirst();
  }

  /** The same with why a setting outside its tolerance was accepted. */
  public HelperEntry because(String setting, String why) {
    return withMeasured(
        measured,
        outside.stream()
            .map(each -> each.setting().equals(setting) ? each.because(why.strip()) : each)
            .toList());
  }

  /** The same with an item of the safety list confirmed, or not. */
  public HelperEntry withCheck(SafetyCheck check, boolean yes) {
    Set<SafetyCheck> checks = EnumSet.noneOf(SafetyCheck.class);
    checks.addAll(confirmed);
    if (yes) {
      checks.add(check);
    } else {
      checks.remove(check);
    }
    return withConfirmed(checks);
  }

  /** The same with these items of the safety list confirmed. */
  public HelperEntry withConfirmed(Set<SafetyCheck> checks) {
    return with(measured, outside, checks, fit, events);
  }

  /** The same with an answer whether the rider is fit to go on after so many laps. */
  public HelperEntry withFit(int laps, boolean yes) {
    SortedMap<Integer, Boolean> answers = new TreeMap<>(fit);
    answers.put(laps, yes);
    return with(measured, outside, confirmed, answers, events);
  }

  /** The same with words on an event. */
  public HelperEntry withEvent(Said said) {
    List<Said> all = new ArrayList<>(events);
    all.add(said);
    return with(measured, outside, confirmed, fit, all);
  }

  /** The same with how long it took. */
  public HelperEntry withTiming(Timing time) {
    return with(time, corrections, paper);
  }

  /** The same with a correction of an earlier stint. */
  public HelperEntry withCorrection(Correction correction) {
    List<Correction> all = new ArrayList<>(corrections);
    all.add(correction);
    return with(timing, all, paper);
  }

  /** The same with these corrections, where it has not got them already, in front of its own. */
  public HelperEntry withEarlier(List<Correction> known) {
    if (corrections.containsAll(known)) {
      return this;
    }
    List<Correction> both = new ArrayList<>(known);
    corrections.stream().filter(each -> !known.contains(each)).forEach(both::add);
    return with(timing, both, paper);
  }

  /** The same as one that was kept on paper. */
  public HelperEntry onPaper(Paper kept) {
    return with(timing, corrections, kept);
  }

  private HelperEntry with(
      @Nullable Timing time, List<Correction> corrected, @Nullable Paper kept) {
    return new HelperEntry(
        stint, helper, planned, fitted, begun, done, measured, outside, confirmed, fit, events,
        note, time, corrected, kept);
  }

  private HelperEntry with(
      String who, int setup, @Nullable Instant from, @Nullable Instant ready, String words) {
    return new HelperEntry(
        stint,
        who,
        planned,
        setup,
        from,
        ready,
        measured,
        outside,
        confirmed,
        fit,
        events,
        words,
        timing,
        corrections,
        paper);
  }

  private HelperEntry with(
      Map<String, String> values,
      List<Outside> beyond,
      Set<SafetyCheck> checks,
      SortedMap<Integer, Boolean> answers,
      List<Said> said) {
    return new HelperEntry(
        stint,
        helper,
        planned,
        fitted,
        begun,
        done,
        values,
        beyond,
        checks,
        answers,
        said,
        note,
        timing,
        corrections,
        paper);
  }

  /** Nothing done yet. */
  public static HelperEntry untouched(int stint, String helper, int planned) {
    return new HelperEntry(
        stint,
        helper,
        planned,
        planned,
        null,
        null,
        Map.of(),
        List.of(),
        Set.of(),
        new TreeMap<>(),
        List.of(),
        "");
  }

  /** Says which stint only. */
  @Override
  public String toString() {
    return "HelperEntry[stint " + stint + "]";
  }
}
