package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Setup;
import blindlap.stats.Interval;
import blindlap.stats.RankAgreement;
import blindlap.stats.RidersInGeneral;
import blindlap.stats.StratifiedSessions;
import blindlap.stats.Verdict;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What a series says about its one question (METHOD 10 and 13). A verdict is given only for a
 * declared series whose declared number of sessions is unsealed: for one rider "on these days", for
 * several about riders in general.
 *
 * @param id of the series
 * @param question as its first plan has it
 * @param declared number of sessions declared; empty if none was
 * @param setups as the first plan has them; differences are second less first
 * @param measure the primary measure of the first plan
 * @param parts every session that names the series, in the order of their commits
 * @param riders what is known of each rider, in the order of their first sessions
 * @param these the stratified test: these riders on these days; empty without a session to pool
 * @param general riders in general; empty with fewer than two riders
 * @param agreement how riders agree on the ranking of three and more setups
 * @param verdict of the series
 * @param noVerdict why there is none
 */
public record SeriesFinding(
    String id,
    String question,
    Optional<Integer> declared,
    List<Setup> setups,
    Measure measure,
    List<Part> parts,
    List<Rider> riders,
    Optional<StratifiedSessions> these,
    Optional<RidersInGeneral> general,
    Optional<RankAgreement> agreement,
    Optional<Verdict> verdict,
    Optional<NoVerdict> noVerdict) {

  /** What becomes of a session of the series. */
  public enum Fate {
    /** It is pooled. */
    POOLED,
    /** It is not unsealed yet. */
    NOT_YET,
    /** It was abandoned; the reason stands beside it. */
    ABANDONED,
    /** It was committed after a session of the series had been unsealed. */
    AFTER_A_RESULT,
    /** It came after the declared number of sessions. */
    BEYOND_DECLARED,
    /** Its plan has another question, primary measure, worthwhile difference or number. */
    DECLARED_OTHERWISE,
    /** It compares other setups. */
    OTHER_SETUPS,
    /** One setup was on throughout. */
    NULL_RUN,
    /** It has no key. */
    NO_COMPARISON,
    /** Its numbers could not be compared; the reason stands beside it. */
    NOT_COMPARED
  }

  /**
   * A session of the series.
   *
   * @param session its id
   * @param day when
   * @param rider who
   * @param fate what becomes of it
   * @param why the reason, where one was given
   * @param estimate second less first setup on the scale of the analysis, where unsealed
   * @param interval95 of the session alone
   */
  public record Part(
      String session,
      LocalDate day,
      String rider,
      Fate fate,
      String why,
      Optional<Double> estimate,
      Optional<Interval> interval95) {}

  /**
   * A rider, sessions averaged equally.
   *
   * @param name who
   * @param sessions number of sessions pooled
   * @param estimate second less first setup on the scale of the analysis; for three and more setups
   *     NaN
   * @param standardError of the estimate
   * @param noiseSd pooled over the sessions
   * @param stints mean number of stints used
   * @param ranking how far each setup lies above the first, by setup
   */
  public record Rider(
      String name,
      int sessions,
      double estimate,
      double standardError,
      double noiseSd,
      double stints,
      List<Double> ranking) {
    public Rider {
      ranking = List.copyOf(ranking);
    }
  }

  /** Why a series has no verdict. */
  public enum NoVerdict {
    /** No number of sessions was declared before riding. */
    NOT_DECLARED,
    /** Fewer sessions are unsealed than were declared. */
    NOT_COMPLETE,
    /** It was ended before the declared number was reached. */
    ENDED_EARLY,
    /** Two or three riders are too few for a word on riders in general. */
    TOO_FEW_RIDERS,
    /** Three and more setups have no verdict as a whole. */
    MANY_SETUPS,
    /** No session can be pooled. */
    NOTHING_TO_POOL
  }

  public SeriesFinding {
    setups = List.copyOf(setups);
    parts = List.copyOf(parts);
    riders = List.copyOf(riders);
  }

  /** Number of sessions pooled. */
  public int pooled() {
    return (int) parts.stream().filter(part -> part.fate() == Fate.POOLED).count();
  }

  /** Number of riders whose estimate has this sign. */
  public int ridersWith(double sign) {
    return (int)
        riders.stream().filter(r -> Math.signum(r.estimate()) == Math.signum(sign)).count();
  }

  /** The worthwhile difference as shifts −D and +D, if declared. */
  public Optional<Interval> band() {
    return Comparison.band(measure);
  }
}
