package blindlap.session;

import blindlap.plan.Covariate;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.seal.ChainHead;
import blindlap.seal.Fingerprint;
import blindlap.seal.ReviewFingerprint;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.Source;
import blindlap.session.day.Step;
import blindlap.session.day.VoidEvent;
import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Commands, sensible and foolish, each with what must become of it, as a reader of the rules would
 * say from the recounted facts.
 */
final class RandomCommands {
  /**
   * A command that someone tries.
   *
   * @param what its name, for messages
   * @param run gives it
   * @param faults why it must be refused, in order; empty if it must be accepted
   * @param facts what it must become, if it is accepted
   */
  record Trial(
      String what,
      Function<SessionState, Outcome> run,
      List<SessionFault> faults,
      List<Fact> facts) {}

  private static final Instant MORNING = Instant.parse("2026-11-14T08:00:00Z");

  private final Random random;
  private final Recount day;
  private final Plan plan;
  private final RandomDay.Secrets secrets;
  private final RandomLaps laps;

  RandomCommands(Random random, Recount day, RandomDay.Secrets secrets) {
    this.random = random;
    this.day = day;
    this.plan = day.plan;
    this.secrets = secrets;
    this.laps = new RandomLaps(random, day);
  }

  /**
   * One command.
   *
   * @param late true towards the end of the day, when people close things
   */
  Trial draw(boolean late) {
    if (day.step() == Step.ABANDONED && rarely()) {
      return abandon();
    }
    if (day.step() == Step.UNSEALED && random.nextInt(3) == 0) {
      return said(new Fact.ReportWritten("report.pdf"));
    }
    if (late && random.nextInt(3) == 0) {
      return random.nextInt(4) == 0 ? closeDay() : random.nextBoolean() ? closeReview() : unseal();
    }
    return switch (random.nextInt(late ? 22 : 18)) {
      case 0, 1, 2, 3 -> record();
      case 4 -> correct();
      case 5, 6 -> random.nextInt(3) == 0 ? choose() : score();
      case 7, 8, 9 -> note();
      case 10, 11, 12 -> stint();
      case 13 -> voidLap();
      case 14 -> withdrawVoid();
      case 15 -> blindBroken();
      case 16 -> plan.covariates().isEmpty() || random.nextBoolean() ? said() : covariate();
      case 17 -> random.nextInt(6) == 0 ? cutShort() : handled();
      case 18 -> closeDay();
      case 19 -> cutShort();
      case 20 -> random.nextInt(10) == 0 ? abandon() : amend();
      default -> amend();
    };
  }

  private boolean rarely() {
    return random.nextInt(8) == 0;
  }

  private String words() {
    return rarely() ? " " : "words " + random.nextInt(100);
  }

  private static List<SessionFault> one(SessionFault fault) {
    return List.of(fault);
  }

  // What the step forbids.

  private List<SessionFault> reviewOver() {
    return switch (day.step()) {
      case ABANDONED -> one(SessionFault.IS_ABANDONED);
      case REVIEW_CLOSED -> one(SessionFault.REVIEW_IS_CLOSED);
      case UNSEALED, REPORTED -> one(SessionFault.ALREADY_UNSEALED);
      case COMMITTED, RIDING, CUT_SHORT, DAY_CLOSED -> List.of();
    };
  }

  private List<SessionFault> recordingOver() {
    return day.step() == Step.DAY_CLOSED ? one(SessionFault.RECORDING_IS_OVER) : reviewOver();
  }

  private List<SessionFault> dayOver() {
    return switch (day.step()) {
      case COMMITTED, RIDING, CUT_SHORT -> List.of();
      case ABANDONED -> one(SessionFault.IS_ABANDONED);
      default -> one(SessionFault.RECORDING_IS_OVER);
    };
  }

  private Trial onDay(
      String what, Function<DayCommands, Outcome> run, List<SessionFault> faults, Fact... facts) {
    return new Trial(what, state -> run.apply(new DayCommands(state)), faults, List.of(facts));
  }

  private Trial onLife(
      String what, Function<LifeCommands, Outcome> run, List<SessionFault> faults, Fact... facts) {
    return new Trial(what, state -> run.apply(new LifeCommands(state)), faults, List.of(facts));
  }

  // Laps.

