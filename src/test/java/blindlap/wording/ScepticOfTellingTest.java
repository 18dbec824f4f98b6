package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.review.TellingFinding;
import blindlap.review.TellingRuns;
import blindlap.review.TellingTrial;
import blindlap.session.day.Guess.Sureness;
import blindlap.stats.tell.Discrimination;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * No sentence of a telling run says more than its count, read by one who works every figure out
 * again: tails in whole numbers, limits by halving until the tail fits.
 */
class ScepticOfTellingTest {
  private static final int RUNS = 4000;
  private static final double LEVEL = 0.05;
  private static final Pattern GUESSING =
      Pattern.compile(
          "uessing gives (\\d+) or (more|fewer) in (?:(about|fewer than) (\\d+) of"
              + " ([\\d,]+)|(nearly )?all) such runs \\(p (= |below )(1|1\\.00|\\.\\d+)\\)");
  private static final Pattern LIMITS =
      Pattern.compile(
          "in (\\d+(?:\\.\\d+)?) to (\\d+(?:\\.\\d+)?) % of the trials \\(90 % limits\\)");

  /** What is true of a run. */
  private record Truth(
      int trials,
      int right,
      double matters,
      double p,
      double fewer,
      double all,
      double low,
      double high) {
    static Truth of(Discrimination task, int trials, int right, double matters) {
      int den = task == Discrimination.TRIANGLE ? 3 : 2;
      double chance = 1.0 / den;
      return new Truth(
          trials,
          right,
          matters,
          tail(trials, den, right, trials),
          tail(trials, den, 0, right),
          tail(trials, den, trials, trials),
          Math.max(0, (limit(trials, right, true, LEVEL) - chance) / (1 - chance)),
          Math.max(0, (limit(trials, right, false, LEVEL) - chance) / (1 - chance)));
    }

    boolean never() {
      return all > LEVEL;
    }

    boolean can() {
      return !never() && p <= LEVEL;
    }

    boolean tooFew() {
      return !never() && fewer <= LEVEL;
    }

    boolean cannot() {
      return !never() && !can() && !tooFew() && high < matters;
    }
  }

  /** Probability of counts by guessing one of {@code den}, in whole numbers until the last step. */
  private static double tail(int n, int den, int from, int to) {
    BigInteger sum = BigInteger.ZERO;
    BigInteger ways = BigInteger.ONE;
    for (int k = 0; k <= n; k++) {
      if (k >= from && k <= to) {
        sum = sum.add(ways.multiply(BigInteger.valueOf(den - 1L).pow(n - k)));
      }
      ways = ways.multiply(BigInteger.valueOf(n - k)).divide(BigInteger.valueOf(k + 1L));
    }
    return new BigDecimal(sum)
        .divide(new BigDecimal(BigInteger.valueOf(den).pow(n)), MathContext.DECIMAL64)
        .doubleValue();
  }

  /** The share at which as many right answers, or as few, have a tail of this level. */
  private static double limit(int n, int right, boolean lower, double level) {
    if (right == (lower ? 0 : n)) {
      return lower ? 0 : 1;
    }
    double a = 0;
    double b = 1;
    for (int i = 0; i < 60; i++) {
      double middle = (a + b) / 2;
      double sum = 0;
      double term = Math.pow(1 - middle, n);
      for (int k = 0; k <= n; k++) {
        sum += lower == k >= right || k == right ? term : 0;
        term *= (double) (n - k) / (k + 1) * middle / (1 - middle);
      }
      boolean up = lower ? sum < level : sum > level;
      a = up ? middle : a;
      b = up ? b : middle;
    }
    return (a + b) / 2;
  }

  private static String text(TellingWords words) {
    return String.join("\n", words.lines()).replace('\u202f', ' ');
  }

