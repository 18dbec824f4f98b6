package blindlap.plan;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/** What must be right with gates, and with times that come from a recording. */
final class TimingCheck {
  /** Seven decimals of a degree are about a centimetre; a recorder knows no more. */
  private static final int MOST_DECIMALS = 7;

  private static final int HALF_TURN = 180;

  private static final Pattern SHA_256 = Pattern.compile("[0-9a-f]{64}");

  private final Plan plan;
  private final FoundProblems problems;

  TimingCheck(Plan plan, FoundProblems problems) {
    this.plan = plan;
    this.problems = problems;
  }

  void all() {
    TrailVersion trail = plan.trailVersion();
    if (trail != null) {
      version(trail);
    }
    Map<List<Integer>, String> ways = new HashMap<>();
    for (int i = 0; i < plan.measures().size(); i++) {
      measure(plan.measures().get(i), "measures[" + (i + 1) + "]", ways);
    }
  }

  private void version(TrailVersion trail) {
    if (trail.number() < 1) {
      problems.add(PlanFault.NOT_POSITIVE, "trail_version.number", trail.number());
      return;
    }
    if (trail.gates().isEmpty()) {
      problems.add(
          PlanFault.TRAIL_WITHOUT_GATES, "trail_version.number", trail.number(), plan.trail());
      return;
    }
    if (trail.gates().size() < 2) {
      problems.add(PlanFault.ONE_GATE, "trail_version.gates", trail.gates().get(0).name());
    }
    if (!SHA_256.matcher(trail.sha256()).matches()) {
      problems.add(PlanFault.NOT_A_SHA256, "trail_version.sha256", trail.sha256());
    }
    Map<String, Integer> names = new HashMap<>();
    for (int i = 0; i < trail.gates().size(); i++) {
      gate(trail.gates().get(i), "trail_version.gates[" + (i + 1) + "]", names);
    }
  }

  private void gate(TrailGate gate, String where, Map<String, Integer> names) {
    if (gate.name().isBlank()) {
      problems.add(PlanFault.MISSING_FIELD, where + ".name");
    } else if (names.merge(gate.name().strip().toLowerCase(Locale.ROOT), 1, Integer::sum) == 2) {
      problems.add(PlanFault.SAME_GATE, where + ".name", gate.name());
    }
    if (Math.abs(gate.direction()) != 1) {
      problems.add(PlanFault.NOT_A_DIRECTION, where + ".direction", gate.direction());
    }
    point(gate.first(), where + ".first");
    point(gate.second(), where + ".second");
    if (gate.first().sameAs(gate.second())) {
      problems.add(PlanFault.GATE_WITHOUT_WIDTH, where, gate.name());
    }
  }

  private void point(TrailGate.Point point, String where) {
    degrees(point.latitude(), HALF_TURN / 2, where + ".latitude");
    degrees(point.longitude(), HALF_TURN, where + ".longitude");
  }

  private void degrees(BigDecimal value, int most, String where) {
    boolean within = value.abs().compareTo(BigDecimal.valueOf(most)) <= 0;
    if (!within || value.stripTrailingZeros().scale() > MOST_DECIMALS) {
      problems.add(PlanFault.NOT_DEGREES, where, value.toPlainString(), most, MOST_DECIMALS);
    }
  }

  private void measure(Measure measure, String where, Map<List<Integer>, String> ways) {
    Timing timing = measure.timing();
    Sector sector = timing.sector();
    if (!timing.by().recorded()) {
      if (sector != null) {
        problems.add(PlanFault.GATES_OF_A_WATCH, where + ".from_gate", measure.name());
      }
      return;
    }
    String by = where + ".timed_by";
    if (!measure.kind().timed()) {
      problems.add(PlanFault.RECORDING_OF_NO_TIME, by, measure.name());
      return;
    }
    if (measure.assessor() != null) {
      problems.add(PlanFault.RECORDED_AND_ASSESSED, by, measure.name());
    }
    if (measure.role() == Measure.Role.PRIMARY && !plan.looks().isEmpty()) {
      problems.add(PlanFault.LOOKS_WITH_RECORDING, "looks", measure.name());
    }
    TrailVersion trail = plan.trailVersion();
    if (trail == null) {
      problems.add(PlanFault.RECORDING_WITHOUT_TRAIL, by, measure.name());
      return;
    }
    if (measure.kind() == Measure.Kind.LAP_TIME && sector != null) {
      problems.add(PlanFault.GATES_OF_A_LAP, where + ".from_gate", measure.name());
    } else if (measure.kind() == Measure.Kind.SECTOR_TIME && sector == null) {
      problems.add(PlanFault.SECTOR_MISSING, where + ".from_gate", measure.name(), names(trail));
    } else if (!trail.gates().isEmpty()) {
      way(measure, trail, where, ways);
    }
  }

  private void way(
      Measure measure, TrailVersion trail, String where, Map<List<Integer>, String> ways) {
    Sector sector = measure.timing().sector();
    int from = sector == null ? 0 : trail.gate(sector.from());
    int to = sector == null ? trail.gates().size() - 1 : trail.gate(sector.to());
    if (sector != null) {
      known(from, sector.from(), where + ".from_gate", trail);
      known(to, sector.to(), where + ".to_gate", trail);
    }
    if (from < 0 || to < 0) {
      return;
    }
    if (sector != null && from >= to) {
      problems.add(
          PlanFault.GATES_BACKWARDS,
          where + ".to_gate",
          measure.name(),
          sector.from(),
          sector.to(),
          names(trail));
      return;
    }
    String before = ways.putIfAbsent(List.of(from, to), measure.name());
    if (before != null) {
      problems.add(PlanFault.SAME_WAY, where, measure.name(), before);
    }
  }

  private void known(int gate, String name, String where, TrailVersion trail) {
    if (gate < 0) {
      problems.add(PlanFault.UNKNOWN_GATE, where, name, names(trail));
    }
  }

  private static String names(TrailVersion trail) {
    return String.join(", ", trail.gates().stream().map(TrailGate::name).toList());
  }
}
