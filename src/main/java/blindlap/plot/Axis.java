package blindlap.plot;

/**
 * The words of an axis.
 *
 * @param words what the axis measures, with unit, such as "lap time, m:ss.s"
 * @param kind how its values are counted
 * @param number the words of a tick
 */
public record Axis(String words, Counting kind, TickWords number) {

  /** How values are counted, which decides where round values lie. */
  public enum Counting {
    /** Tens: steps of 1, 2 and 5 times a power of ten. */
    DECIMAL,
    /** As decimal, but never between whole numbers: counts. */
    WHOLE,
    /** Seconds shown as minutes and seconds: above 10 steps of 15, 30, 60 … */
    CLOCK
  }

  /** Words of a tick. */
  @FunctionalInterface
  public interface TickWords {
    /**
     * Says the value.
     *
     * @param value the value at the tick
     * @param step distance to the next tick, which tells how many decimals are needed
     */
    String say(double value, double step);
  }
}
