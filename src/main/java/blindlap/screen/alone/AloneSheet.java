package blindlap.screen.alone;

import blindlap.wording.day.SafetyRow;
import blindlap.wording.day.SettingRow;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is shown of the stint that is to be mounted.
 *
 * @param stint from 1; 0 = before the warm-up laps
 * @param hidden true while what to mount is not shown yet
 * @param paper true if its laps are on record already: it was kept on paper
 * @param prepared true for a unit that a friend covered, of which only the code is known
 * @param setup index for its mark; null where there is none to show
 * @param name what to mount: a setup, a label, or the code on a cover
 * @param swap what comes off, or that it stays
 * @param steps what to do, in order
 * @param settings what to set and measure
 * @param limits torques and pressures as typed in from the maker's manual
 * @param cautions of the setup
 * @param checks the safety list and what of it is confirmed
 * @param fitAsked true where it is asked whether the rider is fit to go on
 * @param fit the answer; null if there is none yet
 * @param names what may really have been mounted; empty for prepared units
 * @param fitted index of what was really mounted
 * @param whole whether cover and seal are whole; null if not said, or not asked
 */
public record AloneSheet(
    int stint,
    boolean hidden,
    boolean paper,
    boolean prepared,
    @Nullable Integer setup,
    String name,
    String swap,
    List<String> steps,
    List<SettingRow> settings,
    List<String> limits,
    List<String> cautions,
    List<SafetyRow> checks,
    boolean fitAsked,
    @Nullable Boolean fit,
    List<String> names,
    int fitted,
    @Nullable Boolean whole) {

  public AloneSheet {
    steps = List.copyOf(steps);
    settings = List.copyOf(settings);
    limits = List.copyOf(limits);
    cautions = List.copyOf(cautions);
    checks = List.copyOf(checks);
    names = List.copyOf(names);
  }

  /** Nothing is shown yet of a stint. */
  static AloneSheet hidden(int stint, boolean paper) {
    return new AloneSheet(
        stint, true, paper, false, null, "", "", List.of(), List.of(), List.of(), List.of(),
        List.of(), false, null, List.of(), 0, null);
  }

  /** Says which stint only. */
  @Override
  public String toString() {
    return "AloneSheet[stint " + stint + "]";
  }
}
