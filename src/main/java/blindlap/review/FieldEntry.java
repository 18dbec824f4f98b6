package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Setup;
import blindlap.stats.compare.ManySetups;
import blindlap.stats.distribution.Interval;
import blindlap.stats.pool.FieldDay;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A day of a field, with what it found by itself.
 *
 * @param measure its primary measure
 * @param two its own finding; empty for three and more setups
 * @param many its own finding; empty for two setups
 */
record FieldEntry(
    DayRecord record,
    Measure measure,
    FieldFinding.Day day,
    Optional<Comparison> two,
    Optional<ManyComparison> many) {

  /** A day as it enters; empty where it cannot be compared by itself. */
  static Optional<FieldEntry> of(DayRecord record) {
    Measure measure = record.plan().primary().orElseThrow();
    boolean pair = record.plan().setups().size() == 2;
    Optional<Comparison> two = pair ? Analysis.verdictOnly(record) : Optional.empty();
    Optional<ManyComparison> many = pair ? Optional.empty() : Analysis.manyOnly(record);
    boolean varies =
        two.filter(c -> !c.result().noVariation()).isPresent()
            || many.filter(c -> !c.result().noVariation()).isPresent();
    if (!varies) {
      return Optional.empty();
    }
    TakenOut taken = TakenOut.of(record, measure, StintValues.counted(record, measure));
    StintValues stints = taken.stints();
    List<String> ids = record.plan().setups().stream().map(Setup::id).toList();
    FieldDay numbers =
        new FieldDay(ids, record.key().setups(), stints.values(), stints.valid(), taken.nuisance());
    return Optional.of(
        new FieldEntry(
            record,
            measure,
            new FieldFinding.Day(
                record.session(),
                record.plan().day(),
                ids,
                numbers,
                stints.used(),
                remarks(record)),
            two,
            many));
  }

  /** The same day, which was abandoned once its finding was known. */
  FieldEntry abandoned() {
    Set<FieldFinding.Remark> remarks = EnumSet.of(FieldFinding.Remark.ABANDONED);
    remarks.addAll(day.remarks());
    return new FieldEntry(
        record,
        measure,
        new FieldFinding.Day(
            day.session(), day.day(), day.setups(), day.numbers(), day.used(), remarks),
        two,
        many);
  }

  private static Set<FieldFinding.Remark> remarks(DayRecord record) {
    Set<FieldFinding.Remark> remarks = EnumSet.noneOf(FieldFinding.Remark.class);
    if (!record.blindBroken().isEmpty()) {
      remarks.add(FieldFinding.Remark.BLIND_BROKEN);
    }
    if (!record.wrongFits().isEmpty()) {
      remarks.add(FieldFinding.Remark.WRONG_FIT);
    }
    if (record.cutShort()) {
      remarks.add(FieldFinding.Remark.CUT_SHORT);
    }
    return remarks;
  }

  /** What the day found of two setups by itself; empty unless it holds both. */
  Optional<FieldFinding.OwnDay> own(String first, String second) {
    int a = day.setups().indexOf(first);
    int b = day.setups().indexOf(second);
    if (a < 0 || b < 0) {
      return Optional.empty();
    }
    return Optional.of(
        two.map(found -> ofTwo(found, a > b)).orElseGet(() -> ofMany(many.orElseThrow(), a, b)));
  }

  private FieldFinding.OwnDay ofTwo(Comparison found, boolean flipped) {
    return new FieldFinding.OwnDay(
        day.session(),
        day.day(),
        found.verdict(),
        flipped ? -found.result().estimate() : found.result().estimate(),
        turned(found.shifts(0.95), flipped),
        false,
        false);
  }

  private FieldFinding.OwnDay ofMany(ManyComparison found, int a, int b) {
    ManySetups.Pair pair =
        found.result().pairs().stream()
            .filter(p -> p.first() == Math.min(a, b) && p.second() == Math.max(a, b))
            .findFirst()
            .orElseThrow();
    return new FieldFinding.OwnDay(
        day.session(),
        day.day(),
        Optional.empty(),
        a > b ? -pair.estimate() : pair.estimate(),
        turned(found.shifts(pair), a > b),
        true,
        found.separated(pair));
  }

  private static Optional<Interval> turned(Optional<Interval> interval, boolean flipped) {
    return interval.map(i -> flipped ? new Interval(-i.high(), -i.low()) : i);
  }
}
