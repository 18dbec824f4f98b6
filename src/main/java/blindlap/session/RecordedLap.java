package blindlap.session;

import blindlap.session.day.LapId;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a recording says of one lap. It knows nothing of what was between laps.
 *
 * @param lap which lap of the day
 * @param passes one per gate of the trail: start, splits, finish
 * @param pieces seconds of the pieces of the reference line, one less than borders; null where one
 *     was not recorded; empty where the trail has no line
 * @param positions SHA-256 of the positions between start and finish; null where none are kept
 * @param settled who fits it to the lap
 */
public record RecordedLap(
    LapId lap,
    List<RecordedPass> passes,
    List<@Nullable BigDecimal> pieces,
    @Nullable String positions,
    Settled settled) {
  /** How the lap was found in the recording. */
  public enum Settled {
    /** By order and clock, without doubt. */
    FITS,
    /** A person kept it although a pass is doubtful. */
    KEPT,
    /** A person said which lap it is. */
    CHOSEN
  }

  public RecordedLap {
    passes = List.copyOf(passes);
    pieces = Collections.unmodifiableList(new ArrayList<>(pieces));
  }
}
