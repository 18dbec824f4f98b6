package blindlap.workshop;

import blindlap.fault.Unusable;

/**
 * A coil whose rate is constant up to a share of the stroke and rises linearly from there to the
 * end.
 *
 * <p>rate(x) = first for x ≤ from; first + (last − first)·(x − from)/(1 − from) above; x = share of
 * the stroke. Force = ∫rate, closed form. Real coils deviate from a straight ramp.
 *
 * @param firstRate rate at the beginning, above 0, in any rate unit
 * @param lastRate rate at full stroke, at least the first, in the same unit
 * @param from share of the stroke where the ramp begins, at least 0 and below 1
 */
public record ProgressiveCoil(double firstRate, double lastRate, double from) {
  /**
   * @throws Unusable if a value is impossible
   */
  public ProgressiveCoil {
    Workshop.positive("first_rate", firstRate);
    Workshop.positive("last_rate", lastRate);
    if (lastRate < firstRate) {
      throw new Unusable("last_rate", "must not be below first_rate.", WorkshopFault.RATE_FALLS);
    }
    Workshop.between("from", from, 0, 1);
    if (from == 1) {
      throw new Unusable(
          "from",
          "must be below 1, or there is no stroke left for the ramp.",
          WorkshopFault.RAMP_AT_END);
    }
  }

  /**
   * Rate at a share of the stroke.
   *
   * @param share 0 to 1
   * @throws Unusable if the share lies outside
   */
  public double rateAt(double share) {
    Workshop.between("share", share, 0, 1);
    return firstRate + (lastRate - firstRate) * Math.max(0, share - from) / (1 - from);
  }

  /**
   * The way back: where along the stroke the coil has a rate.
   *
   * @param rate above the first rate, at most the last
   * @return share of the stroke
   * @throws Unusable if the ramp does not pass this rate
   */
  public double shareAtRate(double rate) {
    Workshop.between("rate", rate, firstRate, lastRate);
    if (rate == firstRate) {
      throw new Unusable(
          "rate",
          "is the rate of the whole straight part, not of one place.",
          WorkshopFault.RATE_OF_STRAIGHT_PART);
    }
    return from + (rate - firstRate) / (lastRate - firstRate) * (1 - from);
  }

  /**
   * Spring force at a share of the stroke, without preload.
   *
   * @param share 0 to 1
   * @param stroke full stroke in the length unit of the rate
   * @return force in the force unit of the rate
   * @throws Unusable if a value is impossible
   */
  public double forceAt(double share, double stroke) {
    Workshop.between("share", share, 0, 1);
    Workshop.positive("stroke", stroke);
    double onRamp = Math.max(0, share - from);
    double rise = (lastRate - firstRate) / (1 - from);
    return stroke * (firstRate * share + rise * onRamp * onRamp / 2);
  }

  /**
   * The way back: the share of the stroke at which the coil carries a force.
   *
   * @param force 0 up to the force at full stroke
   * @throws Unusable if the coil cannot carry it
   */
  public double shareAtForce(double force, double stroke) {
    Workshop.positive("stroke", stroke);
    Workshop.between("force", force, 0, forceAt(1, stroke));
    double load = force / stroke;
    double rest = load - firstRate * from;
    double rise = (lastRate - firstRate) / (1 - from);
    if (rest <= 0) {
      return load / firstRate;
    }
    // Root of rise/2·x² + first·x = rest, in the form that stays exact for a small rise.
    return from + 2 * rest / (firstRate + Math.sqrt(firstRate * firstRate + 2 * rise * rest));
  }
}
