package blindlap.review;

import blindlap.fault.Problem;
import blindlap.plan.BlindLevel;
import blindlap.plan.Measure;
import blindlap.plan.Setup;
import blindlap.session.day.Step;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import blindlap.stats.noise.RankAgreement;
import blindlap.stats.pool.RidersInGeneral;
import blindlap.stats.pool.StratifiedSessions;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * What a series says about its one question (docs/method.md#pooling). A verdict is given only for a
 * declared series whose declared number of sessions is unsealed: for one rider "on these days", for
 * several about riders in general.
 *
 * @param id of the series
 * @param question as its first plan has it
 * @param progress how far it is
 * @param setups as the first plan has them; differences are second less first
 * @param level how blind its sessions are, which is the same for all that are pooled
 * @param measure the primary measure of the first plan
 * @param parts every session that names the series, in the order of their commits
 * @param riders what is known of each rider, in the order of their first sessions
 * @param these the stratified test: these riders on these days; empty without a session to pool
 * @param general riders in general; empty with fewer than two riders
 * @param agreement how riders agree on the ranking of three and more setups
 * @param others the measures beside the primary one, in the order of the first plan; none for three
 *     and more setups
 * @param verdict of the series
 * @param noVerdict why there is none
 * @param end its early end, if it was ended; it never pools a verdict then
 * @param peeks sessions that were unsealed while another was still open; with any no verdict is
 *     pooled
 */
public record SeriesFinding(
    String id,
    String question,
    Progress progress,
    List<Setup> setups,
    BlindLevel level,
    Measure measure,
    List<Part> parts,
    List<Rider> riders,
    Optional<StratifiedSessions> these,
    Optional<RidersInGeneral> general,
    Optional<RankAgreement> agreement,
    List<SeriesMeasure> others,
    Optional<Verdict> verdict,
    Optional<NoVerdict> noVerdict,
    Optional<SeriesPeeks.Ended> end,
    SeriesPeeks.Found peeks) {

  /** The same with the measures beside the primary one. */
  SeriesFinding with(List<SeriesMeasure> measures) {
    return new SeriesFinding(
        id, question, progress, setups, level, measure, parts, riders, these, general, agreement,
        measures, verdict, noVerdict, end, peeks);
  }

  /** How far a series is. */
  public enum Stage {
    /** Sessions are still to be ridden or their reviews to be closed; nothing is told. */
    RIDING,
    /** Every review is closed, and not every seal is open yet; nothing is told. */
    READY,
    /** The end: everything that can be told is told. */
    OPEN
  }

  /**
   * How far a series is. Only sessions that can be pooled count.
   *
   * @param declared number of sessions declared; empty if none was
   * @param ridden those whose day is closed
   * @param closed those whose review is closed
   * @param unsealed those whose seal is open
   * @param sessions all of them
   * @param ended true if it was ended before the declared number was reached
   */
  public record Progress(
      Optional<Integer> declared,
      int ridden,
      int closed,
      int unsealed,
      int sessions,
      boolean ended) {
    /** The stage. */
    public Stage stage() {
      if (ended || declared.isEmpty()) {
        return unsealed > 0 ? Stage.OPEN : Stage.RIDING;
      }
      if (closed < declared.get()) {
        return Stage.RIDING;
      }
      return unsealed < sessions ? Stage.READY : Stage.OPEN;
    }
  }

  /** What a reader must know of a session beside its numbers. */
  public enum Remark {
    /** The rider knew what was fitted, as planned. */
    UNBLINDED,
    /** The rider knew the label and not the setup, as planned. */
    MASKED,
    /** The rider saw or was told what was fitted. */
    BLIND_BROKEN,
    /** A stint was ridden on another setup than planned. */
    WRONG_FIT
  }

  /** What becomes of a session of the series. */
  public enum Fate {
    /** It is pooled. */
    POOLED,
    /** It is unsealed and pooled as soon as all are. */
    WAITING,
    /** It is not unsealed yet. */
    NOT_YET,
    /** It was abandoned; the reason stands beside it. */
    ABANDONED,
    /** It was abandoned, but not so that another may take its place. */
    KEEPS_PLACE,
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
    NOT_COMPARED;

    /** True if it is one of the declared number. */
    public boolean counts() {
      return switch (this) {
        case POOLED, WAITING, NOT_YET, KEEPS_PLACE, NULL_RUN, NOT_COMPARED -> true;
        case ABANDONED,
            AFTER_A_RESULT,
            BEYOND_DECLARED,
            DECLARED_OTHERWISE,
            OTHER_SETUPS,
            NO_COMPARISON ->
            false;
      };
    }

    /** True if it follows from what only an opened seal tells. */
    boolean unsealed() {
      return switch (this) {
        case POOLED, NULL_RUN, NOT_COMPARED -> true;
        case WAITING,
            NOT_YET,
            ABANDONED,
            KEEPS_PLACE,
            AFTER_A_RESULT,
            BEYOND_DECLARED,
            DECLARED_OTHERWISE,
            OTHER_SETUPS,
            NO_COMPARISON ->
            false;
      };
    }
  }

  /**
   * A session of the series.
   *
   * @param session its id
   * @param day when
   * @param rider who
   * @param step where it stands
   * @param fate what becomes of it
   * @param why the words of whoever abandoned it; empty otherwise
   * @param refusal why it could not be compared; empty otherwise
   * @param remarks what a reader must know beside the numbers
   * @param estimate second less first setup on the scale of the analysis, where it may be told
   * @param interval95 of the session alone
   * @param interval90 of the session alone
   */
  public record Part(
      String session,
      LocalDate day,
      String rider,
      Step step,
      Fate fate,
      String why,
      Optional<Problem> refusal,
      Set<Remark> remarks,
      Optional<Double> estimate,
      Optional<Interval> interval95,
      Optional<Interval> interval90) {
    public Part {
      remarks = Collections.unmodifiableSet(new TreeSet<>(remarks));
    }

    /** The same session before its numbers may be told. */
    Part untold() {
      Set<Remark> before = new TreeSet<>(remarks);
      before.remove(Remark.WRONG_FIT);
      boolean own = fate.unsealed();
      return new Part(
          session,
          day,
          rider,
          step,
          own ? Fate.WAITING : fate,
          own ? "" : why,
          own ? Optional.empty() : refusal,
          before,
          Optional.empty(),
          Optional.empty(),
          Optional.empty());
    }
  }

  /**
   * A rider, sessions averaged equally.
   *
   * @param name who
   * @param sessions number of sessions pooled
   * @param estimate second less first setup on the scale of the analysis; for three and more setups
   *     NaN
   * @param standardError of the estimate
   * @param interval95 of a single session its own; of several by t on their noise
   * @param interval90 likewise
   * @param noiseSd pooled over the sessions
   * @param stints mean number of stints used
   * @param ranking how far each setup lies above the first, by setup
   */
  public record Rider(
      String name,
      int sessions,
      double estimate,
      double standardError,
      Optional<Interval> interval95,
      Optional<Interval> interval90,
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
    /** It was ended before the declared number was reached, whatever was ridden afterwards. */
    ENDED_EARLY,
    /** A day below "prepared" ended by choice, so that who knew what was on may have stopped. */
    DAY_ENDED_FREELY,
    /** A session was unsealed while another was still open, so that its result could be known. */
    PEEKED,
    /** All are unsealed, but some of the declared number cannot be pooled. */
    FALLS_SHORT,
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
    others = List.copyOf(others);
  }

  /**
   * Share of a session in the estimate of these riders on these days; empty for one that is not in
   * it.
   */
  public Optional<Double> weight(Part part) {
    List<Part> pooled = parts.stream().filter(p -> p.fate() == Fate.POOLED).toList();
    int at = pooled.indexOf(part);
    return at < 0 ? Optional.empty() : these.map(t -> t.weights().get(at));
  }

  /** Number of sessions declared before riding; empty if none was. */
  public Optional<Integer> declared() {
    return progress.declared();
  }

  /** Number of sessions pooled. */
  public int pooled() {
    return (int) parts.stream().filter(part -> part.fate() == Fate.POOLED).count();
  }

  /** True once the series has come to its end and tells its numbers. */
  public boolean open() {
    return progress.stage() == Stage.OPEN;
  }

  /** True if a pooled session carries this remark. */
  public boolean has(Remark remark) {
    return parts.stream().anyMatch(p -> p.fate() == Fate.POOLED && p.remarks().contains(remark));
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