  @Test
  void noSentenceOfATellingRunSaysMoreThanItsCount() {
    Random random = new Random(20261128);
    Discrimination[] tasks = {
      Discrimination.TRIANGLE, Discrimination.DUO_TRIO, Discrimination.TWO_CHOICE
    };
    Map<String, Integer> said = new TreeMap<>();
    for (int i = 0; i < RUNS; i++) {
      Discrimination task = tasks[i % 3];
      int declared = 1 + random.nextInt(i % 5 == 0 ? 6 : 100);
      int answered = random.nextInt(4) == 0 ? 1 + random.nextInt(declared) : declared;
      int right = random.nextInt(answered + 1);
      double matters = (1 + random.nextInt(20)) / 20.0;
      boolean nullRun = random.nextInt(5) == 0;
      TellingFinding finding = TellingRuns.run(task, declared, answered, right, matters, nullRun);
      TellingWords words =
          new TellingWords(finding, new TellingNames("M. Oss", "4 clicks", "support"));
      Truth truth = Truth.of(task, answered, right, matters);
      String where =
          "%s %d/%d/%d of %s, %s".formatted(task, right, answered, declared, matters, nullRun);
      String text = text(words);
      claims(where, text, truth, finding);
      figures(where, text, truth);
      sureness(where, text, finding);
      axis(where, words, truth, task);
      said.merge(words.phrase(), 1, Integer::sum);
    }
    assertThat(said).hasSize(5).allSatisfy((phrase, times) -> assertThat(times).isGreaterThan(50));
  }

  private static void claims(String where, String text, Truth truth, TellingFinding finding) {
    boolean part = !finding.nullRun();
    is(where, text, "\\bcan tell\\b|told .* apart", part && truth.can());
    is(
        where,
        text,
        "More often than would matter",
        part && truth.can() && truth.low() > truth.matters());
    is(
        where,
        text,
        "Less often than would matter",
        part && truth.can() && truth.high() < truth.matters());
    is(where, text, "cannot tell as often", part && truth.cannot());
    is(where, text, "matter, does not fit", part && truth.cannot());
    boolean open = !truth.never() && !truth.can() && !truth.tooFew() && !truth.cannot();
    is(where, text, "matter, fits too", part && open);
    is(where, text, "fewer right than guessing gives", truth.tooFew());
    is(where, text, "show anything: with", truth.never());
    is(where, text, "Something other than the part told", !part && truth.can());
    is(where, text, "Null run", !part);
    is(where, text, "The run ended before", finding.left() > 0);
    assertThat(text)
        .as(where)
        .doesNotContainPattern(
            "(?i)\\bprove[sd]?\\b|certainly|blind held|slower|better|worse|faster(?! is another)")
        .contains("A finding holds for this rider, this trail and this day.")
        .contains(truth.right() + " of " + truth.trials() + " trial");
  }

  private static void is(String where, String text, String claim, boolean so) {
    assertThat(Pattern.compile(claim).matcher(text).find())
        .as("%s: %s\n%s", where, claim, text)
        .isEqualTo(so);
  }

  private static void figures(String where, String text, Truth truth) {
    for (MatchResult each : all(GUESSING, text)) {
      boolean more = each.group(2).equals("more");
      double p = more ? truth.p() : truth.fewer();
      assertThat(Integer.parseInt(each.group(1))).as(where).isEqualTo(truth.right());
      double number = Double.parseDouble(each.group(8));
      if (each.group(7).equals("below ")) {
        assertThat(p).as(where).isLessThan(number);
      } else {
        assertThat(Math.abs(number - p))
            .as(where)
            .isLessThanOrEqualTo(Math.max(0.05 * p, 0.00005) + 1e-9);
        assertThat(number <= LEVEL).as(where).isEqualTo(p <= LEVEL);
      }
      if (each.group(4) == null) {
        assertThat(p).as(where).isGreaterThan(0.995);
        assertThat(each.group(6) == null).as(where).isEqualTo(p == 1);
      } else {
        double of = Double.parseDouble(each.group(5).replace(",", ""));
        double many = Double.parseDouble(each.group(4)) / of;
        if (each.group(3).equals("about")) {
          assertThat(Math.abs(many - p)).as(where).isLessThanOrEqualTo(0.5 / of + 1e-9);
        } else {
          assertThat(p).as(where).isLessThan(many);
        }
      }
    }
    assertThat(all(GUESSING, text).isEmpty()).as(where).isEqualTo(truth.never());
    for (MatchResult each : all(LIMITS, text)) {
      limit(where, each.group(1), truth.low(), truth.matters());
      limit(where, each.group(2), truth.high(), truth.matters());
    }
  }

