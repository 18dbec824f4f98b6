package blindlap.compute;

import blindlap.fault.StatsException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * All calculations that can be requested, by name.
 *
 * <p>To add one: write a small final class in this package for its family, with a static {@code
 * all()} that returns {@link Calculation}s made with {@link Calculation#of} (name, allowed fields,
 * a method from {@link blindlap.compute.Given} to {@link Evaluation}), and add its {@code all()} to
 * {@link #standard()}. {@code CheckFilesTest} holds that it has a check.
 */
public final class Calculations {
  private final SortedMap<String, Calculation> byName;

  private Calculations(SortedMap<String, Calculation> byName) {
    this.byName = Collections.unmodifiableSortedMap(byName);
  }

  /** Every calculation that Blindlap offers. */
  public static Calculations standard() {
    List<Calculation> all = new ArrayList<>();
    all.addAll(ChoiceCalculations.all());
    all.addAll(NoiseCalculations.all());
    all.addAll(SensitivityCalculations.all());
    all.addAll(TellingCalculations.all());
    all.addAll(AgreementCalculations.all());
    all.addAll(PowerCalculations.all());
    all.addAll(PoolingCalculations.all());
    all.addAll(WorkshopCalculations.all());
    all.addAll(OrderCalculations.all());
    all.addAll(FamilyCalculations.all());
    all.addAll(SessionCalculations.all());
    all.addAll(StoppingCalculations.all());
    all.addAll(LevelCalculations.all());
    all.addAll(TrailCalculations.all());
    all.addAll(FieldCalculations.all());
    all.addAll(VibrationCalculations.all());
    return of(all);
  }

  /** These calculations; two of one name are a programming error. */
  public static Calculations of(Collection<? extends Calculation> calculations) {
    SortedMap<String, Calculation> byName = new TreeMap<>();
    for (Calculation calculation : calculations) {
      if (byName.put(calculation.name(), calculation) != null) {
        throw new IllegalArgumentException("Two calculations are named " + calculation.name());
      }
    }
    return new Calculations(byName);
  }

  /** Names in alphabetical order. */
  public Set<String> names() {
    return byName.keySet();
  }

  /** The fields that a calculation may be given. */
  Set<String> fields(String name) {
    Calculation calculation = byName.get(name);
    if (calculation == null) {
      throw new IllegalArgumentException("no calculation " + name);
    }
    return calculation.fields();
  }

  /**
   * Computes one request.
   *
   * @throws RequestException if the calculation is unknown or a field missing, unknown or
   *     impossible
   */
  public CalculationAnswer answer(CalculationRequest request) {
    Calculation calculation = byName.get(request.calculation());
    if (calculation == null) {
      throw request.refuseCalculation(
          "\"" + request.calculation() + "\" is not a known calculation.");
    }
    request.given().allowOnly(calculation.fields());
    try {
      Evaluation found = calculation.evaluate(request.given());
      return new CalculationAnswer(
          calculation.name(), found.result(), found.method(), found.notes());
    } catch (StatsException e) {
      RequestException refusal = request.given().refuse(e.argument(), e.why());
      refusal.initCause(e);
      throw refusal;
    }
  }
}
