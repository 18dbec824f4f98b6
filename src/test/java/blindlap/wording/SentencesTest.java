package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

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
  static final Rule RULE = Rule.blocks(2, 12, 4);
  private static final String SIZE = "(\\d+(?:\\.\\d+)?)";
  private static final Pattern ONE_SIDE = Pattern.compile(SIZE + " to " + SIZE + ".*");

  record Case(Measure.Kind kind, Measure.Better better, Scale scale) {}

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

  static double base(Measure.Kind kind) {
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
  void everySentenceStandsInTheTables() throws IOException {
    Map<String, String> tables = new TreeMap<>();
    tables.put("docs/sentences.md", SentenceTables.page());
    tables.put("src/test/resources/blindlap/golden/sentences.md", SentenceTables.whole(cases()));
    for (Map.Entry<String, String> table : tables.entrySet()) {
      Path file = Path.of(table.getKey());
      if (Boolean.getBoolean("blindlap.write")) {
        Files.writeString(file, table.getValue());
      }
      assertThat(Files.readString(file))
          .as(file + " is stale: run this test with -Dblindlap.write=true")
          .isEqualTo(table.getValue());
    }
  }

  /** Who looks a state up finds one row. */
  @Test
  void thePageHasOneRowAState() throws IOException {
    Map<String, Integer> rows = new TreeMap<>();
    String heading = "";
    for (String line : Files.readAllLines(Path.of("docs", "sentences.md"))) {
      heading = line.startsWith("#") ? line : heading;
      if (line.startsWith("| ") && !line.startsWith("| ---")) {
        String[] cells = line.split(" \\| ", -1);
        boolean two = heading.startsWith("## Beside");
        String state = cells[0] + "|" + (two ? cells[1] : "") + "|" + cells.length;
        rows.merge(heading + state, 1, Integer::sum);
      }
    }
    assertThat(rows).hasSizeGreaterThan(200);
    assertThat(rows.entrySet()).allMatch(row -> row.getValue() == 1);
    for (Verdict verdict : Verdict.values()) {
      assertThat(rows.keySet())
          .anyMatch(row -> row.startsWith("## Two setups| " + verdict.text() + "|"));
    }
  }
}
