package blindlap.review;

import blindlap.fault.Problem;
import blindlap.plan.Measure;
import blindlap.stats.compare.CutShort;
import blindlap.stats.compare.HarmTest;
import blindlap.stats.compare.OrderSet;
import blindlap.stats.compare.Trend;
import blindlap.stats.compare.VoidBalance;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a session found: every measure compared over exactly the orders that could have been drawn.
 *
 * @param day what was analysed
 * @param orders what the set of orders is worth
 * @param primary the two-setup comparison that carries the verdict; empty if it could not be made
 * @param others the other measures of two setups, in the order of the plan
 * @param many all measures of three and more setups, the primary first
 * @param refusals measures that could not be compared, with the reason
 * @param sensitivities the primary looked at otherwise
 * @param guesses what the rider guessed
 * @param waits whether the waits between stints told
 * @param voids stints per setup all of whose scored laps are void
 * @param voidLaps void scored laps per setup, those of stints that keep a value included
 * @param left what the stints used could still show, where stints were lost
 * @param parity settings as measured
 * @param covariates what became of the declared covariates, each with its check
 * @param where where on the trail the difference arises; empty where nothing was recorded
 */
public record Finding(
    DayRecord day,
    OrderSet orders,
    Optional<Comparison> primary,
    List<Comparison> others,
    List<ManyComparison> many,
    List<Refusal> refusals,
    List<Sensitivity> sensitivities,
    Guesses guesses,
    Waits waits,
    VoidBalance voids,
    VoidBalance voidLaps,
    Optional<CutShort> left,
    List<Parity> parity,
    List<CovariateFinding> covariates,
    Optional<WhereOnTrail> where) {

  /** A measure that could not be compared, and why. */
  public record Refusal(Measure measure, Problem why) {}

  public Finding {
    others = List.copyOf(others);
    many = List.copyOf(many);
    refusals = List.copyOf(refusals);
    sensitivities = List.copyOf(sensitivities);
    parity = List.copyOf(parity);
    covariates = List.copyOf(covariates);
  }

  /** The primary measure's trend over the levels of a steps day; empty of setups. */
  public Optional<Trend> trend() {
    return primary.flatMap(Comparison::trend);
  }

  /** What looks before the end come to; empty where none was taken. */
  public Optional<LooksFound> looks() {
    return primary.flatMap(Comparison::looks);
  }

  /** All comparisons of two setups, the primary first. */
  public Stream<Comparison> comparisons() {
    return Stream.concat(primary.stream(), others.stream());
  }

  /**
   * A measure beside the primary with the values that other machines recorded and that do not
   * count, as often as a lap has such; nothing where no value was set aside.
   */
  public List<Sensitivity> aside(Measure measure) {
    return measure.role() == Measure.Role.PRIMARY ? List.of() : Sensitivities.aside(day, measure);
  }

  /** Comparisons that show a harm. */
  public List<Comparison> harms() {
    return others.stream().filter(c -> c.harm().filter(HarmTest::shown).isPresent()).toList();
  }

  /**
   * True if the plan watches for harm, with a size, and every such harm is ruled out of both
   * setups; none is where too few stints were left, or values are missing or do not vary.
   */
  public boolean everyWatchedHarmRuledOut() {
    List<Measure> watched =
        day.plan().measures().stream()
            .filter(m -> m.role() == Measure.Role.WATCH_FOR_HARM)
            .toList();
    long ruledOut =
        others.stream().filter(c -> c.harm().filter(HarmTest::ruledOut).isPresent()).count();
    return !watched.isEmpty() && ruledOut == watched.size();
  }

  /** Index of the setup that does the harm of a comparison of {@link #harms}. */
  public static int harmful(Comparison comparison) {
    return comparison.harm().orElseThrow().bAgainstA() == HarmTest.Finding.SHOWN ? 1 : 0;
  }

  /** Measures that are better on the other setup than the primary is, and are shown to differ. */
  public List<Comparison> disagreeing() {
    Optional<Comparison> first = primary.filter(Comparison::shown).filter(Finding::directed);
    return first.isEmpty()
        ? List.of()
        : others.stream()
            .filter(c -> c.shown() && directed(c) && c.better() != first.get().better())
            .toList();
  }

  private static boolean directed(Comparison comparison) {
    return comparison.measure().better() != Measure.Better.NEITHER;
  }
}
