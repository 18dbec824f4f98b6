package blindlap.plan;

import blindlap.fault.Problem;
import java.util.ArrayList;
import java.util.List;

/** Problems as they are found. */
final class FoundProblems {
  final List<Problem> list = new ArrayList<>();

  void add(PlanFault fault, String where, Object... details) {
    list.add(Problem.of(fault, where, details));
  }

  int count() {
    return list.size();
  }
}
