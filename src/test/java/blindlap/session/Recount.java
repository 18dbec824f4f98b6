package blindlap.session;

import blindlap.plan.Plan;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.Step;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What a day's facts say, found by searching the whole list anew for every question, most of them
 * from its end: slow, and nothing is carried along from fact to fact as in {@link Folding}.
 */
final class Recount {
  private static final Set<Class<? extends Fact>> ALWAYS =
      Set.of(
          Fact.FingerprintGiven.class,
          Fact.SheetReprinted.class,
          Fact.DeviationNoted.class,
          Fact.ReportWritten.class);
  private static final Set<Class<? extends Fact>> RIDING =
      Set.of(
          Fact.BikeHandedOver.class,
          Fact.WarmUpRidden.class,
          Fact.LapRidden.class,
          Fact.ScoreGiven.class,
          Fact.WatchStarted.class,
          Fact.TimeTaken.class);

  private final List<StoredEntry> entries;
  private final List<Fact> facts;
  private final int abandoned;
  private final int imported;
  private final int dayClosed;
  private final int reviewClosed;
  private final int opened;

  /** From here on nothing of the day changes any more. */
  private final int end;

  private final int cut;
  private final RecountValues values;
  final Plan plan;

  /**
   * @param entries in causal order, the commit first
   */
  Recount(List<StoredEntry> entries) {
    this.entries = List.copyOf(entries);
    this.facts = entries.stream().map(e -> e.entry().fact()).toList();
    this.plan = ((Fact.PlanCommitted) facts.get(0)).plan();
    this.abandoned = first(0, Fact.SessionAbandoned.class::isInstance);
    this.imported = imported();
    this.dayClosed = dayClosed();
    this.reviewClosed = reviewClosed();
    this.opened = opened();
    this.end = Math.min(Math.min(abandoned, reviewClosed), imported);
    this.cut = cut();
    this.values = new RecountValues(this.entries, plan, end);
  }

  // Where the story turns; places beyond the end stand for "never".

  private int never() {
    return facts.size();
  }

  private int first(int from, Predicate<Fact> kind) {
    return IntStream.range(from, facts.size())
        .filter(i -> kind.test(facts.get(i)))
        .findFirst()
        .orElse(never());
  }

  private int dayClosed() {
    int at = first(0, Fact.DayClosed.class::isInstance);
    return at < Math.min(abandoned, imported) ? at : never();
  }

  private int reviewClosed() {
    int at = dayClosed == never() ? never() : first(dayClosed, Recount::closes);
    return at < abandoned ? at : never();
  }

  private static boolean closes(Fact fact) {
    return fact instanceof Fact.ReviewClosed;
  }

  private int opened() {
    int at =
        reviewClosed == never() ? never() : first(reviewClosed, Fact.SealOpened.class::isInstance);
    return at < abandoned ? at : never();
  }

  /** An old day is brought in before anything is ridden, into a session without a key. */
  private int imported() {
    int at = first(0, Fact.PlainDayImported.class::isInstance);
    int other =
        first(
            0,
            f ->
                RIDING.contains(f.getClass())
                    || f instanceof Fact.DayCutShort
                    || f instanceof Fact.DayClosed
                    || f instanceof Fact.SessionAbandoned);
    boolean open = ((Fact.PlanCommitted) facts.get(0)).key() == null;
    return open && at < other ? at : never();
  }

  private int cut() {
    int at = first(0, Fact.DayCutShort.class::isInstance);
    return at < Math.min(end, dayClosed) ? at : never();
  }

  /** From here on nothing of the day changes any more. */
  int end() {
    return end;
  }

  boolean applied(int at) {
    Fact fact = facts.get(at);
    if (ALWAYS.contains(fact.getClass())) {
      return true;
    }
    if (fact instanceof Fact.AmendmentMade) {
      return opened < at;
    }
    if (fact instanceof Fact.FindingRecorded) {
      return opened < at && at == first(opened, Fact.FindingRecorded.class::isInstance);
    }
    if (fact instanceof FindingSeenAgain seen) {
      return opened < at
          && at
              == first(
                  opened, f -> f instanceof FindingSeenAgain s && s.edition() == seen.edition());
    }
    if (fact instanceof Fact.StintHandled handled) {
      return at < end
          && at == first(0, f -> f instanceof Fact.StintHandled h && h.stint() == handled.stint());
    }
    if (fact instanceof LookTaken look) {
      return at < end
          && at == first(0, f -> f instanceof LookTaken other && other.stint() == look.stint());
    }
    if (fact instanceof ValueChosen chosen) {
      return at < end && values.holds(at, chosen);
    }
    List<Class<? extends Fact>> turns =
        List.of(
            Fact.PlanCommitted.class,
            Fact.SessionAbandoned.class,
            Fact.DayClosed.class,
            Fact.ReviewClosed.class,
            Fact.SealOpened.class,
            Fact.DayCutShort.class,
            Fact.PlainDayImported.class);
    int[] places = {0, abandoned, dayClosed, reviewClosed, opened, cut, imported};
    int turn = turns.indexOf(fact.getClass());
    return turn >= 0 ? places[turn] == at : at < end;
  }

