package blindlap.session;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.Plans;
import blindlap.plan.TellingRun;
import blindlap.plan.TellingRuns;
import blindlap.seal.SealParameters;
import blindlap.seal.Sealed;
import blindlap.seal.Sealing;
import blindlap.seal.SealingSources;
import blindlap.seal.SessionKind;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.Source;
import blindlap.session.day.Step;
import blindlap.session.day.Trial;
import blindlap.wording.day.Problems;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Invented telling runs of every task: one or two notebooks ride, answer, void, take back and
 * close, sensibly or not, and meet now and then. Held against a recount that knows only the rule: a
 * trial is void before its answer or not at all.
 */
class RandomTrialsTest {
  private static final int DAYS = 40;
  private static final long MIXED = 0x9E3779B97F4A7C15L;

  private final Map<String, boolean[]> tried = new TreeMap<>();
  private final SortedSet<SessionFault> refused = new TreeSet<>();
  private Random random = new Random();
  private Histories book = new Histories(1);
  private boolean notAppliedSeen;
  private boolean skippedSeen;

  private void begin(String task, long seed) {
    random = new Random(seed * MIXED);
    int notebooks = 1 + random.nextInt(2);
    book = new Histories(notebooks);
    Plan plan =
        Plans.with(
            TellingRuns.text(
                "task: "
                    + task
                    + ", trials: 6, matters: 0.9"
                    + (task.equals("two-choice") ? ", attribute: grip, more: 9 clicks" : "")));
    byte[] bytes = PlanJson.bytes(plan);
    Sealing sealing =
        new Sealing(
            SealingSources.allFrom(
                count -> {
                  byte[] some = new byte[count];
                  random.nextBytes(some);
                  return some;
                }),
            new SealParameters(1));
    Sealed sealed =
        sealing.seal(
            bytes,
            plan.rule(),
            Histories.SESSION.text(),
            SessionKind.comparison(),
            sealing.drawPhrase(plan.rule()).unasked());
    int first = random.nextInt(notebooks);
    book.write(
        first,
        new Fact.PlanCommitted(
            plan,
            new String(bytes, StandardCharsets.UTF_8),
            sealed.key(),
            sealed.fingerprint(),
            sealed.codes(),
            List.of("R. Lind")));
    for (int step = 0; step < 160; step++) {
      int at = random.nextInt(notebooks);
      if (book.held(at).isEmpty() || random.nextInt(12) == 0) {
        IntStream.range(0, notebooks).forEach(other -> book.meet(at, other));
      }
      if (!book.held(at).isEmpty()) {
        give(at, step);
      }
    }
    IntStream.range(0, notebooks).forEach(other -> book.meet(0, other));
  }

  private void give(int at, int step) {
    SessionState before = SessionState.of(CausalOrder.sort(book.held(at)));
    List<String> names = new ArrayList<>(List.of("lap", "lap", "lap", "hand over", "answer"));
    names.addAll(List.of("answer", "answer now", "answer now", "row", "back", "void", "count"));
    if (step > 130) {
      names.addAll(List.of("close day", "close day", "close review"));
    }
    String name = names.get(random.nextInt(names.size()));
    Outcome outcome = outcome(name, before);
    boolean[] both = tried.computeIfAbsent(name, key -> new boolean[2]);
    if (outcome instanceof Outcome.Accepted accepted) {
      both[0] = true;
      List<StoredEntry> all = new ArrayList<>(book.held(at));
      SessionState after =
          SessionState.of(
              CausalOrder.sort(
                  all.isEmpty() ? all : with(at, accepted.facts().toArray(new Fact[0]))));
      // What was allowed on the state at hand is applied to it.
      assertThat(after.notApplied()).hasSameSizeAs(before.notApplied());
    } else {
      both[1] = true;
      for (Problem problem : ((Outcome.Refused) outcome).problems()) {
        refused.add((SessionFault) problem.fault());
        assertThat(Problems.sentence(problem)).as(name).matches("(?s)[A-Z0-9\"“].*\\.");
      }
    }
  }

  private List<StoredEntry> with(int at, Fact... facts) {
    book.write(at, facts);
    return book.held(at);
  }

  private Outcome outcome(String name, SessionState state) {
    TellingRun run = state.plan().telling();
    DayCommands day = new DayCommands(state);
    LapId next = state.nextLap().orElse(new LapId(1, 1));
    LapId any = new LapId(1 + random.nextInt(run.stints()), 1);
    int trial = 1 + random.nextInt(run.trials());
    return switch (name) {
      case "lap" -> day.record(List.of(LapInput.of(next, Map.of())), Source.SCREEN);
      case "hand over" -> day.stint(next.stint(), new Fact.BikeHandedOver(next.stint()));
      case "answer" -> day.stint(any.stint(), new Fact.GuessGiven(any.stint(), guess(run)));
      case "answer now" -> {
        int last = run.lastStint(Math.max(1, run.trial(next.stint()) - random.nextInt(2)));
        yield day.stint(last, new Fact.GuessGiven(last, guess(run)));
      }
      case "row" -> day.record(List.of(row(next, run)), Source.FILE);
      case "back" -> {
        int last = run.lastStint(trial);
        yield day.stint(last, new Fact.GuessTakenBack(last));
      }
      case "void" -> day.voidLap(any, "crash", "fell");
      case "count" -> day.withdrawVoid(any, "it was another lap");
      case "close day" -> new LifeCommands(state).closeDay();
      case "close review" -> new LifeCommands(state).closeReview();
      default -> throw new AssertionError(name);
    };
  }

