package blindlap.stats.look;

import blindlap.fault.StatsException;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Sampling;
import java.util.ArrayList;
import java.util.List;

/**
 * Looks before the end of a day by re-randomisation (docs/method.md#looks; Lan and DeMets 1983,
 * Biometrika 70:659-663, on the orders that could have been drawn). At a level a the looks up to a
 * share t of the stints may have marked ⌊a(t)·K⌋ of the K orders, a(t) of the O'Brien-Fleming type:
 * at each look the orders that are not marked yet and set the values up to there furthest apart are
 * marked, as many as are left; of equal ones all or none. A day may stop at the first look that
 * marks the order that was ridden. Only the order is random and the marking is a function of the
 * values, so that a day without a difference stops with no more than the probability a.
 */
public final class PrefixRule {
  private static final double SAME = 1e-9;

  /** Above this level what single looks may mark no longer rises with the level. */
  private static final double RISING = 0.3;

  private static final int STEPS_ABOVE = 28;

  private static final double CLOSE = 1e-12;

  /** Orders by which rounding to whole orders may part neighbouring levels. */
  private static final int WHOLE_ORDERS = 40;

  /**
   * A look.
   *
   * @param upTo its last stint, from 1
   * @param values one per stint of the plan as the look knew them; NaN where none
   */
  public record Look(int upTo, double[] values) {}

  private final List<Look> looks;
  private final List<RankedPlaces> ranked = new ArrayList<>();
  private final double[] shares;
  private final int own;
  private final double orders;

  private PrefixRule(
      Assignments set, int[] order, List<Look> looks, boolean ended, Drift drift, Sampling s) {
    this.looks = List.copyOf(looks);
    this.own = PrefixWalk.place(set, order, s);
    this.orders = 2.0 * PrefixWalk.places(set, s);
    this.shares = new double[looks.size()];
    for (int i = 0; i < shares.length; i++) {
      Look look = looks.get(i);
      boolean last = ended && i == shares.length - 1;
      shares[i] = last ? 1 : (double) look.upTo() / set.stints();
      boolean[] use = new boolean[set.stints()];
      for (int stint = 0; stint < look.upTo(); stint++) {
        use[stint] = !Double.isNaN(look.values()[stint]);
      }
      ranked.add(
          new RankedPlaces(PrefixWalk.statistics(set, order, look.values(), use, drift, s), SAME));
    }
  }

  /**
   * Looks at a day.
   *
   * @param set the admissible orders of two setups
   * @param order the order ridden, a member of the set
   * @param looks those that were taken, in order
   * @param ended true if the last of them is the end of the day, which spends all that is left
   * @param drift what is removed from the stints of every look
   * @throws StatsException if the set, the order or the looks are impossible
   */
  public static PrefixRule of(
      Assignments set,
      int[] order,
      List<Look> looks,
      boolean ended,
      Drift drift,
      Sampling sampling) {
    DayCheck.twoSetups(set);
    DayCheck.order(set, order);
    Looks.number(looks.size());
    int before = 0;
    for (Look look : looks) {
      if (look.upTo() <= before || look.upTo() > set.stints()) {
        throw new StatsException("looks", "must come one after the other, up to the last stint.");
      }
      DayCheck.length(set, "values", look.values().length, "values");
      before = look.upTo();
    }
    return new PrefixRule(set, order, looks, ended, drift, sampling);
  }

  /** The looks. */
  public List<Look> looks() {
    return looks;
  }

  /**
   * The first look that marks the ridden order at a level. All looks are gone through whatever they
   * find, so that the time it takes tells nothing.
   *
   * @return from 1; 0 for none
   */
  public int crossedAt(double level) {
    Looks.level(level);
    return mark(level, true).crossed;
  }

  /** The share of the level that looks before one have left, from 1; what was not marked counts. */
  public double left(double level, int look) {
    Looks.level(level);
    return level - mark(level, true).markedBefore[look - 1] / orders;
  }

  /** How many places were walked, merged and gone through so far: the work, for a test. */
  long work() {
    return ranked.stream().mapToLong(RankedPlaces::visited).sum();
  }

  private record Marked(int crossed, double[] markedBefore) {}

  private Marked mark(double level, boolean all) {
    boolean[] marked = new boolean[(int) (orders / 2)];
    double[] before = new double[shares.length];
    long already = 0;
    int crossed = 0;
    for (int look = 0; look < shares.length && (all || crossed == 0); look++) {
      before[look] = 2.0 * already;
      double spent = Spending.OBRIEN_FLEMING.share(level, shares[look]);
      long room = (long) Math.floor(spent * orders + SAME) / 2 - already;
      already += ranked.get(look).mark(marked, room, all);
      crossed = crossed == 0 && marked[own] ? look + 1 : crossed;
    }
    return new Marked(crossed, before);
  }

  /**
   * The smallest level at which the ridden order is marked by the last look; 1 if at none below.
   */
  public double p() {
    double high = 1;
    double low = 0;
    if (crossed(RISING)) {
      high = RISING;
    } else {
      low = RISING;
      for (int i = 1; i < STEPS_ABOVE && high == 1; i++) {
        double level = RISING + (1 - RISING) * i / STEPS_ABOVE;
        high = crossed(level) ? level : 1;
        low = high == 1 ? level : low;
      }
    }
    return whole(halved(low, high));
  }

  private double halved(double low, double high) {
    double above = high;
    double below = low;
    while (above - below > CLOSE) {
      double middle = (below + above) / 2;
      if (crossed(middle)) {
        above = middle;
      } else {
        below = middle;
      }
    }
    return above;
  }

  /** Rounding to whole orders may let a level cross just below one that does not. */
  private double whole(double level) {
    double least = level;
    for (int i = 1; i <= WHOLE_ORDERS; i++) {
      double below = level - i * 0.5 / orders;
      least = below > 0 && crossed(below) ? below : least;
    }
    return least == level ? level : halved(Math.max(0, least - 0.5 / orders), least);
  }

  private boolean crossed(double level) {
    return level > 0 && level < 1 && mark(level, false).crossed > 0;
  }
}