  private Trial record() {
    List<RandomLaps.Drawn> drawn = laps.several();
    List<SessionFault> faults = new ArrayList<>(recordingOver());
    List<Fact> facts = new ArrayList<>();
    List<LapId> seen = new ArrayList<>();
    for (RandomLaps.Drawn lap : faults.isEmpty() ? drawn : List.<RandomLaps.Drawn>of()) {
      LapId id = lap.input().lap();
      if (seen.contains(id)) {
        faults.add(SessionFault.LAP_TWICE_IN_FILE);
        continue;
      }
      seen.add(id);
      boolean again = lap.faults().isEmpty() && day.ridden().contains(id);
      faults.addAll(again ? one(SessionFault.LAP_TWICE) : lap.faults());
      facts.addAll(lap.facts(Source.FILE));
    }
    List<LapInput> inputs = drawn.stream().map(RandomLaps.Drawn::input).toList();
    return onDay(
        "record " + inputs, c -> c.record(inputs, Source.FILE), faults, facts.toArray(new Fact[0]));
  }

  private Trial correct() {
    List<RandomLaps.Drawn> drawn = laps.several();
    String reason = words();
    List<SessionFault> faults = new ArrayList<>(reviewOver());
    if (reason.isBlank()) {
      faults.add(SessionFault.REASON_MISSING);
    }
    List<Fact> facts = new ArrayList<>();
    List<LapId> seen = new ArrayList<>();
    for (RandomLaps.Drawn lap : faults.isEmpty() ? drawn : List.<RandomLaps.Drawn>of()) {
      if (seen.contains(lap.input().lap())) {
        faults.add(SessionFault.LAP_TWICE_IN_FILE);
        continue;
      }
      seen.add(lap.input().lap());
      boolean early = lap.faults().isEmpty() && !day.ridden().contains(lap.input().lap());
      faults.addAll(early ? one(SessionFault.LAP_NOT_RIDDEN) : lap.faults());
      if (!early && lap.faults().isEmpty()) {
        faults.addAll(lap.uncorrected());
        lap.corrected().forEach(m -> faults.addAll(twice(lap.input().lap(), m)));
      }
      facts.addAll(lap.corrections(reason));
    }
    List<LapInput> inputs = drawn.stream().map(RandomLaps.Drawn::input).toList();
    return onDay(
        "correct " + inputs, c -> c.correct(inputs, reason), faults, facts.toArray(new Fact[0]));
  }

  private List<SessionFault> twice(LapId lap, @Nullable String measure) {
    boolean twice = measure != null && day.twice(lap, measure);
    return !twice
        ? List.of()
        : one(
            plan.blinding().blinded()
                ? SessionFault.TWO_VALUES
                : SessionFault.TWO_VALUES_UNBLINDED);
  }

  /** Of values that stand twice, if there are any, another one. */
  private Trial choose() {
    LapId lap = laps.lap();
    String measure = plan.measures().get(0).name();
    for (LapId each : day.named()) {
      for (Measure any : plan.measures()) {
        if (day.twice(each, any.name())) {
          lap = each;
          measure = any.name();
        }
      }
    }
    List<BigDecimal> values = day.values(lap, measure);
    BigDecimal value =
        values.isEmpty() || rarely()
            ? new BigDecimal("77")
            : values.get(random.nextInt(values.size()));
    String reason = rarely() ? "faster" : "typing error, as everybody saw";
    TwoValues.Decider decider = new TwoValues.Decider(rarely() ? "" : "E. Moor", !rarely());
    List<SessionFault> faults = new ArrayList<>(reviewOver());
    if (faults.isEmpty() && values.size() < 2) {
      faults.add(SessionFault.NOT_TWICE);
    } else if (faults.isEmpty()) {
      boolean declared = !decider.name().isEmpty() && decider.knowsNeither();
      boolean there =
          values.stream()
              .anyMatch(v -> v == null ? value == null : value != null && v.compareTo(value) == 0);
      boolean may = plan.blinding().blinded() && declared && !reason.equals("faster");
      faults.addAll(
          !may ? twice(lap, measure) : there ? List.of() : one(SessionFault.NOT_RECORDED));
    }
    LapId at = lap;
    String of = measure;
    return new Trial(
        "choose " + at + of + value,
        state -> new TwoValues(state).choose(at, of, value, reason, decider),
        faults,
        List.of(new ValueChosen(at, of, value, reason, "E. Moor")));
  }

  private Trial score() {
    LapId lap = laps.lap();
    Map.Entry<String, BigDecimal> value = laps.value();
    List<SessionFault> faults = new ArrayList<>(recordingOver());
    faults.addAll(laps.missing(lap));
    faults.addAll(laps.wrong(value.getKey(), value.getValue()));
    faults.addAll(twice(lap, value.getKey()));
    return onDay(
        "score " + lap + value,
        c -> c.score(lap, value.getKey(), value.getValue(), Source.SCREEN),
        faults,
        new Fact.ScoreGiven(lap, value.getKey(), value.getValue(), Source.SCREEN));
  }

