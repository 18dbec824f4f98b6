package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.plan.Preparation;
import blindlap.review.Analysis;
import blindlap.review.Comparison;
import blindlap.review.DayRecord;
import blindlap.review.SeriesFinding;
import blindlap.review.TellingAnalysis;
import blindlap.session.Fact;
import blindlap.session.LifeCommands;
import blindlap.session.Notebook;
import blindlap.session.OrderStands;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import blindlap.session.SessionSummary;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import blindlap.session.day.Step;
import blindlap.wording.NotebookWords;
import blindlap.wording.SeriesPlaceWords;
import java.time.Clock;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** The list of sessions: found by words, the one in hand, verdicts kept for speed. */
public final class SessionList {
  private static final Comparator<SessionSummary> LATEST_DAY_FIRST =
      Comparator.comparing(SessionSummary::day)
          .thenComparing(SessionSummary::committedAt)
          .reversed();

  private final Notebook notebook;
  private final Sessions sessions;
  private final Reviews reviews;
  private final SeriesPlans series;
  private final Clock clock;

  /**
   * @param clock says which day is today
   */
  SessionList(
      Notebook notebook, Sessions sessions, Reviews reviews, SeriesPlans series, Clock clock) {
    this.notebook = notebook;
    this.sessions = sessions;
    this.reviews = reviews;
    this.series = series;
    this.clock = clock;
  }

  /**
   * The session in hand: of those that are not finished today's, else the latest of days gone by,
   * else the next one to come.
   *
   * @param summary which
   * @param stints its number of stints
   * @param ridden stints whose laps are all ridden
   * @param next the next lap, if any is left
   * @param order what keeps its order from being seen
   * @param behindCover who has a page behind the helper's cover
   */
  public record InHand(
      SessionSummary summary,
      int stints,
      int ridden,
      Optional<LapId> next,
      OrderStands order,
      BehindCover behindCover) {}

  /** Who has a page of a session that the rider does not see. */
  public enum BehindCover {
    NOBODY,
    HELPER,
    /** Who prepares the units, or still has to mask the parts. */
    FRIEND;

    static BehindCover of(SessionState state) {
      if (OrderStands.of(state) == OrderStands.SEALED) {
        return state.plan().level() == BlindLevel.PREPARED ? FRIEND : HELPER;
      }
      Plan plan = state.plan();
      boolean masks =
          plan.level() == BlindLevel.MASKED
              && plan.blinding().preparation().masks() == Preparation.Masks.FRIEND
              && state.masks().isEmpty()
              && state.shown().isEmpty();
      return masks ? FRIEND : NOBODY;
    }
  }

  /** Sessions that hold every word, the latest day first; all for no words. */
  public List<SessionSummary> find(String words) {
    List<SessionSummary> found = words.isBlank() ? notebook.summaries() : notebook.search(words);
    return found.stream().sorted(LATEST_DAY_FIRST).toList();
  }

  /**
   * The same with every verdict in it: those that no list has shown yet are worked out and kept. A
   * list that lacks none is read once.
   *
   * @param atATime so many verdicts are kept before the list is looked at again
   */
  public List<SessionSummary> told(String words, int atATime) {
    List<SessionSummary> all = notebook.summaries();
    if (all.stream().anyMatch(SessionList::lacking)) {
      while (keepVerdicts(atATime)) {
        // Until none is lacking that can be worked out.
      }
      all = notebook.summaries();
    }
    return words.isBlank() ? all.stream().sorted(LATEST_DAY_FIRST).toList() : find(words);
  }

  private static boolean lacking(SessionSummary summary) {
    return !summary.step().sealed() && !NotebookWords.kept(summary.verdict());
  }

  /** Changes whenever anyone has written to the notebook. */
  public long version() {
    return notebook.dataVersion();
  }

  /** True for a session on which something is still to be done. */
  public static boolean open(SessionSummary summary) {
    boolean noise = summary.kind() == Plan.Kind.NOISE_RUN;
    return summary.step().ordinal() < (noise ? Step.REVIEW_CLOSED : Step.UNSEALED).ordinal();
  }

  /**
   * The session in hand, if one is open. What is planned for next week does not hide the day that
   * is ridden today, nor one that was left unfinished yesterday.
   */
  public Optional<InHand> inHand(List<SessionSummary> all) {
    return hand(all)
        .flatMap(summary -> sessions.state(summary.id()).map(state -> inHand(summary, state)));
  }

  private Optional<SessionSummary> hand(List<SessionSummary> all) {
    LocalDate today = LocalDate.now(clock);
    return all.stream()
        .filter(SessionList::open)
        .min(
            Comparator.comparing((SessionSummary s) -> s.day().isAfter(today))
                .thenComparing(s -> Math.abs(ChronoUnit.DAYS.between(s.day(), today)))
                .thenComparing(SessionSummary::committedAt, Comparator.reverseOrder()));
  }

  /** The same sessions as the page has them: the one in hand first, then the latest day first. */
  public List<SessionSummary> handFirst(List<SessionSummary> all) {
    Optional<SessionSummary> hand = hand(all);
    List<SessionSummary> sorted = new ArrayList<>(all);
    hand.ifPresent(
        first -> {
          sorted.remove(first);
          sorted.add(0, first);
        });
    return List.copyOf(sorted);
  }

