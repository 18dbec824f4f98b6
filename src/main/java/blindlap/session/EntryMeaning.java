package blindlap.session;

import blindlap.fault.Problem;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.TellingRun;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.LapId;
import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Whether what an entry says can be, given the plan of its session. It does not ask when it was
 * said: what comes too late is a matter of {@link Folding}. Nothing that this program or an earlier
 * one writes is refused here; a file that somebody made may say anything.
 */
public final class EntryMeaning implements FactVisitor<Optional<Problem>> {
  private static final int MOST_WARM_UPS = 1_000;
  private static final long MOST_SECONDS = 86_400;

  /** What both clocks of a watch may lie apart and still be held in 64 bits of nanoseconds. */
  private static final Duration LONGEST = Duration.ofDays(200 * 365L);

  private final Plan plan;

  private EntryMeaning(Plan plan) {
    this.plan = plan;
  }

  /** What cannot be in a fact; empty if it can. The place is left to whoever knows it. */
  public static Optional<Problem> problem(Plan plan, Fact fact) {
    return fact.accept(new EntryMeaning(plan));
  }

  private static Optional<Problem> fine() {
    return Optional.empty();
  }

  private static Optional<Problem> wrong(MeaningFault fault, Object... details) {
    return Optional.of(Problem.of(fault, "", details));
  }

  private Optional<Problem> lap(LapId lap) {
    return PlanPlaces.lap(plan, lap);
  }

  private Optional<Problem> stint(int stint) {
    return PlanPlaces.stint(plan, stint);
  }

  /** The helper's records have one more: the one that closes the helper's day. */
  private Optional<Problem> handled(int number) {
    int stint = LookTaken.isNumber(number) ? number - LookTaken.number(0) : number;
    return stint == HelperEntry.closing(plan) ? fine() : stint(stint);
  }

  private Optional<Problem> measured(LapId lap, String name) {
    return lap(lap).or(() -> plan.measure(name).isPresent() ? fine() : unknown(name));
  }

  private Optional<Problem> unknown(String name) {
    return wrong(
        MeaningFault.NO_SUCH_MEASURE,
        name,
        String.join(", ", plan.measures().stream().map(Measure::name).toList()));
  }

  private Optional<Problem> value(LapId lap, String name, @Nullable BigDecimal value) {
    return measured(lap, name).or(() -> value == null ? fine() : value(name, value));
  }

  private Optional<Problem> value(String name, BigDecimal value) {
    if (!Digits.ordinary(value)) {
      return wrong(MeaningFault.TOO_MANY_DIGITS, name, Digits.MOST);
    }
    return plan.measure(name).filter(m -> !m.kind().admits(value)).isPresent()
        ? wrong(MeaningFault.NOT_A_VALUE, name, value.toPlainString())
        : fine();
  }

  @Override
  public Optional<Problem> planCommitted(Fact.PlanCommitted fact) {
    return fine();
  }

  @Override
  public Optional<Problem> fingerprintGiven(Fact.FingerprintGiven fact) {
    return fine();
  }

  @Override
  public Optional<Problem> expectationGiven(Fact.ExpectationGiven fact) {
    return fine();
  }

  @Override
  public Optional<Problem> sheetReprinted(Fact.SheetReprinted fact) {
    return fine();
  }

  @Override
  public Optional<Problem> stintHandled(Fact.StintHandled fact) {
    return handled(fact.stint());
  }

  @Override
  public Optional<Problem> bikeHandedOver(Fact.BikeHandedOver fact) {
    return stint(fact.stint());
  }

  @Override
  public Optional<Problem> bikeReturned(Fact.BikeReturned fact) {
    return stint(fact.stint());
  }

  @Override
  public Optional<Problem> warmUpRidden(Fact.WarmUpRidden fact) {
    return fact.number() < 1 || fact.number() > MOST_WARM_UPS
        ? wrong(MeaningFault.NO_SUCH_WARM_UP, fact.number())
        : fine();
  }

  @Override
  public Optional<Problem> lapRidden(Fact.LapRidden fact) {
    return lap(fact.lap());
  }