  private Trial note() {
    LapId lap = laps.lap();
    Measure asked = plan.measures().get(random.nextInt(plan.measures().size()));
    String measure = asked.name();
    Instant at = MORNING.plusSeconds(random.nextInt(1000));
    Fact fact =
        switch (random.nextInt(7)) {
          case 0 -> new Fact.NoteWritten(lap, "note " + random.nextInt(9));
          case 1 ->
              new Fact.ConditionsNoted(
                  lap, Map.of(rarely() ? "wind" : "light", "word " + random.nextInt(9)));
          case 2 -> new Fact.WatchStarted(lap, measure, at);
          case 3 -> new Fact.WatchReset(lap, measure);
          case 4, 5 -> {
            // A time has no place under a measure that is no time: such an entry is not applied.
            TimeRecord time = time(at);
            yield asked.kind().timed()
                ? new Fact.TimeTaken(lap, measure, time)
                : new Fact.WatchReset(lap, measure);
          }
          default -> new Fact.LapRidden(lap, Source.SCREEN);
        };
    List<SessionFault> faults = new ArrayList<>(recordingOver());
    faults.addAll(laps.missing(lap));
    boolean ofValue =
        fact instanceof Fact.WatchStarted
            || fact instanceof Fact.WatchReset
            || fact instanceof Fact.TimeTaken;
    faults.addAll(twice(lap, ofValue ? measure : null));
    return onDay("note " + fact, c -> c.note(lap, fact), faults, fact);
  }

  private TimeRecord time(Instant start) {
    int seconds = 60 + random.nextInt(100);
    long slept = random.nextInt(3) == 0 ? 3_000_000_000L : 0;
    return new TimeRecord(
        start,
        start.plusSeconds(seconds),
        seconds * 1_000_000_000L - slept,
        TimeRecord.TimedBy.values()[random.nextInt(3)],
        random.nextInt(3) == 0 ? BigDecimal.valueOf(seconds) : null);
  }

  private Trial voidLap() {
    LapId lap = laps.lap();
    VoidEvent event = VoidEvent.values()[random.nextInt(VoidEvent.values().length)];
    String reason = rarely() ? "slow" : event.text();
    List<SessionFault> faults = new ArrayList<>(reviewOver());
    faults.addAll(laps.missing(lap));
    if (faults.isEmpty() && !day.ridden().contains(lap)) {
      faults.add(SessionFault.LAP_NOT_RIDDEN);
    }
    if (reason.equals("slow")) {
      faults.add(SessionFault.NOT_AN_EVENT);
    }
    if (day.isVoid(lap)) {
      faults.add(SessionFault.ALREADY_VOID);
    }
    boolean seen = day.step() == Step.DAY_CLOSED;
    return onDay(
        "void " + lap + reason,
        c -> c.voidLap(lap, reason, "why"),
        faults,
        new Fact.LapVoided(lap, event, "why", seen));
  }

  private Trial withdrawVoid() {
    List<LapId> spoiled = day.named().stream().filter(day::isVoid).toList();
    LapId lap = spoiled.isEmpty() || rarely() ? laps.lap() : spoiled.get(0);
    String reason = words();
    List<SessionFault> faults = new ArrayList<>(reviewOver());
    if (!day.isVoid(lap)) {
      faults.add(SessionFault.NOT_VOID);
    }
    if (reason.isBlank()) {
      faults.add(SessionFault.REASON_MISSING);
    }
    return onDay(
        "withdraw void " + lap,
        c -> c.withdrawVoid(lap, reason),
        faults,
        new Fact.VoidWithdrawn(lap, reason));
  }

  // Stints.

  private int anyStint() {
    return random.nextInt(plan.stints() + 2);
  }

