package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.BlindLevel;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.review.Analysis;
import blindlap.review.Comparison;
import blindlap.review.DayRecord;
import blindlap.review.Days;
import blindlap.review.Finding;
import blindlap.stats.compare.Scale;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Orders;
import blindlap.wording.day.Words;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Words and numbers of a finding agree: over random sessions, and in a table of every sentence. */
class SentencesTest {
  private static final Rule RULE = Rule.blocks(2, 12, 4);
  private static final String SIZE = "(\\d+(?:\\.\\d+)?)";
  private static final Pattern ONE_SIDE = Pattern.compile(SIZE + " to " + SIZE + ".*");

  private record Case(Measure.Kind kind, Measure.Better better, Scale scale) {}

  private static List<Case> cases() {
    List<Case> cases = new ArrayList<>();
    for (Measure.Kind kind : Measure.Kind.values()) {
      for (Measure.Better better : Measure.Better.values()) {
        cases.add(new Case(kind, better, Scale.RAW));
        if (kind.timed()) {
          cases.add(new Case(kind, better, Scale.RATIO));
        }
      }
    }
    return cases;
  }

  private static DayRecord day(Case c, Random random, double effect, double noise, String d) {
    Measure measure =
        Days.measure("feel", c.kind(), Measure.Role.PRIMARY, c.better(), d, c.scale());
    Plan plan = Days.plan(RULE, List.of(measure));
    String order = Days.order(RULE, random);
    boolean whole = c.kind() == Measure.Kind.COUNT || c.kind() == Measure.Kind.CATEGORY_SCALE;
    double[] values =
        Days.values(
            Orders.parse(order),
            base(c.kind()),
            new double[] {0, effect},
            noise,
            whole ? 0 : 2,
            random);
    for (int i = 0; i < values.length; i++) {
      values[i] = Math.max(c.kind().timed() ? 0.01 : c.kind().least(), values[i]);
    }
    return Days.day(plan, order, Map.of("feel", values));
  }

  private static double base(Measure.Kind kind) {
    return switch (kind) {
      case LAP_TIME, SECTOR_TIME -> 90;
      case LINE_SCALE -> 50;
      case CATEGORY_SCALE -> 5;
      case COUNT -> 4;
    };
  }

  @Test
  void wordsAndNumbersAgreeOverRandomSessions() {
    Random random = new Random(20261125);
    String[] worthwhile = {"0.5", "1", "1.25", "2"};
    int checked = 0;
    for (Case c : cases()) {
      for (int i = 0; i < 60; i++) {
        double noise = 0.2 + random.nextDouble() * 1.5;
        double effect = (random.nextDouble() - 0.5) * 6;
        String d = worthwhile[random.nextInt(worthwhile.length)];
        Finding finding = Analysis.of(day(c, random, effect, noise, d));
        finding.primary().ifPresent(p -> check(finding.day().plan(), p));
        checked += finding.primary().isPresent() ? 1 : 0;
      }
    }
    assertThat(checked).isGreaterThan(1000);
  }

  private static void check(Plan plan, Comparison comparison) {
    FindingWords words = new FindingWords(plan, comparison);
    Verdict verdict = comparison.verdict().orElseThrow();
    String sentence = words.sentence();
    assertThat(sentence).contains(": " + words.phrase());
    if (comparison.result().noVariation()) {
      return;
    }
    direction(plan, comparison, words);
    limits(comparison, words, 0.95);
    limits(comparison, words, 0.90);
    sizes(comparison, sentence, verdict);
  }

  /** Who is named first, and with which word, follows from the sign of the estimate. */
  private static void direction(Plan plan, Comparison comparison, FindingWords words) {
    double estimate = comparison.result().estimate();
    String a = plan.setups().get(0).name();
    String b = plan.setups().get(1).name();
    if (Math.abs(estimate) <= 1e-9 * comparison.result().noiseSd()) {
      assertThat(words.difference()).contains("came out equal");
      return;
    }
    String larger = estimate > 0 ? b : a;
    String smaller = estimate > 0 ? a : b;
    String difference = words.difference();
    boolean lessWord = difference.matches(".*( faster | lower | fewer ).*");
    boolean moreWord = difference.matches(".*( longer | higher | more ).*");
    assertThat(lessWord).isNotEqualTo(moreWord);
    assertThat(difference).startsWith(lessWord ? smaller : larger);
    assertThat(difference).contains(lessWord ? larger : smaller);
    Matcher size = Pattern.compile(" " + SIZE + "[ %]").matcher(difference);
    assertThat(size.find()).isTrue();
    assertThat(new BigDecimal(size.group(1)).signum()).isPositive();
    assertThat(difference).contains(unit(comparison.measure(), size.group(1)));
  }

  /** "points" after every number but 1. */
  private static String unit(Measure measure, String number) {
    boolean one = measure.unit().equals("points") && number.equals("1");
    return measure.scale() == Scale.RATIO ? " %" : one ? "1 point " : measure.unit();
  }

  /** A limit never lands on or crosses "no difference" or D, and lies on the side it is said to. */
  private static void limits(Comparison comparison, FindingWords words, double level) {
    Optional<Interval> shifts = comparison.shifts(level);
    String said = words.interval(level);
    if (shifts.isEmpty()) {
      assertThat(said).contains("not bounded");
      return;
    }
    Interval i = snapped(comparison, shifts.get());
    boolean oneSide = i.low() > 0 || i.high() < 0;
    assertThat(ONE_SIDE.matcher(said).matches()).as(said).isEqualTo(oneSide);
    if (oneSide) {
      Matcher numbers = ONE_SIDE.matcher(said);
      assertThat(numbers.matches()).isTrue();
      double near = Math.min(Math.abs(i.low()), Math.abs(i.high()));
      double far = Math.max(Math.abs(i.low()), Math.abs(i.high()));
      sameSide(comparison.measure(), near, numbers.group(1));
      sameSide(comparison.measure(), far, numbers.group(2));
    } else {
      String[] ends = said.split(" to ", 2);
      end(comparison.measure(), i.low(), ends[0]);
      end(comparison.measure(), i.high(), ends[1]);
    }
  }

