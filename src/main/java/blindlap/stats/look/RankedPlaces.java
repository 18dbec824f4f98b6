package blindlap.stats.look;

/** Places of orders by their statistic, the largest first, with what counts as equal. */
final class RankedPlaces {
  private final int[] ranked;

  /** True where a place is not equal to the one before it. */
  private final boolean[] parted;

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
  private static int[] sorted(int[] from, double[] by) {
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

  private static void merge(int[] source, int[] target, int start, int width, double[] by) {
    int middle = Math.min(start + width, source.length);
    int end = Math.min(middle + width, source.length);
    int left = start;
    int right = middle;
    for (int i = start; i < end; i++) {
      boolean first = right >= end || left < middle && by[source[left]] >= by[source[right]];
      target[i] = first ? source[left++] : source[right++];
    }
  }

  /**
   * Marks places that are not marked, the largest first and of equal ones all or none.
   *
   * @param room how many may be marked
   * @return how many were
   */
  long mark(boolean[] marked, long room) {
    long used = 0;
    int at = 0;
    while (at < ranked.length && used < room) {
      int end = at + 1;
      int open = marked[ranked[at]] ? 0 : 1;
      while (end < ranked.length && !parted[end]) {
        open += marked[ranked[end]] ? 0 : 1;
        end++;
      }
      if (used + open > room) {
        break;
      }
      for (int i = at; i < end; i++) {
        marked[ranked[i]] = true;
      }
      used += open;
      at = end;
    }
    return used;
  }
}
