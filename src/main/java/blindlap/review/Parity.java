package blindlap.review;

import blindlap.plan.Setting;
import blindlap.plan.Setup;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * A setting as the helper measured it, against what was planned.
 *
 * @param setup index of the setup; −1 for a setting of the bike
 * @param setting the planned setting
 * @param least smallest measured value
 * @param most largest measured value
 * @param measured number of stints with a measured value
 * @param outside stints whose value lies outside the tolerance
 */
public record Parity(
    int setup,
    Setting setting,
    BigDecimal least,
    BigDecimal most,
    int measured,
    List<Integer> outside) {
  public Parity {
    outside = List.copyOf(outside);
  }

  static List<Parity> of(DayRecord day) {
    List<Parity> found = new ArrayList<>();
    for (int setup = 0; setup < day.plan().setups().size(); setup++) {
      Setup each = day.plan().setups().get(setup);
      for (Setting setting : each.settings()) {
        add(found, day, setup, setting);
      }
    }
    day.plan().bike().forEach(setting -> add(found, day, -1, setting));
    return found;
  }

  private static void add(List<Parity> found, DayRecord day, int setup, Setting setting) {
    BigDecimal planned = setting.number();
    List<BigDecimal> values = new ArrayList<>();
    List<Integer> outside = new ArrayList<>();
    for (HelperFit fit : day.fits().values()) {
      BigDecimal value = fit.measured().get(setting.name());
      Integer fitted = fit.fitted();
      boolean ofSetup =
          setup < 0
              || (fitted != null
                  ? fitted == setup
                  : fit.stint() > 0 && day.setup(fit.stint()) == setup);
      if (value == null || !ofSetup) {
        continue;
      }
      values.add(value);
      BigDecimal tolerance = setting.tolerance();
      if (planned != null
          && tolerance != null
          && value.subtract(planned).abs().compareTo(tolerance) > 0) {
        outside.add(fit.stint());
      }
    }
    if (!values.isEmpty()) {
      Stream<BigDecimal> all = values.stream();
      BigDecimal least = all.min(BigDecimal::compareTo).orElseThrow();
      BigDecimal most = values.stream().max(BigDecimal::compareTo).orElseThrow();
      found.add(new Parity(setup, setting, least, most, values.size(), outside));
    }
  }
}
