package blindlap.plan;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A named rule, as it stands in a protocol file.
 *
 * @param name short name used in plan files
 * @param title name for people
 * @param when when to choose it
 * @param setups numbers of setups it is made for; empty for any
 * @param block length of a block; null for one shuffle of the whole day
 * @param patterns sequences a block is restricted to; empty for all balanced ones
 * @param maxRun longest run of one setup; null for no limit
 * @param minTrendEfficiency least trend efficiency; null for no limit
 * @param usualStints number of stints it is usually ridden with
 * @param levels true if it is made for the levels of a steps day, not for setups
 */
public record Protocol(
    String name,
    String title,
    String when,
    List<Integer> setups,
    @Nullable Integer block,
    List<String> patterns,
    @Nullable Integer maxRun,
    @Nullable Double minTrendEfficiency,
    int usualStints,
    boolean levels) {
  private static final String OWN = "own rule";

  public Protocol {
    setups = List.copyOf(setups);
    patterns = List.copyOf(patterns);
  }

  /** The rule for a number of setups and stints; it may still contradict itself. */
  public Rule rule(int setupCount, int stintCount) {
    return new Rule(
        setupCount,
        stintCount,
        block == null ? stintCount : block,
        patterns,
        maxRun,
        minTrendEfficiency);
  }

  /**
   * True if a day that ends after these stints is a whole day of the same rule: blocks are drawn
   * each for itself, unless a longest run or a trend ties them together.
   */
  public boolean wholeBlocks(int stints) {
    return block != null
        && stints > 0
        && stints % block == 0
        && maxRun == null
        && minTrendEfficiency == null;
  }

  /** True if both restrict orders alike, whatever they are called and however long the day is. */
  public boolean sameFamily(Protocol other) {
    return Objects.equals(block, other.block)
        && patterns.equals(other.patterns)
        && Objects.equals(maxRun, other.maxRun)
        && Objects.equals(minTrendEfficiency, other.minTrendEfficiency);
  }

  /** True if it is made for as many setups, or levels, as a plan has, and for its kind of day. */
  public boolean suits(boolean stepsDay, int setupCount) {
    return (own() || levels == stepsDay) && (setups.isEmpty() || setups.contains(setupCount));
  }

  /** True if it holds just a rule written in a plan file. */
  public boolean own() {
    return name.equals(OWN);
  }

  /** A protocol that holds just a rule written in a plan file. */
  public static Protocol unnamed(Rule rule) {
    return new Protocol(
        OWN,
        "Own rule",
        "",
        List.of(rule.setups()),
        rule.block() == rule.stints() ? null : rule.block(),
        rule.patterns(),
        rule.maxRun(),
        rule.minTrendEfficiency(),
        rule.stints(),
        false);
  }
}
