package blindlap.screen.plan;

import blindlap.desk.PlanPreview;
import blindlap.fault.Problem;
import blindlap.plan.PlanFault;
import blindlap.screen.part.TypedForm;
import blindlap.wording.PlanWords;
import blindlap.wording.day.Problems;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javafx.collections.ObservableList;

/**
 * What is wrong with a draft, in words.
 *
 * @param problems a sentence each with its place, what is missing first
 * @param mends the same, each with its field
 * @param beside sentences to stand beside fields, by the field's path
 * @param hints what the tester should know, a sentence each
 */
record PlanJudgement(
    List<String> problems, List<PlanMend> mends, Map<String, String> beside, List<String> hints) {
  /** Parts of a plan in the order of the page. */
  private static final List<String> PAGE =
      List.of(
          "question",
          "rider",
          "trail",
          "trail_version",
          "day",
          "kind",
          "conditions",
          "expectations",
          "telling_run",
          "setups",
          "steps_day",
          "differences_reason",
          "change",
          "bikes",
          "bike",
          "measures",
          "timetable",
          "laps",
          "blinding",
          "stints",
          "noise",
          "protocol",
          "rule");

  PlanJudgement {
    problems = List.copyOf(problems);
    mends = List.copyOf(mends);
    hints = List.copyOf(hints);
  }

  static PlanJudgement of(PlanPreview preview) {
    Map<String, String> beside = new LinkedHashMap<>();
    List<String> all = new ArrayList<>();
    List<String> missing = new ArrayList<>();
    List<PlanMend> mends = new ArrayList<>();
    for (Problem problem : preview.problems()) {
      String path = problem.where().replaceFirst(" ?\\(?line \\d+, column \\d+\\)?$", "");
      // An empty field speaks for itself; a fresh draft would be full of sentences.
      if (problem.fault() == PlanFault.MISSING_FIELD) {
        String place = PlanWords.placeOnly(path);
        mends.add(missing.size(), new PlanMend(path, place, true));
        missing.add(place);
      } else {
        String words = PlanWords.place(path) + bare(problem);
        mends.add(new PlanMend(path, words, false));
        all.add(words);
        beside.putIfAbsent(path, bare(problem));
      }
    }
    if (!missing.isEmpty()) {
      all.add(0, PlanWords.say("missing", String.join("; ", missing)));
    }
    mends.sort(
        Comparator.comparing(PlanMend::missing).reversed().thenComparing(m -> onPage(m.path())));
    return new PlanJudgement(
        all, mends, beside, preview.hints().stream().map(PlanJudgement::bare).toList());
  }

  /** Shows it beside the fields and in the lists. */
  void tell(
      TypedForm form,
      ObservableList<String> allProblems,
      ObservableList<PlanMend> allMends,
      ObservableList<String> allHints) {
    form.tell("", beside);
    allProblems.setAll(problems);
    if (!allMends.equals(mends)) {
      allMends.setAll(mends);
    }
    allHints.setAll(hints);
  }

  private static int onPage(String path) {
    int at = PAGE.indexOf(path.replaceFirst("[.\\[].*", ""));
    return at < 0 ? PAGE.size() : at;
  }

  /** The sentence without its place, which the page shows by where it stands. */
  static String bare(Problem problem) {
    return Problems.sentence(new Problem(problem.fault(), "", problem.details()));
  }
}
