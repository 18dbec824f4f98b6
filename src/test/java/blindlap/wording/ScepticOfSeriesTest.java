package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.BlindLevel;
import blindlap.plan.Measure;
import blindlap.plan.Rule;
import blindlap.review.Days;
import blindlap.review.SeriesFinding;
import blindlap.review.SeriesPeeks;
import blindlap.session.day.Step;
import blindlap.stats.compare.Scale;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import blindlap.stats.pool.PooledSession;
import blindlap.stats.pool.RidersInGeneral;
import blindlap.stats.pool.StratifiedSessions;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** No sentence of a series says more than its numbers, read by one who believes none of them. */
class ScepticOfSeriesTest {
  private static final int SERIES = 120;
  private static final Rule RULE = Rule.blocks(2, 12, 4);
  private static final Sampling FEW = Sampling.PREFERRED;

  /** What is wrong with a sentence of a series beside its claims; empty if nothing is. */
  private static List<String> complaints(String text, SeriesFinding finding) {
    List<String> wrong = new ArrayList<>();
    boolean riders = finding.riders().size() > 1;
    double estimate =
        riders
            ? finding.general().orElseThrow().estimate()
            : finding.these().orElseThrow().estimate();
    Interval ninety =
        riders
            ? finding.general().orElseThrow().interval90()
            : finding.these().orElseThrow().curve().interval(0.9).orElseThrow();
    Interval band = finding.band().orElseThrow();
    String larger = "Shock " + (estimate > 0 ? "L" : "K");
    String smaller = "Shock " + (estimate > 0 ? "K" : "L");
    Measure.Better better = finding.measure().better();
    String best = better == Measure.Better.LOWER ? smaller : larger;
    String worst = better == Measure.Better.LOWER ? larger : smaller;
    boolean beyond = ninety.low() > band.high() || ninety.high() < band.low();
    if (text.contains("real and worthwhile")) {
      if (!beyond
          || better == Measure.Better.NEITHER
          || !text.replace("Unblinded (open): ", "").startsWith(best)) {
        wrong.add("worthwhile");
      }
    }
    if (text.contains("large enough to matter")) {
      boolean named = text.contains(": " + worst + " is slower");
      if (!beyond || better != Measure.Better.NEITHER && !named) {
        wrong.add("matters");
      }
    }
    Matcher slower = Pattern.compile("(Shock [KL]) is slower").matcher(text);
    if (slower.find()
        && (better == Measure.Better.NEITHER || !slower.group(1).equals(worst) || !beyond)) {
      wrong.add("slower");
    }
    count("on (?:this|these) (\\d+) days?\\.", text, finding.pooled(), wrong);
    count("from (\\d+) riders", text, finding.riders().size(), wrong);
    count("these (\\d+) days", text, finding.pooled(), wrong);
    count("(\\d+) (?:is|are) pooled", text, finding.pooled(), wrong);
    count("mean of (\\d+) riders", text, finding.riders().size(), wrong);
    long up = finding.riders().stream().filter(r -> r.estimate() > 0).count();
    long down = finding.riders().stream().filter(r -> r.estimate() < 0).count();
    count("(\\d+) of \\d+ riders point", text, Math.max(up, down), wrong);
    caused(text, "Unblinded", SeriesFinding.Remark.UNBLINDED, finding, wrong);
    caused(text, "the blind was broken", SeriesFinding.Remark.BLIND_BROKEN, finding, wrong);
    caused(text, "on another setup than", SeriesFinding.Remark.WRONG_FIT, finding, wrong);
    return wrong;
  }

  private static void count(String pattern, String text, long counted, List<String> wrong) {
    Matcher said = Pattern.compile(pattern).matcher(text);
    if (said.find() && Long.parseLong(said.group(1)) != counted) {
      wrong.add("number");
    }
  }

  private static void caused(
      String text,
      String words,
      SeriesFinding.Remark remark,
      SeriesFinding finding,
      List<String> wrong) {
    boolean cause =
        finding.parts().stream()
            .anyMatch(p -> p.fate() == SeriesFinding.Fate.POOLED && p.remarks().contains(remark));
    if (text.contains(words) && !cause) {
      wrong.add("no cause");
    }
  }

