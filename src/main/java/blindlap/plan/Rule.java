package blindlap.plan;

import blindlap.fault.Unusable;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.AssignmentsBuilder;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Which orders are admissible. The same fields stand in a protocol file, a plan file and a
 * calculation request.
 *
 * @param setups number of setups
 * @param stints number of stints, a multiple of {@code block}
 * @param block length of a block, which holds every setup equally often; {@code block = stints} is
 *     one shuffle of the day
 * @param patterns sequences of letters a block is restricted to; empty for all balanced ones
 * @param maxRun no setup more often than this in a row; null for no limit
 * @param minTrendEfficiency least share of information left after a straight trend is removed (two
 *     setups); null for no limit
 * @param trials true if every block is a trial with one answer, drawn on its own among {@code
 *     patterns}, which need not hold every setup equally often
 */
public record Rule(
    int setups,
    int stints,
    int block,
    List<String> patterns,
    @Nullable Integer maxRun,
    @Nullable Double minTrendEfficiency,
    boolean trials) {

  /**
   * Most stints of one day: more than anyone rides. It keeps the walks, draws and texts of a day
   * small; two setups have fewer than 2^63 orders even as one shuffle of the day, three and four
   * have more, so that counts of orders are always whole numbers of any size.
   */
  public static final int MOST_STINTS = 60;

  private static final int MOST_NODES = 40_000;
  private static final int MOST_SUMS = 4_000_000;

  public Rule {
    patterns = List.copyOf(patterns);
  }

  /** A rule of blocks that each hold every setup equally often. */
  public Rule(
      int setups,
      int stints,
      int block,
      List<String> patterns,
      @Nullable Integer maxRun,
      @Nullable Double minTrendEfficiency) {
    this(setups, stints, block, patterns, maxRun, minTrendEfficiency, false);
  }

  /** Trials of a task, each drawn on its own; every lap of a trial is a stint. */
  public static Rule trials(TellingTask task, int trials) {
    return new Rule(2, trials * task.laps(), task.laps(), task.sequences(), null, null, true);
  }

  /** Blocks without further restrictions. */
  public static Rule blocks(int setups, int stints, int block) {
    return new Rule(setups, stints, block, List.of(), null, null);
  }

  /**
   * The set of admissible orders, possibly empty.
   *
   * @throws Unusable if the rule contradicts itself
   */
  public Assignments assignments() {
    return builder().build();
  }

  /**
   * The same for a day that is still to be planned, which asks far more of the set than a day that
   * was ridden: every shorter day, thousands of simulated ones.
   *
   * @throws Unusable if the rule contradicts itself, or would keep its planner waiting
   *     (docs/performance.md, "Rules that are refused")
   */
  public Assignments planned() {
    return builder().mostNodes(mostNodes()).build();
  }

  /** Two setups are counted by sums of positions as well, of which there are about n²/4. */
  private int mostNodes() {
    return setups == 2 && minTrendEfficiency == null
        ? Math.min(MOST_NODES, MOST_SUMS / (stints * stints / 4 + 1))
        : MOST_NODES;
  }

  private AssignmentsBuilder builder() {
    return sequences(Assignments.rule(setups, stints))
        .maxRun(maxRun == null ? 0 : maxRun)
        .minTrendEfficiency(minTrendEfficiency == null ? 0 : minTrendEfficiency);
  }

  /** The sequences of one block, before any constraint that spans the day. */
  public Assignments blockSequences() {
    return sequences(Assignments.rule(setups, block)).build();
  }

  private AssignmentsBuilder sequences(AssignmentsBuilder builder) {
    AssignmentsBuilder inBlocks = builder.block(block);
    return trials ? inBlocks.trials(patterns) : inBlocks.patterns(patterns);
  }

  /** True if a constraint spans more than one block. */
  public boolean constrainsWholeDay() {
    return maxRun != null || minTrendEfficiency != null;
  }
}
