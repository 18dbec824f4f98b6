package blindlap.workshop;

import blindlap.fault.Unusable;

/**
 * The sag to expect from another spring rate under the same load.
 *
 * <p>A linear coil without preload carries load = rate·sag, hence sag_new = sag·rate/rate_new.
 * Preload, friction, top-out springs and air springs are not in it.
 */
public final class SpringStep {
  private SpringStep() {}

  /**
   * @param rate rate now, above 0, in any rate unit
   * @param newRate other rate, above 0, in the same unit
   * @param sagPercent sag now, 0 to 100 per cent of the stroke
   * @return expected sag in per cent of the stroke
   * @throws Unusable if a value is impossible or the spring would be fully compressed
   */
  public static double sagPercent(double rate, double newRate, double sagPercent) {
    Workshop.positive("rate", rate);
    Workshop.positive("new_rate", newRate);
    Workshop.between("sag_percent", sagPercent, 0, 100);
    double sag = sagPercent * rate / newRate;
    if (sag > 100) {
      throw new Unusable(
          "new_rate",
          newRate + " is too soft: the same load would use more than the whole stroke.",
          WorkshopFault.SPRING_TOO_SOFT,
          newRate);
    }
    return sag;
  }

  /**
   * The way back: the rate that gives a wanted sag under the same load.
   *
   * @param wantedPercent sag wanted, above 0, at most 100 per cent
   * @return rate in the unit of {@code rate}
   * @throws Unusable if a value is impossible
   */
  public static double rateFor(double rate, double sagPercent, double wantedPercent) {
    Workshop.positive("rate", rate);
    Workshop.between("sag_percent", Workshop.positive("sag_percent", sagPercent), 0, 100);
    Workshop.between("wanted_percent", Workshop.positive("wanted_percent", wantedPercent), 0, 100);
    return rate * sagPercent / wantedPercent;
  }
}
