package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.review.Comparison;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.review.ManyComparison;
import blindlap.review.NeededStints;
import blindlap.review.WhatNext;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What more riding could show, in sentences: what one and more such days could, and what helps. */
final class NextWords {
  private static final Words WORDS = FindingWords.WORDS;

  private final Finding finding;
  private final Plan plan;

  NextWords(Finding finding) {
    this.finding = finding;
    DayRecord day = finding.day();
    this.plan = day.plan();
  }

  /** Nothing where more riding is no question, as without variation. */
  List<String> lines() {
    if (finding.day().nullRun()) {
      return List.of(WORDS.say("next.null"));
    }
    List<String> lines = new ArrayList<>();
    Optional<Verdict> verdict = finding.primary().flatMap(Comparison::verdict);
    if (verdict.filter(v -> v == Verdict.COULD_NOT_SHOW).isPresent()) {
      lines.add(WORDS.say("next.could.not"));
    } else if (verdict.filter(v -> v.settled() && v != Verdict.NO_VARIATION).isPresent()) {
      lines.add(new SettledWords(finding).said());
    }
    finding.primary().ifPresent(p -> say(WhatNext.of(finding.day(), p), p.measure(), lines));
    many().ifPresent(m -> say(WhatNext.of(finding.day(), m), m.measure(), lines));
    return lines;
  }

  private Optional<ManyComparison> many() {
    return finding.many().stream()
        .filter(m -> m.measure().role() == Measure.Role.PRIMARY)
        .findFirst();
  }

  private void say(Optional<WhatNext> next, Measure measure, List<String> lines) {
    next.ifPresent(
        n -> {
          Amounts amounts = new Amounts(measure, n);
          lines.add(days(n, amounts));
          n.needed().ifPresent(needed -> lines.add(needed(needed, amounts)));
          if (!n.gains().isEmpty()) {
            lines.add(
                WORDS.say(
                    "next.gains",
                    String.join("; ", n.gains().stream().map(g -> gain(g, amounts)).toList())));
          }
          if (plan.setups().size() == 2 && plan.series() == null) {
            lines.add(WORDS.say("next.outside"));
          }
        });
  }

  private String days(WhatNext next, Amounts amounts) {
    int df = next.noise().df();
    WhatNext.Days one = next.days().get(0);
    if (next.days().size() == 1) {
      String key = plan.steps() == null ? "next.days.many" : "next.days.steps";
      return Double.isNaN(one.difference())
          ? WORDS.say(key + ".none")
          : WORDS.say(key, amounts.of(one.difference()), amounts.range(one.range()), df);
    }
    WhatNext.Days more = next.days().get(1);
    if (Double.isNaN(more.difference())) {
      return WORDS.say("next.days.none", more.more());
    }
    String pooled = amounts.of(more.difference());
    String range = amounts.range(more.range());
    return Double.isNaN(one.difference())
        ? WORDS.say("next.days.pooled", more.more(), pooled, range, df)
        : WORDS.say(
            "next.days",
            amounts.of(one.difference()),
            amounts.range(one.range()),
            more.more(),
            pooled,
            range,
            df);
  }

  /** How many stints a repeat at the same levels needs; never another level. */
  private static String needed(NeededStints needed, Amounts amounts) {
    String worthwhile = amounts.of(needed.worthwhile());
    if (needed.stints().isEmpty()) {
      return needed.fewest().isEmpty()
          ? WORDS.say("next.needed.beyond", worthwhile, Rule.MOST_STINTS)
          : WORDS.say(
              "next.needed.hardly", worthwhile, Rule.MOST_STINTS, needed.fewest().getAsInt());
    }
    int stints = needed.stints().getAsInt();
    int fewest = needed.fewest().orElse(stints);
    return needed.most().isEmpty()
        ? WORDS.say("next.needed.open", worthwhile, stints, fewest, Rule.MOST_STINTS)
        : WORDS.say("next.needed", worthwhile, stints, fewest, needed.most().getAsInt());
  }

  private String gain(WhatNext.Gain gain, Amounts amounts) {
    String key = "next.gain." + gain.change();
    String then =
        gain.best() == gain.worst() || Double.isNaN(gain.worst())
            ? amounts.of(gain.best())
            : WORDS.say("next.between", amounts.bare(gain.best()), amounts.of(gain.worst()));
    return WORDS.say(gain.fits() ? key : key + ".beyond", gain.from(), gain.to(), then);
  }

  /** Differences of one measure, in its unit, rounded alike: to the digits of the smallest. */
  private static final class Amounts {
    private final Measure measure;
    private static final int MOST_DECIMALS = 4;
    private final int decimals;

    Amounts(Measure measure, WhatNext next) {
      this.measure = measure;
      double least = Double.POSITIVE_INFINITY;
      for (WhatNext.Days each : next.days()) {
        least = Math.min(least, Double.isNaN(each.difference()) ? least : each.range().low());
      }
      for (WhatNext.Gain each : next.gains()) {
        least = Math.min(least, each.best());
      }
      int enough = Figures.decimals(Sizes.size(measure, least));
      // "1.0 s" beside a worthwhile 1.0 s that it does not reach would read as if it did.
      while (enough < MOST_DECIMALS && turned(next, enough)) {
        enough++;
      }
      this.decimals = enough;
    }

    private boolean turned(WhatNext next, int places) {
      double shown = Sizes.size(measure, next.days().get(0).difference());
      double wanted =
          next.needed().map(n -> Sizes.size(measure, n.worthwhile())).orElse(Double.NaN);
      return !Double.isNaN(shown)
          && !Double.isNaN(wanted)
          && shown > wanted
          && Figures.number(shown, places).equals(Figures.number(wanted, places));
    }

    String bare(double difference) {
      return Figures.number(Sizes.size(measure, difference), decimals);
    }

    String of(double difference) {
      String number = bare(difference);
      return switch (measure.scale()) {
        case RATIO -> AnswerWords.say("per.cent", number);
        case RAW -> AnswerWords.say("with.unit", number, measure.unit());
      };
    }

    String range(Interval interval) {
      return WORDS.say("next.between", bare(interval.low()), of(interval.high()));
    }
  }
}
