package blindlap.plot.surface;

import java.util.ArrayList;
import java.util.List;

/**
 * Marks along a line, near-equal ones piled up so that every one is seen.
 *
 * @param levels level of each value in the order given, 0 on the line
 * @param height number of levels, 1 or more
 */
public record Stack(List<Integer> levels, int height) {
  public Stack {
    levels = List.copyOf(levels);
  }

  /** Piles marks that would stand closer than {@code apart} pixels on the same level. */
  public static Stack of(List<Double> pixels, double apart) {
    List<Integer> byPlace = new ArrayList<>();
    for (int i = 0; i < pixels.size(); i++) {
      byPlace.add(i);
    }
    byPlace.sort((a, b) -> Double.compare(pixels.get(a), pixels.get(b)));
    List<Double> lastOnLevel = new ArrayList<>();
    Integer[] levels = new Integer[pixels.size()];
    for (int index : byPlace) {
      double x = pixels.get(index);
      int level = 0;
      while (level < lastOnLevel.size() && x - lastOnLevel.get(level) < apart) {
        level++;
      }
      if (level == lastOnLevel.size()) {
        lastOnLevel.add(x);
      } else {
        lastOnLevel.set(level, x);
      }
      levels[index] = level;
    }
    return new Stack(List.of(levels), Math.max(1, lastOnLevel.size()));
  }
}