  /** What is said of a covariate on the page; the rider's before the bike is handed over. */
  private Trial covariate() {
    Covariate drawn = plan.covariates().get(random.nextInt(plan.covariates().size()));
    String name = rarely() ? "the moon" : drawn.name();
    int stint = 1 + random.nextInt(plan.stints() + (rarely() ? 1 : 0));
    int scored = plan.laps().settling() + 1 + random.nextInt(plan.laps().scored());
    boolean wrong = rarely();
    int lap = drawn.perLap() != wrong ? scored : 0;
    boolean rider = drawn.by() == Covariate.By.RIDER;
    boolean ridden = day.ridden().stream().anyMatch(id -> id.stint() == stint);
    if (rider && !ridden && day.named().stream().anyMatch(id -> id.stint() == stint)) {
      return said(); // whether such a lap is under way is not recounted
    }
    List<SessionFault> faults = new ArrayList<>(overNow());
    boolean known = name.equals(drawn.name());
    if (!known) {
      faults.add(SessionFault.UNKNOWN_COVARIATE);
    } else if (stint > day.lastStint()) {
      faults.add(SessionFault.NO_SUCH_STINT);
    } else if (wrong) {
      faults.add(
          drawn.perLap() ? SessionFault.COVARIATE_OF_LAPS : SessionFault.COVARIATE_OF_STINTS);
    } else if (faults.isEmpty() && rider && (ridden || day.handedOver().contains(stint))) {
      faults.add(SessionFault.COVARIATE_TOO_LATE);
    }
    CovariateAt at = new CovariateAt(name, stint, lap);
    @Nullable BigDecimal value =
        random.nextInt(4) == 0 ? null : BigDecimal.valueOf(random.nextInt(9));
    CovariateSaid fact = new CovariateSaid(at, value, Source.SCREEN, "");
    boolean same = java.util.Objects.equals(day.covariates().get(at), value);
    return new Trial(
        "covariate " + fact,
        state -> new CovariateCommands(state).say(at, value),
        faults,
        same ? List.of() : List.of(fact));
  }

  private List<SessionFault> overNow() {
    return reviewOver().isEmpty() ? dayOver() : reviewOver();
  }

  private Trial stint() {
    int stint = anyStint();
    Fact fact =
        switch (random.nextInt(6)) {
          case 0, 1 -> new Fact.BikeHandedOver(stint);
          case 4 -> new Fact.BikeReturned(stint);
          case 2 -> new Fact.WarmUpRidden(1 + random.nextInt(3));
          case 3 -> new Fact.GuessGiven(stint, guess());
          default ->
              new Fact.DeviationNoted(
                  stint, DeviationKind.values()[random.nextInt(5)], "so it was " + stint);
        };
    return ofStint(stint, fact);
  }

  private Guess guess() {
    @Nullable Integer setup = rarely() ? null : random.nextInt(plan.setups().size());
    return new Guess(setup, Guess.Sureness.values()[random.nextInt(3)], "cue");
  }

  private Trial ofStint(int stint, Fact fact) {
    List<SessionFault> faults = new ArrayList<>(recordingOver());
    int least = fact instanceof Fact.GuessGiven ? 1 : 0;
    if (stint < least || stint > plan.stints()) {
      faults.add(SessionFault.NO_SUCH_STINT);
    }
    if (fact instanceof Fact.GuessGiven && !plan.blinding().guesses()) {
      faults.add(SessionFault.NO_GUESSES);
    }
    if (fact instanceof Fact.StintHandled && day.handled().contains(stint)) {
      faults.add(SessionFault.HANDLED_TWICE);
    }
    return onDay("stint " + stint + fact, c -> c.stint(stint, fact), faults, fact);
  }

  private Trial handled() {
    int stint = anyStint();
    return secrets.sealed() == null
        ? stint()
        : ofStint(stint, new Fact.StintHandled(secrets.record(stint)));
  }

  private Trial blindBroken() {
    int stint = anyStint();
    String what = words();
    List<SessionFault> faults = List.of();
    if (day.step() == Step.ABANDONED) {
      faults = one(SessionFault.IS_ABANDONED);
    } else if (!reviewOver().isEmpty()) {
      faults = one(SessionFault.REVIEW_IS_CLOSED);
    } else if (stint < 1 || stint > plan.stints()) {
      faults = one(SessionFault.NO_SUCH_STINT);
    } else if (what.isBlank()) {
      faults = one(SessionFault.REASON_MISSING);
    }
    return onLife(
        "blind broken " + stint,
        c -> c.blindBroken(stint, what),
        faults,
        new Fact.BlindBroken(stint, what));
  }

  // The session's life.

  private Trial cutShort() {
    int latest = day.ridden().stream().mapToInt(LapId::stint).max().orElse(0);
    int last = rarely() ? random.nextInt(plan.stints() + 3) - 1 : Math.min(latest, plan.stints());
    String reason = words();
    String who = words();
    boolean knows = random.nextBoolean();
    List<SessionFault> faults = dayOver();
    if (faults.isEmpty() && day.cutShort().isPresent()) {
      faults = one(SessionFault.ALREADY_CUT_SHORT);
    } else if (faults.isEmpty() && (last < 0 || last > plan.stints())) {
      faults = one(SessionFault.NO_SUCH_STINT);
    } else if (faults.isEmpty() && (reason.isBlank() || who.isBlank())) {
      faults = one(SessionFault.REASON_MISSING);
    } else if (faults.isEmpty() && latest > last) {
      faults = one(SessionFault.LAPS_AFTER_CUT);
    }
    return onLife(
        "cut short after " + last,
        c -> c.cutShort(last, reason, who, knows),
        faults,
        new Fact.DayCutShort(last, reason, who, knows));
  }

