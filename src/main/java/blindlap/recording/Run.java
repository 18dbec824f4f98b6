package blindlap.recording;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What a recorder saw of one ride down a trail: through all its gates, or through two at least.
 *
 * @param passes one per gate, start, splits, finish; null where the gate was not passed
 * @param wrongWay true if a gate was passed the wrong way meanwhile
 * @param tooLong true if it took so long that it may be two, a pass being missing
 */
public record Run(List<@Nullable Pass> passes, boolean wrongWay, boolean tooLong) {
  public Run {
    passes = Collections.unmodifiableList(new ArrayList<>(passes));
  }

  /** True if it went through every gate. */
  public boolean whole() {
    return passes.stream().noneMatch(Objects::isNull);
  }

  /** True if it went through every gate, in time known and without anything that asks a person. */
  public boolean clear() {
    return whole()
        && !wrongWay
        && !tooLong
        && passes.stream().noneMatch(pass -> pass == null || pass.gap() || pass.slow());
  }

  /** The first pass whose time is known; null if there is none. */
  public @Nullable Pass first() {
    return known().stream().findFirst().orElse(null);
  }

  /** The last pass whose time is known; null if there is none. */
  public @Nullable Pass last() {
    List<Pass> known = known();
    return known.isEmpty() ? null : known.get(known.size() - 1);
  }

  /** Passes whose time is known: that of one inside a gap is a guess. */
  private List<Pass> known() {
    List<Pass> known = new ArrayList<>();
    for (Pass pass : passes) {
      if (pass != null && !pass.within()) {
        known.add(pass);
      }
    }
    return known;
  }

  /** From start to finish, in seconds; NaN where an end is missing or not known. */
  public double seconds() {
    Pass start = passes.get(0);
    Pass finish = passes.get(passes.size() - 1);
    return start == null || finish == null || start.within() || finish.within()
        ? Double.NaN
        : finish.seconds() - start.seconds();
  }
}
