package blindlap.review;

import blindlap.session.Recorded;
import blindlap.session.RecordedLap;
import blindlap.session.RecordedPass;
import blindlap.session.RecordingBroughtIn;
import blindlap.session.SectorVoided;
import blindlap.session.day.LapId;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Times on the way between start and finish, as recordings give them: by sector from gate to gate,
 * and by piece of the trail's line.
 *
 * @param borders metres along the line at which pieces begin and end; empty without pieces
 * @param laps by lap; those of which nothing is recorded are missing
 */
public record RecordedTimes(List<BigDecimal> borders, SortedMap<LapId, Lap> laps) {
  /** Nothing recorded. */
  public static final RecordedTimes NONE = new RecordedTimes(List.of(), new TreeMap<>());

  /** Digits after the point of an uncertainty: far below what any recorder can tell. */
  private static final int DECIMALS = 4;

  /**
   * Times of one lap.
   *
   * @param sectors seconds, from gate to gate; null where a pass is missing
   * @param uncertainties standard deviations of these, in seconds; null where there is no time
   * @param pieces seconds, one less than borders; null where a piece was not recorded; empty where
   *     the lap has no pieces
   * @param voided indices of sectors that are void, from 0
   */
  public record Lap(
      List<@Nullable BigDecimal> sectors,
      List<@Nullable BigDecimal> uncertainties,
      List<@Nullable BigDecimal> pieces,
      SortedSet<Integer> voided) {
    public Lap {
      sectors = Collections.unmodifiableList(new ArrayList<>(sectors));
      uncertainties = Collections.unmodifiableList(new ArrayList<>(uncertainties));
      pieces = Collections.unmodifiableList(new ArrayList<>(pieces));
      voided = Collections.unmodifiableSortedSet(new TreeSet<>(voided));
    }

    /** Seconds of a sector, from 0; NaN where there is no time. */
    double sector(int sector) {
      return number(sector < sectors.size() ? sectors.get(sector) : null);
    }

    /** Standard deviation of a sector's time; NaN where there is none. */
    double uncertainty(int sector) {
      return number(sector < uncertainties.size() ? uncertainties.get(sector) : null);
    }

    /** Seconds of a piece, from 0; NaN where it was not recorded. */
    double piece(int piece) {
      return number(piece < pieces.size() ? pieces.get(piece) : null);
    }

    private static double number(@Nullable BigDecimal seconds) {
      return seconds == null ? Double.NaN : seconds.doubleValue();
    }
  }

  public RecordedTimes {
    borders = List.copyOf(borders);
    laps = Collections.unmodifiableSortedMap(new TreeMap<>(laps));
  }

  /**
   * What counts of the recordings of a session. Gates and line are those of the recording that was
   * brought in last; of a lap that was read with other gates nothing is known here, of one that was
   * read with other borders no piece.
   */
  static RecordedTimes of(Recorded recorded) {
    if (recorded.files().isEmpty()) {
      return NONE;
    }
    RecordingBroughtIn last = recorded.files().get(recorded.files().size() - 1);
    SortedMap<LapId, Lap> laps = new TreeMap<>();
    recorded
        .laps()
        .forEach(
            (id, lap) -> {
              RecordingBroughtIn file = file(recorded, id);
              if (file.trail().equals(last.trail())) {
                SortedMap<Integer, SectorVoided> voids =
                    recorded.sectorVoids().getOrDefault(id, new TreeMap<>());
                laps.put(id, lap(lap, file.borders().equals(last.borders()), voids));
              }
            });
    return new RecordedTimes(last.borders(), laps);
  }

  /** The recording that counts for a lap: the last one that has it. */
  private static RecordingBroughtIn file(Recorded recorded, LapId lap) {
    for (int i = recorded.files().size() - 1; i > 0; i--) {
      if (recorded.files().get(i).laps().stream().anyMatch(l -> l.lap().equals(lap))) {
        return recorded.files().get(i);
      }
    }
    return recorded.files().get(0);
  }

  private static Lap lap(
      RecordedLap lap, boolean sameBorders, SortedMap<Integer, SectorVoided> voids) {
    List<@Nullable BigDecimal> sectors = new ArrayList<>();
    List<@Nullable BigDecimal> uncertainties = new ArrayList<>();
    for (int gate = 1; gate < lap.passes().size(); gate++) {
      RecordedPass from = lap.passes().get(gate - 1);
      RecordedPass to = lap.passes().get(gate);
      BigDecimal before = from.seconds();
      BigDecimal after = to.seconds();
      sectors.add(before == null || after == null ? null : after.subtract(before));
      BigDecimal first = from.uncertainty();
      BigDecimal second = to.uncertainty();
      uncertainties.add(
          before == null || after == null || first == null || second == null
              ? null
              : both(first, second));
    }
    return new Lap(
        sectors,
        uncertainties,
        sameBorders ? lap.pieces() : List.of(),
        new TreeSet<>(voids.keySet()));
  }

  /** Errors at two gates are taken as independent (docs/method.md#gates). */
  private static BigDecimal both(BigDecimal first, BigDecimal second) {
    return BigDecimal.valueOf(Math.hypot(first.doubleValue(), second.doubleValue()))
        .setScale(DECIMALS, RoundingMode.HALF_EVEN);
  }

  /** True if nothing is recorded. */
  public boolean isEmpty() {
    return laps.isEmpty();
  }

  /** Number of sectors, of the lap that has most. */
  public int sectors() {
    return laps.values().stream().mapToInt(lap -> lap.sectors().size()).max().orElse(0);
  }

  /** Number of pieces. */
  public int pieces() {
    return Math.max(0, borders.size() - 1);
  }

  /** True if any lap has its pieces. */
  public boolean hasPieces() {
    return pieces() > 0 && laps.values().stream().anyMatch(lap -> !lap.pieces().isEmpty());
  }
}
