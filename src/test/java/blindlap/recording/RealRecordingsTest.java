package blindlap.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What real recordings say of themselves, held against what is found in them; their sources and
 * licences stand beside them.
 */
class RealRecordingsTest {
  /** A border between two laps as a file states it (r6). */
  private record Border(Instant at, double timer, double wall, Gate gate) {}

  private static List<Border> borders(String file) {
    return new String(Tracks.bytes("r6_lap_boundaries_from_file.csv"), StandardCharsets.UTF_8)
        .lines()
        .filter(line -> line.startsWith(file))
        .map(line -> line.split(","))
        .map(
            cells ->
                new Border(
                    Instant.parse(cells[2]),
                    Double.parseDouble(cells[3]),
                    cells[4].isEmpty() ? Double.NaN : Double.parseDouble(cells[4]),
                    Tracks.gate(
                        Double.parseDouble(cells[5]),
                        Double.parseDouble(cells[6]),
                        Double.parseDouble(cells[7]),
                        15)))
        .toList();
  }

  /** The pass nearest to the time of a border, in seconds after it. */
  private static Pass nearest(Track track, Border border) {
    double stated = Track.seconds(track.at(0), border.at());
    return Passes.of(track, List.of(border.gate())).passes().stream()
        .min((a, b) -> Double.compare(off(a, stated), off(b, stated)))
        .orElseThrow();
  }

  private static double off(Pass pass, double stated) {
    return Math.abs(pass.seconds() - stated);
  }

  /** The first border is where the track begins, which is no pass. */
  @ParameterizedTest
  @CsvSource({
    "t02_small_loop_smart_3laps.tcx, 2",
    "t03_park_loops_pauses_10laps.tcx, 9",
    "t06_bike_5laps_32s_gap.tcx, 4",
    "t08_watch_smart_3laps.tcx, 2"
  })
  void bordersOfLapsArePassedWhenTheWallClockSaysSo(String file, int count) {
    Track track = Tracks.read(file);
    List<Border> borders = borders(file);
    assertThat(borders).hasSize(count + 1);
    double[] passed =
        borders.stream().skip(1).mapToDouble(border -> nearest(track, border).seconds()).toArray();
    for (int i = 0; i < passed.length; i++) {
      assertThat(passed[i])
          .isCloseTo(Track.seconds(track.at(0), borders.get(i + 1).at()), within(1.1));
      if (i > 0) {
        assertThat(passed[i] - passed[i - 1]).isCloseTo(borders.get(i).wall(), within(1.1));
      }
    }
  }

  @Test
  void whatATimerCountedWithoutPausesIsNotTheTimeOfALap() {
    Track track = Tracks.read("t03_park_loops_pauses_10laps.tcx");
    List<Border> borders = borders("t03");
    int paused = 0;
    for (int i = 1; i < borders.size() - 1; i++) {
      double lap =
          nearest(track, borders.get(i + 1)).seconds() - nearest(track, borders.get(i)).seconds();
      if (borders.get(i).wall() - borders.get(i).timer() > 200) {
        assertThat(lap).isGreaterThan(borders.get(i).timer() + 200);
        paused++;
      }
    }
    assertThat(paused).isEqualTo(2);
  }

  @ParameterizedTest
  @ValueSource(strings = {"t06_bike_5laps_32s_gap.tcx", "t06_bike_5laps_32s_gap.gpx"})
  void thePassBesideTheGapIsDoubtfulAndNoOther(String file) {
    Track track = Tracks.read(file);
    List<Border> borders = borders("t06");
    for (int i = 0; i < borders.size(); i++) {
      assertThat(nearest(track, borders.get(i)).gap()).as("border %d", i).isEqualTo(i == 3);
    }
  }

  @Test
  void nothingIsInterpolatedAcrossAGapOfMinutes() {
    Track track = Tracks.read("t09_mtb_trail_smart_gap288s.tcx");
    List<Fix> fixes = track.fixes();
    int gap = 1;
    while (fixes.get(gap).seconds() - fixes.get(gap - 1).seconds() != 288) {
      gap++;
    }
    List<Fix> around = fixes.subList(gap - 40, gap + 40);
    ReferenceLine line = ReferenceLine.through(around.stream().map(Fix::at).toList());
    double start = around.get(0).seconds();
    double finish = around.get(79).seconds();
    double middleOfGap = 0;
    for (int i = 1; i < line.places().size(); i++) {
      if (line.places().get(i).equals(fixes.get(gap).at())) {
        middleOfGap = (line.along(i - 1) + line.along(i)) / 2;
      }
    }
    double[] borders = {0, middleOfGap / 2, middleOfGap, line.length()};
    double[] seconds = PieceTimes.of(line, borders, track, start, finish);
    assertThat(seconds[0]).isBetween(1.0, fixes.get(gap - 1).seconds() - start);
    assertThat(seconds[1]).isNaN();
    assertThat(seconds[2]).isNaN();
    Position before = fixes.get(gap - 1).at();
    Position after = fixes.get(gap).at();
    Position middle =
        new Position(
            (before.latitude() + after.latitude()) / 2,
            (before.longitude() + after.longitude()) / 2);
    Gate across = Tracks.gate(middle.latitude(), middle.longitude(), before.to(after).azimuth(), 4);
    Passes passes = Passes.of(track, List.of(across));
    assertThat(passes.passes()).filteredOn(Pass::within).singleElement().matches(Pass::gap);
    assertThat(passes.passes().stream().filter(Pass::within).findFirst().orElseThrow().seconds())
        .isBetween(fixes.get(gap - 1).seconds(), fixes.get(gap).seconds());
  }

  @Test
  void longPausesAndRepeatedTimesAreSeen() {
    Track power = Tracks.read("t12_power_hr_gap2936s.gpx");
    assertThat(power.longestGap(0, 1e6)).isEqualTo(2936);
    Track spread = Tracks.read("t15_1s_hdop_fix.gpx");
    assertThat(spread.leftOut()).as("one time is repeated").isEqualTo(1);
    assertThat(spread.fixes()).extracting(Fix::radius95).allMatch(radius -> radius >= 3);
    Track watch = Tracks.read("t08_watch_smart_3laps.tcx");
    assertThat(watch.leftOut()).as("the first has no place").isPositive();
  }

  @Test
  void fourDigitsOfASecondAreKept() {
    Track track = Tracks.read("t17_phone_fractions_smart.gpx");
    assertThat(track.fixes())
        .extracting(fix -> track.at(fix.seconds()))
        .contains(
            Instant.parse("2013-03-28T16:45:08.0710Z"), Instant.parse("2013-03-28T16:45:09.0709Z"));
    assertThat(track.fixes().stream().filter(fix -> fix.seconds() % 1 != 0).count())
        .isGreaterThan(1000);
  }

  /** Through the mouth of the loop: half the points of the file have fractions, half have none. */
  @Test
  void mixedFormsOfTimeAreOneClock() {
    Track track = Tracks.read("t18_mixed_time_formats_4passes.gpx");
    double before = -1;
    for (Fix fix : track.fixes()) {
      assertThat(fix.seconds()).isGreaterThan(before);
      before = fix.seconds();
    }
  }
}