  /** A limit that differs from zero by rounding of the arithmetic only is zero. */
  private static Interval snapped(Comparison comparison, Interval interval) {
    double nothing = 1e-9 * comparison.result().noiseSd();
    return new Interval(
        Math.abs(interval.low()) <= nothing ? 0 : interval.low(),
        Math.abs(interval.high()) <= nothing ? 0 : interval.high());
  }

  private static void end(Measure measure, double shift, String said) {
    if (said.equals("no difference")) {
      assertThat(shift).isCloseTo(0, org.assertj.core.data.Offset.offset(1e-12));
      return;
    }
    boolean lessWord = said.matches(".*(faster|lower|fewer)$");
    boolean first = said.startsWith("Shock K"); // setup A
    // A is named with "less" or B with "more" when B − A lies above zero.
    assertThat(first == lessWord).as(said + " for " + shift).isEqualTo(shift > 0);
    Matcher number = Pattern.compile("Shock [KL] " + SIZE).matcher(said);
    assertThat(number.find()).isTrue();
    sameSide(measure, Math.abs(shift), number.group(1));
  }

  private static void sameSide(Measure measure, double shift, String said) {
    BigDecimal d = java.util.Objects.requireNonNull(measure.worthwhile());
    double size = Sizes.size(measure, shift);
    BigDecimal number = new BigDecimal(said);
    assertThat(number.signum()).as(said + " for " + size).isEqualTo(size > 1e-12 ? 1 : 0);
    if (Math.abs(size - d.doubleValue()) > 1e-9 * d.doubleValue()) {
      assertThat(number.compareTo(d))
          .as(said + " for " + size + " against " + d)
          .isEqualTo(size > d.doubleValue() ? 1 : -1);
    }
  }

  /** "Larger" and "smaller than D" are said only where the 90 % limits are. */
  private static void sizes(Comparison comparison, String sentence, Verdict verdict) {
    Interval band = comparison.worthwhileBand().orElseThrow();
    Optional<Interval> ninety = comparison.shifts(0.90);
    if (sentence.contains("larger than the") && verdict == Verdict.REAL_AND_WORTHWHILE) {
      Interval i = ninety.orElseThrow();
      assertThat(i.low() > band.high() || i.high() < band.low()).isTrue();
    }
    if (sentence.contains("smaller than the") || sentence.contains("ruled out")) {
      Interval i = ninety.orElseThrow();
      assertThat(i.low() > band.low() && i.high() < band.high()).isTrue();
    }
    if (sentence.contains("more than this rider's noise explains")) {
      Interval i = comparison.shifts(0.95).orElseThrow();
      assertThat(i.low() > 0 || i.high() < 0).isTrue();
    }
    if (sentence.contains("leaves room for no difference")) {
      comparison
          .shifts(0.95)
          .map(i -> snapped(comparison, i))
          .ifPresent(i -> assertThat(i.low() <= 0 && i.high() >= 0).isTrue());
    }
  }

  @Test
  void everySentenceStandsInTheTableOfTheDocs() throws IOException {
    String table = table();
    Path file = Path.of("docs", "sentences.md");
    if (Boolean.getBoolean("blindlap.write")) {
      Files.writeString(file, table);
    }
    assertThat(Files.readString(file))
        .as("docs/sentences.md is stale: run this test with -Dblindlap.write=true")
        .isEqualTo(table);
  }

  private static String table() {
    StringBuilder out =
        new StringBuilder(
            "# Every verdict sentence\n\n"
                + "Made by a test from invented days: every state with every kind of measure."
                + " `faster`, `lower` and so on follow from the kind and the better direction;\n"
                + "files and JSON carry the fixed strings of the state instead.\n");
    for (Verdict verdict : Verdict.values()) {
      out.append("\n## ").append(verdict.text()).append("\n\n| measure | better | sentence |\n");
      out.append("| --- | --- | --- |\n");
      for (Case c : cases()) {
        out.append("| ")
            .append(c.kind().name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '));
        out.append(c.scale() == Scale.RATIO ? ", ratio" : "").append(" | ");
        out.append(c.better().name().toLowerCase(java.util.Locale.ROOT)).append(" | ");
        out.append(example(c, verdict)).append(" |\n");
      }
    }
    rest(out);
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
  private static void rest(StringBuilder out) {
    Words finding = Words.of("finding");
    levels(out);
    WhereCases.write(out);
    TellingCases.write(out);
    FieldCases.write(out);
    out.append("\n## Every other sentence of a finding\n\n");
    out.append(
        "With places for names and numbers, by the name the sentence has in the program.\n\n");
    out.append("| name | sentence |\n| --- | --- |\n");
    finding.keys().stream()
        .filter(key -> !key.startsWith("sentence."))
        .sorted()
        .forEach(
            key ->
                out.append("| ")
                    .append(key)
                    .append(" | ")
                    .append(finding.say(key).replace("|", "\\|").strip())
                    .append(" |\n"));
  }

  private static String example(Case c, Verdict verdict) {
    Rule rule = verdict == Verdict.COULD_NOT_SHOW ? Rule.blocks(2, 8, 4) : RULE;
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
              base(c.kind()),
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
