package blindlap.wording;

import blindlap.review.Finding;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;

/** How the numbers of a finding are computed, a formula a line, each with its source. */
public final class FormulaWords {
  private static final Words WORDS = Words.of("computed");
  private static final String FORMULA = "formula.";
  private static final String LEVELS = "levels.";

  private FormulaWords() {}

  /** The formulas of a finding; of a steps day some are those of a trend. */
  public static List<String> of(Finding finding) {
    boolean steps = finding.day().plan().steps() != null;
    List<String> lines = new ArrayList<>();
    WORDS.keys().stream()
        .filter(key -> key.startsWith(FORMULA))
        .sorted()
        .map(key -> steps && WORDS.has(LEVELS + key) ? LEVELS + key : key)
        .forEach(key -> lines.add(WORDS.say(key)));
    if (finding.waits().test().isPresent()) {
      lines.add(WORDS.say("waits.formula"));
    }
    CovariateWords.formula(finding).ifPresent(lines::add);
    WhereWords.formula(finding).ifPresent(lines::add);
    return lines;
  }
}
