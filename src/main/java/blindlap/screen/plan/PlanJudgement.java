package blindlap.screen.plan;

import blindlap.desk.PlanPreview;
import blindlap.fault.Problem;
import blindlap.plan.PlanFault;
import blindlap.wording.PlanWords;
import blindlap.wording.day.Problems;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What is wrong with a draft, in words.
 *
 * @param problems a sentence each with its place, what is missing first
 * @param beside sentences to stand beside fields, by the field's path
 * @param hints what the tester should know, a sentence each
 */
record PlanJudgement(List<String> problems, Map<String, String> beside, List<String> hints) {
  PlanJudgement {
    problems = List.copyOf(problems);
    hints = List.copyOf(hints);
  }

  static PlanJudgement of(PlanPreview preview) {
    Map<String, String> beside = new LinkedHashMap<>();
    List<String> all = new ArrayList<>();
    List<String> missing = new ArrayList<>();
    for (Problem problem : preview.problems()) {
      String path = problem.where().replaceFirst(" ?\\(?line \\d+, column \\d+\\)?$", "");
      // An empty field speaks for itself; a fresh draft would be full of sentences.
      if (problem.fault() == PlanFault.MISSING_FIELD) {
        missing.add(PlanWords.placeOnly(path));
      } else {
        all.add(PlanWords.place(path) + bare(problem));
        beside.putIfAbsent(path, bare(problem));
      }
    }
    if (!missing.isEmpty()) {
      all.add(0, PlanWords.say("missing", String.join("; ", missing)));
    }
    return new PlanJudgement(
        all, beside, preview.hints().stream().map(PlanJudgement::bare).toList());
  }

  /** The sentence without its place, which the page shows by where it stands. */
  private static String bare(Problem problem) {
    return Problems.sentence(new Problem(problem.fault(), "", problem.details()));
  }
}
