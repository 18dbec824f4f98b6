package blindlap.wording;

import blindlap.plan.Plan;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;

/** What everyone expected, each in a sentence. */
final class ExpectedWords {
  private static final Words WORDS = FindingWords.WORDS;

  private ExpectedWords() {}

  /** What was expected, by the plan and later on. */
  static List<String> lines(Plan plan, List<FindingText.Expectation> more) {
    List<FindingText.Expectation> all = new ArrayList<>();
    all.add(new FindingText.Expectation("TESTER", plan.expectations().tester()));
    all.add(new FindingText.Expectation("RIDER", plan.expectations().rider()));
    all.add(new FindingText.Expectation("HELPER", plan.expectations().helper()));
    all.addAll(more);
    return all.stream()
        .filter(e -> !e.text().isBlank())
        .map(e -> WORDS.say("expected", WORDS.say("expected." + e.who()), e.text()))
        .toList();
  }
}
