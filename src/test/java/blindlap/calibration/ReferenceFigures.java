package blindlap.calibration;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Figures of an independent prototype of the method (numpy), typed in: 10 000 simulated days per
 * cell, shares rounded as they stand here.
 */
final class ReferenceFigures {
  static final int DAYS = 10_000;

  private static final NoiseScenario[] COLUMNS = {
    NoiseScenario.WHITE,
    NoiseScenario.LINEAR,
    NoiseScenario.QUADRATIC,
    NoiseScenario.LEARNING,
    NoiseScenario.AR_3,
    NoiseScenario.AR_6,
    NoiseScenario.RANDOM_WALK,
    NoiseScenario.T3,
    NoiseScenario.SKEW,
    NoiseScenario.OUTLIERS,
    NoiseScenario.UNEQUAL
  };

  /** Share of p ≤ .05 without a difference; rounded to three places. */
  static final Map<Design, double[]> SIZE = new EnumMap<>(Design.class);

  /** Share of p ≤ .05 at a difference of one standard deviation; rounded to two places. */
  static final Map<Design, double[]> POWER = new EnumMap<>(Design.class);

  /** Noises whose powers are compared; the others depend on how a scenario is scaled. */
  static final List<NoiseScenario> POWER_COMPARED =
      List.of(
          NoiseScenario.WHITE,
          NoiseScenario.LINEAR,
          NoiseScenario.AR_3,
          NoiseScenario.AR_6,
          NoiseScenario.T3);

  static {
    SIZE.put(
        Design.BLOCK4_12,
        new double[] {.047, .047, .050, .046, .049, .048, .042, .044, .045, .047, .053});
    SIZE.put(
        Design.BLOCK4_16,
        new double[] {.050, .049, .051, .050, .051, .051, .047, .049, .049, .048, .057});
    SIZE.put(
        Design.BLOCK4_24,
        new double[] {.048, .051, .050, .046, .053, .050, .051, .048, .051, .049, .057});
    POWER.put(
        Design.PAIRS_16, new double[] {.39, .38, .37, .37, .52, .75, .43, .54, .45, .30, .40});
    POWER.put(
        Design.BLOCK4_16, new double[] {.45, .43, .39, .42, .53, .70, .48, .59, .49, .33, .46});
    POWER.put(Design.RUN2_16, new double[] {.42, .42, .37, .40, .53, .72, .46, .58, .48, .31, .43});
    POWER.put(
        Design.COMPLETE_16, new double[] {.43, .44, .32, .38, .47, .58, .44, .58, .48, .31, .45});
    POWER.put(
        Design.PAIRS_24, new double[] {.61, .61, .60, .60, .76, .94, .66, .71, .64, .41, .60});
    POWER.put(Design.ABBA_24, new double[] {.37, .35, .36, .35, .44, .65, .39, .48, .40, .24, .36});
    POWER.put(
        Design.BLOCK4_24, new double[] {.63, .64, .61, .62, .72, .88, .67, .74, .66, .43, .64});
    POWER.put(
        Design.COMPLETE_24, new double[] {.63, .62, .48, .55, .65, .74, .62, .74, .66, .41, .62});
  }

  /**
   * Verdicts in per cent on days of white noise.
   *
   * @param margin the worthwhile difference D
   * @param shares for true differences 0, .5, 1, 1.5, 2 and 3 times D: worthwhile, small, none,
   *     direction known, open
   */
  record Verdicts(Design design, double margin, int[][] shares) {}

  static final double[] MULTIPLES = {0, 0.5, 1, 1.5, 2, 3};

  static final List<Verdicts> VERDICTS =
      List.of(
          verdicts(
              Design.SHORT_8,
              1,
              "0/0/3/3/93 1/0/2/6/91 4/0/1/12/83 12/0/0/19/69 26/0/0/24/50 66/0/0/15/19"),
          verdicts(
              Design.SHORT_8,
              2,
              "0/1/41/3/55 0/2/22/14/62 4/1/3/45/47 27/0/0/54/19 67/0/0/28/5 99/0/0/1/0"),
          verdicts(
              Design.BLOCK4_12,
              1,
              "0/0/10/5/86 1/0/7/10/82 5/0/2/26/66 19/0/0/40/41 45/0/0/38/17 92/0/0/7/1"),
          verdicts(
              Design.BLOCK4_12,
              1.5,
              "0/1/49/4/46 0/1/26/19/54 5/0/4/54/37 31/0/0/59/10 74/0/0/25/1 100/0/0/0/0"),
          verdicts(
              Design.BLOCK4_12,
              2,
              "0/3/82/2/14 0/6/39/25/30 5/2/3/76/14 45/0/0/54/1 92/0/0/8/0 100/0/0/0/0"),
          verdicts(
              Design.BLOCK4_16,
              1,
              "0/0/23/5/72 1/0/14/14/72 5/0/4/40/51 24/0/0/54/22 59/0/0/36/5 98/0/0/2/0"),
          verdicts(
              Design.BLOCK4_16,
              1.5,
              "0/1/74/4/21 0/2/37/25/36 5/1/4/72/18 41/0/0/57/2 87/0/0/13/0 100/0/0/0/0"),
          verdicts(
              Design.BLOCK4_16,
              2,
              "0/4/93/1/2 0/14/44/31/11 5/3/2/87/3 59/0/0/41/0 98/0/0/2/0 100/0/0/0/0"),
          verdicts(
              Design.BLOCK4_24,
              1,
              "0/0/52/5/43 0/0/28/21/50 5/0/5/58/32 32/0/0/61/7 76/0/0/23/0 100/0/0/0/0"),
          verdicts(
              Design.BLOCK4_24,
              1.5,
              "0/3/91/3/4 0/8/47/33/13 5/2/3/86/4 54/0/0/45/0 97/0/0/3/0 100/0/0/0/0"),
          verdicts(
              Design.BLOCK4_24,
              2,
              "0/5/95/0/0 0/40/36/23/1 5/5/0/90/0 76/0/0/24/0 100/0/0/0/0 100/0/0/0/0"));

  private ReferenceFigures() {}

  private static Verdicts verdicts(Design design, double margin, String table) {
    String[] cells = table.split(" ");
    int[][] shares = new int[cells.length][];
    for (int i = 0; i < cells.length; i++) {
      shares[i] =
          java.util.Arrays.stream(cells[i].split("/")).mapToInt(Integer::parseInt).toArray();
    }
    return new Verdicts(design, margin, shares);
  }

  /** The figure for a noise, or NaN if there is none for the design. */
  static double of(Map<Design, double[]> table, Design design, NoiseScenario scenario) {
    double[] row = table.get(design);
    for (int i = 0; i < COLUMNS.length && row != null; i++) {
      if (COLUMNS[i] == scenario) {
        return row[i];
      }
    }
    return Double.NaN;
  }
}