  List<StoredEntry> notApplied() {
    return IntStream.range(0, facts.size())
        .filter(i -> !applied(i))
        .mapToObj(entries::get)
        .toList();
  }

  Step step() {
    if (abandoned < never()) {
      return Step.ABANDONED;
    }
    if (opened < never()) {
      boolean told = first(opened, Fact.ReportWritten.class::isInstance) < never();
      return told ? Step.REPORTED : Step.UNSEALED;
    }
    if (Math.min(reviewClosed, imported) < never()) {
      return Step.REVIEW_CLOSED;
    }
    if (dayClosed < never()) {
      return Step.DAY_CLOSED;
    }
    if (cut < never()) {
      return Step.CUT_SHORT;
    }
    return first(0, f -> RIDING.contains(f.getClass())) < never() ? Step.RIDING : Step.COMMITTED;
  }

  /** Facts of a kind that count, in order. */
  <T extends Fact> List<T> all(Class<T> kind) {
    return IntStream.range(0, facts.size())
        .filter(i -> kind.isInstance(facts.get(i)) && applied(i))
        .mapToObj(i -> kind.cast(facts.get(i)))
        .toList();
  }

  private <T extends Fact> Optional<T> last(Class<T> kind, Predicate<T> which) {
    return all(kind).stream().filter(which).reduce((a, b) -> b);
  }

  // Laps.

  private static @Nullable LapId lapOf(Fact fact) {
    if (fact instanceof Fact.LapRidden f) {
      return f.lap();
    } else if (fact instanceof Fact.ScoreGiven f) {
      return f.lap();
    } else if (fact instanceof Fact.ScoreCorrected f) {
      return f.lap();
    } else if (fact instanceof Fact.WatchStarted f) {
      return f.lap();
    } else if (fact instanceof Fact.WatchReset f) {
      return f.lap();
    } else if (fact instanceof Fact.TimeTaken f) {
      return f.lap();
    } else if (fact instanceof ValueChosen f) {
      return f.lap();
    } else if (fact instanceof Fact.NoteWritten f) {
      return f.lap();
    } else if (fact instanceof Fact.ConditionsNoted f) {
      return f.lap();
    } else if (fact instanceof Fact.LapVoided f) {
      return f.lap();
    } else if (fact instanceof Fact.VoidWithdrawn f) {
      return f.lap();
    }
    return null;
  }

  private static @Nullable String measureOf(Fact fact) {
    if (fact instanceof Fact.ScoreGiven f) {
      return f.measure();
    } else if (fact instanceof Fact.ScoreCorrected f) {
      return f.measure();
    } else if (fact instanceof Fact.WatchStarted f) {
      return f.measure();
    } else if (fact instanceof Fact.WatchReset f) {
      return f.measure();
    } else if (fact instanceof Fact.TimeTaken f) {
      return f.measure();
    }
    return null;
  }

  private List<Fact> ofLap(LapId lap) {
    return facts.subList(0, end).stream().filter(f -> lap.equals(lapOf(f))).toList();
  }

