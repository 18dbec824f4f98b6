package blindlap.command;

import blindlap.desk.PlanPreview;
import blindlap.fault.Fault;
import blindlap.fault.Problem;
import blindlap.plan.DayAnswers;
import blindlap.plan.DayDivided;
import blindlap.plan.DayDivider;
import blindlap.plan.Division;
import blindlap.plan.Plan;
import blindlap.plan.PlanFault;
import blindlap.plan.Protocol;
import blindlap.wording.DivideWords;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** How the day of a plan file can be divided, as a table. */
final class DividedDay {
  /** What another division mends, so that it need not be mended before. */
  private static final Set<Fault> MENDED =
      Set.of(
          PlanFault.DAY_TOO_LONG,
          PlanFault.LAP_BUDGET,
          PlanFault.CANNOT_SHOW_ANYTHING,
          PlanFault.MEDIAN_NEEDS_LAPS,
          PlanFault.STINTS_NOT_MULTIPLE,
          PlanFault.REFITS_EXCEEDED);

  private DividedDay() {}

  /** What keeps the day from being divided; none if nothing does. */
  static List<Problem> problems(PlanPreview preview) {
    List<Problem> problems =
        preview.problems().stream().filter(p -> !MENDED.contains(p.fault())).toList();
    return problems.isEmpty()
        ? preview.plan().flatMap(DayDivider::refused).map(List::of).orElse(List.of())
        : problems;
  }

  /** Divides the day and simulates what the formula cannot tell. */
  static DayDivided divided(PlanPreview preview, DayAnswers answers) {
    Plan plan = preview.plan().orElseThrow();
    DayDivider divider = answers.divider();
    DayDivided formula = divider.divide(plan, preview.noiseOfLaps(), (done, of) -> true);
    formula.rough().forEach(rough -> divider.simulate(rough, () -> false));
    return formula.rough().isEmpty()
        ? formula
        : divider.divide(plan, preview.noiseOfLaps(), (done, of) -> true);
  }

  /** The table, a line each. */
  static List<String> lines(Plan plan, DayDivided divided) {
    DivideWords words = new DivideWords(plan, divided);
    Map<Protocol, List<List<String>>> rows = new LinkedHashMap<>();
    List<List<String>> all = new ArrayList<>(List.of(DivideWords.heads()));
    for (Division each : divided.longest()) {
      List<String> cells = words.cells(each);
      all.add(cells);
      rows.computeIfAbsent(each.plan().protocol(), p -> new ArrayList<>()).add(cells);
    }
    int[] widths = new int[DivideWords.heads().size()];
    all.forEach(
        cells -> {
          for (int i = 0; i < widths.length; i++) {
            widths[i] = Math.max(widths[i], length(cells.get(i)));
          }
        });
    List<String> lines = new ArrayList<>();
    lines.add(DivideWords.say("title") + ": " + words.day());
    lines.add("  " + line(DivideWords.heads(), widths));
    rows.forEach(
        (protocol, each) -> {
          lines.add(protocol.title());
          each.forEach(cells -> lines.add("  " + line(cells, widths)));
        });
    lines.addAll(words.notes());
    return lines;
  }

  private static String line(List<String> cells, int[] widths) {
    StringBuilder line = new StringBuilder();
    for (int i = 0; i < cells.size(); i++) {
      String cell = cells.get(i);
      line.append(cell);
      if (i < cells.size() - 1) {
        line.append(" ".repeat(widths[i] - length(cell) + 2));
      }
    }
    return line.toString().stripTrailing();
  }

  private static int length(String text) {
    return text.codePointCount(0, text.length());
  }
}
