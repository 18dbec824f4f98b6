package blindlap.plan;

import blindlap.stats.tell.TrialsPower;
import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a telling run adds to a plan (docs/method.md#can-you-tell): trials of one task between the
 * plan's two setups, or between two levels of one setting, which are its setups then. Every lap of
 * a trial is a stint of one scored lap, so that order, codes, seal and sheets are those of any
 * session; stints and rule follow from task and trials.
 *
 * @param task what is asked in every trial
 * @param trials number of trials
 * @param matters share of trials really told that would matter
 * @param attribute what one of two laps has more of, as the rider is asked; empty but for {@link
 *     TellingTask#TWO_CHOICE}
 * @param more name of the setup that is declared to have more of it; empty but for the same
 * @param oneSetting the setting whose two levels are the setups, set as on a steps day; null where
 *     two setups are told apart
 */
public record TellingRun(
    TellingTask task,
    int trials,
    BigDecimal matters,
    String attribute,
    String more,
    @Nullable StepsDay oneSetting) {
  /** Levels of the one setting. */
  static final int LEVELS = 2;

  /** Most trials of one day: three laps each are 300 codes of the 900 that there are. */
  public static final int MOST_TRIALS = 100;

  /** Stints of trials beyond any that hold, so that nothing overflows before it is refused. */
  private static final int BEYOND = 10 * MOST_TRIALS;

  /** Numbers of trials that a plan is shown beside its own. */
  private static final List<Integer> SHOWN = List.of(6, 9, 12, 15, 18, 24, 30, 40, 60, 100);

  /** A run between two setups. */
  public TellingRun(
      TellingTask task, int trials, BigDecimal matters, String attribute, String more) {
    this(task, trials, matters, attribute, more, null);
  }

  /** Stints of the day, one for every lap of a trial. */
  public int stints() {
    return task.laps() * Math.max(0, Math.min(BEYOND, trials));
  }

  /**
   * The trial of a stint, from 1.
   *
   * @param stint from 1
   */
  public int trial(int stint) {
    return (stint - 1) / task.laps() + 1;
  }

  /** The first stint of a trial, both from 1. */
  public int firstStint(int trial) {
    return (trial - 1) * task.laps() + 1;
  }

  /** The last stint of a trial, after which its answer is given; both from 1. */
  public int lastStint(int trial) {
    return trial * task.laps();
  }

  /** The place of a stint's lap in its trial, from 1. */
  public int place(int stint) {
    return (stint - 1) % task.laps() + 1;
  }

  /** Handlings of one setup at most, where every trial has as many laps on it as a trial can. */
  int perSetupAtMost() {
    return stints() / task.laps() * (task.laps() + 1) / 2;
  }

  /** The rule in the form in which every plan names one. */
  public Protocol protocol() {
    return new Protocol(
        JsonText.word(task),
        "",
        "",
        List.of(2),
        task.laps(),
        task.sequences(),
        null,
        null,
        stints(),
        false);
  }

  /** Every trial drawn for itself. */
  public Rule rule() {
    return Rule.trials(task, stints() / task.laps());
  }

  /** What the trials can show; of a run that {@link PlanCheck} lets through. */
  public TrialsPower shows() {
    return shows(trials);
  }

  /** The same for other numbers of trials and its own, rising. */
  public List<TrialsPower> table() {
    return java.util.stream.Stream.concat(SHOWN.stream(), java.util.stream.Stream.of(trials))
        .sorted()
        .distinct()
        .map(this::shows)
        .toList();
  }

  /** True if so many answered trials can show that something is felt, if all are right. */
  public boolean canShow(int answered) {
    return answered > 0 && shows(answered).least().isPresent();
  }

  private TrialsPower shows(int number) {
    return TrialsPower.of(number, task.discrimination().chance(), matters.doubleValue());
  }
}