  /** Laps of which anything was said. */
  Set<LapId> named() {
    return facts.subList(0, end).stream()
        .map(Recount::lapOf)
        .filter(java.util.Objects::nonNull)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  Set<LapId> ridden() {
    return all(Fact.LapRidden.class).stream()
        .map(Fact.LapRidden::lap)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private Optional<Fact> latest(LapId lap, String measure, Predicate<Fact> kind) {
    return ofLap(lap).stream()
        .filter(f -> measure.equals(measureOf(f)) && kind.test(f))
        .reduce((a, b) -> b);
  }

  private Set<String> measures(LapId lap) {
    return ofLap(lap).stream()
        .map(Recount::measureOf)
        .filter(java.util.Objects::nonNull)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  Optional<BigDecimal> value(LapId lap, String measure) {
    return values.values(lap, measure).stream().limit(1).filter(Objects::nonNull).findFirst();
  }

  /** Every value that stands, the one that counts first; null for one that was taken out. */
  List<BigDecimal> values(LapId lap, String measure) {
    return values.values(lap, measure);
  }

  /** True if machines recorded different values. */
  boolean twice(LapId lap, String measure) {
    return values.values(lap, measure).size() > 1;
  }

  boolean isVoid(LapId lap) {
    return voided(lap) instanceof Fact.LapVoided;
  }

  @Nullable Fact voided(LapId lap) {
    return ofLap(lap).stream()
        .filter(f -> f instanceof Fact.LapVoided || f instanceof Fact.VoidWithdrawn)
        .reduce((a, b) -> b)
        .orElse(null);
  }

  String note(LapId lap) {
    return last(Fact.NoteWritten.class, f -> f.lap().equals(lap))
        .map(Fact.NoteWritten::text)
        .orElse("");
  }

  /** All that is known of a lap, by name. */
  Map<String, Object> lap(LapId lap) {
    Map<String, Object> told = new TreeMap<>();
    told.put("ridden", ridden().contains(lap));
    told.put("note", note(lap));
    Fact spoiled = voided(lap);
    told.put(
        "void",
        spoiled instanceof Fact.LapVoided v
            ? List.of(v.event(), v.words(), v.afterValuesSeen())
            : List.of());
    Map<String, String> conditions = new TreeMap<>();
    all(Fact.ConditionsNoted.class).stream()
        .filter(f -> f.lap().equals(lap))
        .forEach(f -> conditions.putAll(f.conditions()));
    told.put("conditions", conditions);
    Map<String, Object> stands = new TreeMap<>();
    Map<String, Object> twice = new TreeMap<>();
    Set<String> several = new TreeSet<>();
    Map<String, Object> times = new TreeMap<>();
    Map<String, Object> running = new TreeMap<>();
    for (String measure : measures(lap)) {
      value(lap, measure).ifPresent(v -> stands.put(measure, Told.plain(v)));
      Fact watch =
          latest(
                  lap,
                  measure,
                  f -> !(f instanceof Fact.ScoreGiven) && !(f instanceof Fact.ScoreCorrected))
              .orElse(null);
      List<BigDecimal> stand = new ArrayList<>(values.values(lap, measure));
      stand.replaceAll(Told::plain);
      if (stand.size() > 1) {
        twice.put(measure, List.of(stand, values.decidedBy(lap, measure)));
      }
      if (!values.alone(lap, measure)) {
        several.add(measure);
      }
      if (watch instanceof Fact.TimeTaken taken) {
        times.put(measure, taken.time());
      } else if (watch instanceof Fact.WatchStarted started) {
        running.put(measure, started.started());
      }
    }
    times.keySet().removeAll(several);
    told.put("values", stands);
    told.put("twice", twice);
    told.put("times", times);
    told.put("running", running);
    return told;
  }

  // The day.

  int warmUps() {
    return all(Fact.WarmUpRidden.class).stream()
        .mapToInt(Fact.WarmUpRidden::number)
        .max()
        .orElse(0);
  }

  int lapsSoFar() {
    return warmUps() + ridden().size();
  }

  boolean capReached() {
    if (plan.timetable() == null || plan.timetable().lapBudget() == null) {
      return false;
    }
    int more =
        (int)
            all(Fact.DeviationNoted.class).stream()
                .filter(d -> d.kind() == DeviationKind.LAP_CAP)
                .count();
    return lapsSoFar() - more >= plan.timetable().lapBudget();
  }

  int lastStint() {
    return cutShort().map(Fact.DayCutShort::lastStint).orElse(plan.stints());
  }

  Optional<Fact.DayCutShort> cutShort() {
    return all(Fact.DayCutShort.class).stream().findFirst();
  }

  Optional<LapId> nextLap() {
    Set<LapId> ridden = ridden();
    for (int stint = 1; stint <= lastStint(); stint++) {
      for (int lap = 1; lap <= plan.laps().settling() + plan.laps().scored(); lap++) {
        if (!ridden.contains(new LapId(stint, lap))) {
          return Optional.of(new LapId(stint, lap));
        }
      }
    }
    return Optional.empty();
  }

  Map<Integer, Guess> guesses() {
    Map<Integer, Guess> guesses = new TreeMap<>();
    for (Fact fact : all(Fact.class)) {
      if (fact instanceof Fact.GuessGiven given) {
        guesses.put(given.stint(), given.guess());
      } else if (fact instanceof Fact.GuessTakenBack back) {
        guesses.remove(back.stint());
      }
    }
    return guesses;
  }

  /** What was said last of each covariate, where it was not taken out. */
  Map<CovariateAt, BigDecimal> covariates() {
    Map<CovariateAt, BigDecimal> said = new TreeMap<>();
    all(CovariateSaid.class).stream()
        .map(CovariateSaid::at)
        .distinct()
        .forEach(
            at -> {
              BigDecimal value =
                  last(CovariateSaid.class, f -> f.at().equals(at)).orElseThrow().value();
              if (value != null) {
                said.put(at, value);
              }
            });
    return said;
  }

  Set<Integer> handedOver() {
    return all(Fact.BikeHandedOver.class).stream()
        .map(Fact.BikeHandedOver::stint)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** The stint of the last hand-over that had a lap still to be ridden, unless it came back. */
  Optional<Integer> bikeOut() {
    for (int at = facts.size() - 1; at >= 0; at--) {
      if (facts.get(at) instanceof Fact.BikeHandedOver out
          && applied(at)
          && !riddenBefore(at, out.stint())) {
        return IntStream.range(at, facts.size())
                .anyMatch(
                    i ->
                        applied(i)
                            && facts.get(i) instanceof Fact.BikeReturned back
                            && back.stint() == out.stint())
            ? Optional.empty()
            : Optional.of(out.stint());
      }
    }
    return Optional.empty();
  }

  private boolean riddenBefore(int at, int stint) {
    List<Fact> before =
        IntStream.range(0, at).filter(this::applied).mapToObj(i -> facts.get(i)).toList();
    if (stint == 0) {
      return plan.laps().warmUp() == 0
          || before.stream()
              .anyMatch(
                  f ->
                      f instanceof Fact.WarmUpRidden warm && warm.number() >= plan.laps().warmUp());
    }
    return IntStream.rangeClosed(1, plan.laps().perStint())
        .mapToObj(lap -> new LapId(stint, lap))
        .allMatch(
            lap ->
                before.stream()
                    .anyMatch(f -> f instanceof Fact.LapRidden l && l.lap().equals(lap)));
  }

  Set<Integer> handled() {
    return all(Fact.StintHandled.class).stream()
        .map(Fact.StintHandled::stint)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  Optional<StoredEntry> closing() {
    return reviewClosed < never() ? Optional.of(entries.get(reviewClosed)) : Optional.empty();
  }

  Optional<Fact.SealOpened> sealOpened() {
    return all(Fact.SealOpened.class).stream().findFirst();
  }

  List<Head> heads() {
    Map<NotebookId, Head> heads = new TreeMap<>();
    for (StoredEntry stored : entries) {
      Head before = heads.get(stored.entry().notebook());
      if (before == null || before.number() < stored.entry().number()) {
        heads.put(stored.entry().notebook(), stored.head());
      }
    }
    return new ArrayList<>(heads.values());
  }

  /** Everything that a state tells, by the same names as {@link Told#of}. */
  Map<String, Object> told() {
    Map<String, Object> told = new LinkedHashMap<>();
    told.put("step", step());
    told.put("entries", entries);
    told.put("heads", heads());
    told.put("not applied", notApplied());
    Map<LapId, Object> laps = new TreeMap<>();
    named().forEach(lap -> laps.put(lap, lap(lap)));
    told.put("laps", laps);
    told.put("guesses", guesses());
    told.put("covariates", covariates());
    told.put("handed over", handedOver());
    told.put("bike out", bikeOut());
    told.put("handled", handled());
    told.put("warm-ups", warmUps());
    told.put("laps ridden", ridden().size());
    told.put("laps so far", lapsSoFar());
    told.put("cap reached", capReached());
    told.put("next lap", nextLap());
    told.put("cut short", cutShort());
    told.put("blind broken", all(Fact.BlindBroken.class));
    told.put("deviations", all(Fact.DeviationNoted.class));
    told.put("fingerprints given", all(Fact.FingerprintGiven.class));
    told.put("expectations", all(Fact.ExpectationGiven.class));
    told.put("amendments", all(Fact.AmendmentMade.class));
    told.put("corrections", all(Fact.ScoreCorrected.class));
    told.put(
        "review", closing().map(entry -> ((Fact.ReviewClosed) entry.entry().fact()).fingerprint()));
    told.put("opened with", sealOpened().map(Fact.SealOpened::with));
    told.put("helper's words", sealOpened().map(Fact.SealOpened::helperRecords).orElse(Map.of()));
    told.put("looks", looks());
    told.put("finding", all(Fact.FindingRecorded.class).stream().findFirst());
    told.put(
        "abandoned",
        all(Fact.SessionAbandoned.class).stream().findFirst().map(Fact.SessionAbandoned::reason));
    told.put("plain day", all(Fact.PlainDayImported.class).stream().findFirst());
    return told;
  }

  private Map<Integer, FindingSeenAgain> looks() {
    Map<Integer, FindingSeenAgain> looks = new java.util.TreeMap<>();
    all(FindingSeenAgain.class).forEach(look -> looks.put(look.edition(), look));
    return looks;
  }
}