  private static Sceptic.Truth truth(
      Measure measure, double estimate, double p, Optional<Interval> wide) {
    return new Sceptic.Truth(measure, "Shock K", "Shock L", estimate, p, p, wide);
  }

  private static double byInterval(Optional<Interval> wide) {
    return wide.filter(i -> i.low() > 0 || i.high() < 0).isPresent() ? 0.01 : 1;
  }

  private static void believed(String text, SeriesFinding finding, Sceptic.Truth truth) {
    assertThat(Sceptic.complaints(text, List.of(truth))).as(text).isEmpty();
    assertThat(complaints(text, finding)).as(text).isEmpty();
  }

  @Test
  void noSentenceOfASeriesSaysMoreThanItsNumbers() {
    int worthwhile = 0;
    int matters = 0;
    int open = 0;
    for (int seed = 0; seed < SERIES; seed++) {
      SeriesFinding finding = series(new Random(15_485_863L * seed));
      SeriesWords words = new SeriesWords(finding);
      StratifiedSessions these = finding.these().orElseThrow();
      double p = these.curve().p(0);
      Sceptic.Truth days =
          truth(finding.measure(), these.estimate(), p, these.curve().interval(0.95));
      Optional<Sceptic.Truth> general =
          finding
              .general()
              .map(
                  g ->
                      truth(
                          finding.measure(),
                          g.estimate(),
                          byInterval(Optional.of(g.interval95())),
                          Optional.of(g.interval95())));
      String headline = words.headline().text();
      believed(headline, finding, general.orElse(days));
      worthwhile += headline.contains("real and worthwhile") ? 1 : 0;
      matters += headline.contains("is slower") ? 1 : 0;
      open += headline.contains("not settled") ? 1 : 0;
      List<String> lead = words.lead();
      believed(lead.get(0), finding, days);
      if (general.isPresent()) {
        believed(lead.get(1), finding, general.get());
      }
      List<String> riders = words.riders();
      for (int i = 0; i < riders.size() - 1; i++) {
        SeriesFinding.Rider rider = finding.riders().get(i);
        believed(
            riders.get(i),
            finding,
            truth(
                finding.measure(),
                rider.estimate(),
                byInterval(rider.interval95()),
                rider.interval95()));
      }
      words.lines().forEach(line -> assertThat(complaints(line, finding)).as(line).isEmpty());
      rows(words, finding);
      for (SeriesFinding.Remark remark : SeriesFinding.Remark.values()) {
        String said = SeriesWords.say("circumstance." + remark.name());
        assertThat(words.circumstances().contains(said)).isEqualTo(finding.has(remark));
      }
    }
    assertThat(worthwhile).isGreaterThan(5);
    assertThat(matters).isGreaterThan(2);
    assertThat(open).isGreaterThan(5);
  }

