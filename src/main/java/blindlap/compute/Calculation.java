package blindlap.compute;

import java.util.Set;
import java.util.function.Function;

/**
 * One calculation that can be requested by name.
 *
 * <p>{@link #evaluate} reads its fields through {@link Given}, which refuses what is missing or of
 * another type, and calls one class of {@code stats} or {@code workshop}. Those throw {@link
 * blindlap.fault.StatsException} on impossible values, naming the argument; {@link Calculations}
 * turns it into a refusal that names the field, so arguments bear the names of the fields.
 */
public interface Calculation {
  /** Name in requests, such as {@code choice-power}. */
  String name();

  /** The fields that {@code given} may hold; any other is refused before {@link #evaluate}. */
  Set<String> fields();

  /**
   * Computes the answer.
   *
   * @throws blindlap.compute.RequestException if a field is missing, of another type or impossible
   * @throws blindlap.fault.StatsException if a value is impossible
   */
  Evaluation evaluate(Given given);

  /** A calculation made of its parts. */
  record OfParts(String name, Set<String> fields, Function<Given, Evaluation> evaluator)
      implements Calculation {
    @Override
    public Evaluation evaluate(Given given) {
      return evaluator.apply(given);
    }
  }

  /** A calculation made of its parts. */
  static Calculation of(String name, Set<String> fields, Function<Given, Evaluation> evaluator) {
    return new OfParts(name, Set.copyOf(fields), evaluator);
  }
}
