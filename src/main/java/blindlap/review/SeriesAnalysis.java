package blindlap.review;

import blindlap.fault.Problem;
import blindlap.fault.Unusable;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.session.SessionState;
import blindlap.session.day.Step;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Sampling;
import blindlap.stats.pool.PooledSession;
import blindlap.stats.pool.RidersInGeneral;
import blindlap.stats.pool.StratifiedSessions;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** Pools the sessions of a series. */
public final class SeriesAnalysis {
  private final List<SessionState> sessions;
  private final Function<SessionState, DayRecord> open;
  private final SeriesDeclaration declaration;
  private final Plan first;
  private final List<String> ids;
  private final List<SeriesNumbers> pooled = new ArrayList<>();
  private final List<DayRecord> pooledDays = new ArrayList<>();
  private int counted;

  private SeriesAnalysis(List<SessionState> sessions, Function<SessionState, DayRecord> open) {
    this.sessions =
        sessions.stream().sorted(Comparator.comparing(SessionState::committedAt)).toList();
    this.open = open;
    // A noise run that names the series declares nothing.
    this.declaration =
        SeriesDeclaration.of(this.sessions)
            .orElseGet(
                () ->
                    new SeriesDeclaration(
                        this.sessions.get(0).id().text(), this.sessions.get(0).plan()));
    this.first = declaration.plan();
    this.ids = ids(first);
  }

  /**
   * Analyses the primary measure of a series.
   *
   * @param sessions every session that names it, at least one
   * @param open makes the record of an unsealed session
   */
  static SeriesFinding answer(List<SessionState> sessions, Function<SessionState, DayRecord> open) {
    return new SeriesAnalysis(sessions, open).finding();
  }

  /** Its answer with the measures beside the primary one. Before its end nothing is told. */
  static SeriesFinding measured(
      SeriesFinding answer, List<SessionState> sessions, Function<SessionState, DayRecord> open) {
    if (answer.progress().stage() != SeriesFinding.Stage.OPEN) {
      return answer;
    }
    SeriesAnalysis analysis = new SeriesAnalysis(sessions, open);
    // What is pooled is gathered session by session.
    analysis.sessions.forEach(analysis::part);
    return answer.with(SeriesMeasures.of(analysis.first, analysis.ids, analysis.pooledDays));
  }

  /**
   * How far a series is, without its numbers.
   *
   * @param sessions every session that names it, at least one
   * @param open makes the record of an unsealed session
   */
  public static SeriesFinding.Progress progress(
      List<SessionState> sessions, Function<SessionState, DayRecord> open) {
    SeriesAnalysis analysis = new SeriesAnalysis(sessions, open);
    return analysis.progress(analysis.sessions.stream().map(analysis::part).toList());
  }

  /** True if a session carries an early end of its series. */
  public static boolean isEnded(SessionState state) {
    return SeriesPeeks.ended(state).isPresent();
  }

  /** When the seal of a session was opened, if it was. */
  public static Optional<Instant> unsealedAt(SessionState state) {
    return state.opening().map(opening -> opening.entry().at());
  }

  private static List<String> ids(Plan plan) {
    return plan.setups().stream().map(Setup::id).toList();
  }

  private SeriesFinding finding() {
    List<SeriesFinding.Part> parts = sessions.stream().map(this::part).toList();
    SeriesFinding.Progress progress = progress(parts);
    // Before the end of a declared series nothing is told, not even of what is unsealed already.
    boolean told = progress.stage() == SeriesFinding.Stage.OPEN;
    List<SeriesFinding.Rider> riders = told ? riders() : List.of();
    Optional<StratifiedSessions> these = told ? these() : Optional.empty();
    Optional<RidersInGeneral> general = general(riders);
    SeriesPeeks.Found peeks = peeks(parts);
    Optional<SeriesFinding.NoVerdict> none =
        noVerdict(riders.size(), progress, !peeks.peeks().isEmpty());
    return new SeriesFinding(
        String.valueOf(first.series()),
        first.question(),
        progress,
        first.setups(),
        first.level(),
        first.primary().orElseThrow(),
        told ? parts : parts.stream().map(SeriesFinding.Part::untold).toList(),
        riders,
        these,
        general,
        RidersAgreement.of(riders, ids.size()),
        List.of(),
        none.isPresent() ? Optional.empty() : verdict(riders.size(), these, general),
        none,
        end(),
        peeks);
  }

  private Optional<SeriesPeeks.Ended> end() {
    return sessions.stream()
        .flatMap(state -> SeriesPeeks.ended(state).stream())
        .min(Comparator.comparing(SeriesPeeks.Ended::at));
  }

