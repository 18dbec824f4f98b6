package blindlap.wording;

import blindlap.plan.BlindLevel;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.review.Analysis;
import blindlap.review.Comparison;
import blindlap.review.Days;
import blindlap.stats.compare.Scale;
import blindlap.stats.compare.Verdict;
import blindlap.stats.order.Orders;
import blindlap.wording.SentencesTest.Case;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;

/** The tables of sentences: a page to look states up, and every sentence there is to read over. */
final class SentenceTables {
  private static final Words FINDING = Words.of("finding");

  private SentenceTables() {}

  /** The page: one row a state. */
  static String page() {
    StringBuilder out =
        new StringBuilder(
            "# Sentences by state\n\n"
                + "What a finding says, one row a state, made by `SentencesTest` from invented days"
                + " and from the words of the program. Look the state up, read its sentence. Files"
                + " and JSON\ncarry the state's fixed string instead ([the finding as"
                + " JSON](review-json.md)). The same states with every kind of measure and better"
                + " direction are read over as\n"
                + "`src/test/resources/blindlap/golden/sentences.md`.\n");
    out.append("\n## Two setups\n\n");
    out.append("A lap time in seconds, lower is better.\n\n");
    out.append("| state | sentence |\n| --- | --- |\n");
    for (Verdict verdict : Verdict.values()) {
      Case c = new Case(Measure.Kind.LAP_TIME, Measure.Better.LOWER, Scale.RAW);
      out.append("| ").append(verdict.text()).append(" | ");
      out.append(example(c, verdict)).append(" |\n");
    }
    out.append("\n## Other measures\n\n");
    out.append("How the words of \"real and worthwhile\" follow from the kind of measure.\n\n");
    out.append("| measure | sentence |\n| --- | --- |\n");
    for (Measure.Kind kind : Measure.Kind.values()) {
      Case c = new Case(kind, Measure.Better.LOWER, Scale.RAW);
      out.append("| ").append(kind.name().toLowerCase(Locale.ROOT).replace('_', ' '));
      out.append(" | ").append(example(c, Verdict.REAL_AND_WORTHWHILE)).append(" |\n");
    }
    Case ratio = new Case(Measure.Kind.LAP_TIME, Measure.Better.LOWER, Scale.RATIO);
    out.append("| lap time, ratio | ").append(example(ratio, Verdict.REAL_AND_WORTHWHILE));
    out.append(" |\n");
    levels(out);
    WhereCases.write(out);
    TellingCases.write(out);
    FieldCases.write(out);
    beside(out);
    return out.toString();
  }

  /** Whole sentences; what only ever stands within one has no state of its own. */
  private static void beside(StringBuilder out) {
    out.append("\n## Beside the verdict\n\n");
    out.append(
        "Three and more setups, levels of one setting, guesses, waits, voids and all else that a"
            + " finding says, with places for names and numbers.\n\n");
    out.append("| about | state | sentence |\n| --- | --- | --- |\n");
    FINDING.keys().stream()
        .filter(key -> !key.startsWith("sentence."))
        .filter(key -> said(key).matches("(?s)(\\p{Lu}|\\{).*[.:]"))
        .sorted()
        .forEach(
            key -> {
              String[] parts = key.split("\\.", 2);
              out.append("| ").append(word(parts[0])).append(" | ");
              out.append(parts.length == 1 ? "–" : word(parts[1]));
              out.append(" | ").append(said(key)).append(" |\n");
            });
  }

  private static String word(String name) {
    return name.replace('.', ' ').replace('_', ' ').toLowerCase(Locale.ROOT);
  }

  /** Every state with every kind of measure, and every other sentence. */
  static String whole(List<Case> cases) {
    StringBuilder out =
        new StringBuilder(
            "# Every verdict sentence\n\n"
                + "Made by `SentencesTest` from invented days: every state with every kind of"
                + " measure, every other sentence by its name.\n");
    for (Verdict verdict : Verdict.values()) {
      out.append("\n## ").append(verdict.text()).append("\n\n| measure | better | sentence |\n");
      out.append("| --- | --- | --- |\n");
      for (Case c : cases) {
        out.append("| ").append(c.kind().name().toLowerCase(Locale.ROOT).replace('_', ' '));
        out.append(c.scale() == Scale.RATIO ? ", ratio" : "").append(" | ");
        out.append(c.better().name().toLowerCase(Locale.ROOT)).append(" | ");
        out.append(example(c, verdict)).append(" |\n");
      }
    }
    names(out);
    FieldCases.names(out);
    return out.toString();
  }