  /** Any lap of the trial, now and then none, or one too many. */
  private Guess guess(TellingRun run) {
    int lap = random.nextInt(run.task().laps() + 2);
    return new Guess(
        lap == 0 ? null : Integer.valueOf(lap - 1), Guess.Sureness.values()[lap % 3], "");
  }

  /** A row of a file with an answer, often where none belongs. */
  private LapInput row(LapId lap, TellingRun run) {
    boolean end = run.place(lap.stint()) == run.task().laps();
    String answer = end || random.nextInt(4) == 0 ? "lap " + (1 + random.nextInt(3)) : "";
    return new LapInput(
        lap,
        Map.of(),
        null,
        "",
        answer,
        answer.isEmpty() ? "" : "hunch",
        "",
        Map.of(),
        "line 2",
        Map.of());
  }

  private static Map<String, Object> told(SessionState state) {
    Map<String, Object> told = Told.of(state);
    told.put("trials", Trial.of(state.day()));
    return told;
  }

  @ParameterizedTest
  @ValueSource(strings = {"triangle", "duo-trio", "two-choice"})
  void aRunTellsTheSameInAnyOrderAndNoTrialIsVoidAfterItsAnswer(String task) {
    for (long seed = 1; seed <= DAYS; seed++) {
      begin(task, seed);
      List<StoredEntry> shuffled = new ArrayList<>(book.all());
      Collections.shuffle(shuffled, new Random(seed));
      List<StoredEntry> sorted = CausalOrder.sort(shuffled);
      SessionState state = SessionState.of(sorted);
      assertThat(told(state)).isEqualTo(told(SessionState.of(CausalOrder.sort(book.all()))));
      SessionState handfuls = SessionState.of(sorted.subList(0, 1));
      for (int at = 1; at < sorted.size(); at++) {
        handfuls = handfuls.after(sorted.subList(at, at + 1));
        recount(handfuls, sorted.subList(0, at + 1));
      }
      assertThat(told(handfuls)).isEqualTo(told(state));
      notAppliedSeen |= !state.notApplied().isEmpty();
    }
    tried.forEach((name, both) -> assertThat(both).as(name).containsExactly(true, true));
    assertThat(refused)
        .contains(
            SessionFault.ANSWER_BEFORE_LAST,
            SessionFault.ANSWER_FORCED,
            SessionFault.NOT_A_LAP_OF_TRIAL,
            SessionFault.TRIAL_NOT_RIDDEN,
            SessionFault.TRIAL_IS_VOID,
            SessionFault.TRIAL_IS_ANSWERED,
            SessionFault.TRIAL_GONE_BY,
            SessionFault.NO_TRIAL_ANSWERED);
    assertThat(notAppliedSeen).as("two machines said an answer and a void of one trial").isTrue();
    assertThat(skippedSeen).as("the laps of a void trial are passed over").isTrue();
  }

  /** Counts what was applied anew, by the rule alone. */
  private void recount(SessionState state, List<StoredEntry> entries) {
    TellingRun run = state.plan().telling();
    List<Fact> applied =
        entries.stream()
            .filter(stored -> !state.notApplied().contains(stored))
            .map(stored -> stored.entry().fact())
            .toList();
    for (Trial trial : Trial.of(state.day())) {
      Integer named = null;
      boolean answered = false;
      SortedSet<LapId> voided = new TreeSet<>();
      SortedSet<LapId> ridden = new TreeSet<>();
      for (Fact fact : applied) {
        if (fact instanceof Fact.GuessGiven given && given.stint() == trial.last()) {
          assertThat(voided).isEmpty();
          named = given.guess().setup() + 1;
          answered |= ridden.contains(new LapId(trial.last(), 1));
        } else if (fact instanceof Fact.GuessTakenBack back && back.stint() == trial.last()) {
          named = null;
        } else if (fact instanceof Fact.LapVoided lap && in(trial, lap.lap())) {
          assertThat(named).isNull();
          assertThat(answered).isFalse();
          voided.add(lap.lap());
        } else if (fact instanceof Fact.VoidWithdrawn lap) {
          voided.remove(lap.lap());
        } else if (fact instanceof Fact.LapRidden lap && in(trial, lap.lap())) {
          ridden.add(lap.lap());
          answered |= named != null && lap.lap().stint() == trial.last();
        }
      }
      assertThat(trial.named()).isEqualTo(named);
      assertThat(trial.voided().isPresent()).isEqualTo(!voided.isEmpty());
      assertThat(trial.ridden()).isEqualTo(ridden.size() == run.task().laps());
      Trial.Standing standing =
          !voided.isEmpty()
              ? Trial.Standing.VOID
              : trial.ridden() && named != null ? Trial.Standing.ANSWERED : Trial.Standing.OPEN;
      assertThat(trial.standing()).isEqualTo(standing);
      state
          .nextLap()
          .filter(next -> !voided.isEmpty() && next.stint() > trial.last() && !trial.ridden())
          .ifPresent(next -> skippedSeen = true);
      if (state.nextLap().filter(next -> in(trial, next)).isPresent()) {
        assertThat(voided).isEmpty();
      }
    }
    if (state.step().ordinal() >= Step.DAY_CLOSED.ordinal() && state.step() != Step.ABANDONED) {
      assertThat(state.lapsRidden()).isPositive();
    }
  }

  private static boolean in(Trial trial, LapId lap) {
    return lap.stint() >= trial.first() && lap.stint() <= trial.last();
  }
}
