package blindlap.session;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A recording was brought in for a day and settled. Of two for one lap the later counts for that
 * lap. Since version 6.
 *
 * @param file its name without folders
 * @param sha256 SHA-256 of the file's bytes, 64 lower-case hexadecimal digits
 * @param trail SHA-256 of the text of the trail version whose gates were used
 * @param offset seconds by which the day's clock was ahead of the recorder's, as found; null where
 *     no clock told
 * @param borders metres along the reference line at which pieces begin and end; empty without line
 * @param laps in the order of the day
 */
public record RecordingBroughtIn(
    String file,
    String sha256,
    String trail,
    @Nullable BigDecimal offset,
    List<BigDecimal> borders,
    List<RecordedLap> laps)
    implements RecordingFact {
  public RecordingBroughtIn {
    borders = List.copyOf(borders);
    laps = List.copyOf(laps);
  }

  @Override
  public <R> R accept(RecordingVisitor<R> visitor) {
    return visitor.recordingBroughtIn(this);
  }
}