  private static InHand inHand(SessionSummary summary, SessionState state) {
    int laps = state.plan().laps().perStint();
    Optional<LapId> next = state.step().day() ? state.nextLap() : Optional.empty();
    int ridden = next.map(lap -> lap.stint() - 1).orElse(state.lapsRidden() / Math.max(1, laps));
    return new InHand(
        summary, state.plan().stints(), ridden, next, OrderStands.of(state), BehindCover.of(state));
  }

  /**
   * Works out verdicts of unsealed sessions that the list does not have yet and keeps them.
   *
   * @param most so many at a time
   * @return true if any was kept
   */
  public boolean keepVerdicts(int most) {
    Map<String, Boolean> waiting = new HashMap<>();
    List<SessionSummary> lacking =
        notebook.summaries().stream()
            .filter(SessionList::lacking)
            .filter(s -> !waiting.computeIfAbsent(String.valueOf(s.series()), any -> waits(s)))
            .limit(most)
            .toList();
    boolean kept = false;
    Map<String, Optional<SeriesFinding>> asked = new HashMap<>();
    for (SessionSummary each : lacking) {
      Optional<String> words =
          sessions
              .state(each.id())
              .map(this::verdict)
              .map(
                  verdict ->
                      of(each, asked, series::answer)
                          .map(said -> NotebookWords.withSeries(verdict, said))
                          .orElse(verdict));
      kept |= words.isPresent() && notebook.putVerdict(each.id(), words.get());
    }
    return kept;
  }

  /** True for a session of a series that is not at its end: the list keeps nothing of it. */
  private boolean waits(SessionSummary summary) {
    return summary.series() != null
        && sessions.state(summary.id()).filter(reviews::waits).isPresent();
  }

  private String verdict(SessionState state) {
    if (reviews.refuse(state).isPresent()) {
      return NotebookWords.step(state.plan().level(), state.step());
    }
    DayRecord day = Reviews.day(state);
    if (TellingAnalysis.is(state.plan())) {
      return NotebookWords.verdict(day.plan(), TellingAnalysis.finding(day), reviews.repeat(state));
    }
    Optional<Comparison> found =
        state.plan().oneDifference()
            ? Analysis.verdictOnly(day).filter(c -> c.verdict().isPresent())
            : Optional.empty();
    return found
        .map(c -> NotebookWords.verdict(day.plan(), day.nullRun(), c, reviews.repeat(state)))
        .orElse(NotebookWords.say("verdict.none"));
  }

  /**
   * Where sessions stand in their series, and what those answer, by session; only those of a
   * series. What the list keeps is not worked out again.
   */
  public Map<SessionId, String> inSeries(List<SessionSummary> listed) {
    return inSeries(listed, series::answer);
  }

  /** The same without what would take seconds because nobody has asked for it yet. */
  public Map<SessionId, String> knownInSeries(List<SessionSummary> listed) {
    return inSeries(listed, series::known);
  }

  private static Map<SessionId, String> inSeries(
      List<SessionSummary> listed, Function<String, Optional<SeriesFinding>> answers) {
    Map<String, Optional<SeriesFinding>> asked = new HashMap<>();
    Map<SessionId, String> said = new HashMap<>();
    for (SessionSummary each : listed) {
      String kept = each.step().sealed() ? "" : NotebookWords.series(each);
      (kept.isEmpty() ? of(each, asked, answers) : Optional.of(kept))
          .ifPresent(words -> said.put(each.id(), words));
    }
    return said;
  }

  /** Each series is asked once for all its sessions. */
  private static Optional<String> of(
      SessionSummary summary,
      Map<String, Optional<SeriesFinding>> asked,
      Function<String, Optional<SeriesFinding>> answers) {
    String series = summary.series();
    return series == null
        ? Optional.empty()
        : asked
            .computeIfAbsent(series, answers)
            .map(found -> SeriesPlaceWords.inList(found, summary.id().text()));
  }

  /** Where the series of a session stands, or what it answers; empty where none names it. */
  public Optional<String> series(String id) {
    return series.words(id);
  }

  /**
   * Ends a session without a finding. In a declared series one with a scored lap keeps its place,
   * unless whoever decides it declares not to know key or setups. In a series the writing says
   * where its other sessions stand.
   *
   * @param unawareBy the name of whoever declares that; empty if nobody does
   */
  public Sessions.Result abandon(SessionId id, String reason, String unawareBy) {
    return sessions.act(id, latest -> abandoning(latest, reason, unawareBy));
  }

  /** What speaks against abandoning a session, before anyone is asked whether to; often nothing. */
  public Optional<List<Problem>> refuseAbandoning(
      SessionState state, String reason, String unawareBy) {
    return abandoning(state, reason, unawareBy) instanceof Outcome.Refused refused
        ? Optional.of(refused.problems())
        : Optional.empty();
  }

  private Outcome abandoning(SessionState latest, String reason, String unawareBy) {
    Outcome outcome = new LifeCommands(latest).abandon(reason, unawareBy);
    if (!(outcome instanceof Outcome.Accepted accepted)) {
      return outcome;
    }
    Optional<Problem> kept = series.refuseAbandoning(latest, unawareBy);
    if (kept.isPresent()) {
      return new Outcome.Refused(List.of(kept.get()));
    }
    List<Fact> facts = new ArrayList<>(accepted.facts());
    facts.addAll(series.stood(latest));
    return new Outcome.Accepted(facts);
  }
}