  private static void limit(String where, String said, double limit, double matters) {
    double unit = said.contains(".") ? Math.pow(10, said.indexOf('.') + 1 - said.length()) : 1;
    double number = Double.parseDouble(said);
    assertThat(Math.abs(number - 100 * limit)).as(where).isLessThanOrEqualTo(0.5 * unit + 1e-6);
    assertThat(Math.signum(number)).as(where).isEqualTo(Math.signum(limit));
    assertThat(number < 100 * matters).as(where).isEqualTo(limit < matters);
  }

  private static List<MatchResult> all(Pattern pattern, String text) {
    return pattern.matcher(text).results().toList();
  }

  private static void sureness(String where, String text, TellingFinding finding) {
    Map<Sureness, int[]> counted = new EnumMap<>(Sureness.class);
    int[] none = new int[2];
    for (TellingTrial trial : finding.trials()) {
      Sureness sure = trial.sureness();
      int[] here = sure == null ? none : counted.computeIfAbsent(sure, key -> new int[2]);
      here[0]++;
      here[1] += trial.differed() == trial.named() ? 1 : 0;
    }
    row(where, text, "“Certain”", counted.get(Sureness.CERTAIN));
    row(where, text, "“Fairly sure”", counted.get(Sureness.FAIRLY_SURE));
    row(where, text, "“A hunch”", counted.get(Sureness.HUNCH));
    row(where, text, "Not said", none[0] == 0 ? null : none);
  }

  private static void row(String where, String text, String name, int[] counted) {
    Matcher row =
        Pattern.compile(name + " (\\d+) times?, (?:(all |none |\\d+ )?right)\\.").matcher(text);
    assertThat(row.find()).as("%s: %s\n%s", where, name, text).isEqualTo(counted != null);
    if (counted != null) {
      assertThat(Integer.parseInt(row.group(1))).as(where).isEqualTo(counted[0]);
      String right = Objects.requireNonNullElse(row.group(2), "all ").strip();
      int number =
          right.equals("all") ? counted[0] : right.equals("none") ? 0 : Integer.parseInt(right);
      assertThat(number).as(where).isEqualTo(counted[1]);
    }
  }

  private static void axis(String where, TellingWords words, Truth truth, Discrimination task) {
    double chance = task == Discrimination.TRIANGLE ? 1.0 / 3 : 0.5;
    String mean = words.whyTitle().replaceAll("[^\\d.]", "");
    assertThat(Double.parseDouble(mean) - truth.trials() * chance)
        .as(where)
        .isBetween(-0.051, 0.051);
    String matters = words.axis().matters().replaceAll(":.*", "");
    double from = truth.trials() * (chance + (1 - chance) * truth.matters());
    assertThat(Double.parseDouble(matters) - from).as(where).isBetween(-0.051, 0.051);
    String[] ends = words.axis().interval().get(1).split(" to | of ");
    for (int end = 0; end < 2; end++) {
      double share = limit(truth.trials(), truth.right(), end == 0, LEVEL / 2);
      assertThat(Double.parseDouble(ends[end]) - truth.trials() * share)
          .as(where)
          .isBetween(-0.051, 0.051);
    }
    assertThat(ends[2]).as(where).isEqualTo(Integer.toString(truth.trials()));
    int least = truth.trials() + 1;
    while (least > 0
        && tail(truth.trials(), task == Discrimination.TRIANGLE ? 3 : 2, least - 1, truth.trials())
            <= LEVEL) {
      least--;
    }
    if (!truth.never()) {
      assertThat(words.why())
          .as(where)
          .contains(". " + least + " right of " + truth.trials() + " was the least");
    }
  }
}
