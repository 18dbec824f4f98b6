package blindlap.plan;

import java.text.Normalizer;
import java.util.List;

/**
 * Who should look at what: a list of measures that matter to one kind of rider. It weighs nothing
 * and sums nothing.
 *
 * @param name the kind of rider, in the tester's words
 * @param measures names of measures, in the order typed; also {@link #MASS} and {@link #PRICE},
 *     which are facts of setups. Empty where the profile was removed
 */
public record Profile(String name, List<String> measures) {
  /** Most measures of a profile. */
  public static final int MOST = 20;

  /** Most characters of a name, as of every name of a plan. */
  public static final int LONGEST = TextCheck.SHORT;

  /** What a setup weighs, unless a plan has a measure of this name. */
  public static final String MASS = "mass";

  /** What a setup costs, unless a plan has a measure of this name. */
  public static final String PRICE = "price";

  public Profile {
    measures = List.copyOf(measures);
  }

  /** What stands for a profile once it is removed. */
  public static Profile removed(String name) {
    return new Profile(name, List.of());
  }

  /** True if nobody is to look at anything by it any more. */
  public boolean removed() {
    return measures.isEmpty();
  }

  /** True if this is its name, whatever its case and the spaces around it. */
  public boolean isCalled(String other) {
    return key(name).equals(key(other));
  }

  /** What names are compared by: those of profiles, and those of measures in them. */
  public static String key(String name) {
    return Normalizer.normalize(Setting.key(name), Normalizer.Form.NFC);
  }
}
