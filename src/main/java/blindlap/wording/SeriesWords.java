package blindlap.wording;

import blindlap.plan.Setup;
import blindlap.review.SeriesFinding;
import blindlap.session.SessionSummary;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import blindlap.stats.pool.RidersInGeneral;
import blindlap.stats.pool.StratifiedSessions;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Words;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A series in sentences. What holds for these riders on these days and what holds for riders in
 * general are never said in one breath.
 */
public final class SeriesWords {
  private static final Words WORDS = Words.of("series");
  private static final Words STEPS = Words.of("steps");
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("d MMM uuuu", Locale.UK);

  private final SeriesFinding finding;
  private final List<String> setups;

  public SeriesWords(SeriesFinding finding) {
    this.finding = finding;
    this.setups = finding.setups().stream().map(Setup::name).toList();
  }

  /**
   * A session of a series in a table.
   *
   * @param session its short id
   * @param day when
   * @param rider who
   * @param standing what becomes of it, with what a reader must know beside its numbers
   * @param result its difference with its interval; empty where nothing may be told
   */
  public record Row(String session, String day, String rider, String standing, String result) {
    String line() {
      return WORDS.say(
          "part", day, rider, standing, result.isEmpty() ? "" : "; " + result, session);
    }
  }

  /** A sentence of the bundle. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** "14 Nov 2026". */
  public static String date(LocalDate day) {
    return day.format(DATE);
  }

  /** Another session that asks the same, outside the series. */
  public static String elsewhere(SessionSummary session, Optional<String> abandonedBecause) {
    return Words.of("finding")
        .say(
            "session.other",
            session.day(),
            session.id().brief(),
            NotebookWords.step(session.level(), session.step()),
            abandonedBecause.orElse(""))
        .strip();
  }

  /** Names of the setups, in the order of the first plan. */
  public String setups() {
    return String.join(", ", setups);
  }

  /** The worthwhile difference as declared, with its unit; empty if none was. */
  public String worthwhile() {
    return Sizes.worthwhile(finding.measure());
  }

  /** How far a series is, for a list: "2 of 4 declared sessions closed; 0 unsealed". */
  public static String progress(SeriesFinding.Progress progress) {
    return progress
        .declared()
        .map(n -> WORDS.say("list.declared", progress.closed(), n, progress.unsealed()))
        .orElse(WORDS.say("list.undeclared", progress.closed(), progress.unsealed()));
  }

