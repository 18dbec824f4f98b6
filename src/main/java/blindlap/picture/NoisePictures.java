package blindlap.picture;

import blindlap.plan.Measure;
import blindlap.plot.Axis;
import blindlap.plot.Limits;
import blindlap.plot.NoiseHistory;
import blindlap.plot.NoiseOverDays;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.review.NoiseDay;
import blindlap.review.NoiseRecord;
import blindlap.stats.distribution.Interval;
import blindlap.stats.noise.RiderNoise;
import blindlap.wording.NoiseWords;
import blindlap.wording.day.Figures;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Pictures of a rider's noise. */
public final class NoisePictures {
  private NoisePictures() {}

  /** Noise of each day, oldest first, and all together; empty if no day has one. */
  public static Optional<Drawing> history(NoiseRecord record) {
    Optional<RiderNoise> pooled = record.pooled();
    if (pooled.isEmpty()) {
      return Optional.empty();
    }
    Measure measure = record.measure();
    List<NoiseHistory.Entry> entries = new ArrayList<>();
    List<String> table = new ArrayList<>();
    for (NoiseDay day : record.told()) {
      entries.add(entry(measure, NoiseWords.label(record, day), day.noise().orElseThrow()));
      table.add(NoiseWords.day(record, day) + ".");
    }
    Axis axis = axis(measure);
    return Optional.of(
        NoiseHistory.of(
            new NoiseHistory.Content(
                entries,
                entries.size() < 2
                    ? Optional.empty()
                    : Optional.of(entry(measure, NoiseWords.say("picture.pooled"), pooled.get())),
                axis,
                new Spoken(
                    NoiseWords.say("picture") + " " + NoiseWords.pooled(record),
                    String.join(" ", table)))));
  }

  private static Axis axis(Measure measure) {
    return new Axis(
        NoiseWords.say("axis", NoiseWords.unit(measure), measure.name()),
        Axis.Counting.DECIMAL,
        (value, step) -> Figures.number(value, decimals(step)));
  }

  /**
   * Noise of each day from left to right, oldest first, and all together; empty if no day has one.
   */
  public static Optional<Drawing> overDays(NoiseRecord record) {
    Optional<RiderNoise> pooled = record.pooled();
    if (pooled.isEmpty()) {
      return Optional.empty();
    }
    Measure measure = record.measure();
    List<NoiseOverDays.Day> days = new ArrayList<>();
    List<String> table = new ArrayList<>();
    for (NoiseDay day : record.told()) {
      NoiseHistory.Entry entry =
          entry(measure, NoiseWords.label(record, day), day.noise().orElseThrow());
      days.add(
          new NoiseOverDays.Day(
              entry.label(),
              NoiseWords.sort(day),
              day.source().blinded(),
              entry.sd(),
              entry.interval()));
      table.add(NoiseWords.day(record, day) + ".");
    }
    NoiseHistory.Entry all = entry(measure, NoiseWords.say("picture.pooled"), pooled.get());
    return Optional.of(
        NoiseOverDays.of(
            new NoiseOverDays.Content(
                days,
                days.size() < 2
                    ? Optional.empty()
                    : Optional.of(
                        new NoiseOverDays.Pooled(
                            all.sd(),
                            all.interval(),
                            List.of(all.label(), NoiseWords.sd(measure, pooled.get())))),
                axis(measure),
                new Spoken(
                    NoiseWords.say("picture.days") + " " + NoiseWords.pooled(record),
                    String.join(" ", table)))));
  }

  private static int decimals(double step) {
    return Math.max(0, (int) -Math.floor(Math.log10(step) + 1e-9));
  }

  private static NoiseHistory.Entry entry(Measure measure, String label, RiderNoise noise) {
    Interval interval = noise.interval95IfNormal();
    return new NoiseHistory.Entry(
        label,
        NoiseWords.said(measure, noise.sd()),
        new Limits(
            NoiseWords.said(measure, interval.low()), NoiseWords.said(measure, interval.high())));
  }
}
