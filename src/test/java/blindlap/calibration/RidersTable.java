package blindlap.calibration;

import blindlap.stats.compare.ConfidenceCurve;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Sampling;
import blindlap.stats.pool.PooledSession;
import blindlap.stats.pool.RiderPooling;
import blindlap.stats.pool.StratifiedSessions;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * The table of pooling riders simulated: how often each way rejects a true mean of 0, and how wide
 * the interval of the mean is. Twelve stints in blocks of four a rider, rider noise SD uniform on
 * .6 to 1.4 (the reference figures only say that it varies).
 *
 * <p>docs/pooling.md is written by {@link #main} with 2 000 days a row. The test runs single cells
 * with fewer days.
 */
public final class RidersTable {
  private static final int STINTS = 12;
  private static final Assignments SET = Assignments.rule(2, STINTS).block(4).build();
  private static final List<String> ORDERS = SET.list();
  private static final int[][] CELLS = {{3, 0}, {3, 5}, {3, 10}, {5, 5}, {5, 10}, {8, 5}, {8, 10}};

  /** Rejection rates of the five ways and the median half-width, from an independent prototype. */
  private static final double[][] REFERENCE = {
    {.052, .066, .052, .001, .043, 1.22},
    {.132, .130, .059, .006, .042, 1.61},
    {.213, .173, .079, .020, .052, 2.41},
    {.109, .110, .066, .032, .050, .89},
    {.181, .111, .054, .038, .041, 1.33},
    {.102, .090, .065, .043, .046, .63},
    {.180, .102, .051, .049, .051, .95}
  };

  private static final int REFERENCE_DAYS = 2000;

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

  /**
   * Writes the table.
   *
   * @param arguments days a row, file
   */
  public static void main(String[] arguments) throws java.io.IOException {
    int days = Integer.parseInt(arguments[0]);
    StringBuilder rows = new StringBuilder();
    List<String> differs = new ArrayList<>();
    for (int row = 0; row < CELLS.length; row++) {
      int[] cell = CELLS[row];
      Cell c = cell(cell[0], cell[1] / 10.0, days, 499, 20_261_010L + cell[0] * 100L + cell[1]);
      double[] own = {c.stratified, c.reml, c.knapp, c.modified, c.mean, c.halfWidth};
      rows.append("| ").append(cell[0]).append(" | ").append(cell[1] / 10.0);
      for (int i = 0; i < own.length; i++) {
        String form = i == 5 ? " | %.2f (%.2f)" : " | %.3f (%.3f)";
        rows.append(String.format(Locale.ROOT, form, own[i], REFERENCE[row][i]));
        if (i < 5 && !within(own[i], REFERENCE[row][i], days)) {
          differs.add("%d riders, %.1f, column %d".formatted(cell[0], cell[1] / 10.0, i + 3));
        }
      }
      rows.append(" |\n");
    }
    java.nio.file.Files.writeString(
        java.nio.file.Path.of(arguments[1]), TEXT.formatted(days, rows, said(differs)));
  }

  private static String said(List<String> differs) {
    return differs.isEmpty() ? "Nothing does." : String.join("; ", differs) + ".";
  }

  /** Within three standard errors of both simulations. */
  private static boolean within(double own, double reference, int days) {
    double error = 3 * Math.sqrt(reference * (1 - reference) * (1.0 / days + 1.0 / REFERENCE_DAYS));
    return Math.abs(own - reference) <= error + 0.0005;
  }

  private static final String TEXT =
      """
      # Pooling riders, simulated

      Written by `blindlap.calibration.RidersTable`, not by hand. After `mvn package`:

      <!-- not-run: takes minutes; RidersTableTest is a small run of the same kind in every build -->

          java -cp "target/test-classes:target/classes:target/lib/*" \\
              blindlap.calibration.RidersTable %d docs/pooling.md

      (on Windows with `;` for `:`). `RidersTableTest` is a small run of the same kind.

      How often each way of pooling rejects at .05 when riders do not differ from 0 on average: riders with 12 stints
      in blocks of four each, their noise SD uniform on .6 to 1.4, their true differences normal around 0 with the SD named
      (in units of the mean noise SD). In brackets the figures of an independent prototype with 2000 days a row, whose riders'
      noise "varies" in a way that is not written down.

      | riders | SD between riders | stratified test | REML, Wald | REML, Hartung-Knapp | modified Hartung-Knapp | equal-weight t | half-width of the last |
      | ---: | ---: | --- | --- | --- | --- | --- | --- |
      %s
      Read it so: the stratified test answers whether anything differed for *these* riders on *these* days; it rejects far more often
      than .05 when it is asked about riders in general, so it is never worded that way. The equal-weight t interval keeps its level
      and is the primary; the modified interval of Hartung and Knapp errs on the wide side and is taken where riders' noise or number of
      stints differ more than threefold. With three riders the half-width is more than one noise SD: no verdict below four riders.

      ## What differs

      Rates farther from the prototype than three standard errors of both simulations: %s
      """;

  static Cell cell(int riders, double betweenSd, int days, int draws, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int[] rejected = new int[5];
    double[] halfWidths = new double[days];
    for (int day = 0; day < days; day++) {
      List<PooledSession> sessions = new ArrayList<>();
      double[] estimates = new double[riders];
      double[] variances = new double[riders];
      for (int r = 0; r < riders; r++) {
        PooledSession session = session(random, betweenSd);
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

  private static TwoSetups compared(PooledSession day) {
    return TwoSetups.compare(
        day.set(), day.order(), day.values(), day.valid(), day.nuisance(), Sampling.PREFERRED);
  }

  private static PooledSession session(SplittableRandom random, double betweenSd) {
    int[] order = blindlap.stats.order.Orders.parse(ORDERS.get(random.nextInt(ORDERS.size())));
    double sd = 0.6 + 0.8 * random.nextDouble();
    double shift = betweenSd * random.nextGaussian();
    double[] values = new double[STINTS];
    boolean[] valid = new boolean[STINTS];
    for (int i = 0; i < STINTS; i++) {
      values[i] = sd * random.nextGaussian() + shift * order[i];
      valid[i] = true;
    }
    return new PooledSession(SET, order, values, valid, Drift.LINE);
  }
}
