package blindlap.compute;

import java.util.Set;
import java.util.function.Function;

/** A calculation made of its parts. */
record NamedCalculation(String name, Set<String> fields, Function<Given, Evaluation> evaluator)
    implements Calculation {
  @Override
  public Evaluation evaluate(Given given) {
    return evaluator.apply(given);
  }
}
