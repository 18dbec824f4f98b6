package blindlap.wording;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A row of the table in which a recording is settled: a lap of the day and its pass, or a pass that
 * fits no lap. It knows no time of day, and nothing between a finish and the next start.
 *
 * @param lap number over the day; null where the pass fits no lap
 * @param code of its stint; null where the pass fits no lap
 * @param pass number of the pass in the recording, from 1; 0 where the lap has none
 * @param seconds from start to finish; NaN where an end is missing
 * @param uncertainty standard deviation of that, in seconds; NaN where there is none
 * @param match how they fit
 * @param doubts what a person should know of the pass
 * @param voided true if the lap is void
 * @param replaces name of the earlier recording whose times of the lap no longer count; empty if
 *     there is none
 */
public record SettlingRow(
    @Nullable Integer lap,
    @Nullable Integer code,
    int pass,
    double seconds,
    double uncertainty,
    Match match,
    List<Doubt> doubts,
    boolean voided,
    String replaces) {
  public SettlingRow {
    doubts = List.copyOf(doubts);
  }

  /** How a pass and a lap fit. */
  public enum Match {
    /** By order and clock, without doubt. */
    FITS,
    /** It is that lap, but something about it is doubtful: a person keeps it or leaves it out. */
    DOUBTFUL,
    /** A doubtful one was kept. */
    KEPT,
    /** A doubtful one was left out. */
    LEFT_OUT,
    /** It may be that lap; another would fit nearly as well, and a person says which. */
    PROPOSED,
    /** A person said that it is that lap. */
    CHOSEN,
    /** The recording has no pass of the lap. */
    NO_PASS,
    /** A pass that fits no lap: a person says that it is none, or which. */
    FITS_NONE,
    /** A person said that it is no lap. */
    NO_LAP;

    /** True while a person must say something. */
    public boolean waits() {
      return this == DOUBTFUL || this == PROPOSED || this == FITS_NONE;
    }

    /** True if times of the pass are taken in. */
    public boolean taken() {
      return this == FITS || this == KEPT || this == CHOSEN;
    }
  }

  /** True if it is a lap whose pass is known: one that is only proposed may be another's. */
  public boolean found() {
    return lap != null && pass > 0 && match != Match.PROPOSED;
  }

  /**
   * What a person should know of a pass.
   *
   * @param gate name of the gate; empty where it is about the whole
   */
  public record Doubt(Kind kind, String gate) {
    /** Which kind. */
    public enum Kind {
      /** The gate was not passed. */
      MISSED,
      /** The recorder was silent when it was passed: the time is not known. */
      SILENT,
      /** The recorder was silent near it. */
      GAP,
      /** Slower than 2 m/s. */
      SLOW,
      /** A gate was passed the wrong way meanwhile. */
      WRONG_WAY,
      /** It took so long that it may be two laps. */
      TOO_LONG
    }
  }
}
