package blindlap.calibration;

import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.Trend;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Sampling;
import blindlap.stats.power.Detectable;
import blindlap.stats.power.SimulatedDays;
import blindlap.stats.power.StepsPower;
import blindlap.stats.power.VerdictOdds;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/** Trend, bend and what is said of middle and ends, as docs/calibration.md has them. */
final class StepsTable {
  private static final long SEED = 20_261_128L;

  /** Sets up to so many orders are walked on every day, larger ones by so many draws. */
  private static final int WHOLE = 1500;

  private static final int DRAWS = 499;

  private StepsTable() {}

  /** Prints the tables alone; argument: days per cell. */
  public static void main(String[] arguments) {
    lines(Integer.parseInt(arguments[0])).forEach(System.out::println);
  }

  /** Levels, in blocks of as many stints. */
  enum Steps {
    THREE_12("three, 12", 12, 0, 1, 2),
    THREE_18("three, 18", 18, 0, 1, 2),
    THREE_UNEVEN("three at 0, 1 and 4; 12", 12, 0, 1, 4),
    FOUR_16("four, 16", 16, 0, 1, 2, 3),
    FIVE_15("five, 15", 15, 0, 1, 2, 3, 4),
    SIX_18("six, 18", 18, 0, 1, 2, 3, 4, 5);

    private final String text;
    private final int stints;
    private final double[] levels;

    Steps(String text, int stints, double... levels) {
      this.text = text;
      this.stints = stints;
      this.levels = levels;
    }

    Assignments set() {
      return Assignments.rule(levels.length, stints).block(levels.length).build();
    }
  }

  /** Mean of a level: a trend over the whole range, and a middle that is lower by a depth. */
  record Truth(double trend, double depth) {
    double at(double[] levels, int setup) {
      double low = Arrays.stream(levels).min().orElseThrow();
      double high = Arrays.stream(levels).max().orElseThrow();
      double along = (levels[setup] - low) / (high - low);
      boolean end = along == 0 || along == 1;
      return trend * along - (end ? 0 : depth);
    }
  }

  /**
   * Shares of days.
   *
   * @param real the trend's p is .05 or less
   * @param held the 95 % interval holds the true trend
   * @param bent the bend's p is .05 or less
   * @param middle the middle is said to be better than both ends, lower being better
   * @param still it is said to be still getting better at an end
   */
  record Found(double real, double held, double bent, double middle, double still) {}

  static Found simulate(Steps steps, NoiseScenario noise, Truth truth, int days, long seed) {
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
    Assignments set = steps.set();
    int[] count = new int[5];
    for (int day = 0; day < days; day++) {
      Trend found = trend(steps, set, noise, truth, source);
      Interval interval = found.curve().interval(0.95).orElse(Interval.UNDEFINED);
      count[0] += found.real() ? 1 : 0;
      count[1] += interval.low() <= truth.trend() && truth.trend() <= interval.high() ? 1 : 0;
      count[2] += found.bend().orElseThrow().real() ? 1 : 0;
      count[3] += said(found.middleBetter(true));
      count[4] += said(found.stillBetter(true));
    }
    double[] share = Arrays.stream(count).mapToDouble(each -> (double) each / days).toArray();
    return new Found(share[0], share[1], share[2], share[3], share[4]);
  }

  private static int said(OptionalInt setup) {
    return setup.isPresent() ? 1 : 0;
  }

  private static Trend trend(
      Steps steps,
      Assignments set,
      NoiseScenario noise,
      Truth truth,
      UniformRandomProvider source) {
    int[] order = set.random(source);
    double[] y = noise.day(order, source);
    for (int i = 0; i < y.length; i++) {
      y[i] += truth.at(steps.levels, order[i]);
    }
    boolean[] all = new boolean[y.length];
    Arrays.fill(all, true);
    Sampling sampling = new Sampling(false, DRAWS, source.nextLong(), WHOLE);
    return Trend.of(set, steps.levels, order, y, all, Nuisance.of(Drift.LINE), sampling);
  }

  /** Share of days on which any pair of levels is told apart by the largest |t|. */
  static double anyPair(Steps steps, Truth truth, int days, long seed) {
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
    Assignments set = steps.set();
    boolean[] all = new boolean[steps.stints];
    Arrays.fill(all, true);
    int found = 0;
    for (int day = 0; day < days; day++) {
      int[] order = set.random(source);
      double[] y = NoiseScenario.WHITE.day(order, source);
      for (int i = 0; i < y.length; i++) {
        y[i] += truth.at(steps.levels, order[i]);
      }
      Sampling sampling = new Sampling(false, DRAWS, source.nextLong(), WHOLE);
      ManySetups many = ManySetups.compare(set, order, y, all, Nuisance.of(Drift.LINE), sampling);
      found += many.pairs().stream().anyMatch(pair -> pair.pAdjusted() <= .05 + 1e-12) ? 1 : 0;
    }
    return (double) found / days;
  }

