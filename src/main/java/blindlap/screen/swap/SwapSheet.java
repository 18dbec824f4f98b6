package blindlap.screen.swap;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What the Swap page shows of the stint to be handled: words for the helper alone.
 *
 * @param stint from 1; 0 = before the warm-up laps
 * @param head "Stint 7 of 16" and code
 * @param ride "Ride at 11:41"; empty without a timetable
 * @param setup index of the setup to fit, for its mark
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
    String head,
    String ride,
    int setup,
    String name,
    String swap,
    String brief,
    List<String> steps,
    Set<Integer> stepsDone,
    List<Row> settings,
    List<String> limits,
    List<String> cautions,
    List<Check> confirmed,
    boolean fitAsked,
    @Nullable Boolean riderFit,
    List<String> setups,
    int fitted,
    String note,
    boolean begun,
    List<Next> next) {

  /**
   * A setting to dial anew.
   *
   * @param name its name
   * @param aim value aimed at, with unit and tolerance
   * @param measured as typed; empty if not yet
   * @param outside by how much and which way it lies outside; empty if it does not
   * @param reason why it is ridden all the same; may be empty
   */
  public record Row(String name, String aim, String measured, String outside, String reason) {}

  /**
   * An item of the safety list.
   *
   * @param key its name in the program
   * @param letter the key that ticks it
   * @param words its name on the page
   * @param yes true if it is confirmed
   */
  public record Check(String key, String letter, String words, boolean yes) {}

  /**
   * A swap to come.
   *
   * @param head stint and clock time
   * @param setup index of its setup
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
