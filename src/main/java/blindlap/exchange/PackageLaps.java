package blindlap.exchange;

import blindlap.fault.Unreadable;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.review.DayRecord;
import blindlap.review.Remark;
import blindlap.review.TimedValue;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.VoidEvent;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** The laps of a data package, read back with the values that count. */
final class PackageLaps {
  private static final String LAPS = "laps.csv";

  private PackageLaps() {}

  /**
   * All laps of the table.
   *
   * @param files the package, for what recordings and watches say of times
   * @param remarks tell of values that other machines recorded
   * @throws Unreadable if a cell cannot be read or cannot be meant
   */
  static List<DayRecord.Lap> read(
      List<Map<String, String>> rows, Map<String, byte[]> files, Plan plan, List<Remark> remarks) {
    List<DayRecord.Lap> laps = new ArrayList<>();
    Map<LapId, Map<String, TimedValue>> timed = TimedTable.read(files, plan);
    Set<LapId> seen = new HashSet<>();
    for (Map<String, String> row : rows) {
      Map<String, BigDecimal> values = new LinkedHashMap<>();
      for (Measure measure : plan.measures()) {
        String value = PackageCells.text(row, measure.name());
        if (!value.isEmpty()) {
          values.put(measure.name(), value(measure, value));
        }
      }
      Optional<VoidEvent> event = event(PackageCells.text(row, "void"));
      LapId id = lap(row, plan);
      if (!seen.add(id)) {
        throw new Unreadable(PackageFault.LAP_TWICE, id.stint(), id.lap());
      }
      laps.add(
          new DayRecord.Lap(
              id,
              PackageCells.yes(row, "ridden"),
              values,
              event.map(
                  e ->
                      new LapState.Voided(
                          e,
                          PackageCells.text(row, "void_words"),
                          PackageCells.yes(row, "void_after_values_seen"))),
              PackageCells.text(row, "note"),
              setAside(id.ofDay(plan.laps().perStint()), plan, remarks),
              timed.getOrDefault(id, Map.of())));
    }
    return laps;
  }

  /** Values that other machines recorded, in the order of their remarks. */
  private static Map<String, List<Optional<BigDecimal>>> setAside(
      int lap, Plan plan, List<Remark> remarks) {
    Map<String, List<Optional<BigDecimal>>> aside = new TreeMap<>();
    for (Remark remark : remarks) {
      if (remark.kind() == Remark.Kind.SET_ASIDE && remark.lap() == lap) {
        Measure measure =
            plan.measure(remark.about())
                .orElseThrow(() -> new Unreadable(PackageFault.NOT_A_VALUE, remark.about()));
        if (measure.recorded()) {
          continue; // of a watch that does not count
        }
        aside
            .computeIfAbsent(measure.name(), none -> new ArrayList<>())
            .add(
                remark.before().isEmpty()
                    ? Optional.empty()
                    : Optional.of(value(measure, remark.before())));
      }
    }
    return aside;
  }

  private static Optional<VoidEvent> event(String typed) {
    Optional<VoidEvent> event = VoidEvent.parse(typed);
    if (event.isEmpty() && !typed.isEmpty()) {
      throw new Unreadable(PackageFault.NOT_AN_EVENT, typed);
    }
    return event;
  }

  private static BigDecimal value(Measure measure, String cell) {
    BigDecimal value = PackageCells.number(cell, measure.name());
    // A watch that was started and stopped at once says nought, which nobody could type.
    boolean nought = measure.kind().timed() && value.signum() == 0;
    if (!nought && !measure.kind().admits(value)) {
      throw new Unreadable(PackageFault.NOT_A_VALUE, measure.name());
    }
    return value;
  }

  private static LapId lap(Map<String, String> row, Plan plan) {
    int lap = PackageCells.whole(row, "lap_in_stint");
    if (lap < 1 || lap > plan.laps().perStint()) {
      throw new Unreadable(PackageFault.NO_SUCH_LAP, LAPS, lap);
    }
    return new LapId(PackageCells.stint(row, LAPS, 1, plan), lap);
  }
}
