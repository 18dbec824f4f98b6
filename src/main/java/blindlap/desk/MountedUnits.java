package blindlap.desk;

import blindlap.exchange.HelperEntryText;
import blindlap.exchange.MountedText;
import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.session.HelperEntry;
import blindlap.session.SessionState;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Prepared units that were mounted in another stint than theirs. The rider could tell the code
 * alone; what that was is known once the friend's records are open.
 */
final class MountedUnits {
  private MountedUnits() {}

  /** Puts what was really on into opened records, where another unit was mounted than planned. */
  static void swapped(SessionState state, Map<Integer, String> records) {
    Plan plan = state.plan();
    if (plan.blinding().level() != BlindLevel.PREPARED) {
      return;
    }
    Map<Integer, HelperEntry> units = new TreeMap<>();
    records.forEach(
        (stint, text) ->
            HelperEntryText.read(text, plan).ifPresent(entry -> units.put(stint, entry)));
    state
        .mounted()
        .forEach(
            (stint, text) ->
                MountedText.unit(text)
                    .filter(unit -> unit.unitOf() != stint)
                    .map(unit -> units.get(unit.unitOf()))
                    .flatMap(on -> in(stint, on, units))
                    .ifPresent(entry -> records.put(stint, HelperEntryText.write(entry, plan))));
  }

  private static Optional<HelperEntry> in(
      int stint, HelperEntry on, Map<Integer, HelperEntry> units) {
    return Optional.ofNullable(units.get(stint))
        .map(
            due ->
                HelperEntry.untouched(stint, on.helper(), due.planned())
                    .withFitted(on.fitted())
                    .withMeasured(on.measured(), on.outside())
                    .withNote(on.note()));
  }
}
