package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.session.Fact;
import blindlap.session.SessionState;
import blindlap.session.Step;
import blindlap.session.StoredEntry;
import blindlap.stats.Interval;
import blindlap.stats.ManySetups;
import blindlap.stats.RankAgreement;
import blindlap.stats.RiderNoise;
import blindlap.stats.RidersInGeneral;
import blindlap.stats.Sampling;
import blindlap.stats.StratifiedSessions;
import blindlap.stats.TwoSetups;
import blindlap.stats.Verdict;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Pools the sessions of a series. */
public final class SeriesAnalysis {
  private static final String ENDED = "series ended early: ";

  private final List<SessionState> sessions;
  private final Function<SessionState, DayRecord> open;
  private final Plan first;
  private final List<String> ids;
  private final List<Numbers> pooled = new ArrayList<>();
  private int counted;

  private SeriesAnalysis(List<SessionState> sessions, Function<SessionState, DayRecord> open) {
    this.sessions =
        sessions.stream().sorted(Comparator.comparing(SessionState::committedAt)).toList();
    this.open = open;
    this.first = this.sessions.get(0).plan();
    this.ids = ids(first);
  }

  /** Numbers of a session, in the setups' order of the first plan. */
  private record Numbers(
      String rider,
      Optional<StratifiedSessions.Session> session,
      double estimate,
      double standardError,
      RiderNoise noise,
      int stints,
      List<Double> ranking,
      Optional<Interval> interval95) {}

  /**
   * Analyses a series.
   *
   * @param sessions every session that names it, at least one
   * @param open makes the record of an unsealed session
   */
  public static SeriesFinding of(
      List<SessionState> sessions, Function<SessionState, DayRecord> open) {
    return new SeriesAnalysis(sessions, open).finding();
  }

  /** The note that a series was ended before its declared number was reached. */
  public static Fact.DeviationNoted ended(String reason) {
    return new Fact.DeviationNoted(0, Fact.DeviationKind.OTHER, ENDED + reason);
  }

  /** True if a session carries that note. */
  public static boolean isEnded(SessionState state) {
    return state.deviations().stream().anyMatch(d -> d.what().startsWith(ENDED));
  }

  /** When the seal of a session was opened, if it was. */
  public static Optional<Instant> unsealedAt(SessionState state) {
    return state.unsealed()
        ? state.entries().stream()
            .filter(e -> e.entry().fact() instanceof Fact.SealOpened)
            .map(StoredEntry::entry)
            .map(e -> e.at())
            .findFirst()
        : Optional.empty();
  }

  private static List<String> ids(Plan plan) {
    return plan.setups().stream().map(Setup::id).toList();
  }

  private SeriesFinding finding() {
    List<SeriesFinding.Part> parts = sessions.stream().map(this::part).toList();
    List<SeriesFinding.Rider> riders = riders();
    Optional<StratifiedSessions> these = these();
    Optional<RidersInGeneral> general = general(riders);
    Optional<SeriesFinding.NoVerdict> none = noVerdict(riders.size());
    return new SeriesFinding(
        String.valueOf(first.series()),
        first.question(),
        Optional.ofNullable(first.seriesSessions()),
        first.setups(),
        first.primary().orElseThrow(),
        parts,
        riders,
        these,
        general,
        agreement(riders),
        none.isPresent() ? Optional.empty() : verdict(riders.size(), these, general),
        none);
  }

  private SeriesFinding.Part part(SessionState state) {
    SeriesFinding.Fate fate = fate(state);
    String why = state.abandonedBecause().orElse("");
    Optional<Numbers> numbers = Optional.empty();
    if (fate == SeriesFinding.Fate.POOLED || fate == SeriesFinding.Fate.AFTER_A_RESULT) {
      try {
        numbers = state.unsealed() ? Optional.of(numbers(state)) : Optional.empty();
      } catch (IllegalArgumentException e) {
        why = String.valueOf(e.getMessage());
        fate = SeriesFinding.Fate.NOT_COMPARED;
      }
    }
    if (fate == SeriesFinding.Fate.POOLED) {
      pooled.add(numbers.orElseThrow());
    }
    return new SeriesFinding.Part(
        state.id().text(),
        state.plan().day(),
        state.plan().rider(),
        fate,
        why,
        numbers.map(Numbers::estimate).filter(e -> !e.isNaN()),
        numbers.flatMap(Numbers::interval95));
  }

