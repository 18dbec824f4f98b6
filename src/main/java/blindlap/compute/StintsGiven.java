package blindlap.compute;

import blindlap.fault.StatsException;
import blindlap.stats.compare.Scale;
import blindlap.stats.compare.StintSummary;
import java.util.Set;

/**
 * Reads the values of stints, given as such ({@code values}) or as their laps ({@code laps}, one
 * list per stint, with {@code summary}).
 */
final class StintsGiven {
  /** The fields that this class reads. */
  static final Set<String> FIELDS = Set.of("values", "laps", "summary");

  private StintsGiven() {}

  /**
   * @param given the object that holds the fields
   * @param path where it stands within the request, for refusals: empty, or {@code measures[0].}
   * @return one value per stint on the scale of the analysis; NaN where none
   */
  static double[] values(Given given, String path, Scale scale) {
    if (!given.has("laps")) {
      if (given.has("summary")) {
        throw given.refuse("summary", "must be left out where values are given; it needs laps.");
      }
      return scale.forward(path + "values", given.numbersWithGaps("values"));
    }
    if (given.has("values")) {
      throw given.refuse("values", "must be left out when laps is given.");
    }
    StintSummary summary = given.option("summary", StintSummary.class, StintSummary.MEAN);
    double[][] laps = given.tableWithGaps("laps");
    double[] values = new double[laps.length];
    for (int i = 0; i < values.length; i++) {
      String at = "laps[" + i + "]";
      if (laps[i].length != laps[0].length) {
        throw given.refuse(
            at, "has " + laps[i].length + " laps, but the first stint has " + laps[0].length + ".");
      }
      if (laps[i].length < summary.fewestLaps()) {
        throw given.refuse(
            at,
            "has "
                + laps[i].length
                + " laps; a "
                + summary.text()
                + " needs at least "
                + summary.fewestLaps()
                + ".");
      }
      try {
        values[i] = summary.of(scale.forward(at, laps[i]));
      } catch (StatsException e) {
        throw e.named(path + e.argument());
      }
    }
    return values;
  }
}
