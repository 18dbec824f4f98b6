package blindlap.benchmark;

import blindlap.recording.Gate;
import blindlap.recording.LapMatching;
import blindlap.recording.Pass;
import blindlap.recording.Passes;
import blindlap.recording.PieceTimes;
import blindlap.recording.Track;
import blindlap.recording.TrackReader;
import blindlap.sample.InventedDay;
import blindlap.sample.InventedRecorder;
import blindlap.sample.InventedRecording;
import blindlap.sample.InventedTrail;
import blindlap.stats.SmallSets;
import blindlap.stats.compare.Along;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Sampling;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Setup;

/**
 * Three hours at one point a second, sixteen laps, from the bytes of the file to passes that are
 * matched to laps and to the times of forty pieces of each: it may take 1 s. And forty pieces over
 * the 46 656 orders of 24 stints in blocks of four: 0.5 s. Beside them what they cannot do without:
 * the platform's walk through the same XML, and the curve of one measure.
 */
public class RecordingBenchmark extends InMilliseconds {
  private static final int LAPS = 16;
  private static final int PIECES = 40;

  private final InventedTrail trail = new InventedTrail(11, 700);
  private final List<Gate> gates =
      List.of(
          trail.line().across(trail.start(), 40),
          trail.line().across(380, 40),
          trail.line().across(trail.finish(), 40));
  private final double[] borders = PieceTimes.equal(trail.start(), trail.finish(), PIECES);
  private final double[] entered = new double[LAPS];
  private final Assignments set = SmallSets.Plain.blocks(2, 24, 4).assignments();
  private final int[] order = new int[24];
  private final double[][] times = new double[24][PIECES];
  private final boolean[] all = new boolean[24];
  private byte[] gpx = new byte[0];
  private byte[] tcx = new byte[0];

  /** Rides the day. */
  @Setup
  public void ride() {
    InventedDay day =
        new InventedDay(
            1,
            trail,
            new int[LAPS],
            List.of(),
            InventedDay.Rider.USUAL,
            Collections.nCopies(LAPS, new InventedDay.Stand(356, false)));
    InventedRecording recorded =
        InventedRecorder.PLAIN.record(day, 1, Instant.parse("2026-11-14T08:00:00Z"));
    gpx = recorded.gpx().getBytes(StandardCharsets.UTF_8);
    tcx = recorded.tcx().getBytes(StandardCharsets.UTF_8);
    Arrays.setAll(entered, lap -> day.passed(lap, trail.finish()) + 30);
    Random random = new Random(1);
    for (int i = 0; i < order.length; i++) {
      order[i] = i % 4 == 0 || i % 4 == 3 ? 0 : 1;
      Arrays.setAll(times[i], piece -> 3 + 0.1 * random.nextGaussian());
    }
    Arrays.fill(all, true);
  }

  /** From GPX to settled passes and pieces. */
  @Benchmark
  public double settledGpx() {
    return settled(TrackReader.read(gpx));
  }

  /** From TCX to settled passes and pieces. */
  @Benchmark
  public double settledTcx() {
    return settled(TrackReader.read(tcx));
  }

  /** The GPX read alone. */
  @Benchmark
  public Track readGpx() {
    return TrackReader.read(gpx);
  }

  /** The TCX read alone. */
  @Benchmark
  public Track readTcx() {
    return TrackReader.read(tcx);
  }

  private double settled(Track track) {
    Passes passes = Passes.of(track, gates);
    double[] starts = seconds(passes, 0);
    double[] finished = seconds(passes, gates.size() - 1);
    LapMatching matching = LapMatching.of(finished, entered);
    double sum = matching.offset();
    for (int lap = 0; lap < LAPS; lap++) {
      double[] pieces =
          PieceTimes.of(trail.line(), borders, track, starts[lap], finished[matching.lap(lap)]);
      sum += Arrays.stream(pieces).sum();
    }
    return sum;
  }

  private static double[] seconds(Passes passes, int gate) {
    return passes.passes().stream()
        .filter(pass -> pass.gate() == gate && pass.direction() == -1)
        .mapToDouble(Pass::seconds)
        .toArray();
  }

  /** The platform's walk through the same GPX, which nothing that reads it can do without. */
  @Benchmark
  public int bareWalk() throws XMLStreamException {
    XMLStreamReader reader =
        XMLInputFactory.newFactory().createXMLStreamReader(new ByteArrayInputStream(gpx));
    int elements = 0;
    while (reader.hasNext()) {
      elements += reader.next() == XMLStreamReader.START_ELEMENT ? 1 : 0;
    }
    return elements;
  }

  /** Forty pieces. */
  @Benchmark
  public Along along() {
    return Along.compare(set, order, times, all, Drift.LINE, Sampling.PREFERRED);
  }

  /** The curve of one measure over the same orders. */
  @Benchmark
  public TwoSetups curve() {
    double[] whole =
        Arrays.stream(times).mapToDouble(stint -> Arrays.stream(stint).sum()).toArray();
    return TwoSetups.compare(set, order, whole, all, Nuisance.of(Drift.LINE), Sampling.PREFERRED);
  }

  private interface Work {
    Object done() throws XMLStreamException;
  }

  private static void row(String what, Work work) throws XMLStreamException {
    double first = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int round = 0; round < 15; round++) {
      long begun = System.nanoTime();
      if (work.done() == null) {
        throw new IllegalStateException("nothing was computed");
      }
      double spent = (System.nanoTime() - begun) / 1e6;
      first = round == 0 ? spent : first;
      least = Math.min(least, spent);
    }
    System.out.printf("| %s | %.1f | %.1f |%n", what, first, least);
  }

  /** First and least of fifteen rounds, in milliseconds. */
  public static void main(String[] arguments) throws XMLStreamException {
    RecordingBenchmark benchmark = new RecordingBenchmark();
    benchmark.ride();
    System.out.printf(
        "%d points, %d orders%n",
        benchmark.readGpx().fixes().size(), benchmark.set.count().intValueExact());
    row("settled, GPX", benchmark::settledGpx);
    row("read, GPX", benchmark::readGpx);
    row("settled, TCX", benchmark::settledTcx);
    row("read, TCX", benchmark::readTcx);
    row("bare walk", benchmark::bareWalk);
    row("along", benchmark::along);
    row("curve", benchmark::curve);
  }
}
