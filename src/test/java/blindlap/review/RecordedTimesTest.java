package blindlap.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Sector;
import blindlap.session.Recorded;
import blindlap.session.RecordedLap;
import blindlap.session.RecordedPass;
import blindlap.session.RecordingBroughtIn;
import blindlap.session.SectorVoided;
import blindlap.session.day.LapId;
import blindlap.session.day.VoidEvent;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Which times on the way count, of the recordings that a day has. */
class RecordedTimesTest {
  private static final LapId FIRST = new LapId(1, 1);
  private static final LapId SECOND = new LapId(2, 1);
  private static final String TRAIL = "a".repeat(64);
  private static final String OTHER = "b".repeat(64);
  private static final List<String> BORDERS = List.of("0", "100", "200");

  private static List<@Nullable BigDecimal> numbers(@Nullable String... numbers) {
    return Arrays.stream(numbers).map(n -> n == null ? null : new BigDecimal(n)).toList();
  }

  private static RecordedPass pass(@Nullable String seconds) {
    return new RecordedPass(
        seconds == null ? null : new BigDecimal(seconds),
        seconds == null ? null : new BigDecimal("0.3"),
        null);
  }

  private static RecordedLap lap(LapId id, @Nullable String split, @Nullable String piece) {
    return new RecordedLap(
        id,
        List.of(pass("0"), pass(split), pass("50.5")),
        java.util.Collections.unmodifiableList(new java.util.ArrayList<>(numbers("20", piece))),
        null,
        RecordedLap.Settled.FITS);
  }

  private static RecordingBroughtIn file(String trail, List<String> borders, RecordedLap... laps) {
    return new RecordingBroughtIn(
        "ride.gpx",
        "c".repeat(64),
        trail,
        null,
        borders.stream().map(BigDecimal::new).toList(),
        List.of(laps));
  }

  private static RecordedTimes times(
      SortedMap<LapId, SortedMap<Integer, SectorVoided>> voids, RecordingBroughtIn... files) {
    SortedMap<LapId, RecordedLap> laps = new TreeMap<>();
    for (RecordingBroughtIn file : files) {
      file.laps().forEach(lap -> laps.put(lap.lap(), lap));
    }
    return RecordedTimes.of(new Recorded(List.of(files), laps, voids));
  }

  private static RecordedTimes times(RecordingBroughtIn... files) {
    return times(new TreeMap<>(), files);
  }

  private static RecordedTimes.Lap of(RecordedTimes times, LapId id) {
    return Objects.requireNonNull(times.laps().get(id));
  }

  @Test
  void sectorsAreTheTimesBetweenPassesAndErrorsOfBothAddUp() {
    RecordedTimes.Lap lap = of(times(file(TRAIL, BORDERS, lap(FIRST, "20.25", "30.5"))), FIRST);
    assertThat(lap.sectors()).isEqualTo(numbers("20.25", "30.25"));
    // √(0.3² + 0.3²)
    assertThat(lap.uncertainties()).isEqualTo(numbers("0.4243", "0.4243"));
    assertThat(lap.pieces()).isEqualTo(numbers("20", "30.5"));
  }

  @Test
  void aMissingPassLeavesBothItsSectorsWithoutATime() {
    RecordedTimes.Lap lap = of(times(file(TRAIL, BORDERS, lap(FIRST, null, "30.5"))), FIRST);
    assertThat(lap.sectors()).containsExactly(null, null);
    assertThat(lap.uncertainties()).containsExactly(null, null);
    assertThat(lap.sector(0)).isNaN();
  }

  @Test
  void theGatesOfTheLastRecordingCountAndALapReadWithOthersIsLeftOut() {
    RecordedTimes times =
        times(
            file(OTHER, BORDERS, lap(FIRST, "20", "30")),
            file(TRAIL, BORDERS, lap(SECOND, "21", "30")));
    assertThat(times.laps()).containsOnlyKeys(SECOND);
  }

  @Test
  void aLapReadWithOtherBordersKeepsItsSectorsAndHasNoPieces() {
    RecordedTimes times =
        times(
            file(TRAIL, List.of("0", "90", "200"), lap(FIRST, "20", "30")),
            file(TRAIL, BORDERS, lap(SECOND, "21", "30")));
    assertThat(of(times, FIRST).pieces()).isEmpty();
    assertThat(of(times, FIRST).sectors()).isEqualTo(numbers("20", "30.5"));
    assertThat(times.borders()).isEqualTo(numbers("0", "100", "200"));
    assertThat(times.hasPieces()).isTrue();
  }

  @Test
  void aVoidSectorIsKeptWithItsTime() {
    SortedMap<Integer, SectorVoided> sectors = new TreeMap<>();
    sectors.put(
        1, new SectorVoided(FIRST, new Sector("Split", "Ford"), VoidEvent.TRAFFIC, "", false));
    SortedMap<LapId, SortedMap<Integer, SectorVoided>> voids = new TreeMap<>();
    voids.put(FIRST, sectors);
    RecordedTimes.Lap lap = of(times(voids, file(TRAIL, BORDERS, lap(FIRST, "20", "30"))), FIRST);
    assertThat(lap.voided()).containsExactly(1);
    assertThat(lap.sectors()).isEqualTo(numbers("20", "30.5"));
  }

  @Test
  void withoutRecordingsThereIsNothing() {
    assertThat(times()).isEqualTo(RecordedTimes.NONE);
    assertThat(times().isEmpty()).isTrue();
  }
}
