package blindlap.screen.swap;

import blindlap.wording.day.SafetyRow;
import blindlap.wording.day.SettingRow;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What the Swap page shows of the stint to be handled: words for the helper alone.
 *
 * @param stint from 1; 0 = before the warm-up laps
 * @param called "stint 5", "trial 2, lap 1"
 * @param head "Stint 7 of 16" and code
 * @param ride "Ride at 11:41"; empty without a timetable
 * @param setup index of the setup to fit, for its mark; {@link #NO_MARK} for a level of a steps day
 * @param name its name
 * @param swap real or dummy, and what comes off
 * @param brief the same in few words
 * @param steps what to do, in order
 * @param stepsDone steps that are ticked off, from 0
 * @param settings what to dial and measure
 * @param limits torques and pressures as typed in from the maker's manual
 * @param cautions of the setup
 * @param confirmed the safety list and what of it is confirmed
 * @param fitAsked true where it is asked whether the rider is fit to go on
 * @param riderFit the answer; null if there is none yet
 * @param setups names of all setups, for what was really fitted
 * @param fitted index of what was really fitted
 * @param note further words
 * @param begun true once the time of the handling runs
 * @param next the swaps after this one
 */
public record SwapSheet(
    int stint,
    String called,
    String head,
    String ride,
    int setup,
    String name,
    String swap,
    String brief,
    List<String> steps,
    Set<Integer> stepsDone,
    List<SettingRow> settings,
    List<String> limits,
    List<String> cautions,
    List<SafetyRow> confirmed,
    boolean fitAsked,
    @Nullable Boolean riderFit,
    List<String> setups,
    int fitted,
    String note,
    boolean begun,
    List<Next> next) {

  /** A level of a steps day is a place along a setting: it has neither letter nor shape nor ink. */
  static final int NO_MARK = -1;

  /**
   * A swap to come.
   *
   * @param head stint and clock time
   * @param setup index of its setup; {@link #NO_MARK} for a level of a steps day
   * @param words its name and whether it is real
   */
  public record Next(String head, int setup, String words) {
    /** Says nothing of what is inside. */
    @Override
    public String toString() {
      return "Next[]";
    }
  }

  public SwapSheet {
    steps = List.copyOf(steps);
    stepsDone = Set.copyOf(stepsDone);
    settings = List.copyOf(settings);
    limits = List.copyOf(limits);
    cautions = List.copyOf(cautions);
    confirmed = List.copyOf(confirmed);
    setups = List.copyOf(setups);
    next = List.copyOf(next);
  }

  /** Says which stint only. */
  @Override
  public String toString() {
    return "SwapSheet[stint " + stint + "]";
  }
}
