package blindlap.stats.look;

/** Places of orders by their statistic, the largest first, with what counts as equal. */
final class RankedPlaces {
  private final int[] ranked;

  /** True where a place is not equal to the one before it. */
  private final boolean[] parted;

  /** Places that were merged or gone through, so that a test may count the work. */
  private long visited;

  /**
   * @param same share of the largest statistic below which two are equal
   */
  RankedPlaces(double[] statistic, double same) {
    int n = statistic.length;
    int[] order = new int[n];
    for (int i = 0; i < n; i++) {
      order[i] = i;
    }
    this.ranked = sorted(order, statistic);
    this.parted = new boolean[n];
    double apart = n == 0 ? 0 : same * statistic[ranked[0]];
    for (int i = 1; i < n; i++) {
      parted[i] = statistic[ranked[i - 1]] - statistic[ranked[i]] > apart;
    }
  }

  /** Merge sort by falling statistic, place by place, since boxed numbers would cost ten times. */
  private int[] sorted(int[] from, double[] by) {
    int[] source = from;
    int[] target = new int[from.length];
    for (int width = 1; width < from.length; width *= 2) {
      for (int start = 0; start < from.length; start += 2 * width) {
        merge(source, target, start, width, by);
      }
      int[] other = source;
      source = target;
      target = other;
    }
    return source;
  }

  private void merge(int[] source, int[] target, int start, int width, double[] by) {
    int middle = Math.min(start + width, source.length);
    int end = Math.min(middle + width, source.length);
    int left = start;
    int right = middle;
    visited += end - start;
    for (int i = start; i < end; i++) {
      boolean first = right >= end || left < middle && by[source[left]] >= by[source[right]];
      target[i] = first ? source[left++] : source[right++];
    }
  }

  /**
   * Marks places that are not marked, the largest first and of equal ones all or none.
   *
   * @param room how many may be marked
   * @param whole true to go through all places even when the room is taken, so that the work tells
   *     nothing of what was found
   * @return how many were
   */
  long mark(boolean[] marked, long room, boolean whole) {
    long used = 0;
    boolean full = false;
    int at = 0;
    while (at < ranked.length && (whole || !full && used < room)) {
      int end = at + 1;
      int open = marked[ranked[at]] ? 0 : 1;
      while (end < ranked.length && !parted[end]) {
        open += marked[ranked[end]] ? 0 : 1;
        end++;
      }
      full |= used >= room || used + open > room;
      for (int i = at; i < end; i++) {
        marked[ranked[i]] |= !full;
      }
      used += full ? 0 : open;
      visited += end - at;
      at = end;
    }
    return used;
  }

  /** Places that were merged and gone through so far. */
  long visited() {
    return visited;
  }
}