  private SeriesPeeks.Found peeks(List<SeriesFinding.Part> parts) {
    List<SessionState> counted = new ArrayList<>();
    for (int i = 0; i < parts.size(); i++) {
      if (parts.get(i).fate().counts() && !kept(parts.get(i))) {
        counted.add(sessions.get(i));
      }
    }
    // Without a declared number there is no verdict to lose, and no end to be early for.
    if (first.seriesSessions() == null) {
      return new SeriesPeeks.Found(List.of(), false);
    }
    SeriesPeeks.Found found = SeriesPeeks.of(sessions, counted);
    return new SeriesPeeks.Found(found.peeks(), found.byClocks() || replacedByClocks());
  }

  private boolean replacedByClocks() {
    return sessions.stream()
        .filter(state -> state.hasKey() && state.step() == Step.ABANDONED)
        .anyMatch(state -> SeriesAbandoned.byClocks(state, sessions));
  }

  private SeriesFinding.Progress progress(List<SeriesFinding.Part> parts) {
    List<SeriesFinding.Part> counting = parts.stream().filter(p -> p.fate().counts()).toList();
    int unsealed = (int) counting.stream().filter(p -> !p.step().sealed() || kept(p)).count();
    return new SeriesFinding.Progress(
        Optional.ofNullable(first.seriesSessions()),
        (int) counting.stream().filter(p -> !p.step().day()).count(),
        (int) counting.stream().filter(p -> closed(p.step()) || kept(p)).count(),
        unsealed,
        counting.size(),
        sessions.stream().anyMatch(SeriesAnalysis::isEnded));
  }

  /** An abandoned session that keeps its place: nothing of it is waited for. */
  private static boolean kept(SeriesFinding.Part part) {
    return part.fate() == SeriesFinding.Fate.KEEPS_PLACE;
  }

  /** True once a review can no longer change. */
  public static boolean closed(Step step) {
    return switch (step) {
      case REVIEW_CLOSED, UNSEALED, REPORTED -> true;
      case COMMITTED, RIDING, CUT_SHORT, DAY_CLOSED, ABANDONED -> false;
    };
  }

  private SeriesFinding.Part part(SessionState state) {
    SeriesFinding.Fate fate = fate(state);
    String why = state.abandonedBecause().orElse("");
    Optional<Problem> refusal = Optional.empty();
    Optional<SeriesNumbers> numbers = Optional.empty();
    if (fate == SeriesFinding.Fate.POOLED || fate == SeriesFinding.Fate.AFTER_A_RESULT) {
      try {
        numbers =
            state.unsealed()
                ? Optional.of(SeriesNumbers.of(open.apply(state), ids))
                : Optional.empty();
      } catch (Unusable e) {
        refusal = Optional.of(e.problem());
        fate = SeriesFinding.Fate.NOT_COMPARED;
      }
    }
    if (fate == SeriesFinding.Fate.POOLED) {
      pooled.add(numbers.orElseThrow());
      pooledDays.add(open.apply(state));
    }
    return new SeriesFinding.Part(
        state.id().text(),
        state.plan().day(),
        state.plan().rider(),
        state.step(),
        fate,
        why,
        refusal,
        remarks(state),
        numbers.map(SeriesNumbers::estimate).filter(e -> !e.isNaN()),
        numbers.flatMap(SeriesNumbers::interval95),
        numbers.flatMap(SeriesNumbers::interval90));
  }

  private Set<SeriesFinding.Remark> remarks(SessionState state) {
    Set<SeriesFinding.Remark> remarks = EnumSet.noneOf(SeriesFinding.Remark.class);
    if (state.hasKey()) {
      switch (state.plan().level()) {
        case OPEN, DRAWN -> remarks.add(SeriesFinding.Remark.UNBLINDED);
        case MASKED -> remarks.add(SeriesFinding.Remark.MASKED);
        case PREPARED, HELPER -> {}
      }
    }
    if (!state.blindBroken().isEmpty()) {
      remarks.add(SeriesFinding.Remark.BLIND_BROKEN);
    }
    if (state.unsealed() && !open.apply(state).wrongFits().isEmpty()) {
      remarks.add(SeriesFinding.Remark.WRONG_FIT);
    }
    return remarks;
  }

