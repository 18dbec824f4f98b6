package blindlap.calibration;

import blindlap.stats.Assignments;
import blindlap.stats.ConfidenceCurve;
import blindlap.stats.Drift;
import blindlap.stats.Interval;
import blindlap.stats.RiderPooling;
import blindlap.stats.Sampling;
import blindlap.stats.StratifiedSessions;
import blindlap.stats.TwoSetups;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * The table of METHOD 10 simulated: how often each way of pooling riders rejects a true mean of 0,
 * how often its 95 % interval holds it, and how wide that is. Twelve stints in blocks of four a
 * rider, rider noise SD uniform on .6 to 1.4 (METHOD says only that it varies).
 *
 * <p>Run after {@code mvn test-compile}: {@code mvn exec:java -Dexec.classpathScope=test
 * -Dexec.mainClass=blindlap.calibration.RidersTable -Dexec.args="2000"}. 2 000 days a row take
 * about a minute. The test runs single cells with fewer days.
 */
public final class RidersTable {
  private static final int STINTS = 12;
  private static final Assignments SET = Assignments.rule(2, STINTS).block(4).build();
  private static final List<String> ORDERS = SET.list();
  private static final int[][] CELLS = {{3, 0}, {3, 5}, {3, 10}, {5, 5}, {5, 10}, {8, 5}, {8, 10}};

  private RidersTable() {}

  /**
   * One cell.
   *
   * @param riders number of riders
   * @param betweenSd SD of the riders' true differences
   * @param stratified rejection rate of the stratified test
   * @param reml rejection rate of the Wald interval
   * @param knapp rejection rate of Hartung and Knapp
   * @param modified rejection rate of its modified form
   * @param mean rejection rate of the equal-weight t interval
   * @param halfWidth median half-width of the last
   */
  record Cell(
      int riders,
      double betweenSd,
      double stratified,
      double reml,
      double knapp,
      double modified,
      double mean,
      double halfWidth) {}

  /** Prints the table. */
  public static void main(String[] arguments) {
    int days = arguments.length == 0 ? 2000 : Integer.parseInt(arguments[0]);
    System.out.println("riders | between SD | stratified | REML | HK | mHK | t | half-width t");
    for (int[] cell : CELLS) {
      Cell c = cell(cell[0], cell[1] / 10.0, days, 499, 20_261_010L + cell[0] * 100L + cell[1]);
      System.out.printf(
          Locale.ROOT,
          "%d | %.1f | %.3f | %.3f | %.3f | %.3f | %.3f | %.2f%n",
          c.riders,
          c.betweenSd,
          c.stratified,
          c.reml,
          c.knapp,
          c.modified,
          c.mean,
          c.halfWidth);
    }
  }

  static Cell cell(int riders, double betweenSd, int days, int draws, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int[] rejected = new int[5];
    double[] halfWidths = new double[days];
    for (int day = 0; day < days; day++) {
      List<StratifiedSessions.Session> sessions = new ArrayList<>();
      double[] estimates = new double[riders];
      double[] variances = new double[riders];
      for (int r = 0; r < riders; r++) {
        StratifiedSessions.Session session = session(random, betweenSd);
        TwoSetups own = compared(session);
        sessions.add(session);
        estimates[r] = own.estimate();
        variances[r] = own.noiseSd() * own.noiseSd() / own.c();
      }
      ConfidenceCurve curve =
          StratifiedSessions.compare(sessions, new Sampling(false, draws, random.nextLong()))
              .curve();
      rejected[0] += curve.exceeds(0, 0.025) || curve.fallsShortOf(0, 0.025) ? 1 : 0;
      RiderPooling.Reml reml = RiderPooling.reml(estimates, variances);
      RiderPooling.Mean mean = RiderPooling.mean(estimates);
      rejected[1] += without0(reml.interval95());
      rejected[2] += without0(reml.hartungKnapp95());
      rejected[3] += without0(reml.modifiedHartungKnapp95());
      rejected[4] += without0(mean.interval95());
      halfWidths[day] = mean.interval95().halfWidth();
    }
    java.util.Arrays.sort(halfWidths);
    return new Cell(
        riders,
        betweenSd,
        rejected[0] / (double) days,
        rejected[1] / (double) days,
        rejected[2] / (double) days,
        rejected[3] / (double) days,
        rejected[4] / (double) days,
        halfWidths[days / 2]);
  }

  private static int without0(Interval interval) {
    return interval.low() > 0 || interval.high() < 0 ? 1 : 0;
  }

  private static TwoSetups compared(StratifiedSessions.Session day) {
    return TwoSetups.compare(
        day.set(), day.order(), day.values(), day.valid(), day.drift(), Sampling.PREFERRED);
  }

  private static StratifiedSessions.Session session(SplittableRandom random, double betweenSd) {
    int[] order = blindlap.stats.Orders.parse(ORDERS.get(random.nextInt(ORDERS.size())));
    double sd = 0.6 + 0.8 * random.nextDouble();
    double shift = betweenSd * random.nextGaussian();
    double[] values = new double[STINTS];
    boolean[] valid = new boolean[STINTS];
    for (int i = 0; i < STINTS; i++) {
      values[i] = sd * random.nextGaussian() + shift * order[i];
      valid[i] = true;
    }
    return new StratifiedSessions.Session(SET, order, values, valid, Drift.LINE);
  }
}
