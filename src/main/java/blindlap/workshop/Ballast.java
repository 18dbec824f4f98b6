package blindlap.workshop;

import blindlap.fault.Unusable;
import java.util.Arrays;

/**
 * Ballast that hides a difference in mass: every setup is brought to the mass of the heaviest.
 *
 * <p>ballast_i = max(mass) − mass_i. It hides the total mass only; where it sits on the bike still
 * matters.
 */
public final class Ballast {
  private Ballast() {}

  /**
   * @param masses mass of each setup, above 0, in one unit
   * @return ballast of each setup in that unit; 0 for the heaviest
   * @throws Unusable if there is no mass or one is not above 0
   */
  public static double[] hiding(double... masses) {
    if (masses.length == 0) {
      throw new Unusable("masses", "is empty.", WorkshopFault.NO_MASS);
    }
    for (int i = 0; i < masses.length; i++) {
      Workshop.positive("masses[" + i + "]", masses[i]);
    }
    double heaviest = Arrays.stream(masses).max().orElseThrow();
    return Arrays.stream(masses).map(mass -> heaviest - mass).toArray();
  }

  /**
   * The way back: what a setup weighs with its ballast, less that of another with its own: 0 if the
   * difference is hidden.
   *
   * @throws Unusable if a mass is not above 0 or a ballast negative
   */
  public static double difference(
      double mass, double ballast, double otherMass, double otherBallast) {
    Workshop.positive("mass", mass);
    Workshop.positive("other_mass", otherMass);
    Workshop.between("ballast", ballast, 0, Double.MAX_VALUE);
    Workshop.between("other_ballast", otherBallast, 0, Double.MAX_VALUE);
    return mass + ballast - (otherMass + otherBallast);
  }
}
