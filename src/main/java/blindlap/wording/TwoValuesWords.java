package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.review.Remark;
import blindlap.session.SessionState;
import blindlap.session.SessionSummary;
import blindlap.session.TwoValues;
import blindlap.session.day.LapState;
import blindlap.session.day.Twice;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.stream.Stream;

/** Values of one lap that machines recorded apart, and what came too late, in sentences. */
public final class TwoValuesWords {
  private static final Words WORDS = Words.of("twovalues");

  private TwoValuesWords() {}

  /** A sentence of the bundle. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** Whose record counts. */
  public static String rule(Plan plan) {
    return WORDS.say("rule." + plan.blinding().recordOf().name());
  }

  /** What may be done about them, said above them. */
  public static String lead(SessionState state) {
    return WORDS.say(
        TwoValues.choice(state) ? "choose.lead" : "choose.unblinded", rule(state.plan()));
  }

  /** A sentence for each value that stands twice; nothing where none does. */
  public static List<String> lines(SessionState state) {
    List<String> lines = new ArrayList<>();
    for (LapState lap : state.laps()) {
      for (Measure measure : state.plan().measures()) {
        Twice twice = lap.twice().get(measure.name());
        if (twice != null) {
          int number = lap.id().ofDay(state.plan().laps().perStint());
          lines.add(line(number, measure, twice));
        }
      }
    }
    return lines;
  }

  /** The same with the rule in front, for those who have no page before them. */
  public static List<String> withRule(SessionState state) {
    List<String> lines = lines(state);
    return lines.isEmpty()
        ? lines
        : Stream.concat(Stream.of(rule(state.plan())), lines.stream()).toList();
  }

  /**
   * One value that stands twice.
   *
   * @param lap number over the day
   */
  public static String line(int lap, Measure measure, Twice twice) {
    List<String> aside = twice.setAside().stream().map(v -> value(measure, v)).toList();
    return WORDS.say(
        (twice.decidedBy().isEmpty() ? "aside" : "decided") + (aside.size() > 1 ? ".several" : ""),
        lap,
        measure.name(),
        value(measure, twice.counts()),
        StintList.and(aside),
        twice.decidedBy());
  }

  /** "181.4 (the starter's record, notebook 3f0a7c52)". */
  public static String value(Measure measure, Twice.Value value) {
    return WORDS.say(
        "value",
        number(measure, value),
        whose(value.whose() == null ? "" : value.whose().name()),
        value.notebook());
  }

  /** The number alone, with every digit: two that differ in the last one must not look alike. */
  public static String number(Measure measure, Twice.Value value) {
    BigDecimal number = value.value();
    if (number == null) {
      return WORDS.say("none");
    }
    int digits = Math.max(0, number.stripTrailingZeros().scale());
    return measure.kind().timed()
        ? Figures.time(number.doubleValue(), Math.max(1, digits))
        : Figures.number(number.doubleValue(), digits);
  }

  /** A cell of the table of laps: what counts, and what was recorded as well. */
  public static String cell(Measure measure, Twice twice) {
    return WORDS.say(
        "cell",
        number(measure, twice.counts()),
        String.join(", ", twice.setAside().stream().map(v -> number(measure, v)).toList()));
  }

  private static String whose(String name) {
    return WORDS.has("whose." + name) ? WORDS.say("whose." + name) : WORDS.say("whose.NOBODY");
  }

  /**
   * What a session that was brought in holds twice since then; no value is said, for the rider may
   * read it while the times are still hidden.
   *
   * @param laps measures by the lap's number over the day
   */
  public static Optional<String> arrived(
      SessionSummary session, SortedMap<Integer, List<String>> laps) {
    List<String> said = new ArrayList<>();
    for (Map.Entry<Integer, List<String>> lap : laps.entrySet()) {
      said.add(WORDS.say("arrived.lap", lap.getKey(), String.join(", ", lap.getValue())));
    }
    return said.isEmpty()
        ? Optional.empty()
        : Optional.of(WORDS.say("arrived", session.id().brief(), StintList.and(said)));
  }

  /** What the remarks of an unsealed day say of such values. */
  static List<String> remarks(List<Remark> remarks) {
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < remarks.size(); i++) {
      Remark remark = remarks.get(i);
      if (remark.kind() == Remark.Kind.CHOSEN) {
        lines.add(
            WORDS.say(
                "chosen",
                remark.lap(),
                remark.about(),
                number(remark.value()),
                remark.words(),
                remark.who()));
      } else if (remark.kind() == Remark.Kind.COUNTS) {
        lines.add(counts(remark, remarks.subList(i + 1, remarks.size())));
      }
    }
    return lines;
  }

  private static String counts(Remark counts, List<Remark> after) {
    List<String> aside =
        after.stream()
            .takeWhile(r -> r.kind() == Remark.Kind.SET_ASIDE)
            .map(r -> value(r.before(), r))
            .toList();
    return WORDS.say(
        aside.size() > 1 ? "aside.several" : "aside",
        counts.lap(),
        counts.about(),
        value(counts.value(), counts),
        StintList.and(aside));
  }

  private static String value(String number, Remark remark) {
    return WORDS.say("value", number(number), whose(remark.who()), remark.words());
  }

  private static String number(String number) {
    return number.isEmpty() ? WORDS.say("none") : number;
  }

  /** What came too late, each with its place, its value, its reason and where it was written. */
  static List<String> late(List<Remark> remarks) {
    return remarks.stream().map(TwoValuesWords::late).toList();
  }

  private static String late(Remark remark) {
    if (remark.who().isEmpty()) { // a package of an earlier program
      return Words.of("remarks").say("late", EntryWords.entry(remark.about()), remark.words());
    }
    String value =
        remark.before().isEmpty()
            ? remark.value()
            : WORDS.say("late.value", remark.before(), number(remark.value()));
    List<String> details =
        Stream.of(value, remark.words()).filter(words -> !words.isBlank()).toList();
    return WORDS.say(
        details.isEmpty() ? "late.plain" : "late",
        RemarkPlace.words(remark),
        EntryWords.entry(remark.about()),
        String.join(", ", details),
        remark.who());
  }
}
