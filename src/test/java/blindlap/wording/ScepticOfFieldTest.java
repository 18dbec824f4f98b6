package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Measure;
import blindlap.review.FieldDays;
import blindlap.review.FieldFinding;
import blindlap.review.FieldFinding.Standing;
import blindlap.stats.compare.Scale;
import blindlap.stats.distribution.Interval;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** No sentence of a field says more than its numbers, read by one who believes none of them. */
class ScepticOfFieldTest {
  private static final int FIELDS = 150;
  private static final String NAME = "Shock [K-N]";
  private static final List<List<String>> SHAPES =
      List.of(
          List.of("KL", "KM"),
          List.of("KL", "LM", "KM"),
          List.of("KL", "KM", "MN"),
          List.of("KL", "LM", "MN"),
          List.of("KLM", "LMN"),
          List.of("KL", "KL", "MN"),
          List.of("KL", "KM", "LM", "KN"),
          List.of("KL"));

  private static Sceptic.Truth truth(
      FieldFinding finding,
      FieldFinding.Pair pair,
      double estimate,
      Optional<Interval> wide,
      boolean apart) {
    double p = apart ? 0.01 : 1;
    return new Sceptic.Truth(
        finding.measure().orElseThrow(),
        finding.setup(pair.first()).name(),
        finding.setup(pair.second()).name(),
        estimate,
        p,
        p,
        wide);
  }

  private static boolean oneSide(Optional<Interval> wide) {
    return wide.filter(i -> i.low() > 0 || i.high() < 0).isPresent();
  }

  private static String plain(String text) {
    return text.replace("for all pairs at once ", "").replace("for all its pairs at once ", "");
  }

  /** What is wrong with the sentence of a pair, all days together or of each by itself. */
  private static List<String> pair(String sentence, FieldFinding finding, FieldFinding.Pair pair) {
    List<String> wrong = new ArrayList<>();
    boolean follows = sentence.startsWith("Follows only, over ");
    if (follows != (pair.standing() == Standing.FOLLOWS && pair.estimate().isPresent())) {
      wrong.add("follows");
    }
    if (follows != sentence.contains("only if leads do not change from day to day")) {
      wrong.add("unconditional");
    }
    String[] parts = sentence.split("On (?=\\d+ [A-Z])");
    if (pair.estimate().isPresent()) {
      wrong.addAll(
          Sceptic.complaints(
              plain(parts[0]),
              List.of(
                  truth(
                      finding,
                      pair,
                      pair.estimate().getAsDouble(),
                      pair.interval95(),
                      oneSide(pair.interval95())))));
    } else if (Pattern.compile("\\d s|than|interval").matcher(parts[0]).find()) {
      wrong.add("told");
    }
    if (parts.length - 1 != pair.own().size()) {
      wrong.add("days");
      return wrong;
    }
    for (int i = 1; i < parts.length; i++) {
      FieldFinding.OwnDay own = pair.own().get(i - 1);
      boolean apart = oneSide(own.interval95());
      wrong.addAll(
          Sceptic.complaints(
              plain(parts[i]).replace("; best estimate", ", best estimate"),
              List.of(truth(finding, pair, own.estimate(), own.interval95(), apart))));
      if (!parts[i].contains(SeriesWords.date(own.day()).substring(0, 4))) {
        wrong.add("date");
      }
    }
    return wrong;
  }

  /** "2.0 s faster", "Shock K 6.2 % longer", "not told apart". */
  private static List<String> brief(String said, FieldFinding finding, FieldFinding.Pair pair) {
    List<String> wrong = new ArrayList<>();
    Matcher claim =
        Pattern.compile(
                "(?:("
                    + NAME
                    + ") )?(?:rated )?(\\d+(?:\\.\\d+)?)(?: %| s| points?)?"
                    + " (faster|slower|longer|shorter|higher|lower|fewer|more)")
            .matcher(said);
    if (!claim.matches()) {
      if (oneSide(pair.interval95())) {
        wrong.add("silent");
      }
      return wrong;
    }
    if (!oneSide(pair.interval95())) {
      wrong.add("certainty");
    }
    Measure measure = finding.measure().orElseThrow();
    double estimate = pair.estimate().orElseThrow();
    boolean less = List.of("faster", "shorter", "lower", "fewer").contains(claim.group(3));
    boolean first = finding.setup(pair.first()).name().equals(claim.group(1));
    if (less == (first ? estimate < 0 : estimate > 0)) {
      wrong.add("direction");
    }
    boolean ratio = measure.scale() == Scale.RATIO;
    // A share is of what is left out, so what is less must be held against the larger.
    double size = Math.abs(estimate);
    if (ratio) {
      size = less ? 100 * (1 - Math.exp(-size)) : 100 * (Math.exp(size) - 1);
    }
    int decimals = claim.group(2).contains(".") ? claim.group(2).split("\\.")[1].length() : 0;
    if (Math.abs(Double.parseDouble(claim.group(2)) - size) > 0.5001 * Math.pow(10, -decimals)) {
      wrong.add("size");
    }
    return wrong;
  }

