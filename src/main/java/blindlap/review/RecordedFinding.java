package blindlap.review;

import blindlap.session.Fact;
import blindlap.session.FindingSeenAgain;
import blindlap.session.SessionState;
import blindlap.stats.distribution.Interval;
import blindlap.stats.tell.Telling;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What an edition of the method gave for the primary measure of a session
 * (docs/method.md#editions). Figures are as said, as in the JSON of a finding: differences B minus
 * A in the unit of the measure, or ratios B to A.
 *
 * @param edition of the method, from 1
 * @param source where it is from
 * @param at when it was written down, at unsealing or at the first look under another edition;
 *     empty where no entry did
 * @param verdict the fixed string; empty without a verdict. Of a later edition it may be one that
 *     this program does not know
 * @param figures by name: estimate, low_95, high_95, low_90, high_90, p; those that do not exist
 *     are missing
 */
public record RecordedFinding(
    int edition,
    Source source,
    Optional<Instant> at,
    Optional<String> verdict,
    Map<String, BigDecimal> figures) {
  /** Where it is from. */
  public enum Source {
    /** An entry, written with the opening of the seal. */
    RECORDED,
    /** No record was kept: the edition's rules were applied again. */
    AGAIN,
    /** The finding of a data package. */
    PACKAGE
  }

  public RecordedFinding {
    figures = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(figures));
  }

  /** A figure by its name. */
  public OptionalDouble figure(String name) {
    BigDecimal figure = figures.get(name);
    return figure == null ? OptionalDouble.empty() : OptionalDouble.of(figure.doubleValue());
  }

  /** The limits of an interval, 95 or 90, as said. */
  public Optional<Interval> interval(int level) {
    OptionalDouble low = figure("low_" + level);
    OptionalDouble high = figure("high_" + level);
    return low.isPresent() && high.isPresent()
        ? Optional.of(new Interval(low.getAsDouble(), high.getAsDouble()))
        : Optional.empty();
  }

  /** The finding as the fact that keeps it. */
  public Fact.FindingRecorded fact() {
    return new Fact.FindingRecorded(edition, verdict.orElse(null), figures);
  }

  /** That this was looked at under today's edition for the first time. */
  public FindingSeenAgain seenAgain(boolean same) {
    return new FindingSeenAgain(Edition.CURRENT, same, edition, verdict.orElse(null), figures);
  }

  /** What today's edition gives; without figures where nothing can be compared. */
  public static RecordedFinding today(DayRecord day) {
    if (TellingAnalysis.is(day.plan())) {
      return today(TellingAnalysis.finding(day));
    }
    if (day.plan().oneDifference()) {
      return Analysis.verdictOnly(day)
          .map(primary -> of(Edition.CURRENT, primary))
          .orElseGet(() -> nothing(Edition.CURRENT));
    }
    return Analysis.manyOnly(day)
        .map(many -> of(Edition.CURRENT, many))
        .orElseGet(() -> nothing(Edition.CURRENT));
  }

  /** The same of a finding that is there already. */
  public static RecordedFinding today(Finding finding) {
    if (finding.primary().isPresent()) {
      return of(Edition.CURRENT, finding.primary().get());
    }
    return finding.many().stream()
        .filter(many -> many.measure().role() == blindlap.plan.Measure.Role.PRIMARY)
        .findFirst()
        .map(many -> of(Edition.CURRENT, many))
        .orElseGet(() -> nothing(Edition.CURRENT));
  }

  /**
   * The same of a telling run: its figures are {@code correct}, {@code trials}, {@code p}, and of
   * the share of trials really told {@code estimate}, {@code low_90} and {@code high_90}.
   */
  public static RecordedFinding today(TellingFinding finding) {
    Telling telling = finding.telling();
    Map<String, BigDecimal> figures = new LinkedHashMap<>();
    put(figures, "correct", telling.right());
    put(figures, "trials", telling.run().number());
    put(figures, "estimate", telling.share());
    put(figures, 90, Optional.of(telling.limits()));
    put(figures, "p", telling.p());
    return new RecordedFinding(
        Edition.CURRENT,
        Source.AGAIN,
        Optional.empty(),
        Optional.of(telling.verdict().text()),
        figures);
  }

  private static RecordedFinding nothing(int edition) {
    return new RecordedFinding(edition, Source.AGAIN, Optional.empty(), Optional.empty(), Map.of());
  }

  private static RecordedFinding of(int edition, Comparison primary) {
    Map<String, BigDecimal> figures = new LinkedHashMap<>();
    put(figures, "estimate", primary.estimate());
    put(figures, 95, primary.interval(0.95));
    put(figures, 90, primary.interval(0.90));
    // The first edition printed a p although too many values were missing for a test.
    if (primary.tested() || edition == Edition.FIRST) {
      put(figures, "p", primary.p());
    }
    return new RecordedFinding(
        edition, Source.AGAIN, Optional.empty(), primary.verdictText(), figures);
  }

  private static RecordedFinding of(int edition, ManyComparison many) {
    Map<String, BigDecimal> figures = new LinkedHashMap<>();
    if (many.tested()) {
      put(figures, "p", many.result().p());
    }
    return new RecordedFinding(edition, Source.AGAIN, Optional.empty(), Optional.empty(), figures);
  }

  private static void put(Map<String, BigDecimal> figures, int level, Optional<Interval> interval) {
    interval.ifPresent(
        limits -> {
          put(figures, "low_" + level, limits.low());
          put(figures, "high_" + level, limits.high());
        });
  }

  private static void put(Map<String, BigDecimal> figures, String name, double value) {
    if (Double.isFinite(value)) {
      figures.put(name, BigDecimal.valueOf(value));
    }
  }

  /**
   * What a session was found to be when it was unsealed: by its record; where none was kept, as it
   * was worked out at the first look under another edition, or else by the rules of the first
   * edition. Empty while it is sealed, and where neither is to be had.
   */
  public static Optional<RecordedFinding> atUnsealing(SessionState state, DayRecord day) {
    Optional<Fact.FindingRecorded> kept = state.recordedFinding();
    if (kept.isPresent()) {
      return kept.map(fact -> of(fact, FirstLook.at(state, fact)));
    }
    Optional<FindingSeenAgain> seen = state.seenAgain().values().stream().findFirst();
    return seen.isPresent() ? seen.map(fact -> of(fact, FirstLook.at(state, fact))) : first(day);
  }

  private static RecordedFinding of(FindingSeenAgain fact, Optional<Instant> at) {
    return new RecordedFinding(
        fact.unsealedUnder(),
        Source.AGAIN,
        at,
        Optional.ofNullable(fact.verdict()),
        fact.figures());
  }

  /**
   * What the first edition gives for the primary measure of two setups. But for the p beside too
   * many missing values its rules for that are those of today (docs/method.md#editions says which
   * ties excepted), so they are run as they stand; of three and more setups nothing was kept.
   */
  private static Optional<RecordedFinding> first(DayRecord day) {
    return day.plan().setups().size() == 2 && !TellingAnalysis.is(day.plan())
        ? Analysis.earlierVerdictOnly(day).map(primary -> of(Edition.FIRST, primary))
        : Optional.empty();
  }

  private static RecordedFinding of(Fact.FindingRecorded fact, Optional<Instant> at) {
    return new RecordedFinding(
        fact.edition(), Source.RECORDED, at, Optional.ofNullable(fact.verdict()), fact.figures());
  }
}