  private static void rows(SeriesWords words, SeriesFinding finding) {
    for (int i = 0; i < finding.parts().size(); i++) {
      SeriesFinding.Part part = finding.parts().get(i);
      String line = words.rows().get(i).line();
      assertThat(part.estimate().isPresent()).isEqualTo(line.contains(" than "));
      part.estimate()
          .ifPresent(
              e ->
                  assertThat(
                          Sceptic.complaints(
                              line,
                              List.of(
                                  truth(
                                      finding.measure(),
                                      e,
                                      byInterval(part.interval95()),
                                      part.interval95()))))
                      .as(line)
                      .isEmpty());
      assertThat(line.contains(", unblinded"))
          .isEqualTo(part.remarks().contains(SeriesFinding.Remark.UNBLINDED));
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "LOWER  |Shock L took 6.2 % longer than Shock K: real, and large enough to matter, for R."
            + " Lind on this 1 day. | matters",
        "LOWER  |Shock L took 6.2 % longer than Shock K: real, and large enough to matter: Shock K"
            + " is slower, for R. Lind on this 1 day. | slower",
        "LOWER  |Shock L took 6.2 % longer than Shock K: real, and large enough to matter: Shock L"
            + " is slower, for R. Lind on these 2 days. | number",
        "LOWER  |Shock L took 6.2 % longer than Shock K: real and worthwhile, for R. Lind on this 1"
            + " day. | worthwhile",
        "NEITHER|Shock L took 6.2 % longer than Shock K: real, and large enough to matter: Shock L"
            + " is slower, for R. Lind on this 1 day. | slower",
        "LOWER  |Unblinded (open): Shock L took 6.2 % longer than Shock K. | no cause",
        "LOWER  |In at least one pooled session the blind was broken; its own review holds the"
            + " result. | no cause",
        "LOWER  |Declared before riding: 1 session; 2 are pooled. | number",
        "LOWER  |0 of 1 riders point the same way. | number",
        "LOWER  |Shock L took 6.2 % longer than Shock K: real, and large enough to matter: Shock L"
            + " is slower, for R. Lind on this 1 day. |",
        "NEITHER|Shock L took 6.2 % longer than Shock K: real, and large enough to matter, for R."
            + " Lind on this 1 day. |",
      })
  void aPlantedSentenceOfASeriesThatSaysMoreIsFoundAndAnHonestOneIsNot(
      Measure.Better better, String sentence, String complaint) {
    Measure measure =
        Days.measure(
            "lap time", Measure.Kind.LAP_TIME, Measure.Role.PRIMARY, better, "1", Scale.RATIO);
    SeriesFinding finding = slower(measure);
    List<String> found = complaints(sentence, finding);
    if (complaint == null) {
      assertThat(found).isEmpty();
    } else {
      assertThat(found).contains(complaint);
    }
  }

  @ParameterizedTest
  @CsvSource({"LOWER,true", "NEITHER,false"})
  void theHeadlineOfRatiosNamesTheWorseSetupWhereOneDirectionIsBetter(
      Measure.Better better, boolean named) {
    Measure measure =
        Days.measure(
            "lap time", Measure.Kind.LAP_TIME, Measure.Role.PRIMARY, better, "1", Scale.RATIO);
    String headline = new SeriesWords(slower(measure)).headline().text();
    assertThat(headline)
        .startsWith("Shock L took ")
        .contains("% longer a lap than Shock K: real, and large enough to matter")
        .endsWith(" for R. Lind on this 1 day.");
    assertThat(headline.contains(": Shock L is slower,")).isEqualTo(named);
  }

  /** One session on whose every stint L took 6 % longer. */
  private static SeriesFinding slower(Measure measure) {
    Random random = new Random(3);
    int[] order = Orders.parse(Days.order(RULE, random));
    double[] values = new double[order.length];
    Arrays.setAll(values, i -> Math.log(90) + 0.06 * order[i] + 0.001 * random.nextGaussian());
    return finding(measure, List.of("R. Lind"), List.of(session(order, values)), List.of(Set.of()));
  }

  private static PooledSession session(int[] order, double[] values) {
    boolean[] valid = new boolean[order.length];
    Arrays.fill(valid, true);
    return new PooledSession(RULE.assignments(), order, values, valid, Drift.LINE);
  }

  private static SeriesFinding series(Random random) {
    Measure measure = measure(random);
    int riders = random.nextInt(3) > 0 ? 1 : 2 + random.nextInt(4);
    int sessions = riders > 1 ? riders : 1 + random.nextInt(3);
    boolean ratio = measure.scale() == Scale.RATIO;
    double unit = ratio ? 0.01 : 1;
    double effect = (random.nextDouble() * 6 - 3) * unit;
    double noise = (0.2 + random.nextDouble()) * unit;
    List<String> names = new ArrayList<>();
    List<PooledSession> days = new ArrayList<>();
    List<Set<SeriesFinding.Remark>> remarks = new ArrayList<>();
    for (int i = 0; i < sessions; i++) {
      int[] order = Orders.parse(Days.order(RULE, random));
      double[] values = new double[order.length];
      Arrays.setAll(
          values, s -> (ratio ? 4.5 : 50) + effect * order[s] + noise * random.nextGaussian());
      names.add(riders > 1 ? "Rider " + i : "R. Lind");
      days.add(session(order, values));
      Set<SeriesFinding.Remark> said = EnumSet.noneOf(SeriesFinding.Remark.class);
      for (SeriesFinding.Remark remark : SeriesFinding.Remark.values()) {
        if (random.nextInt(5) == 0) {
          said.add(remark);
        }
      }
      remarks.add(said);
    }
    return finding(measure, names, days, remarks);
  }

