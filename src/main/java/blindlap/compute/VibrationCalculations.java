package blindlap.compute;

import blindlap.fault.StatsException;
import blindlap.recording.Weighting;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Weighted vibration: factors, sums of bands, axes and exposures. */
final class VibrationCalculations {
  private static final double DAY_HOURS = 8;
  private static final String METHOD =
      "Formulas of ISO 2631-1 and ISO 5349-1, the transfer function at exactly the frequencies"
          + " given.";
  private static final String NOTE =
      "For comparing setups; it is no assessment of exposure or health.";

  private VibrationCalculations() {}

  static List<Calculation> all() {
    return List.of(
        Calculation.of(
            "vibration-weight", Set.of("curve", "frequencies"), VibrationCalculations::weight),
        Calculation.of(
            "vibration-sum",
            Set.of("curve", "bands", "axes", "multipliers", "exposures", "vdv_parts"),
            VibrationCalculations::sum));
  }

  /** The standards write a capital and a small letter. */
  private static Weighting curve(Given given) {
    String name = given.text("curve");
    for (Weighting weighting : Weighting.values()) {
      String written = weighting.name();
      if (name.equals(written.charAt(0) + written.substring(1).toLowerCase(Locale.ROOT))) {
        return weighting;
      }
    }
    throw given.refuse("curve", "\"" + name + "\" is none of Wk, Wd, Wh.");
  }

  private static Evaluation weight(Given given) {
    Weighting curve = curve(given);
    double[] factors = given.numbers("frequencies");
    for (int i = 0; i < factors.length; i++) {
      try {
        factors[i] = curve.factor(factors[i]);
      } catch (StatsException e) {
        throw e.named("frequencies[" + i + "]");
      }
    }
    return Evaluation.of(new ResultFields().numbers("factors", factors), METHOD, NOTE);
  }

  private static Evaluation sum(Given given) {
    List<String> ways = List.of("bands", "axes", "exposures", "vdv_parts");
    List<String> asked = ways.stream().filter(given::has).toList();
    if (asked.isEmpty()) {
      throw given.refuse("bands", "is missing.");
    }
    if (asked.size() > 1) {
      throw given.refuse(
          asked.get(1), "must be the only one of bands, axes, exposures and vdv_parts.");
    }
    given.allowOnly(
        switch (asked.get(0)) {
          case "bands" -> Set.of("curve", "bands");
          case "axes" -> Set.of("axes", "multipliers");
          default -> Set.copyOf(asked);
        });
    ResultFields result =
        switch (asked.get(0)) {
          case "bands" -> new ResultFields().number("weighted_rms", bands(given));
          case "axes" -> new ResultFields().number("total", axes(given));
          case "exposures" -> new ResultFields().number("a8", exposures(given));
          default ->
              new ResultFields()
                  .number(
                      "vdv_total",
                      Math.pow(
                          Arrays.stream(given.numbers("vdv_parts"))
                              .map(part -> Math.pow(part, 4))
                              .sum(),
                          0.25));
        };
    return Evaluation.of(result, METHOD, NOTE);
  }

  private static double bands(Given given) {
    Weighting curve = curve(given);
    double sum = 0;
    for (Given band : given.objects("bands")) {
      band.allowOnly(Set.of("hz", "rms"));
      double hertz = band.number("hz");
      if (hertz <= 0) {
        throw band.refuse("hz", "must be above 0, but is " + hertz + ".");
      }
      double weighted = curve.factor(hertz) * notNegative(band, "rms");
      sum += weighted * weighted;
    }
    return Math.sqrt(sum);
  }

  private static double axes(Given given) {
    double[] axes = given.numbers("axes");
    double[] multipliers = axes.clone();
    Arrays.fill(multipliers, 1);
    if (given.has("multipliers")) {
      multipliers = given.numbers("multipliers");
    }
    if (multipliers.length != axes.length) {
      throw given.refuse(
          "multipliers", "has " + multipliers.length + " numbers for " + axes.length + " axes.");
    }
    double sum = 0;
    for (int i = 0; i < axes.length; i++) {
      sum += Math.pow(multipliers[i] * axes[i], 2);
    }
    return Math.sqrt(sum);
  }

  private static double exposures(Given given) {
    double sum = 0;
    for (Given exposure : given.objects("exposures")) {
      exposure.allowOnly(Set.of("rms", "hours"));
      sum += Math.pow(notNegative(exposure, "rms"), 2) * notNegative(exposure, "hours");
    }
    return Math.sqrt(sum / DAY_HOURS);
  }

  private static double notNegative(Given given, String field) {
    double value = given.number(field);
    if (value < 0) {
      throw given.refuse(field, "must be at least 0, but is " + value + ".");
    }
    return value;
  }
}
