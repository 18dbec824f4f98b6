package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.review.Beside;
import blindlap.review.Edition;
import blindlap.review.RecordedFinding;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.DayWords;
import blindlap.wording.day.Words;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a session was found to be when it was unsealed, beside today's finding: said only where the
 * two differ in words or in figures as printed (docs/method.md#editions).
 */
public final class EditionWords {
  private static final Words WORDS = Words.of("finding");

  /** A record is read in notebooks and packages anywhere, and is to say the same in all. */
  private static final ZoneId ANYWHERE = ZoneId.of("UTC");

  private final Plan plan;
  private final Optional<Measure> declared;

  /** Words for sessions of a plan; a telling run has no primary measure. */
  public EditionWords(Plan plan) {
    this.plan = plan;
    this.declared = plan.primary();
  }

  /** The finding at unsealing and by which method today's is; empty where both read the same. */
  public Optional<String> beside(RecordedFinding unsealed, RecordedFinding today) {
    String then = printed(unsealed);
    if (then.equals(printed(today))) {
      return Optional.empty();
    }
    String when =
        WORDS.say(
            "edition."
                + unsealed.source().name()
                + (unsealed.source() == RecordedFinding.Source.AGAIN && unsealed.at().isPresent()
                    ? ".dated"
                    : ""),
            unsealed.at().map(EditionWords::moment).orElse(""));
    return Optional.of(
        WORDS.say("edition.beside", unsealed.edition(), then, when, today.edition()));
  }

  /** That a data package was computed by another method; empty if it was by this one. */
  public static Optional<String> ofPackage(int edition) {
    return edition == Edition.CURRENT
        ? Optional.empty()
        : Optional.of(
            WORDS.say(
                edition < Edition.CURRENT ? "edition.older" : "edition.newer",
                edition,
                Edition.CURRENT));
  }

  /** When a session was first looked at under another method; empty where it was not. */
  public static Optional<String> look(Beside beside) {
    return beside
        .look()
        .map(
            look ->
                WORDS.say(
                    look.at().isEmpty()
                        ? "edition.look.undated"
                        : look.same() ? "edition.look.same" : "edition.look.other",
                    beside.edition(),
                    look.edition(),
                    look.at().map(EditionWords::moment).orElse("")));
  }

  private static String moment(Instant at) {
    return DayWords.zoned(at.atZone(ANYWHERE));
  }

  /** By which methods a session was unsealed and its finding computed. */
  public static String both(int unsealed) {
    return unsealed == Edition.CURRENT
        ? WORDS.say("edition.one", unsealed)
        : WORDS.say("edition.both", Edition.CURRENT, unsealed);
  }

  private String printed(RecordedFinding finding) {
    String p = p(finding);
    OptionalDouble estimate = finding.figure("estimate");
    if (plan.telling() != null) {
      return telling(finding);
    }
    if (!plan.oneDifference() || estimate.isEmpty()) {
      return p.isEmpty() ? WORDS.say("edition.nothing") : p;
    }
    Measure primary = declared.orElseThrow();
    Optional<Interval> wide = shifts(primary, finding, 95);
    Optional<Interval> narrow = shifts(primary, finding, 90);
    DifferenceWords words =
        new DifferenceWords(
            plan.ends(),
            primary,
            primary.scale().shift(estimate.getAsDouble()),
            List.of(wide, narrow),
            1);
    return WORDS.say(
        "edition.figures",
        finding.verdict().map(this::phrase).orElse(WORDS.say("edition.no.verdict")),
        words.difference(),
        words.interval(wide),
        words.interval(narrow),
        p.isEmpty() ? WORDS.say("edition.no.p") : p);
  }

  private static String telling(RecordedFinding finding) {
    return WORDS.say(
        "edition.telling",
        finding.verdict().orElse(WORDS.say("edition.no.verdict")),
        count(finding, "correct"),
        count(finding, "trials"),
        p(finding));
  }

  private static int count(RecordedFinding finding, String figure) {
    return (int) finding.figure(figure).orElse(0);
  }

  private static String p(RecordedFinding finding) {
    OptionalDouble p = finding.figure("p");
    return p.isPresent() ? FindingWords.p(p.getAsDouble()) : "";
  }

  /** The phrase of today's words, so that new words alone make no difference. */
  private String phrase(String verdict) {
    return Arrays.stream(Verdict.values())
        .filter(known -> known.text().equals(verdict) || known.textOfTrend().equals(verdict))
        .findFirst()
        .map(
            known ->
                plan.steps() == null
                    ? VerdictWords.phrase(plan.level(), known)
                    : VerdictWords.ofTrend(known))
        .orElse(verdict);
  }

  private static Optional<Interval> shifts(Measure primary, RecordedFinding finding, int level) {
    return finding
        .interval(level)
        .map(
            said ->
                new Interval(
                    primary.scale().shift(said.low()), primary.scale().shift(said.high())));
  }
}