  private Trial closeDay() {
    List<SessionFault> faults = dayOver();
    if (faults.isEmpty() && day.ridden().isEmpty()) {
      faults = one(SessionFault.NOTHING_RECORDED);
    }
    return onLife("close day", LifeCommands::closeDay, faults, new Fact.DayClosed());
  }

  private Trial closeReview() {
    List<SessionFault> faults = reviewOver();
    if (faults.isEmpty() && day.step() != Step.DAY_CLOSED) {
      faults = one(SessionFault.DAY_NOT_CLOSED);
    }
    List<ChainHead> heads = new ArrayList<>();
    for (Head head : day.heads()) {
      heads.add(
          new ChainHead(
              head.notebook().text(), head.number(), Fingerprint.parse(head.hash().hex())));
    }
    Fingerprint expected =
        ReviewFingerprint.of(Histories.SESSION.text(), secrets.fingerprint(), heads);
    return onLife(
        "close review", LifeCommands::closeReview, faults, new Fact.ReviewClosed(expected));
  }

  private Trial unseal() {
    List<SessionFault> faults =
        switch (day.step()) {
          case ABANDONED -> one(SessionFault.IS_ABANDONED);
          case UNSEALED, REPORTED -> one(SessionFault.ALREADY_UNSEALED);
          case REVIEW_CLOSED -> List.of();
          case COMMITTED, RIDING, CUT_SHORT, DAY_CLOSED -> one(SessionFault.REVIEW_NOT_CLOSED);
        };
    if (secrets.sealed() == null) {
      return onLife(
          "unseal", c -> c.mayUnseal(), one(SessionFault.OPEN_NOISE_RUN), new Fact.DayClosed());
    }
    Map<Integer, String> words = new LinkedHashMap<>();
    day.handled().forEach(stint -> words.put(stint, "fitted"));
    return onLife(
        "unseal",
        c -> c.unsealed(secrets.key(), OpenedWith.PHRASE, words),
        faults,
        new Fact.SealOpened(secrets.key(), OpenedWith.PHRASE, words));
  }

  private Trial abandon() {
    String reason = random.nextInt(3) == 0 ? "" : words();
    List<SessionFault> faults = List.of();
    if (day.step() == Step.ABANDONED) {
      faults = one(SessionFault.IS_ABANDONED);
    } else if (reason.isBlank()) {
      faults = one(SessionFault.REASON_MISSING);
    }
    return onLife("abandon", c -> c.abandon(reason), faults, new Fact.SessionAbandoned(reason, ""));
  }

  private Trial amend() {
    String text = words();
    String reason = words();
    List<SessionFault> faults = List.of();
    if (day.sealOpened().isEmpty()) {
      faults = one(SessionFault.STILL_SEALED);
    } else if (text.isBlank() || reason.isBlank()) {
      faults = one(SessionFault.REASON_MISSING);
    }
    return onLife(
        "amend", c -> c.amend(text, reason), faults, new Fact.AmendmentMade(text, reason));
  }

  /** What anyone may write at any time, without a command. */
  private Trial said() {
    Fact fact =
        switch (random.nextInt(5)) {
          case 0 ->
              new Fact.FingerprintGiven(Fact.Which.values()[random.nextInt(2)], "a friend", null);
          case 1 ->
              new Fact.ExpectationGiven(Fact.Person.values()[random.nextInt(5)], "it is quicker");
          case 2 -> found();
          case 3 ->
              plan.kind() == Plan.Kind.NOISE_RUN && day.step() != Step.COMMITTED
                  ? new Fact.PlainDayImported("old.csv", Map.of("t", "time"), List.of())
                  : new Fact.SheetReprinted("starter-sheet.pdf");
          default -> new Fact.ReportWritten("report.pdf");
        };
    return said(fact);
  }

  private static Trial said(Fact fact) {
    return new Trial("say " + fact, state -> Outcome.accepted(fact), List.of(), List.of(fact));
  }

  /** In turns, without a draw of its own. */
  private Fact found() {
    Map<String, BigDecimal> figures = Map.of("p", new BigDecimal("0.31"));
    return day.lapsSoFar() % 2 == 0
        ? new Fact.FindingRecorded(2, "not settled", figures)
        : new FindingSeenAgain(2, true, 1, "not settled", figures);
  }
}
