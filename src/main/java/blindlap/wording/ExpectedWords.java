package blindlap.wording;

import blindlap.plan.Plan;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;

/** What everyone expected, each in a sentence. */
public final class ExpectedWords {
  private static final Words WORDS = FindingWords.WORDS;

  private ExpectedWords() {}

  /**
   * Someone's expectation, written down before unsealing.
   *
   * @param who key of the person, such as TESTER
   */
  public record Expectation(String who, String text) {}

  /** What was expected, by the plan and later on. */
  static List<String> lines(Plan plan, List<Expectation> more) {
    List<Expectation> all = new ArrayList<>();
    all.add(new Expectation("TESTER", plan.expectations().tester()));
    all.add(new Expectation("RIDER", plan.expectations().rider()));
    all.add(new Expectation("HELPER", plan.expectations().helper()));
    all.addAll(more);
    return all.stream()
        .filter(e -> !e.text().isBlank())
        .map(e -> WORDS.say("expected", WORDS.say("expected." + e.who()), e.text()))
        .toList();
  }
}
