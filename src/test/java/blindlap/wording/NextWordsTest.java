package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.review.Analysis;
import blindlap.review.Comparison;
import blindlap.review.Days;
import blindlap.review.Finding;
import blindlap.review.WhatNext;
import blindlap.stats.compare.Scale;
import blindlap.stats.compare.Verdict;
import blindlap.stats.order.Orders;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Numbers in the sentences of what more riding could show are those that were worked out. */
class NextWordsTest {
  private static final String N = "(\\d+(?:\\.\\d+)?)";
  private static final Pattern DAYS =
      Pattern.compile(
          "one more such day: N\\S* ?\\S* or more on 8 of 10 \\(N to N\\P{Alnum}*\\w*\\P{Alnum}*; 3 such days, declared as a series: N\\S* ?\\S* or more \\(N to N"
              .replace("N", N));

  private static Finding finding(Scale scale, Rule rule, Random random) {
    Measure measure =
        Days.measure(
            "lap time",
            Measure.Kind.LAP_TIME,
            Measure.Role.PRIMARY,
            Measure.Better.LOWER,
            "1",
            scale);
    Plan plan = Days.plan(rule, List.of(measure));
    String order = Days.order(rule, random);
    double[] effects = {0, random.nextDouble() * 2};
    double noise = Math.exp(3 * random.nextDouble() - 1.5);
    double[] values = Days.values(Orders.parse(order), 90, effects, noise, 2, random);
    return Analysis.of(Days.day(plan, order, Map.of("lap time", values)));
  }

  private static double said(Scale scale, double shift) {
    return scale == Scale.RATIO ? 100 * Math.expm1(shift) : shift;
  }

  @Test
  void overRandomDaysEveryFigureIsWithinItsLastDigit() {
    Random random = new Random(20261127);
    int checked = 0;
    for (Scale scale : Scale.values()) {
      for (int i = 0; i < 60; i++) {
        Rule rule = Rule.blocks(2, 12 + 4 * random.nextInt(2), 4);
        Finding finding = finding(scale, rule, random);
        Comparison primary = finding.primary().orElseThrow();
        List<String> lines = new NextWords(finding).lines();
        WhatNext next = WhatNext.of(finding.day(), primary).orElse(null);
        if (next == null) {
          assertThat(lines).noneMatch(line -> line.contains("8 of 10"));
          continue;
        }
        Matcher days = DAYS.matcher(lines.get(0));
        assertThat(days.find()).as(lines.get(0)).isTrue();
        List<Double> numbers = new ArrayList<>();
        for (WhatNext.Days each : next.days()) {
          numbers.add(each.difference());
          numbers.add(each.range().low());
          numbers.add(each.range().high());
        }
        for (int at = 0; at < numbers.size(); at++) {
          String text = days.group(at + 1);
          int point = text.indexOf('.');
          double half = 0.5 * Math.pow(10, point < 0 ? 0 : -(text.length() - point - 1));
          assertThat(Double.parseDouble(text))
              .as(lines.get(0))
              .isCloseTo(said(scale, numbers.get(at)), within(half + 1e-9))
              .isPositive();
        }
        assertThat(lines.get(0)).contains("from " + next.noise().df() + " independent values");
        checked++;
      }
    }
    assertThat(checked).isGreaterThan(40);
  }

  @Test
  void nothingIsSaidWhereTheValuesDoNotVary() {
    Rule rule = Rule.blocks(2, 12, 4);
    Measure measure =
        Days.measure(
            "lap time",
            Measure.Kind.LAP_TIME,
            Measure.Role.PRIMARY,
            Measure.Better.LOWER,
            "1",
            Scale.RAW);
    Plan plan = Days.plan(rule, List.of(measure));
    double[] same = new double[12];
    java.util.Arrays.fill(same, 90);
    Finding finding =
        Analysis.of(Days.day(plan, Days.order(rule, new Random(1)), Map.of("lap time", same)));

    assertThat(finding.primary().orElseThrow().verdict()).hasValue(Verdict.NO_VARIATION);
    assertThat(new FindingText(finding).next()).isEmpty();
  }

  @Test
  void noWordForecastsHowTheQuestionEnds() {
    Random random = new Random(3);
    for (int i = 0; i < 40; i++) {
      List<String> lines = new NextWords(finding(Scale.RAW, Rule.blocks(2, 12, 4), random)).lines();
      assertThat(lines)
          .noneMatch(line -> line.contains("settle it") || line.contains("worth more days"));
    }
  }
}
