package blindlap.review;

import blindlap.plan.BlindLevel;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** In which stints the rider knew what he was not to know. */
public final class KnownStints {
  private KnownStints() {}

  /**
   * The stint in which it came out which part bears which label; empty where it did not, and where
   * nothing is masked.
   */
  public static Optional<Integer> labelsOut(DayRecord day) {
    return day.plan().level() != BlindLevel.MASKED || day.blindBroken().isEmpty()
        ? Optional.empty()
        : Optional.of(day.blindBroken().firstKey());
  }

  /**
   * The stints. A label that is known once is known from then on; what was seen under a code tells
   * nothing of the next code.
   */
  static Set<Integer> of(DayRecord day) {
    return labelsOut(day)
        .map(out -> IntStream.rangeClosed(out, day.lastStint()).boxed().collect(Collectors.toSet()))
        .orElse(day.blindBroken().keySet());
  }
}