  static List<String> lines(int days) {
    List<String> lines = new ArrayList<>();
    lines.add("## Levels of one setting");
    lines.add("");
    lines.add(
        "Blocks of as many stints as levels, evenly stepped but for one row, a straight line"
            + " removed, "
            + days
            + " days a cell; sets beyond "
            + WHOLE
            + " orders by "
            + DRAWS
            + " fresh draws a day. In turn, no level mattering: p of the trend .05 or less / p of"
            + " the bend .05 or less; and with a straight trend of 1.5 SD from end to end: the 95 %"
            + " interval holds it / p of the bend .05 or less. The first three may miss .05 and .95"
            + " by no more than simulation error, but for the last column: where one level scatters"
            + " more than the others, the bend errs if that level lies in the middle.");
    lines.add("");
    noises(days, lines);
    lines.add(
        "How often \"the middle is better than both ends\" is said where it is not, lower being"
            + " better (no level mattering; straight trends, in SD from end to end), and how often"
            + " where the levels between the ends are 1.5 or 2.5 SD lower than both ends; last how"
            + " often it is said to be still getting better at an end, no level mattering. White"
            + " noise.");
    lines.add("");
    middles(2 * days, lines);
    lines.add(
        "What a day shows of a straight trend of 1.5 SD from end to end, white noise: p of .05 or"
            + " less, in brackets by formula; any pair of levels by the largest |t|. And the trend,"
            + " and the height of a bend, seen on 8 of 10 days, in SD: the trend by formula and, in"
            + " brackets, by simulation; the bend by formula, in brackets how often a bend of that"
            + " height was seen.");
    lines.add("");
    powers(4 * days, lines);
    return lines;
  }

  private static void noises(int days, List<String> lines) {
    double most = -1;
    String where = "";
    StringBuilder head = new StringBuilder("| levels, stints |");
    for (NoiseScenario noise : NoiseScenario.values()) {
      head.append(' ').append(noise.text()).append(" |");
    }
    lines.add(head.toString());
    lines.add("| --- |" + " --- |".repeat(NoiseScenario.values().length));
    for (Steps steps : Steps.values()) {
      StringBuilder row = new StringBuilder("| " + steps.text + " |");
      for (NoiseScenario noise : NoiseScenario.values()) {
        long seed = SEED + 100L * steps.ordinal() + noise.ordinal();
        Found flat = simulate(steps, noise, new Truth(0, 0), days, seed);
        Found straight = simulate(steps, noise, new Truth(1.5, 0), days, seed + 50);
        double middle = Math.max(flat.middle(), straight.middle());
        if (middle > most) {
          most = middle;
          where = steps.text + ", " + noise.text();
        }
        row.append(
            " %s / %s; %s / %s |"
                .formatted(
                    three(flat.real()),
                    three(flat.bent()),
                    three(straight.held()),
                    three(straight.bent())));
      }
      lines.add(row.toString());
    }
    lines.add("");
    lines.add(
        "The most that \"the middle is better than both ends\" was said of any of these: %s (%s)."
            .formatted(three(most), where));
    lines.add("");
  }

  private static final double[] TRENDS = {0, 0.5, 1.5, 3, 6};

  private static void middles(int days, List<String> lines) {
    lines.add(
        "| levels, stints | flat | .5 | 1.5 | 3 | 6 | middle 1.5 | middle 2.5 | flat: still better"
            + " |");
    lines.add("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
    for (Steps steps : Steps.values()) {
      StringBuilder row = new StringBuilder("| " + steps.text + " |");
      double still = 0;
      for (double trend : TRENDS) {
        Found found = simulate(steps, NoiseScenario.WHITE, new Truth(trend, 0), days, SEED + 1_000);
        still = trend == 0 ? found.still() : still;
        row.append(' ').append(three(found.middle())).append(" |");
      }
      for (double depth : new double[] {1.5, 2.5}) {
        Found found = simulate(steps, NoiseScenario.WHITE, new Truth(0, depth), days, SEED + 2_000);
        row.append(' ').append(three(found.middle())).append(" |");
      }
      lines.add(row.append(' ').append(three(still)).append(" |").toString());
    }
    lines.add("");
  }

  private static void powers(int days, List<String> lines) {
    lines.add("| levels, stints | p ≤ .05 | any pair | trend seen | bend seen |");
    lines.add("| --- | --- | --- | --- | --- |");
    for (Steps steps : Steps.values()) {
      StepsPower power = StepsPower.of(steps.set(), steps.levels, Drift.LINE);
      Detectable formula = power.trend().formula();
      SimulatedDays simulated = power.trend().simulate(days, SEED, () -> false);
      double height = power.bend(1, 0.8);
      lines.add(
          "| %s | %s (%s) | %s | %s (%s) | %s (%s) |"
              .formatted(
                  steps.text,
                  three(real(simulated.odds(1.5, 1, 1))),
                  three(formula.power(1.5, 1)),
                  three(anyPair(steps, new Truth(1.5, 0), days / 4, SEED + 4_000)),
                  two(formula.difference(1, 0.8)),
                  two(simulated.difference(1, 0.8)),
                  two(height),
                  three(bendSeen(steps, height, days / 4))));
    }
    lines.add("");
  }

  /** Share of days of white noise that see a trend, of those odds. */
  static double real(VerdictOdds odds) {
    return odds.worthwhile() + odds.small() + odds.direction();
  }

  private static double bendSeen(Steps steps, double height, int days) {
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(SEED + 5_000);
    Assignments set = steps.set();
    boolean[] all = new boolean[steps.stints];
    Arrays.fill(all, true);
    double range = Arrays.stream(steps.levels).max().orElseThrow();
    int seen = 0;
    for (int day = 0; day < days; day++) {
      int[] order = set.random(source);
      double[] y = NoiseScenario.WHITE.day(order, source);
      for (int i = 0; i < y.length; i++) {
        double along = steps.levels[order[i]] / range - 0.5;
        y[i] += height * (1 - 4 * along * along);
      }
      Sampling sampling = new Sampling(false, DRAWS, source.nextLong(), WHOLE);
      Trend found = Trend.of(set, steps.levels, order, y, all, Nuisance.of(Drift.LINE), sampling);
      seen += found.bend().orElseThrow().real() ? 1 : 0;
    }
    return (double) seen / days;
  }

  private static String three(double share) {
    return String.format(Locale.ROOT, "%.3f", share);
  }

  private static String two(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }
}
