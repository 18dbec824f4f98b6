package blindlap.wording;

import blindlap.plan.Setup;
import blindlap.review.SeriesFinding;
import blindlap.stats.Interval;
import blindlap.stats.RankAgreement;
import blindlap.stats.RidersInGeneral;
import blindlap.stats.StratifiedSessions;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A series in sentences. What holds for these riders on these days and what holds for riders in
 * general are never said in one breath.
 */
public final class SeriesWords {
  private static final Words WORDS = Words.of("series");

  private final SeriesFinding finding;
  private final List<String> setups;

  public SeriesWords(SeriesFinding finding) {
    this.finding = finding;
    this.setups = finding.setups().stream().map(Setup::name).toList();
  }

  /** A sentence of the bundle. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** The answer first, then riders, then every session. */
  public List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add(headline());
    finding.these().ifPresent(these -> lines.add(these(these)));
    finding.general().ifPresent(general -> lines.add(general(general)));
    riders(lines);
    finding.agreement().ifPresent(agreement -> lines.add(agreement(agreement)));
    lines.add(
        finding
            .declared()
            .map(n -> WORDS.say("declared", n, finding.pooled()))
            .orElse(WORDS.say("undeclared", finding.pooled())));
    finding.parts().forEach(part -> lines.add("  " + part(part)));
    return lines;
  }

  /** The verdict, or why there is none. */
  public String headline() {
    String pair = String.join(" and ", setups);
    return finding
        .verdict()
        .map(
            verdict ->
                WORDS.say(
                    finding.riders().size() == 1 ? "headline.one" : "headline.riders",
                    pair,
                    FindingWords.phrase(verdict),
                    finding.riders().get(0).name(),
                    finding.pooled(),
                    finding.riders().size()))
        .orElseGet(
            () ->
                WORDS.say(
                    "none." + finding.noVerdict().map(Enum::name).orElse("NO_MARGIN"),
                    pair,
                    finding.pooled(),
                    finding.declared().map(String::valueOf).orElse(""),
                    finding.riders().size()));
  }

  private DifferenceWords words(
      double estimate, List<Optional<Interval>> intervals, double spread) {
    return new DifferenceWords(setups, finding.measure(), estimate, intervals, spread);
  }

  private String these(StratifiedSessions these) {
    Optional<Interval> wide = these.curve().interval(0.95);
    Optional<Interval> ninety = these.curve().interval(0.90);
    DifferenceWords words = words(these.estimate(), List.of(wide, ninety), 0);
    double p = these.curve().p(0);
    String key = finding.riders().size() == 1 ? "these.one" : "these.riders";
    return WORDS.say(
        key + (these.sampled() ? ".sampled" : ""),
        words.difference(),
        words.interval(wide),
        words.interval(ninety),
        Figures.p(p),
        Figures.count(these.count()),
        Figures.count(these.sampling().draws()),
        Figures.p(these.pError(p)));
  }

  private String general(RidersInGeneral general) {
    DifferenceWords words =
        words(
            general.estimate(),
            List.of(Optional.of(general.interval95()), Optional.of(general.interval90())),
            0);
    return WORDS.say(
        "general." + general.method().name(),
        words.difference(),
        words.interval(Optional.of(general.interval95())),
        words.interval(Optional.of(general.interval90())),
        general.riders(),
        general.tooFew() ? WORDS.say("general.few", general.riders()) : "");
  }

  private void riders(List<String> lines) {
    for (SeriesFinding.Rider rider : finding.riders()) {
      if (Double.isNaN(rider.estimate())) {
        continue;
      }
      DifferenceWords words = words(rider.estimate(), List.of(), rider.standardError());
      lines.add("  " + WORDS.say("rider", rider.name(), words.difference(), rider.sessions()));
    }
    if (finding.riders().size() > 1 && setups.size() == 2) {
      int second = finding.ridersWith(1);
      lines.add(
          WORDS.say(
              "signs",
              finding.riders().size(),
              Math.max(second, finding.riders().size() - second)));
    }
  }

  private static String agreement(RankAgreement agreement) {
    return WORDS.say(
        "agreement", Figures.number(agreement.kendallW(), 2), Figures.p(agreement.p()));
  }

  private String part(SeriesFinding.Part part) {
    String result =
        part.estimate()
            .map(
                estimate -> {
                  DifferenceWords words = words(estimate, List.of(part.interval95()), 1);
                  return WORDS.say(
                      "part.result", words.difference(), words.interval(part.interval95()));
                })
            .orElse("");
    return WORDS.say(
        "part",
        part.day(),
        part.rider(),
        WORDS.say("fate." + part.fate().name(), part.why()),
        result,
        part.session().substring(0, 8));
  }
}