  private SeriesFinding.Fate fate(SessionState state) {
    Plan plan = state.plan();
    if (state.step() == Step.ABANDONED) {
      return SeriesFinding.Fate.ABANDONED;
    }
    if (!state.hasKey()) {
      return SeriesFinding.Fate.NO_COMPARISON;
    }
    if (!ids.stream().sorted().toList().equals(ids(plan).stream().sorted().toList())) {
      return SeriesFinding.Fate.OTHER_SETUPS;
    }
    if (!declaredAlike(plan)) {
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
    if (!state.unsealed()) {
      return SeriesFinding.Fate.NOT_YET;
    }
    return open.apply(state).nullRun() ? SeriesFinding.Fate.NULL_RUN : SeriesFinding.Fate.POOLED;
  }

  private boolean declaredAlike(Plan plan) {
    Optional<Measure> own = plan.primary();
    Measure wanted = first.primary().orElseThrow();
    return own.isPresent()
        && plan.question().strip().equalsIgnoreCase(first.question().strip())
        && java.util.Objects.equals(plan.seriesSessions(), first.seriesSessions())
        && own.get().name().equals(wanted.name())
        && own.get().kind() == wanted.kind()
        && own.get().unit().equals(wanted.unit())
        && own.get().scale() == wanted.scale()
        && own.get().better() == wanted.better()
        && same(own.get().worthwhile(), wanted.worthwhile());
  }

  private static boolean same(
      java.math.@org.jspecify.annotations.Nullable BigDecimal a,
      java.math.@org.jspecify.annotations.Nullable BigDecimal b) {
    return a == null || b == null ? a == b : a.compareTo(b) == 0;
  }

  private boolean afterAResult(SessionState state) {
    return sessions.stream()
        .flatMap(other -> unsealedAt(other).stream())
        .anyMatch(at -> at.isBefore(state.committedAt()));
  }

  private Numbers numbers(SessionState state) {
    DayRecord day = open.apply(state);
    Measure measure = state.plan().primary().orElseThrow();
    StintValues stints = StintValues.of(day, measure, StintValues.Laps.NOT_VOID);
    return ids.size() == 2 ? two(day, measure, stints) : many(day, measure, stints);
  }

  private Numbers two(DayRecord day, Measure measure, StintValues stints) {
    boolean flipped = !ids(day.plan()).equals(ids);
    int[] order = day.key().setups();
    for (int i = 0; flipped && i < order.length; i++) {
      order[i] = 1 - order[i];
    }
    StratifiedSessions.Session session =
        new StratifiedSessions.Session(
            day.plan().rule().assignments(),
            order,
            stints.values(),
            stints.valid(),
            measure.drift());
    TwoSetups own =
        TwoSetups.compare(
            session.set(),
            order,
            stints.values(),
            stints.valid(),
            measure.drift(),
            Sampling.PREFERRED);
    if (own.noVariation()) {
      throw new IllegalArgumentException("nothing varied from stint to stint");
    }
    return new Numbers(
        day.plan().rider(),
        Optional.of(session),
        own.estimate(),
        own.noiseSd() / Math.sqrt(own.c()),
        RiderNoise.of(own),
        own.used(),
        List.of(0.0, own.estimate()),
        own.curve().interval(0.95));
  }

  private Numbers many(DayRecord day, Measure measure, StintValues stints) {
    ManySetups result =
        ManySetups.compare(
            day.plan().rule().assignments(),
            day.key().setups(),
            stints.values(),
            stints.valid(),
            measure.drift(),
            Sampling.PREFERRED);
    double[] above =
        new ManyComparison(
                measure, stints, result, java.util.OptionalDouble.empty(), java.util.Set.of())
            .aboveFirst();
    List<String> own = ids(day.plan());
    List<Double> ranking = ids.stream().map(id -> above[own.indexOf(id)]).toList();
    return new Numbers(
        day.plan().rider(),
        Optional.empty(),
        Double.NaN,
        Double.NaN,
        RiderNoise.of(result),
        stints.used(),
        ranking.stream().map(value -> value - ranking.get(0)).toList(),
        Optional.empty());
  }

  private List<SeriesFinding.Rider> riders() {
    Map<String, List<Numbers>> byRider = new LinkedHashMap<>();
    for (Numbers each : pooled) {
      byRider
          .computeIfAbsent(
              each.rider().strip().toLowerCase(java.util.Locale.ROOT), k -> new ArrayList<>())
          .add(each);
    }
    return byRider.values().stream().map(SeriesAnalysis::rider).toList();
  }

  private static SeriesFinding.Rider rider(List<Numbers> own) {
    int n = own.size();
    double variance =
        own.stream().mapToDouble(s -> s.standardError() * s.standardError()).sum() / n / n;
    List<Double> ranking = new ArrayList<>();
    for (int setup = 0; setup < own.get(0).ranking().size(); setup++) {
      int at = setup;
      ranking.add(own.stream().mapToDouble(s -> s.ranking().get(at)).average().orElseThrow());
    }
    return new SeriesFinding.Rider(
        own.get(0).rider(),
        n,
        own.stream().mapToDouble(Numbers::estimate).average().orElseThrow(),
        Math.sqrt(variance),
        RiderNoise.pooled(own.stream().map(Numbers::noise).toList()).sd(),
        own.stream().mapToInt(Numbers::stints).average().orElseThrow(),
        ranking);
  }

  private Optional<StratifiedSessions> these() {
    List<StratifiedSessions.Session> all =
        pooled.stream().flatMap(each -> each.session().stream()).toList();
    return all.isEmpty()
        ? Optional.empty()
        : Optional.of(StratifiedSessions.compare(all, Sampling.PREFERRED));
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

  private Optional<RankAgreement> agreement(List<SeriesFinding.Rider> riders) {
    if (riders.size() < 2 || ids.size() < 3) {
      return Optional.empty();
    }
    double[][] table =
        riders.stream()
            .map(r -> r.ranking().stream().mapToDouble(Double::doubleValue).toArray())
            .toArray(double[][]::new);
    return Optional.of(RankAgreement.of(table));
  }

  private Optional<SeriesFinding.NoVerdict> noVerdict(int riders) {
    Integer declared = first.seriesSessions();
    if (pooled.isEmpty()) {
      return Optional.of(SeriesFinding.NoVerdict.NOTHING_TO_POOL);
    }
    if (declared == null) {
      return Optional.of(SeriesFinding.NoVerdict.NOT_DECLARED);
    }
    if (pooled.size() < declared) {
      return Optional.of(
          sessions.stream().anyMatch(SeriesAnalysis::isEnded)
              ? SeriesFinding.NoVerdict.ENDED_EARLY
              : SeriesFinding.NoVerdict.NOT_COMPLETE);
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
