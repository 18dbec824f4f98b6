package blindlap.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.recording.Gate;
import blindlap.recording.Pass;
import blindlap.recording.Passes;
import blindlap.recording.PieceTimes;
import blindlap.recording.Track;
import blindlap.recording.TrackReader;
import blindlap.review.Analysis;
import blindlap.review.DayRecord;
import blindlap.review.Days;
import blindlap.review.RecordedTimes;
import blindlap.review.WhereDays;
import blindlap.review.WhereOnTrail;
import blindlap.session.day.LapId;
import blindlap.stats.order.Orders;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** A whole day of recordings of invented rides, whose gain is known: it is found where it lies. */
class InventedWhereTest {
  private static final Instant MORNING = Instant.parse("2026-11-14T08:00:00Z");
  private static final String ORDER = "ABBABAABABBABAAB";

  /** 95 % of places within 3 m, which is 2.45 standard deviations of an axis. */
  private static final double ERROR = 3 / 2.45;

  private final InventedTrail trail = new InventedTrail(11, 700);
  private final double[] places = {0, 195, 420, trail.finish() - trail.start()};
  private final List<Gate> gates =
      Arrays.stream(places).mapToObj(m -> trail.line().across(trail.start() + m, 30)).toList();
  private final double[] borders = PieceTimes.equal(trail.start(), trail.finish(), 20);

  private boolean rocks(double metre) {
    return metre >= trail.start() + 195 && metre < trail.start() + 420;
  }

  private RecordedTimes.Lap lap(DoubleUnaryOperator slower, Random random) {
    List<InventedRide.Point> points = new InventedRide(trail, slower).recorded(random, 1, ERROR);
    StringBuilder gpx =
        new StringBuilder(
            "<gpx version=\"1.1\" creator=\"invented\""
                + " xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>");
    for (InventedRide.Point point : points) {
      gpx.append(
          "<trkpt lat=\"%.9f\" lon=\"%.9f\"><time>%s</time></trkpt>"
              .formatted(
                  point.at().latitude(),
                  point.at().longitude(),
                  MORNING.plusNanos(Math.round(point.seconds() * 1e9))));
    }
    Track track =
        TrackReader.read(
            gpx.append("</trkseg></trk></gpx>").toString().getBytes(StandardCharsets.UTF_8));
    List<Pass> passes = Passes.of(track, gates).passes();
    assertThat(passes).hasSize(4);
    List<@Nullable BigDecimal> sectors = new ArrayList<>();
    List<@Nullable BigDecimal> uncertainties = new ArrayList<>();
    for (int i = 1; i < 4; i++) {
      sectors.add(seconds(passes.get(i).seconds() - passes.get(i - 1).seconds()));
      uncertainties.add(
          seconds(Math.hypot(passes.get(i).uncertainty(), passes.get(i - 1).uncertainty())));
    }
    List<@Nullable BigDecimal> pieces = new ArrayList<>();
    for (double piece :
        PieceTimes.of(
            trail.line(), borders, track, passes.get(0).seconds(), passes.get(3).seconds())) {
      pieces.add(seconds(piece));
    }
    return new RecordedTimes.Lap(sectors, uncertainties, pieces, new TreeSet<>());
  }

  private static BigDecimal seconds(double seconds) {
    return BigDecimal.valueOf(seconds).setScale(3, RoundingMode.HALF_EVEN);
  }

  @Test
  void aGainInTheRocksIsFoundThereFromTheRecordingsOfADay() {
    Random random = new Random(20261128);
    double gain = 0.08;
    TreeMap<LapId, RecordedTimes.Lap> laps = new TreeMap<>();
    int[] setups = Orders.parse(ORDER);
    for (int stint = 1; stint <= setups.length; stint++) {
      double form = 0.004 * random.nextGaussian();
      boolean second = setups[stint - 1] == 1;
      laps.put(
          new LapId(stint, 1), lap(metre -> form - (second && rocks(metre) ? gain : 0), random));
    }
    Plan plan = WhereDays.plan(Rule.blocks(2, 16, 4), true);
    DayRecord day =
        Days.day(plan, ORDER, Map.of("lap time", new double[16]))
            .with(
                new RecordedTimes(
                    Arrays.stream(borders)
                        .mapToObj(m -> BigDecimal.valueOf(m).setScale(2, RoundingMode.HALF_EVEN))
                        .toList(),
                    laps));
    InventedRide level = new InventedRide(trail, metre -> 0);
    InventedRide quick = new InventedRide(trail, metre -> rocks(metre) ? -gain : 0);
    double truth = quick.lap() - level.lap();

    WhereOnTrail where = Analysis.of(day).where().orElseThrow();
    List<WhereOnTrail.OfSector> shown = where.sectors().orElseThrow().shown();
    assertThat(shown).extracting(WhereOnTrail.OfSector::sector).containsExactly(1);
    assertThat(truth).isBetween(-4.0, -1.5);
    assertThat(shown.get(0).interval().orElseThrow().low()).isLessThan(truth);
    assertThat(shown.get(0).interval().orElseThrow().high()).isBetween(truth, 0.0);
    WhereOnTrail.Line line = where.line().orElseThrow();
    for (int i = 1; i < borders.length; i++) {
      double so = quick.secondsTo(borders[i]) - quick.secondsTo(borders[0]);
      double without = level.secondsTo(borders[i]) - level.secondsTo(borders[0]);
      assertThat(line.along().cumulative().estimates()[i - 1])
          .isCloseTo(so - without, within(line.along().cumulative().halfWidths()[i - 1]));
    }
    // The places of the gates come from times alone, and recorded places are off by metres.
    for (int gate = 0; gate < places.length; gate++) {
      assertThat(line.gates()[gate] - trail.start()).isCloseTo(places[gate], within(2.0));
    }
  }
}