  /** How strong words may be at each blind level. */
  private static void levels(StringBuilder out) {
    out.append("\n## What each blind level may say\n\n");
    out.append(
        "Below \"prepared\" nothing is ever called settled, no guess after a stint is asked or");
    out.append(
        " tested, all ridden laps carry the verdict, and a day\n"
            + "that was ended early by choice has");
    out.append(
        " none. Files and JSON carry the fixed strings at every level, with `level` beside.\n\n");
    out.append(
        "| level | before an answer | what it proves | what it needs | what a finding may say |\n");
    out.append("| --- | --- | --- | --- | --- |\n");
    for (BlindLevel level : BlindLevel.values()) {
      out.append("| ")
          .append(LevelWords.name(level))
          .append(" | ")
          .append(LevelWords.label(level).strip())
          .append(" | ")
          .append(LevelWords.proves(level))
          .append(" | ")
          .append(LevelWords.needs(level))
          .append(" | ")
          .append(LevelWords.mayBeSaid(level))
          .append(" |\n");
    }
    out.append("\n| verdict | open, drawn as you go | masked labels | prepared, helper |\n");
    out.append("| --- | --- | --- | --- |\n");
    Measure measure = Days.lapTime();
    for (Verdict verdict : Verdict.values()) {
      out.append("| ").append(verdict.text());
      for (BlindLevel level : List.of(BlindLevel.OPEN, BlindLevel.MASKED, BlindLevel.HELPER)) {
        out.append(" | ").append(VerdictWords.phrase(level, measure, verdict));
      }
      out.append(" |\n");
    }
    out.append("\n| key | sentence |\n| --- | --- |\n");
    LevelWords.WORDS.keys().stream()
        .sorted()
        .filter(key -> key.matches("(tail|under|assessor|masks).*"))
        .forEach(
            key ->
                out.append("| ")
                    .append(key)
                    .append(" | ")
                    .append(LevelWords.WORDS.say(key).replace("|", "\\|").strip())
                    .append(" |\n"));
  }

  /** All other sentences as they stand in the bundle, with places for names and numbers. */
  private static void names(StringBuilder out) {
    out.append("\n## Every other sentence of a finding\n\n");
    out.append(
        "With places for names and numbers, by the name the sentence has in the program.\n\n");
    out.append("| name | sentence |\n| --- | --- |\n");
    FINDING.keys().stream()
        .filter(key -> !key.startsWith("sentence."))
        .sorted()
        .forEach(
            key -> out.append("| ").append(key).append(" | ").append(said(key)).append(" |\n"));
  }

  private static String said(String key) {
    return FINDING.say(key).replace("|", "\\|").strip();
  }

  private static String example(Case c, Verdict verdict) {
    Rule rule = verdict == Verdict.COULD_NOT_SHOW ? Rule.blocks(2, 8, 4) : SentencesTest.RULE;
    Map<Verdict, double[]> recipes = new TreeMap<>();
    recipes.put(Verdict.REAL_AND_WORTHWHILE, new double[] {-3, 0.4, 1});
    recipes.put(Verdict.REAL_BUT_SMALL, new double[] {-0.9, 0.4, 2});
    recipes.put(Verdict.NO_WORTHWHILE_DIFFERENCE, new double[] {0.1, 0.5, 2});
    recipes.put(Verdict.DIRECTION_KNOWN, new double[] {-1.6, 0.6, 1.5});
    recipes.put(Verdict.NOT_SETTLED, new double[] {-0.4, 1, 1});
    recipes.put(Verdict.NO_VARIATION, new double[] {0, 0, 1});
    recipes.put(Verdict.COULD_NOT_SHOW, new double[] {-3, 0.4, 1});
    double[] recipe = java.util.Objects.requireNonNull(recipes.get(verdict));
    for (int seed = 0; seed < 4000; seed++) {
      Random random = new Random(seed);
      double spread =
          c.kind() == Measure.Kind.COUNT || c.kind() == Measure.Kind.CATEGORY_SCALE ? 1.4 : 1;
      Measure measure =
          Days.measure(
              "feel",
              c.kind(),
              Measure.Role.PRIMARY,
              c.better(),
              BigDecimal.valueOf(recipe[2]).stripTrailingZeros().toPlainString(),
              c.scale());
      Plan plan = Days.plan(rule, List.of(measure));
      String order = Days.order(rule, random);
      double[] values =
          Days.values(
              Orders.parse(order),
              SentencesTest.base(c.kind()),
              new double[] {0, recipe[0]},
              recipe[1] * spread,
              spread > 1 ? 0 : 2,
              random);
      Optional<Comparison> found =
          Analysis.verdictOnly(Days.day(plan, order, Map.of("feel", values)));
      if (found.flatMap(Comparison::verdict).equals(Optional.of(verdict))) {
        return new FindingWords(plan, found.get()).sentence();
      }
    }
    return "(does not come about with such values)";
  }
}
