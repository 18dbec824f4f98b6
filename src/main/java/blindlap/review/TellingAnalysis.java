package blindlap.review;

import blindlap.fault.DayFault;
import blindlap.fault.Unusable;
import blindlap.plan.Plan;
import blindlap.plan.TellingRun;
import blindlap.plan.TellingTask;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.stats.tell.TellingTrials;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/**
 * A telling run from its day (docs/method.md#telling-runs). Answers are held against the order that
 * was drawn, since guessing is exactly as right as its chance against that order alone; trials in
 * which something else was on, or the rider knew what was on, are counted so too and taken out
 * beside.
 *
 * @param day what was analysed
 * @param finding what the answers say
 * @param wrongFits answered trials with a lap on which something else was on than drawn
 * @param known answered trials before whose answer the rider saw or was told what was on
 * @param without the same without both; empty where there are none, or nothing is left
 * @param waits whether the waits between laps told
 * @param parity settings as measured
 */
public record TellingAnalysis(
    DayRecord day,
    TellingFinding finding,
    List<Integer> wrongFits,
    List<Integer> known,
    Optional<TellingFinding> without,
    Waits waits,
    List<Parity> parity) {

  public TellingAnalysis {
    wrongFits = List.copyOf(wrongFits);
    known = List.copyOf(known);
    parity = List.copyOf(parity);
  }

  /** True for a day whose plan is a telling run. */
  public static boolean is(Plan plan) {
    return plan.telling() != null;
  }

  /**
   * Counts the answers of a day.
   *
   * @throws Unusable if no trial of it was answered
   */
  public static TellingAnalysis of(DayRecord day) {
    TellingFinding finding = finding(day);
    List<Integer> answered = finding.trials().stream().map(TellingTrial::number).toList();
    List<Integer> wrong = trials(day, day.wrongFits(), answered);
    List<Integer> known = trials(day, day.blindBroken().keySet(), answered);
    return new TellingAnalysis(
        day,
        finding,
        wrong,
        known,
        without(finding, wrong, known),
        Waits.of(day, day.plan().rule().assignments()),
        Parity.of(day));
  }

  /**
   * What the answers say, without everything that stands beside it.
   *
   * @throws Unusable if no trial of it was answered
   */
  public static TellingFinding finding(DayRecord day) {
    TellingRun run = run(day.plan());
    List<TellingTrial> trials = new ArrayList<>();
    int voided = 0;
    for (int number = 1; number <= run.trials(); number++) {
      List<Optional<DayRecord.Lap>> laps = laps(day, run, number);
      if (laps.stream().anyMatch(TellingAnalysis::isVoid)) {
        voided++;
        continue;
      }
      Guess answer = day.guesses().get(run.lastStint(number));
      Integer named = answer == null ? null : answer.setup();
      boolean ridden = laps.stream().allMatch(lap -> lap.filter(DayRecord.Lap::ridden).isPresent());
      if (ridden && answer != null && named != null) {
        trials.add(
            new TellingTrial(number, differed(day, run, number), named + 1, answer.sureness()));
      }
    }
    if (trials.isEmpty()) {
      throw new Unusable("trials", "were not answered.", DayFault.NO_TRIAL_ANSWERED);
    }
    TellingTrials declared =
        TellingTrials.of(run.task().discrimination(), run.trials(), run.matters().doubleValue());
    return TellingFinding.of(declared, day.nullRun(), trials, voided);
  }

  private static TellingRun run(Plan plan) {
    TellingRun run = plan.telling();
    if (run == null) {
      throw new IllegalArgumentException("The plan is no telling run");
    }
    return run;
  }

  private static List<Optional<DayRecord.Lap>> laps(DayRecord day, TellingRun run, int trial) {
    List<Optional<DayRecord.Lap>> laps = new ArrayList<>();
    for (int stint = run.firstStint(trial); stint <= run.lastStint(trial); stint++) {
      laps.add(day.lap(new LapId(stint, 1)));
    }
    return laps;
  }

  private static boolean isVoid(Optional<DayRecord.Lap> lap) {
    return lap.flatMap(DayRecord.Lap::voided).isPresent();
  }

  /** The lap that was to be named, from 1 within its trial, by the order that was drawn. */
  private static int differed(DayRecord day, TellingRun run, int trial) {
    int first = run.firstStint(trial);
    if (run.task() == TellingTask.TWO_CHOICE) {
      int more = day.plan().setups().get(0).name().equals(run.more()) ? 0 : 1;
      return day.setup(first) == more ? 1 : 2;
    }
    int second = day.setup(first + 1);
    int third = day.setup(first + 2);
    if (second == third) {
      return 1; // never of a duo-trio, whose second and third lap always differ
    }
    return second == day.setup(first) ? 3 : 2;
  }

  private static List<Integer> trials(
      DayRecord day, Collection<Integer> stints, List<Integer> answered) {
    TellingRun run = run(day.plan());
    TreeSet<Integer> trials = new TreeSet<>();
    stints.forEach(stint -> trials.add(run.trial(stint)));
    trials.retainAll(answered);
    return List.copyOf(trials);
  }

  private static Optional<TellingFinding> without(
      TellingFinding all, List<Integer> wrong, List<Integer> known) {
    List<TellingTrial> rest =
        all.trials().stream()
            .filter(trial -> !wrong.contains(trial.number()) && !known.contains(trial.number()))
            .toList();
    return rest.isEmpty() || rest.size() == all.trials().size()
        ? Optional.empty()
        : Optional.of(TellingFinding.of(all.declared(), all.nullRun(), rest, all.voided()));
  }
}
