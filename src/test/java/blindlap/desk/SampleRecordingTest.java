package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Plan;
import blindlap.review.WhereOnTrail;
import blindlap.seal.SessionKind;
import blindlap.session.RecordedLap;
import blindlap.session.RecordedPass;
import blindlap.session.SessionState;
import blindlap.stats.compare.Along;
import blindlap.stats.distribution.Interval;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import org.junit.jupiter.api.Test;

/** The sample whose times a recording gives: its files are made here, and its truth is known. */
class SampleRecordingTest {
  private static final double WITHIN = 1.96;

  /** The sample's order hangs on its own bytes and its rule: the gates change nothing of it. */
  private static JuniperChute made() {
    JuniperChute[] made = new JuniperChute[1];
    SampleDays.with(
        JuniperChute.NAME,
        (desk, sample) -> {
          Plan typed = sample.preview().plan().orElseThrow();
          desk.trails().keep(JuniperChute.trail());
          Plan plan = typed.with(desk.trails().latest(typed.trail()).orElseThrow().version());
          if (!(desk.committing().begin(plan) instanceof Committing.Begun.Phrase begun)) {
            throw new IllegalStateException("the sample's plan is refused");
          }
          Committing.Result result =
              desk.committing()
                  .seal(
                      plan,
                      SessionKind.comparison(),
                      List.of(plan.rider(), plan.blinding().helper()),
                      begun.asked().unasked());
          made[0] = new JuniperChute(((Committing.Result.Committed) result).sealed().schedule());
        });
    return made[0];
  }

  private static void ridden(BiConsumer<Desk, SessionState> look) {
    SampleDays.ride(JuniperChute.NAME, look);
  }

  @Test
  void theFilesOfTheSampleAreThoseThatItsTruthMakes() throws IOException {
    Path folder = Path.of("sample-sessions", JuniperChute.NAME);
    for (Map.Entry<String, byte[]> file : new TreeMap<>(made().files()).entrySet()) {
      Path there = folder.resolve(file.getKey());
      if (Boolean.getBoolean("blindlap.write")) {
        Files.write(there, file.getValue());
      }
      assertThat(Files.readAllBytes(there))
          .as(file.getKey() + ": run with -Dblindlap.write=true, then build again")
          .isEqualTo(file.getValue());
    }
    assertThat(Files.size(folder.resolve("recording.gpx"))).isLessThan(350_000);
  }

  /** The command of docs/manual/recordings.md. */
  @Test
  void theManualsCommandMakesTheSamplesTrail() throws IOException {
    Path folder = Path.of("sample-sessions", JuniperChute.NAME);
    TrailDraft line =
        TrailBook.draft(
            "Juniper chute",
            TrailBook.recording(Files.readAllBytes(folder.resolve("scouting.gpx"))),
            48,
            132);
    List<TrailDraft.Across> gates =
        List.of(
            new TrailDraft.Across("Stile", 60, TrailDraft.USUAL_WIDTH),
            new TrailDraft.Across("Cairn", 190, TrailDraft.USUAL_WIDTH),
            new TrailDraft.Across("Culvert", 340, TrailDraft.USUAL_WIDTH),
            new TrailDraft.Across("Barn", 460, TrailDraft.USUAL_WIDTH));
    assertThat(TrailBook.geoJson(line.with(gates).trail()))
        .isEqualTo(Files.readAllBytes(folder.resolve("trail.geojson")));
    assertThat(Files.readString(Path.of("docs", "manual", "recordings.md")))
        .contains("scouting.gpx --lap=48,132 --start=Stile=60 --split=Cairn=190")
        .contains("recording.gpx --settle=9=none,6=keep");
  }

  /** A time that was recorded, the recorder's standard deviation of it, and the true time. */
  private record Timed(double seconds, double deviation, double truth) {
    double off() {
      return Math.abs(seconds - truth) / deviation;
    }
  }

  private static Timed timed(RecordedLap lap, int from, int to, double[] truth) {
    RecordedPass start = lap.passes().get(from);
    RecordedPass end = lap.passes().get(to);
    double sum = 0;
    for (int sector = from; sector < to; sector++) {
      sum += truth[sector];
    }
    return new Timed(
        of(end.seconds()) - of(start.seconds()),
        Math.hypot(of(start.uncertainty()), of(end.uncertainty())),
        sum * (1 + JuniperChute.RATE));
  }

  private static double of(BigDecimal value) {
    return Objects.requireNonNull(value).doubleValue();
  }

  @Test
  void recordedTimesLieWithinTheirPrintedUncertaintyOfTheTruth() {
    JuniperChute chute = made();
    ridden(
        (desk, state) -> {
          int within = 0;
          int all = 0;
          assertThat(state.recorded().laps()).hasSize(16);
          for (RecordedLap lap : state.recorded().laps().values()) {
            double[] truth = chute.seconds(lap.lap().stint());
            boolean gap = lap.lap().stint() == JuniperChute.GAP + 1;
            assertThat(lap.settled())
                .isEqualTo(gap ? RecordedLap.Settled.KEPT : RecordedLap.Settled.FITS);
            assertThat(lap.passes().get(1).seconds() == null).isEqualTo(gap);
            for (int[] part : new int[][] {{0, 3}, {0, 1}, {1, 2}, {2, 3}}) {
              if (!gap || part[0] != 1 && part[1] != 1) {
                Timed timed = timed(lap, part[0], part[1], truth);
                assertThat(timed.off()).isLessThan(3.5);
                within += timed.off() < WITHIN ? 1 : 0;
                all++;
              }
            }
          }
          assertThat(all).isEqualTo(62);
          assertThat(within).isGreaterThan(56); // 95 of 100, and not much fewer
        });
  }

  @Test
  void theDifferenceLiesInItsSectorAndWithinItsBandAllTheWay() {
    JuniperChute chute = made();
    ridden(
        (desk, state) -> {
          WhereOnTrail where = desk.reviews().finding(state).where().orElseThrow();
          assertThat(where.declared()).isTrue();
          double[] truth = chute.difference();
          WhereOnTrail.Sectors sectors = where.sectors().orElseThrow();
          assertThat(truth[1]).isLessThan(-1.2);
          for (WhereOnTrail.OfSector each : sectors.each()) {
            Interval interval = each.interval().orElseThrow();
            assertThat(truth[each.sector()]).isBetween(interval.low(), interval.high());
            assertThat(each.shown()).isEqualTo(each.sector() == 1);
          }
          WhereOnTrail.Line line = where.line().orElseThrow();
          Along.Band sums = line.along().cumulative();
          assertThat(line.used()).isEqualTo(14); // one lap with a gap, one with walkers
          for (int piece = 0; piece < sums.estimates().length; piece++) {
            double share = (line.borders()[piece + 1] - line.borders()[0]) / line.length();
            assertThat(chute.difference(share))
                .isBetween(
                    sums.estimates()[piece] - sums.halfWidths()[piece],
                    sums.estimates()[piece] + sums.halfWidths()[piece]);
          }
          assertThat(line.total()).isNegative();
        });
  }

  @Test
  void theRecordersClockIsFoundToBeOffByTheHourThatItIs() {
    ridden(
        (desk, state) -> {
          BigDecimal offset = state.recorded().files().get(0).offset();
          assertThat(of(offset)).isBetween(-3612.0 + 15, -3612.0 + 60);
          assertThat(state.recorded().sectorVoids()).hasSize(1);
        });
  }
}