  @Override
  public Optional<Problem> scoreGiven(Fact.ScoreGiven fact) {
    return value(fact.lap(), fact.measure(), fact.value());
  }

  @Override
  public Optional<Problem> watchStarted(Fact.WatchStarted fact) {
    return measured(fact.lap(), fact.measure());
  }

  @Override
  public Optional<Problem> watchReset(Fact.WatchReset fact) {
    return measured(fact.lap(), fact.measure());
  }

  /** A watch may have been stopped too early or too late, or its clock set: that is no lie. */
  @Override
  public Optional<Problem> timeTaken(Fact.TimeTaken fact) {
    TimeRecord time = fact.time();
    Optional<Problem> place = measured(fact.lap(), fact.measure());
    if (place.isPresent()) {
      return place;
    }
    BigDecimal typed = time.typed();
    if (typed != null) {
      return value(fact.measure(), typed);
    }
    boolean apart = Duration.between(time.started(), time.stopped()).abs().compareTo(LONGEST) > 0;
    BigDecimal seconds = apart ? null : time.seconds();
    boolean backwards = time.monotonicNanos() < 0;
    boolean endless =
        seconds != null && seconds.compareTo(BigDecimal.valueOf(7 * MOST_SECONDS)) > 0;
    return apart || backwards || endless ? wrong(MeaningFault.NOT_A_TIME, fact.measure()) : fine();
  }

  @Override
  public Optional<Problem> scoreCorrected(Fact.ScoreCorrected fact) {
    return value(fact.lap(), fact.measure(), fact.value());
  }

  @Override
  public Optional<Problem> valueChosen(ValueChosen fact) {
    return value(fact.lap(), fact.measure(), fact.value());
  }

  @Override
  public Optional<Problem> covariateSaid(CovariateSaid fact) {
    CovariateAt at = fact.at();
    BigDecimal value = fact.value();
    if (value != null && !Digits.ordinary(value)) {
      return wrong(MeaningFault.TOO_MANY_DIGITS, at.covariate(), Digits.MOST);
    }
    return CovariateMeaning.problem(plan, at)
        .or(() -> at.lap() > 0 ? lap(new LapId(at.stint(), at.lap())) : stint(at.stint()));
  }

  @Override
  public Optional<Problem> lookTaken(LookTaken fact) {
    String measure = plan.primary().map(Measure::name).orElse("");
    return stint(fact.stint())
        .or(
            () ->
                fact.values().entrySet().stream()
                    .flatMap(e -> value(e.getKey(), measure, e.getValue()).stream())
                    .findFirst());
  }

  @Override
  public Optional<Problem> ofOnePerson(Fact.OfOnePerson fact) {
    return fact.accept(new OnePersonMeaning(plan));
  }

  @Override
  public Optional<Problem> plateRead(PlateRead fact) {
    return stint(fact.stint());
  }

  @Override
  public Optional<Problem> ofRecordings(RecordingFact fact) {
    return fact.accept(new RecordingMeaning(plan));
  }

  @Override
  public Optional<Problem> noteWritten(Fact.NoteWritten fact) {
    return lap(fact.lap());
  }

  @Override
  public Optional<Problem> guessGiven(Fact.GuessGiven fact) {
    Integer setup = fact.guess().setup();
    return stint(fact.stint())
        .or(() -> setup == null ? fine() : PlanPlaces.guessed(plan, setup))
        .or(() -> answer(fact));
  }

  private Optional<Problem> answer(Fact.GuessGiven fact) {
    TellingRun run = plan.telling();
    boolean fits = run == null || TrialPlaces.answer(run, fact.stint(), fact.guess()).isEmpty();
    return fits ? fine() : wrong(MeaningFault.NO_SUCH_ANSWER, fact.stint());
  }

  @Override
  public Optional<Problem> guessTakenBack(Fact.GuessTakenBack fact) {
    return stint(fact.stint());
  }

  @Override
  public Optional<Problem> conditionsNoted(Fact.ConditionsNoted fact) {
    return lap(fact.lap());
  }

  @Override
  public Optional<Problem> lapVoided(Fact.LapVoided fact) {
    return lap(fact.lap());
  }

