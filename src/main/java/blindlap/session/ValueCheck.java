package blindlap.session;

import blindlap.fault.Problem;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import java.math.BigDecimal;
import java.util.List;

/** Whether a value can stand on the score sheet of a measure. */
final class ValueCheck {
  private ValueCheck() {}

  static List<Problem> problems(Plan plan, String name, BigDecimal value, String where) {
    Measure measure = plan.measure(name).orElse(null);
    if (measure == null) {
      String known = String.join(", ", plan.measures().stream().map(Measure::name).toList());
      return List.of(Problem.of(SessionFault.UNKNOWN_MEASURE, where, name, known));
    }
    if (!measure.timing().by().asked()) {
      return List.of(Problem.of(SessionFault.RECORDING_GIVES, where, name));
    }
    Measure.Kind kind = measure.kind();
    if (kind.admits(value)) {
      return List.of();
    }
    String typed = value.toPlainString();
    if (kind.timed()) {
      return List.of(Problem.of(SessionFault.NOT_A_TIME, where, name, typed));
    }
    double number = value.doubleValue();
    if (number < kind.least() || number > kind.most()) {
      return List.of(
          Problem.of(
              SessionFault.OUTSIDE_SCALE,
              where,
              name,
              typed,
              PlanJson.number(kind.least()),
              PlanJson.number(kind.most())));
    }
    return List.of(Problem.of(SessionFault.NOT_WHOLE, where, name, typed));
  }

  /** Who scores by code does so once the day is closed, without the order, and not with the lap. */
  static List<Problem> scoredLater(SessionState state, String measure, String where) {
    return state.plan().measure(measure).map(Measure::assessor).stream()
        .filter(who -> state.step().day())
        .map(who -> Problem.of(SessionFault.SCORED_LATER, where, measure, who.name()))
        .toList();
  }
}
