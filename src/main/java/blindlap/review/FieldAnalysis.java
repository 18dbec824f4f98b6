package blindlap.review;

import blindlap.fault.DayFault;
import blindlap.fault.Problem;
import blindlap.plan.Measure;
import blindlap.plan.Setup;
import blindlap.stats.distribution.Interval;
import blindlap.stats.distribution.StudentizedRange;
import blindlap.stats.pool.Field;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Puts the days of a field together. */
final class FieldAnalysis {
  private final FieldFinding.Asked asked;
  private final List<FieldEntry> entries;
  private final List<FieldFinding.Out> out;
  private final List<Setup> setups;

  FieldAnalysis(
      FieldFinding.Asked asked,
      Optional<String> reference,
      List<FieldEntry> entries,
      List<FieldFinding.Out> out) {
    this.asked = asked;
    this.entries = entries;
    this.out = out;
    this.setups = setups(reference.orElseGet(this::usualReference));
  }

  /** The setup of most days; of several the one that came in first. */
  private String usualReference() {
    Map<String, Integer> days = new LinkedHashMap<>();
    for (FieldEntry entry : entries) {
      entry.day().setups().forEach(id -> days.merge(id, 1, Integer::sum));
    }
    String most = "";
    for (Map.Entry<String, Integer> each : days.entrySet()) {
      most = each.getValue() > days.getOrDefault(most, 0) ? each.getKey() : most;
    }
    return most;
  }

  private List<Setup> setups(String reference) {
    Map<String, Setup> byId = new LinkedHashMap<>();
    for (FieldEntry entry : entries) {
      // Put again, a setup keeps its place and is said as its latest day has it.
      entry.record().plan().setups().forEach(setup -> byId.put(setup.id(), setup));
    }
    List<Setup> ordered = new ArrayList<>();
    Optional.ofNullable(byId.remove(reference)).ifPresent(ordered::add);
    ordered.addAll(byId.values());
    return ordered;
  }

  FieldFinding finding() {
    Optional<Problem> refusal =
        setups.size() > StudentizedRange.MOST_VALUES
            ? Optional.of(
                Problem.of(
                    DayFault.FIELD_TOO_WIDE, "", setups.size(), StudentizedRange.MOST_VALUES))
            : Optional.empty();
    // Every day that enters leaves a degree of freedom of its own, so together they do.
    Optional<Field> numbers =
        refusal.isPresent() || entries.size() < FieldFinding.LEAST_DAYS
            ? Optional.empty()
            : Optional.of(Field.of(entries.stream().map(e -> e.day().numbers()).toList()));
    boolean told =
        numbers
            .filter(n -> n.agreement().filter(a -> a.p() <= FieldFinding.DISAGREE).isEmpty())
            .isPresent();
    Optional<Field> shown = told ? numbers : Optional.empty();
    List<FieldFinding.Pair> rows = new ArrayList<>();
    List<FieldFinding.Pair> others = new ArrayList<>();
    for (int a = 0; a < setups.size(); a++) {
      for (int b = a + 1; b < setups.size(); b++) {
        (a == 0 ? rows : others).add(pair(setups.get(a).id(), setups.get(b).id(), shown));
      }
    }
    return new FieldFinding(
        asked,
        latest().map(FieldEntry::measure),
        worthwhile(),
        setups,
        entries.stream().map(FieldEntry::day).toList(),
        out,
        numbers,
        refusal,
        rows,
        others,
        shown.flatMap(this::next));
  }

  private Optional<FieldEntry> latest() {
    return entries.isEmpty() ? Optional.empty() : Optional.of(entries.get(entries.size() - 1));
  }

  private Optional<Interval> worthwhile() {
    Optional<Measure> latest = latest().map(FieldEntry::measure);
    return latest
        .filter(m -> entries.stream().allMatch(entry -> entry.measure().worthwhileAs(m)))
        .flatMap(Comparison::band);
  }

  private FieldFinding.Pair pair(String first, String second, Optional<Field> shown) {
    List<FieldFinding.OwnDay> own =
        entries.stream().flatMap(entry -> entry.own(first, second).stream()).toList();
    boolean ridden =
        entries.stream().anyMatch(e -> e.day().setups().containsAll(List.of(first, second)));
    Optional<List<String>> way = FieldWays.between(days(), first, second);
    OptionalDouble estimate = OptionalDouble.empty();
    Optional<Interval> interval = Optional.empty();
    if (shown.isPresent()) {
      boolean flipped = first.compareTo(second) > 0;
      Field.Pair pair = found(shown.get(), flipped ? second : first, flipped ? first : second);
      estimate =
          pair.known()
              ? OptionalDouble.of(flipped ? -pair.estimate() : pair.estimate())
              : OptionalDouble.empty();
      interval =
          shown.get().interval95(pair).map(i -> flipped ? new Interval(-i.high(), -i.low()) : i);
    }
    return new FieldFinding.Pair(
        first,
        second,
        ridden
            ? FieldFinding.Standing.RIDDEN
            : way.isPresent() ? FieldFinding.Standing.FOLLOWS : FieldFinding.Standing.APART,
        estimate,
        interval,
        own,
        way.orElse(List.of()));
  }

  private static Field.Pair found(Field field, String first, String second) {
    return field.pairs().stream()
        .filter(pair -> pair.first().equals(first) && pair.second().equals(second))
        .findFirst()
        .orElseThrow();
  }

  private List<List<String>> days() {
    return entries.stream().map(entry -> entry.day().setups()).toList();
  }

  private Optional<FieldFinding.Next> next(Field field) {
    if (field.residualSd() == 0) {
      return Optional.empty();
    }
    FieldEntry latest = latest().orElseThrow();
    int stints = latest.record().plan().stints();
    Field.NextDay best = null;
    for (Field.NextDay each : field.next(stints, latest.measure().drift().columns())) {
      // A hair's breadth is rounding: of equal ones the first is said.
      if (best == null || each.widest() < best.widest() * (1 - 1e-9)) {
        best = each;
      }
    }
    if (best == null || Double.isInfinite(best.widest())) {
      return Optional.empty();
    }
    List<String> ids = setups.stream().map(Setup::id).toList();
    boolean flipped = ids.indexOf(best.first()) > ids.indexOf(best.second());
    return Optional.of(
        new FieldFinding.Next(
            flipped ? best.second() : best.first(),
            flipped ? best.first() : best.second(),
            stints,
            field.widest(),
            best.widest()));
  }
}
