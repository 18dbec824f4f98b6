package blindlap.review;

import blindlap.fault.StatsException;
import blindlap.plan.Measure;
import blindlap.session.day.LapId;
import blindlap.stats.compare.Scale;
import blindlap.stats.noise.Agreement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.stat.StatUtils;

/**
 * What recordings leave open of one measure, and how a watch agrees with them
 * (docs/method.md#recordings). It changes no number of the result.
 *
 * @param measure whose times they are
 * @param laps scored laps that a recording times and that count
 * @param missing scored laps that were ridden and are not void, without a recorded time
 * @param uncertainty root of the mean square of the times' standard deviations, in seconds; NaN
 *     where no lap has one
 * @param share of the rider noise that the recorder makes, at most 1; empty where a watch counts,
 *     or the noise is not known
 * @param pairs scored laps with a time of both, void ones included
 * @param agreement of watch and recording, watch minus recording; empty below two pairs
 */
public record RecorderFinding(
    Measure measure,
    int laps,
    int missing,
    double uncertainty,
    OptionalDouble share,
    int pairs,
    Optional<Agreement> agreement) {
  /** Of every measure that a recording times, in the order of the plan. */
  public static List<RecorderFinding> of(Finding finding) {
    DayRecord day = finding.day();
    return day.plan().measures().stream()
        .filter(
            measure ->
                measure.recorded()
                    || day.laps().stream().anyMatch(lap -> lap.timed().containsKey(measure.name())))
        .map(measure -> of(day, measure, noise(finding, measure)))
        .toList();
  }

  /** SD from stint to stint on the scale of the analysis. */
  private static OptionalDouble noise(Finding finding, Measure measure) {
    return DoubleStream.concat(
            finding
                .comparisons()
                .filter(c -> c.measure().name().equals(measure.name()))
                .mapToDouble(c -> c.result().noiseSd()),
            finding.many().stream()
                .filter(m -> m.measure().name().equals(measure.name()))
                .mapToDouble(m -> m.result().noiseSd()))
        .findFirst();
  }

  static RecorderFinding of(DayRecord day, Measure measure, OptionalDouble noise) {
    List<Double> seconds = new ArrayList<>();
    List<Double> relative = new ArrayList<>();
    List<double[]> both = new ArrayList<>();
    int missing = 0;
    for (DayRecord.Lap lap : day.laps()) {
      if (!lap.ridden() || !scored(day, lap.id())) {
        continue;
      }
      TimedValue time = lap.timed().get(measure.name());
      boolean counts = !lap.isVoid(measure);
      if (time != null && time.recording() != null && time.watch() != null) {
        both.add(new double[] {time.watch().doubleValue(), time.recording().doubleValue()});
      }
      if (time != null && time.recording() != null && time.uncertainty() != null && counts) {
        seconds.add(time.uncertainty().doubleValue());
        relative.add(time.uncertainty().doubleValue() / time.recording().doubleValue());
      } else if (counts) {
        missing++;
      }
    }
    List<Double> ofNoise = measure.scale() == Scale.RATIO ? relative : seconds;
    return new RecorderFinding(
        measure,
        seconds.size(),
        missing,
        Math.sqrt(meanSquare(seconds)),
        share(measure, meanSquare(ofNoise) / day.plan().laps().scored(), noise),
        both.size(),
        agreement(both));
  }

  private static boolean scored(DayRecord day, LapId id) {
    return id.lap() > day.plan().laps().settling();
  }

  private static double meanSquare(List<Double> values) {
    double[] all = values.stream().mapToDouble(v -> v).toArray();
    return all.length == 0 ? Double.NaN : StatUtils.sumSq(all) / all.length;
  }

  private static OptionalDouble share(Measure measure, double variance, OptionalDouble noise) {
    double sd = noise.orElse(Double.NaN);
    return measure.recorded() && sd > 0 && !Double.isNaN(variance)
        ? OptionalDouble.of(Math.min(1, variance / (sd * sd)))
        : OptionalDouble.empty();
  }

  private static Optional<Agreement> agreement(List<double[]> both) {
    try {
      return both.size() < 2
          ? Optional.empty()
          : Optional.of(
              Agreement.of(
                  both.stream().mapToDouble(pair -> pair[0]).toArray(),
                  both.stream().mapToDouble(pair -> pair[1]).toArray()));
    } catch (StatsException beyondNumbers) {
      return Optional.empty();
    }
  }
}
