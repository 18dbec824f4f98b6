package blindlap.plan;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is compared: hardware plus settings, named by the tester.
 *
 * @param id stable name across sessions and series; lower case letters, digits and hyphens
 * @param name as said on the trail
 * @param component kind of component, free words from the starter list ("rear shock, coil")
 * @param settings values that the helper dials in
 * @param massGrams mass; null if unknown
 * @param massTyped the mass as typed, with its unit ("1.64 lb"); empty if typed in grams
 * @param ballastGrams ballast fitted with this setup so that all weigh the same; null if none
 * @param price price; null if unknown
 * @param steps what the helper does to fit it, in order
 * @param limits torques and pressures typed in from the maker's manual
 * @param mostRefits how often the maker lets it be refitted; null if unlimited or unknown
 * @param consumables what is used up by refitting
 * @param cautions what to look out for with this setup
 */
public record Setup(
    String id,
    String name,
    String component,
    List<Setting> settings,
    @Nullable BigDecimal massGrams,
    String massTyped,
    @Nullable BigDecimal ballastGrams,
    @Nullable Price price,
    List<String> steps,
    List<Limit> limits,
    @Nullable Integer mostRefits,
    List<String> consumables,
    List<String> cautions) {

  /** An amount of money with its currency as typed ("EUR"). */
  public record Price(BigDecimal amount, String currency) {}

  /**
   * A torque, pressure or other limit that the tester copied from the maker's manual.
   *
   * @param what what it applies to
   * @param value value with unit, as in the manual
   * @param source where in the manual
   */
  public record Limit(String what, String value, String source) {}

  public Setup {
    settings = List.copyOf(settings);
    steps = List.copyOf(steps);
    limits = List.copyOf(limits);
    consumables = List.copyOf(consumables);
    cautions = List.copyOf(cautions);
  }

  /** A setup that is only a name; the id is derived from it. */
  public static Setup named(String name) {
    return new Setup(
        idOf(name),
        name,
        "",
        List.of(),
        null,
        "",
        null,
        null,
        List.of(),
        List.of(),
        null,
        List.of(),
        List.of());
  }

  /** The same setup under another name. */
  public Setup called(String other) {
    return new Setup(
        id,
        other,
        component,
        settings,
        massGrams,
        massTyped,
        ballastGrams,
        price,
        steps,
        limits,
        mostRefits,
        consumables,
        cautions);
  }

  /** Mass with its ballast; null if the mass is unknown. */
  public @Nullable BigDecimal massOnBike() {
    return massGrams == null || ballastGrams == null ? massGrams : massGrams.add(ballastGrams);
  }

  /** The setting of a name, whatever its case; empty if there is none. */
  public java.util.Optional<Setting> setting(String settingName) {
    return settings.stream().filter(s -> s.isCalled(settingName)).findFirst();
  }

  /** Lower case, with hyphens for everything but letters and digits. */
  public static String idOf(String name) {
    String id =
        name.toLowerCase(java.util.Locale.ROOT)
            .replaceAll("[^\\p{L}\\p{N}]+", "-")
            .replaceAll("^-+|-+$", "");
    return id.isEmpty() ? "setup" : id;
  }
}