  private SeriesFinding.Fate fate(SessionState state) {
    Plan plan = state.plan();
    boolean abandoned = state.step() == Step.ABANDONED;
    if (abandoned && mayBeReplaced(state)) {
      return SeriesFinding.Fate.ABANDONED;
    }
    if (!state.hasKey()) {
      return SeriesFinding.Fate.NO_COMPARISON;
    }
    if (!ids.stream().sorted().toList().equals(ids(plan).stream().sorted().toList())) {
      return SeriesFinding.Fate.OTHER_SETUPS;
    }
    if (!declaration.differences(plan).isEmpty()) {
      return SeriesFinding.Fate.DECLARED_OTHERWISE;
    }
    if (afterAResult(state)) {
      return SeriesFinding.Fate.AFTER_A_RESULT;
    }
    Integer declared = first.seriesSessions();
    if (declared != null && counted >= declared) {
      return SeriesFinding.Fate.BEYOND_DECLARED;
    }
    counted++;
    if (abandoned) {
      return SeriesFinding.Fate.KEEPS_PLACE;
    }
    if (!state.unsealed()) {
      return SeriesFinding.Fate.NOT_YET;
    }
    return open.apply(state).nullRun() ? SeriesFinding.Fate.NULL_RUN : SeriesFinding.Fate.POOLED;
  }

  /** Without a declared number no place is kept for anyone. */
  private boolean mayBeReplaced(SessionState state) {
    return first.seriesSessions() == null
        || !state.hasKey()
        || SeriesAbandoned.replaceable(state, sessions);
  }

  private boolean afterAResult(SessionState state) {
    return sessions.stream()
        .flatMap(other -> unsealedAt(other).stream())
        .anyMatch(at -> at.isBefore(state.committedAt()));
  }

  private List<SeriesFinding.Rider> riders() {
    Map<String, List<SeriesNumbers>> byRider = new LinkedHashMap<>();
    for (SeriesNumbers each : pooled) {
      byRider
          .computeIfAbsent(
              each.rider().strip().toLowerCase(java.util.Locale.ROOT), k -> new ArrayList<>())
          .add(each);
    }
    return byRider.values().stream().map(SeriesNumbers::average).toList();
  }

  private Optional<StratifiedSessions> these() {
    List<PooledSession> all = pooled.stream().flatMap(each -> each.session().stream()).toList();
    return all.isEmpty()
        ? Optional.empty()
        : Optional.of(StratifiedSessions.compare(all, Sampling.OF_SERIES));
  }

  private Optional<RidersInGeneral> general(List<SeriesFinding.Rider> riders) {
    if (riders.size() < 2 || ids.size() != 2) {
      return Optional.empty();
    }
    return Optional.of(
        RidersInGeneral.of(
            riders.stream().mapToDouble(SeriesFinding.Rider::estimate).toArray(),
            riders.stream().mapToDouble(SeriesFinding.Rider::standardError).toArray(),
            riders.stream().mapToDouble(SeriesFinding.Rider::stints).toArray(),
            riders.stream().mapToDouble(SeriesFinding.Rider::noiseSd).toArray()));
  }

  private Optional<SeriesFinding.NoVerdict> noVerdict(
      int riders, SeriesFinding.Progress progress, boolean peeked) {
    if (progress.stage() != SeriesFinding.Stage.OPEN && progress.unsealed() > 0) {
      return Optional.of(SeriesFinding.NoVerdict.NOT_COMPLETE);
    }
    if (pooled.isEmpty()) {
      return Optional.of(SeriesFinding.NoVerdict.NOTHING_TO_POOL);
    }
    if (progress.declared().isEmpty()) {
      return Optional.of(SeriesFinding.NoVerdict.NOT_DECLARED);
    }
    if (progress.ended()) {
      return Optional.of(SeriesFinding.NoVerdict.ENDED_EARLY);
    }
    if (peeked) {
      return Optional.of(SeriesFinding.NoVerdict.PEEKED);
    }
    if (pooledDays.stream().anyMatch(EarlyEnd::freely)) {
      return Optional.of(SeriesFinding.NoVerdict.DAY_ENDED_FREELY);
    }
    if (pooled.size() < progress.declared().get()) {
      return Optional.of(SeriesFinding.NoVerdict.FALLS_SHORT);
    }
    if (ids.size() != 2) {
      return Optional.of(SeriesFinding.NoVerdict.MANY_SETUPS);
    }
    return riders > 1 && riders < RidersInGeneral.LEAST_RIDERS
        ? Optional.of(SeriesFinding.NoVerdict.TOO_FEW_RIDERS)
        : Optional.empty();
  }

  private Optional<Verdict> verdict(
      int riders, Optional<StratifiedSessions> these, Optional<RidersInGeneral> general) {
    Optional<Interval> band = Comparison.band(first.primary().orElseThrow());
    return riders == 1
        ? band.flatMap(b -> these.map(t -> t.verdict(b.low(), b.high())))
        : band.flatMap(b -> general.map(g -> g.verdict(b.high())));
  }
}