  private static Measure measure(Random random) {
    Measure.Better better = Measure.Better.values()[random.nextInt(3)];
    Measure.Kind[] kinds = {
      Measure.Kind.LAP_TIME, Measure.Kind.LAP_TIME, Measure.Kind.LINE_SCALE, Measure.Kind.COUNT
    };
    Measure.Kind kind = kinds[random.nextInt(kinds.length)];
    Scale scale = kind.timed() && random.nextBoolean() ? Scale.RATIO : Scale.RAW;
    return Days.measure("it", kind, Measure.Role.PRIMARY, better, "0.5", scale);
  }

  /** A finding as the analysis makes it: sessions of one rider, or one session a rider. */
  private static SeriesFinding finding(
      Measure measure,
      List<String> names,
      List<PooledSession> days,
      List<Set<SeriesFinding.Remark>> remarks) {
    int n = days.size();
    List<TwoSetups> own = days.stream().map(ScepticOfSeriesTest::alone).toList();
    List<SeriesFinding.Part> parts = new ArrayList<>();
    List<SeriesFinding.Rider> riders = new ArrayList<>();
    boolean several = names.stream().distinct().count() > 1;
    for (int i = 0; i < n; i++) {
      TwoSetups day = own.get(i);
      Optional<Interval> wide = day.curve().interval(0.95);
      Optional<Interval> ninety = day.curve().interval(0.90);
      parts.add(
          new SeriesFinding.Part(
              "0123456" + i + "abcdef",
              LocalDate.of(2026, 10, 3 + i),
              names.get(i),
              Step.UNSEALED,
              SeriesFinding.Fate.POOLED,
              "",
              Optional.empty(),
              remarks.get(i),
              Optional.of(day.estimate()),
              wide,
              ninety));
      if (several || i == 0) {
        riders.add(
            new SeriesFinding.Rider(
                names.get(i),
                several ? 1 : n,
                day.estimate(),
                day.noiseSd() / Math.sqrt(day.c()),
                wide,
                ninety,
                day.noiseSd(),
                day.used(),
                List.of(0.0, day.estimate())));
      }
    }
    StratifiedSessions these = StratifiedSessions.compare(days, FEW);
    Optional<RidersInGeneral> general = several ? Optional.of(general(riders)) : Optional.empty();
    boolean few = several && riders.size() < RidersInGeneral.LEAST_RIDERS;
    double margin = measure.scale().margin(measure.worthwhile().doubleValue());
    Optional<Verdict> verdict =
        few
            ? Optional.empty()
            : Optional.of(
                general
                    .map(g -> g.verdict(margin))
                    .orElseGet(() -> these.verdict(-margin, margin)));
    return new SeriesFinding(
        "k-or-l",
        "Which is better?",
        new SeriesFinding.Progress(Optional.of(n), n, n, n, n, false),
        Days.plan(RULE, List.of(measure)).setups(),
        BlindLevel.HELPER,
        measure,
        parts,
        riders,
        Optional.of(these),
        general,
        Optional.empty(),
        List.of(),
        verdict,
        few ? Optional.of(SeriesFinding.NoVerdict.TOO_FEW_RIDERS) : Optional.empty(),
        Optional.empty(),
        new SeriesPeeks.Found(List.of(), false));
  }

  private static TwoSetups alone(PooledSession day) {
    Assignments set = day.set();
    return TwoSetups.compare(set, day.order(), day.values(), day.valid(), day.nuisance(), FEW);
  }

  private static RidersInGeneral general(List<SeriesFinding.Rider> riders) {
    return RidersInGeneral.of(
        riders.stream().mapToDouble(SeriesFinding.Rider::estimate).toArray(),
        riders.stream().mapToDouble(SeriesFinding.Rider::standardError).toArray(),
        riders.stream().mapToDouble(SeriesFinding.Rider::stints).toArray(),
        riders.stream().mapToDouble(SeriesFinding.Rider::noiseSd).toArray());
  }
}
