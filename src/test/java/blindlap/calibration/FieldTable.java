package blindlap.calibration;

import blindlap.review.FieldFinding;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.pool.Field;
import blindlap.stats.pool.FieldDay;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;

/** How often all intervals of a field hold their differences at once, over whole seasons. */
final class FieldTable {
  private static final long SEED = 20_261_128L;

  private FieldTable() {}

  /** Prints the table alone; argument: seasons per cell. */
  public static void main(String[] arguments) {
    lines(Integer.parseInt(arguments[0])).forEach(System.out::println);
  }

  /** Which setups of five, A to E, meet on which day. */
  enum Season {
    STAR("star", "AB", "AC", "AD", "AE"),
    RING("ring", "AB", "BC", "CD", "DE", "EA"),
    THREES("two days of three", "ABC", "CDE"),
    MIXED("mixed", "ABC", "AD", "DE", "BE");

    private final String text;
    private final List<String> days;

    Season(String text, String... days) {
      this.text = text;
      this.days = List.of(days);
    }

    String text() {
      return text;
    }
  }

  /**
   * Seasons.
   *
   * @param covered share in which every interval holds its true difference
   * @param disagree share in which the days do not agree; NaN where that cannot be checked
   * @param coveredTold share of those told in which every interval holds
   */
  record Found(double covered, double disagree, double coveredTold) {}

  /**
   * @param change standard deviation of a setup's lead over another from day to day, in noise SDs
   * @param uneven how much more the last day scatters than the first; 1 for equal days
   */
  static Found simulate(
      Season season, NoiseScenario noise, double change, double uneven, int seasons, long seed) {
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
    ZigguratSampler.NormalizedGaussian normal = ZigguratSampler.NormalizedGaussian.of(source);
    Assignments two = Assignments.rule(2, 12).block(4).build();
    Assignments three = Assignments.rule(3, 12).block(3).build();
    int covered = 0;
    int told = 0;
    int coveredTold = 0;
    boolean checked = false;
    for (int i = 0; i < seasons; i++) {
      List<FieldDay> days = new ArrayList<>();
      for (int d = 0; d < season.days.size(); d++) {
        String setups = season.days.get(d);
        Assignments set = setups.length() == 2 ? two : three;
        int[] order = set.random(source);
        double[] values = noise.day(order, source);
        double[] leads = new double[setups.length()];
        for (int s = 0; s < leads.length; s++) {
          // The true lead of a setup is its place in the alphabet; half of a lead's variance each.
          leads[s] = setups.charAt(s) - 'A' + change / Math.sqrt(2) * normal.sample();
        }
        double scatter = 1 + (uneven - 1) * d / (season.days.size() - 1);
        for (int k = 0; k < values.length; k++) {
          values[k] = scatter * values[k] + leads[order[k]];
        }
        boolean[] all = new boolean[values.length];
        Arrays.fill(all, true);
        List<String> names = setups.chars().mapToObj(c -> String.valueOf((char) c)).toList();
        days.add(new FieldDay(names, order, values, all, Drift.LINE));
      }
      Field field = Field.of(days);
      boolean holds = field.pairs().stream().allMatch(pair -> holds(field, pair));
      boolean agree = field.agreement().filter(a -> a.p() <= FieldFinding.DISAGREE).isEmpty();
      checked |= field.agreement().isPresent();
      covered += holds ? 1 : 0;
      told += agree ? 1 : 0;
      coveredTold += agree && holds ? 1 : 0;
    }
    double of = seasons;
    return new Found(
        covered / of, checked ? 1 - told / of : Double.NaN, coveredTold / (double) told);
  }

  private static boolean holds(Field field, Field.Pair pair) {
    double lead = pair.second().charAt(0) - pair.first().charAt(0);
    Interval interval = field.interval95(pair).orElseThrow();
    return interval.low() <= lead && lead <= interval.high();
  }

  static List<String> lines(int seasons) {
    List<String> lines = new ArrayList<>();
    lines.add("## The field over a season");
    lines.add("");
    lines.add(
        "Five setups over several days of twelve stints (two setups in blocks of four, three in"
            + " blocks of three), a straight drift removed; "
            + seasons
            + " seasons a cell. Share of seasons in which the 95 % intervals of all ten pairs hold"
            + " at once, where the lead of a setup over another keeps, and where it changes from"
            + " day to day with a standard deviation of half the noise's, and of all of it; behind"
            + " the stroke the share in which the days do not agree (p ≤ .10), so that nothing is"
            + " told, and the share of those told in which all hold. Where leads keep, uneven days"
            + " scatter from 1 to 2.7 times as much. Agreement is no protection, and a star cannot"
            + " be checked at all.");
    lines.add("");
    lines.add(
        "| season | noise | leads keep | leads keep, uneven days | change by .5 SD | change by 1 SD"
            + " |");
    lines.add("| --- | --- | ---: | ---: | ---: | ---: |");
    for (Season season : Season.values()) {
      for (NoiseScenario noise :
          List.of(NoiseScenario.WHITE, NoiseScenario.AR_6, NoiseScenario.OUTLIERS)) {
        long seed = SEED + 100L * season.ordinal() + noise.ordinal();
        lines.add(
            String.format(
                Locale.ROOT,
                "| %s | %s | %s | %s | %s | %s |",
                season.text,
                noise.text(),
                cell(simulate(season, noise, 0, 1, seasons, seed)),
                cell(simulate(season, noise, 0, 2.7, seasons, seed + 10)),
                cell(simulate(season, noise, 0.5, 1, seasons, seed + 20)),
                cell(simulate(season, noise, 1, 1, seasons, seed + 30))));
      }
    }
    lines.add("");
    return lines;
  }

  private static String cell(Found found) {
    return Double.isNaN(found.disagree)
        ? String.format(Locale.ROOT, "%.3f", found.covered)
        : String.format(
            Locale.ROOT, "%.3f / %.3f, %.3f", found.covered, found.disagree, found.coveredTold);
  }
}
