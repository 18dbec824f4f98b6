package blindlap.exchange;

import blindlap.fault.Problem;
import blindlap.session.PlainDay;
import blindlap.session.PlainLap;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Puts the rows of a day into ridden order and into stints. */
final class PlainDayOrder {
  /** Most places between the first and the last lap of a day. */
  static final int MOST = 400;

  private final List<PlainDayRow> rows;
  private final boolean numbered;
  private final boolean stints;
  private final List<Problem> problems = new ArrayList<>();

  /**
   * @param rows of one day, in the order of the file
   * @param numbered true if they carry the number of the lap
   * @param stints true if they carry the stint
   */
  PlainDayOrder(List<PlainDayRow> rows, boolean numbered, boolean stints) {
    this.rows = rows;
    this.numbered = numbered;
    this.stints = stints;
  }

  PlainDay day(LocalDate day) {
    rows.forEach(row -> problems.addAll(row.problems()));
    Map<String, List<PlainDayRow>> groups = groups();
    groups.forEach(this::order);
    List<PlainDayRow> ordered = groups.values().stream().flatMap(List::stream).toList();
    int each = stints ? evenly(groups) : 1;
    List<PlainLap> laps = new ArrayList<>();
    int first = numbered && !stints && !ordered.isEmpty() ? ordered.get(0).lap() : 0;
    for (PlainDayRow row : ordered) {
      int position = first > 0 ? row.lap() - first + 1 : laps.size() + 1;
      if (position > MOST && problems.isEmpty()) {
        problems.add(at(row, FileFault.LAPS_APART, first, row.lap(), MOST));
      }
      laps.add(new PlainLap(Math.max(1, position), row.setup(), row.values(), row.voided()));
    }
    return new PlainDay(
        day,
        ordered.stream().map(PlainDayRow::line).toList(),
        problems.isEmpty() ? laps : List.of(),
        each,
        problems);
  }

  private static Problem at(PlainDayRow row, FileFault fault, Object... details) {
    return Problem.of(fault, "line " + row.line(), details);
  }

  /** Rows by stint, in the order in which stints begin; all together without stints. */
  private Map<String, List<PlainDayRow>> groups() {
    Map<String, List<PlainDayRow>> groups = new LinkedHashMap<>();
    String before = "";
    for (PlainDayRow row : rows) {
      boolean again = groups.containsKey(row.stint()) && !row.stint().equals(before);
      if (stints && !numbered && again) {
        problems.add(at(row, FileFault.STINT_AGAIN, row.stint()));
      }
      groups.computeIfAbsent(row.stint(), key -> new ArrayList<>()).add(row);
      before = row.stint();
    }
    return groups;
  }

  private void order(String stint, List<PlainDayRow> group) {
    Map<Integer, Integer> lines = new HashMap<>();
    for (PlainDayRow row : group) {
      Integer earlier = row.lap() > 0 ? lines.putIfAbsent(row.lap(), row.line()) : null;
      if (earlier != null) {
        problems.add(at(row, FileFault.LAP_AGAIN, row.lap(), "line " + earlier));
      }
      if (stints && !row.setup().equals(group.get(0).setup())) {
        problems.add(at(row, FileFault.SETUP_IN_STINT, stint, row.setup(), group.get(0).setup()));
      }
    }
    if (numbered) {
      group.sort(Comparator.comparingInt(PlainDayRow::lap));
    }
  }

  /** Laps of every stint; a stint with another number is a mistake. */
  private int evenly(Map<String, List<PlainDayRow>> groups) {
    int each = groups.values().iterator().next().size();
    for (Map.Entry<String, List<PlainDayRow>> group : groups.entrySet()) {
      int own = group.getValue().size();
      if (own != each) {
        PlainDayRow row = group.getValue().get(0);
        problems.add(at(row, FileFault.UNEVEN_STINT, group.getKey(), own, each));
      }
    }
    return each;
  }
}