  @Override
  public Optional<Problem> voidWithdrawn(Fact.VoidWithdrawn fact) {
    return lap(fact.lap());
  }

  @Override
  public Optional<Problem> blindBroken(Fact.BlindBroken fact) {
    return stint(fact.stint());
  }

  @Override
  public Optional<Problem> deviationNoted(Fact.DeviationNoted fact) {
    return stint(fact.stint());
  }

  @Override
  public Optional<Problem> dayCutShort(Fact.DayCutShort fact) {
    return stint(fact.lastStint());
  }

  @Override
  public Optional<Problem> dayClosed(Fact.DayClosed fact) {
    return fine();
  }

  @Override
  public Optional<Problem> reviewClosed(Fact.ReviewClosed fact) {
    return fine();
  }

  @Override
  public Optional<Problem> sealOpened(Fact.SealOpened fact) {
    return fact.helperRecords().keySet().stream()
        .map(this::handled)
        .flatMap(Optional::stream)
        .findFirst();
  }

  @Override
  public Optional<Problem> seriesEnded(SeriesEnded fact) {
    return fine();
  }

  @Override
  public Optional<Problem> seriesStood(SeriesStood fact) {
    return fine();
  }

  @Override
  public Optional<Problem> findingRecorded(Fact.FindingRecorded fact) {
    return found(fact.edition(), fact.figures());
  }

  @Override
  public Optional<Problem> findingSeenAgain(FindingSeenAgain fact) {
    return found(Math.min(fact.edition(), fact.unsealedUnder()), fact.figures());
  }

  private Optional<Problem> found(int edition, Map<String, BigDecimal> figures) {
    if (edition < 1) {
      return wrong(MeaningFault.NO_SUCH_EDITION, edition);
    }
    for (Map.Entry<String, BigDecimal> figure : figures.entrySet()) {
      // Figures are doubles in full, so they may be very small or large, but not endless.
      if (figure.getValue().precision() > 400 || Math.abs((long) figure.getValue().scale()) > 400) {
        return wrong(MeaningFault.TOO_MANY_DIGITS, figure.getKey(), 400);
      }
    }
    return fine();
  }

  @Override
  public Optional<Problem> reportWritten(Fact.ReportWritten fact) {
    return fine();
  }

  @Override
  public Optional<Problem> sessionAbandoned(Fact.SessionAbandoned fact) {
    return fine();
  }

  @Override
  public Optional<Problem> amendmentMade(Fact.AmendmentMade fact) {
    return fine();
  }

  @Override
  public Optional<Problem> plainDayImported(Fact.PlainDayImported fact) {
    return fact.laps().stream()
        .flatMap(lap -> lap.values().entrySet().stream())
        .map(each -> oldValue(each.getKey(), each.getValue()))
        .flatMap(Optional::stream)
        .findFirst();
  }

  /** A file of an old day may hold values that no score sheet takes; they are left out later. */
  private Optional<Problem> oldValue(String name, BigDecimal value) {
    return plan.measure(name).isEmpty()
        ? unknown(name)
        : Digits.ordinary(value) ? fine() : wrong(MeaningFault.TOO_MANY_DIGITS, name, Digits.MOST);
  }

  /**
   * What cannot be in the entries of a session, by the plan that counts in it.
   *
   * @param entries in causal order
   * @param asked those to be looked at, of these
   */
  public static List<Problem> problems(List<StoredEntry> entries, List<StoredEntry> asked) {
    Optional<Plan> plan =
        entries.stream()
            .map(stored -> stored.entry().fact())
            .filter(Fact.PlanCommitted.class::isInstance)
            .map(fact -> ((Fact.PlanCommitted) fact).plan())
            .findFirst();
    return plan.stream()
        .flatMap(p -> asked.stream().flatMap(stored -> at(stored, p).stream()))
        .toList();
  }

  private static Optional<Problem> at(StoredEntry stored, Plan plan) {
    return problem(plan, stored.entry().fact())
        .map(
            problem ->
                new Problem(problem.fault(), Chains.place(stored.entry()), problem.details()));
  }
}