  /** The answer first, then riders, then every session. */
  public List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add((headline().text() + " " + reason()).strip());
    lines.addAll(circumstances());
    lines.addAll(lead());
    lines.addAll(measures());
    riders().forEach(rider -> lines.add("  " + rider));
    lines.addAll(agreement());
    if (finding.open()) {
      lines.add(declared());
    }
    rows().forEach(row -> lines.add("  " + row.line()));
    return lines;
  }

  private String pair() {
    return String.join(" and ", setups);
  }

  /** The answer: verdict, "no verdict", or that all is sealed. */
  public Headline headline() {
    SeriesFinding.Progress progress = finding.progress();
    if (!finding.open()) {
      String key = "headline." + progress.stage().name();
      return Headline.of(
          WORDS.say(key, Headline.PLACE, progress.ridden(), progress.sessions()),
          WORDS.say(key + ".phrase"));
    }
    if (finding.verdict().isEmpty()) {
      return Headline.of(
          WORDS.say("headline.none", pair(), Headline.PLACE), WORDS.say("headline.none.phrase"));
    }
    Verdict verdict = finding.verdict().get();
    boolean one = finding.riders().size() == 1;
    boolean real = verdict == Verdict.REAL_AND_WORTHWHILE && !VerdictWords.capped(finding.level());
    String worse = real ? pooledWords().firstIfWorse().orElse("") : "";
    String subject =
        switch (verdict) {
          case REAL_AND_WORTHWHILE, REAL_BUT_SMALL, DIRECTION_KNOWN -> pooledWords().difference();
          case NO_WORTHWHILE_DIFFERENCE, NOT_SETTLED, NO_VARIATION, COULD_NOT_SHOW -> pair();
        };
    Headline headline =
        Headline.of(
            WORDS.say(
                (one ? "headline.one" : "headline.riders") + (worse.isEmpty() ? "" : ".worse"),
                subject,
                Headline.PLACE,
                finding.riders().get(0).name(),
                finding.pooled(),
                finding.riders().size(),
                worse),
            VerdictWords.phrase(finding.level(), finding.measure(), verdict));
    String harmed = new SeriesMeasureWords(finding).harmed();
    if (!harmed.isEmpty()) {
      headline = headline.continued(harmed + ".");
    }
    return headline.with(LevelWords.label(finding.level()), "");
  }

  /** Why there is no verdict, or what is still waited for; empty with a verdict. */
  public String reason() {
    SeriesFinding.Progress progress = finding.progress();
    if (!finding.open()) {
      return WORDS.say(
          progress.declared().isEmpty() ? "reason.UNDECLARED" : "reason." + progress.stage().name(),
          progress.ridden(),
          progress.closed(),
          progress.unsealed(),
          progress.declared().map(String::valueOf).orElse(""));
    }
    if (finding.verdict().isPresent()) {
      return "";
    }
    return WORDS.say(
        "none." + finding.noVerdict().map(Enum::name).orElse("NO_MARGIN"),
        finding.pooled(),
        progress.declared().map(String::valueOf).orElse(""),
        finding.riders().size());
  }

  /** What a reader must know of pooled sessions before the numbers. */
  public List<String> circumstances() {
    List<String> lines = new ArrayList<>(SeriesPeekWords.lines(finding));
    for (SeriesFinding.Remark remark : SeriesFinding.Remark.values()) {
      if (finding.has(remark)) {
        lines.add(WORDS.say("circumstance." + remark.name()));
      }
    }
    return lines;
  }

  /** The measures beside the primary one, each in a sentence. */
  public List<String> measures() {
    return new SeriesMeasureWords(finding).lines();
  }

  /** These riders on these days, and riders in general, each in a sentence of its own. */
  public List<String> lead() {
    List<String> lines = new ArrayList<>();
    finding.these().ifPresent(these -> lines.add(these(these)));
    finding.general().ifPresent(general -> lines.add(general(general)));
    return lines;
  }

  private DifferenceWords words(
      double estimate, List<Optional<Interval>> intervals, double spread) {
    return new DifferenceWords(setups, finding.measure(), estimate, intervals, spread);
  }

  private DifferenceWords pooledWords() {
    Optional<RidersInGeneral> general = finding.general();
    return general.isPresent() ? words(general.get()) : words(finding.these().orElseThrow());
  }

  private DifferenceWords words(StratifiedSessions these) {
    return words(
        these.estimate(), List.of(these.curve().interval(0.95), these.curve().interval(0.90)), 0);
  }

  private DifferenceWords words(RidersInGeneral general) {
    return words(
        general.estimate(),
        List.of(Optional.of(general.interval95()), Optional.of(general.interval90())),
        0);
  }

  private String these(StratifiedSessions these) {
    DifferenceWords words = words(these);
    double p = these.curve().p(0);
    String key = finding.riders().size() == 1 ? "these.one" : "these.riders";
    return WORDS.say(
        key + (these.sampled() ? ".sampled" : ""),
        words.careful(p <= 0.05),
        words.interval(these.curve().interval(0.95)),
        words.interval(these.curve().interval(0.90)),
        DifferenceWords.p(p),
        Figures.count(these.count()),
        Figures.count(these.sampling().draws()),
        Figures.p(these.pError(p)),
        near(these, p));
  }

  /** A sampled p beside .05 is said to be so: other draws could fall on the other side. */
  private static String near(StratifiedSessions these, double p) {
    return these.sampled() && Math.abs(p - 0.05) <= 3 * these.pError(0.05)
        ? " " + WORDS.say("these.near")
        : "";
  }

  private String general(RidersInGeneral general) {
    DifferenceWords words = words(general);
    return WORDS
        .say(
            "general." + general.method().name(),
            words.careful(shown(Optional.of(general.interval95()))),
            words.interval(Optional.of(general.interval95())),
            words.interval(Optional.of(general.interval90())),
            general.riders(),
            general.tooFew() ? WORDS.say("general.few", general.riders()) : "")
        .strip();
  }

  /**
   * Every rider in a line, and how many point the same way; empty for one rider, of whom the pooled
   * sentence tells.
   */
  public List<String> riders() {
    List<String> lines = new ArrayList<>();
    if (finding.riders().size() < 2) {
      return lines;
    }
    for (SeriesFinding.Rider rider : finding.riders()) {
      if (Double.isNaN(rider.estimate())) {
        continue;
      }
      DifferenceWords words =
          words(
              rider.estimate(),
              List.of(rider.interval95(), rider.interval90()),
              rider.standardError());
      lines.add(
          WORDS.say(
              rider.sessions() == 1 ? "rider.one" : "rider",
              rider.name(),
              words.careful(shown(rider.interval95())),
              words.interval(rider.interval95()),
              rider.sessions()));
    }
    if (setups.size() == 2) {
      int second = finding.ridersWith(1);
      lines.add(
          WORDS.say(
              "signs",
              finding.riders().size(),
              Math.max(second, finding.riders().size() - second)));
    }
    return lines;
  }

  /** How well riders agree on the ranking of three and more setups; empty where not measured. */
  public List<String> agreement() {
    return RankingWords.lines(finding, setups);
  }

  /** What was declared, and how many sessions are pooled. */
  public String declared() {
    return finding
        .declared()
        .map(n -> WORDS.say("declared", n, finding.pooled()))
        .orElse(WORDS.say("undeclared", finding.pooled()));
  }

  /** Every session of the series, in the order of their commits. */
  public List<Row> rows() {
    return finding.parts().stream().map(this::row).toList();
  }

  private Row row(SeriesFinding.Part part) {
    StringBuilder standing =
        new StringBuilder(
            WORDS.say("fate." + part.fate().name(), part.why(), STEPS.say(part.step().name())));
    finding.weight(part).ifPresent(w -> standing.append(WORDS.say("weight", Figures.inHundred(w))));
    part.remarks().forEach(remark -> standing.append(WORDS.say("remark." + remark.name())));
    part.refusal().ifPresent(r -> standing.append(WORDS.say("refusal", Problems.sentence(r))));
    return new Row(
        part.session().substring(0, 8),
        date(part.day()),
        part.rider(),
        standing.toString(),
        part.estimate().map(estimate -> result(estimate, part.interval95())).orElse(""));
  }

  private String result(double estimate, Optional<Interval> wide) {
    DifferenceWords words = words(estimate, List.of(wide), 1);
    return WORDS.say(
        shown(wide) ? "part.result" : "part.open", words.difference(), words.interval(wide));
  }

  /** A difference is shown where its 95 % interval leaves out "no difference". */
  private static boolean shown(Optional<Interval> wide) {
    return wide.filter(i -> i.low() > 0 || i.high() < 0).isPresent();
  }

  /** "Shock L faster", for the two sides of an axis; side −1 is below zero (second less first). */
  public String side(int side) {
    return words(side, List.of(), 1).side(side);
  }

  /** "−2.0 s", second less first, for a picture. */
  public String signed(double estimate, Optional<Interval> wide) {
    return words(estimate, List.of(wide), 1).signed();
  }
}
