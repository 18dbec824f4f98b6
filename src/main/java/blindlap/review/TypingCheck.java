package blindlap.review;

import blindlap.plan.Measure;
import blindlap.session.Recorded;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Points at values that may be typing errors. The rule looks at all laps of the day together and
 * cannot know a setup: a value further from the day's median than eight times the usual distance
 * (the median absolute deviation, at least a fiftieth of the median of a time, or one count), or a
 * time at least 1.5 times as long. It may ask, and nothing more: no lap becomes void by it
 * (docs/method.md#typing-errors).
 */
public final class TypingCheck {
  private static final double FAR = 8;
  private static final double LEAST_SHARE = 0.02;
  private static final double LONG = 1.5;

  private TypingCheck() {}

  /** Laps whose value of a measure should be checked. */
  public static Set<LapId> asked(SessionState state, Measure measure) {
    List<Double> values = new ArrayList<>();
    Recorded recorded = state.recorded();
    for (LapState lap : state.laps()) {
      recorded
          .counting(state.plan(), measure, lap)
          .ifPresent(value -> values.add(value.doubleValue()));
    }
    Set<LapId> asked = new TreeSet<>();
    if (values.size() < 4 || measure.kind().rating()) {
      return asked; // any place on a scale may be meant
    }
    double middle = median(values);
    double least = measure.kind().timed() ? LEAST_SHARE * Math.abs(middle) : 1;
    double usual = Math.max(median(values.stream().map(v -> Math.abs(v - middle)).toList()), least);
    for (LapState lap : state.laps()) {
      BigDecimal value = recorded.counting(state.plan(), measure, lap).orElse(null);
      if (value != null && far(measure, value.doubleValue(), middle, usual)) {
        asked.add(lap.id());
      }
    }
    return asked;
  }

  private static boolean far(Measure measure, double value, double middle, double usual) {
    boolean longer = measure.kind().timed() && value >= LONG * middle;
    return longer || (usual > 0 && Math.abs(value - middle) > FAR * usual);
  }

  private static double median(List<Double> values) {
    List<Double> sorted = new ArrayList<>(values);
    Collections.sort(sorted);
    int middle = sorted.size() / 2;
    return sorted.size() % 2 == 1
        ? sorted.get(middle)
        : (sorted.get(middle - 1) + sorted.get(middle)) / 2;
  }
}