  /** What is wrong with the answer and what stands below it. */
  private static List<String> answer(Headline headline, List<String> lead, FieldFinding finding) {
    List<String> wrong = new ArrayList<>();
    for (FieldFinding.Pair pair : finding.rows()) {
      String name = finding.setup(pair.second()).name();
      boolean told = oneSide(pair.interval95());
      boolean marked = headline.phrase().contains(name);
      boolean beside = (headline.before() + headline.after()).contains(name);
      if (marked != (told && pair.standing() == Standing.RIDDEN)) {
        wrong.add("marked " + name);
      }
      if (beside != (told && pair.standing() == Standing.FOLLOWS)) {
        wrong.add("beside " + name);
      }
      if (beside && !headline.text().contains("only if leads hold")) {
        wrong.add("unconditional");
      }
    }
    for (String line : lead) {
      Matcher open =
          Pattern.compile("(.*) (?:is|are) not told apart from (" + NAME + ")\\.").matcher(line);
      if (open.matches()) {
        for (FieldFinding.Pair pair : finding.rows()) {
          if (open.group(1).contains(finding.setup(pair.second()).name())
              && (oneSide(pair.interval95()) || pair.standing() == Standing.APART)) {
            wrong.add("not told apart, though it is");
          }
        }
      }
    }
    return wrong;
  }

  private static FieldFinding field(Random random) {
    Measure.Kind kind = Measure.Kind.values()[random.nextInt(Measure.Kind.values().length)];
    Measure.Better better = Measure.Better.values()[random.nextInt(3)];
    Scale scale = kind.timed() && random.nextBoolean() ? Scale.RATIO : Scale.RAW;
    Map<Character, Double> leads = new HashMap<>();
    Map<Character, Double> changed = new HashMap<>();
    for (char shock = 'L'; shock <= 'N'; shock++) {
      leads.put(shock, random.nextDouble() * 6 - 3);
      changed.put(shock, random.nextInt(4) == 0 ? random.nextDouble() * 4 : 0);
    }
    return FieldDays.finding(
        new FieldDays.Truth(
            FieldCases.measure(kind, better, scale),
            SHAPES.get(random.nextInt(SHAPES.size())),
            FieldCases.base(kind),
            leads,
            changed,
            0.3 + random.nextDouble()),
        random);
  }

  @Test
  void noSentenceOfAFieldSaysMoreThanItsNumbers() {
    int told = 0;
    int withheld = 0;
    int follows = 0;
    for (int seed = 0; seed < FIELDS; seed++) {
      FieldFinding finding = field(new Random(7_368_787L * seed));
      FieldWords words = new FieldWords(finding);
      assertThat(answer(words.headline(), words.lead(), finding))
          .as(words.headline().text())
          .isEmpty();
      for (FieldRowWords row : words.rows()) {
        assertThat(pair(row.sentence().replaceFirst("^" + NAME + ", ", ""), finding, row.pair()))
            .as(row.sentence())
            .isEmpty();
        assertThat(brief(row.brief(), finding, row.pair())).as(row.brief()).isEmpty();
        follows += row.pair().standing() == Standing.FOLLOWS && finding.told() ? 1 : 0;
      }
      for (FieldRowWords row : words.others()) {
        assertThat(pair(row.between(), finding, row.pair())).as(row.between()).isEmpty();
      }
      String cautions = String.join(" ", words.cautions());
      assertThat(cautions.contains("at one noise SD 4 in 10")).isEqualTo(finding.told());
      assertThat(cautions.contains("do not agree")).isEqualTo(finding.withheld());
      assertThat(cautions.contains("cannot be checked"))
          .isEqualTo(finding.told() && finding.agreement().isEmpty());
      assertThat(String.join(" ", words.lines()))
          .doesNotContainPattern("\\{\\d|\\bbest (?!estimate)|winner|rank(?!ed)");
      told += finding.told() ? 1 : 0;
      withheld += finding.withheld() ? 1 : 0;
    }
    assertThat(told).isGreaterThan(60);
    assertThat(withheld).isGreaterThan(5);
    assertThat(follows).isGreaterThan(10);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Follows only, over Shock K: Shock L was 2.0 s a lap faster than Shock K. | follows",
        "All days together: Shock K was 2.0 s a lap faster than Shock L. | direction",
        "All days together: Shock L was 5.0 s a lap faster than Shock K. | size",
        "All days together: Shock K and Shock L are not told apart. | not told apart, though it is",
      })
  void aPlantedSentenceThatSaysMoreIsFound(String sentence, String complaint) {
    FieldFinding finding = java.util.Objects.requireNonNull(FieldCases.all().get("a star"));
    assertThat(pair(sentence, finding, finding.rows().get(0)))
        .anyMatch(found -> found.startsWith(complaint));
  }

  /** The share of a shorter time is another number than that of the longer. */
  @Test
  void aShareThatIsSaidOfTheShorterTimeIsFound() {
    FieldFinding finding =
        java.util.Objects.requireNonNull(FieldCases.all().get("lap time, better lower, ratio"));
    FieldFinding.Pair pair =
        finding.rows().stream()
            .filter(p -> finding.setup(p.second()).name().equals("Shock L"))
            .findFirst()
            .orElseThrow();
    FieldWords words = new FieldWords(finding);
    String said =
        words.rows().stream()
            .filter(row -> row.pair().equals(pair))
            .findFirst()
            .orElseThrow()
            .brief();
    assertThat(said).matches("Shock M \\d\\.\\d\\d? % longer");
    assertThat(brief(said, finding, pair)).isEmpty();
    assertThat(brief(said.replace("Shock M ", "").replace("longer", "slower"), finding, pair))
        .contains("direction");
    assertThat(brief("9.9 % shorter", finding, pair)).contains("size");
  }
}
