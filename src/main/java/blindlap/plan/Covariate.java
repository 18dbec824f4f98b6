package blindlap.plan;

import java.math.BigDecimal;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Something recorded beside the measures that no setup can touch, declared with the reason, and
 * taken out of every measure like drift (docs/method.md#covariates).
 *
 * @param name as on the sheets and in lap files
 * @param kind what it is
 * @param unit the unit, or what the numbers mean in words
 * @param by who says it
 * @param per for what it is said
 * @param reason why no setup, of this stint or an earlier one, can change it; not blank in a sound
 *     plan
 * @param correlation how strongly it is expected to go with what is left of the primary measure
 *     after drift, from 0 to 1; null where nobody says
 */
public record Covariate(
    String name,
    Kind kind,
    String unit,
    By by,
    Per per,
    String reason,
    @Nullable BigDecimal correlation) {

  /** What is recorded. */
  public enum Kind {
    WIND,
    WETNESS,
    TEMPERATURE,
    CONTROL_SECTOR,
    FREE,
    FATIGUE,
    TESTED_SECTOR;

    /** True for what a watch measures: typed as a time. */
    public boolean timed() {
      return this == CONTROL_SECTOR || this == TESTED_SECTOR;
    }

    /** True for what a setup may well change: it is marked wherever it is spoken of. */
    public boolean touchable() {
      return this == FATIGUE || this == TESTED_SECTOR;
    }
  }

  /** Who says it. */
  public enum By {
    RIDER,
    STARTER,
    TESTER
  }

  /** For what it is said. */
  public enum Per {
    STINT,
    LAP
  }

  /** True if its name is this one, in whatever case. */
  public boolean called(String other) {
    return name.strip().toLowerCase(Locale.ROOT).equals(other.strip().toLowerCase(Locale.ROOT));
  }

  /** True if it is said once for every lap. */
  public boolean perLap() {
    return per == Per.LAP;
  }

  /**
   * True where it can be said for every lap: of what the starter judges, and of a control sector.
   */
  public boolean mayBePerLap() {
    return by != By.RIDER && (by == By.STARTER || kind == Kind.CONTROL_SECTOR);
  }

  /** True if another declaration gives the same numbers the same meaning. */
  public boolean sameAs(Covariate other) {
    return name.equals(other.name)
        && kind == other.kind
        && unit.equals(other.unit)
        && by == other.by
        && per == other.per;
  }
}
