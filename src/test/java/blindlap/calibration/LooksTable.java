package blindlap.calibration;

import blindlap.stats.look.PrefixRule;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Sampling;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/**
 * Looks before the end of 24 stints in blocks of four: how often a day shows a difference, how many
 * stints are ridden, and what a void does that is declared once a look has been taken.
 */
final class LooksTable {
  private static final int STINTS = 24;
  private static final Assignments SET = Assignments.rule(2, STINTS).block(4).build();

  /** Orders that all days share, drawn anew for every row of the table. */
  private static final int DRAWS = 1_499;

  private static final List<NoiseScenario> NOISES =
      List.of(NoiseScenario.WHITE, NoiseScenario.AR_6, NoiseScenario.T3, NoiseScenario.OUTLIERS);

  private LooksTable() {}

  public static void main(String[] arguments) {
    lines(Integer.parseInt(arguments[0])).forEach(System.out::println);
  }

  /** What happens to a stint after the look that used it. */
  enum Late {
    NOTHING("nothing"),
    /** The slowest stint up to the look is declared void after it: what was used stays. */
    VOID("its slowest stint is void after the look"),
    /** Of the stints ridden since the look, the slowest is declared void before the next. */
    SINCE("the slowest stint ridden since is void"),
    /** The look is taken again with the void, as the program does not. */
    AGAIN("its slowest stint is void, and it is taken again, as the program does not");

    private final String text;

    Late(String text) {
      this.text = text;
    }
  }

  /**
   * Shares of days.
   *
   * @param shown that show a difference
   * @param stopped that may stop at a look
   * @param stints mean stints ridden if everyone stops who may
   */
  record Found(double shown, double stopped, double stints) {}

  static Found simulate(
      List<Integer> looks, NoiseScenario noise, double difference, Late late, int days, long seed) {
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
    Sampling shared = new Sampling(false, DRAWS, seed + 1, 0);
    int shown = 0;
    int stopped = 0;
    double stints = 0;
    for (int day = 0; day < days; day++) {
      int[] order = SET.random(source);
      double[] y = noise.day(order, source);
      for (int i = 0; i < STINTS; i++) {
        y[i] += difference * order[i];
      }
      int at = crossed(order, y, looks, late, shared);
      boolean early = at > 0 && at <= looks.size();
      shown += at > 0 ? 1 : 0;
      stopped += early ? 1 : 0;
      stints += early ? looks.get(at - 1) : STINTS;
    }
    return new Found((double) shown / days, (double) stopped / days, stints / days);
  }

  private static int crossed(
      int[] order, double[] y, List<Integer> looks, Late late, Sampling shared) {
    List<PrefixRule.Look> taken = new ArrayList<>();
    double[] known = new double[STINTS];
    Arrays.fill(known, Double.NaN);
    double[] now = y.clone();
    int before = 0;
    for (int look : looks) {
      since(now, before, look, late);
      // What an earlier look used stays; what was ridden since is taken as it is now.
      System.arraycopy(now, before, known, before, look - before);
      taken.add(new PrefixRule.Look(look, known.clone()));
      if (late == Late.VOID || late == Late.AGAIN) {
        now[slowest(now, 0, look)] = Double.NaN;
      }
      if (late == Late.AGAIN && again(order, now, taken, shared)) {
        return taken.size();
      }
      before = look;
    }
    since(now, before, STINTS, late);
    System.arraycopy(now, before, known, before, STINTS - before);
    taken.add(new PrefixRule.Look(STINTS, known));
    return PrefixRule.of(SET, order, taken, true, Drift.LINE, shared).crossedAt(0.05);
  }

  private static void since(double[] now, int before, int upTo, Late late) {
    if (late == Late.SINCE && before > 0) {
      now[slowest(now, before, upTo)] = Double.NaN;
    }
  }

  /** Whether the last look that was taken says otherwise once the void is applied to it. */
  private static boolean again(
      int[] order, double[] now, List<PrefixRule.Look> taken, Sampling shared) {
    int last = taken.size() - 1;
    List<PrefixRule.Look> repeated = new ArrayList<>(taken);
    repeated.set(last, new PrefixRule.Look(taken.get(last).upTo(), now.clone()));
    return PrefixRule.of(SET, order, repeated, false, Drift.LINE, shared).crossedAt(0.05) > 0;
  }

  private static int slowest(double[] y, int from, int upTo) {
    int slowest = from;
    for (int i = from + 1; i < upTo; i++) {
      slowest = !(y[i] <= y[slowest]) && !Double.isNaN(y[i]) ? i : slowest;
    }
    return slowest;
  }

  static List<String> lines(int days) {
    List<String> lines = new ArrayList<>();
    lines.add("## Looks before the end");
    lines.add("");
    lines.add(
        "Blocks of four, 24 stints, a straight line removed; share of days that show a difference,"
            + " and mean stints ridden where everyone stops who may; "
            + days
            + " days a cell. A look keeps what it used, so that a later void of that changes"
            + " nothing by construction; one of a stint ridden since has its part in the next look"
            + " and the end. The last rows are what the rule forbids.");
    lines.add("");
    lines.add("| looks after | after a look | noise | no difference | 1.5 SD | stints at 1.5 SD |");
    lines.add("| --- | --- | --- | ---: | ---: | ---: |");
    for (List<Integer> looks : List.of(List.of(16), List.of(12, 16, 20))) {
      for (Late late : Late.values()) {
        for (NoiseScenario noise : NOISES) {
          Found none = simulate(looks, noise, 0, late, days, 1);
          Found much = simulate(looks, noise, 1.5, late, days, 2);
          lines.add(
              String.format(
                  Locale.ROOT,
                  "| %s | %s | %s | %.3f | %.3f | %.1f |",
                  looks.toString().replaceAll("[\\[\\]]", ""),
                  late.text,
                  noise.text(),
                  none.shown(),
                  much.shown(),
                  much.stints()));
        }
      }
    }
    lines.add("");
    return lines;
  }
}
