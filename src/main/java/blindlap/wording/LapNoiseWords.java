package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.review.NoiseRecord;
import blindlap.stats.distribution.Interval;
import blindlap.stats.noise.LapNoise;
import blindlap.stats.noise.RiderNoise;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Lap noise and stint noise apart, in sentences. */
public final class LapNoiseWords {
  private static final Words WORDS = Words.of("noise");

  /** More than half of one lap's noise variance. */
  private static final double MOST = 0.5;

  private LapNoiseWords() {}

  /** Everything of a record in lines: pooled, in lap and stint, days, voids. */
  public static List<String> lines(NoiseRecord record) {
    List<String> lines = new ArrayList<>(NoiseWords.lines(record));
    List<String> apart = new ArrayList<>();
    if (record.pooled().isPresent()) {
      apart.add(where(record));
    }
    sizes(record).ifPresent(apart::add);
    lines.addAll(1, apart);
    lines.addAll(CovariateWords.seen(record));
    return lines;
  }

  /** What the answer of the page means, and where most of the noise sits. */
  public static String lead(NoiseRecord record) {
    String lead = NoiseWords.lead(record);
    return record.pooled().isPresent() ? lead + " " + where(record) : lead;
  }

  /** What is behind a record, a sentence each. */
  public static List<String> facts(NoiseRecord record, int sessions) {
    List<String> facts = new ArrayList<>();
    sizes(record).ifPresent(facts::add);
    facts.addAll(CovariateWords.seen(record));
    facts.addAll(NoiseWords.facts(record, sessions));
    return facts;
  }

  /** Where most of the noise sits, and what follows for laps a stint. */
  static String where(NoiseRecord record) {
    LapNoise split = record.split().orElse(null);
    if (split == null) {
      return WORDS.say("split.none");
    }
    Interval share = split.share95();
    String key = share.high() < MOST ? "LAP" : share.low() > MOST ? "STINT" : "OPEN";
    return WORDS.say("split." + key, record.apart().size());
  }

  /** Both, with their intervals; empty where no day tells them apart. */
  static Optional<String> sizes(NoiseRecord record) {
    return record.split().map(split -> sizes(record, split));
  }

  private static String sizes(NoiseRecord record, LapNoise split) {
    Measure measure = record.measure();
    RiderNoise lap = split.lap();
    return WORDS.say(
        "split.sizes",
        NoiseWords.sd(measure, lap),
        NoiseWords.interval(measure, lap),
        amount(measure, split.shared(), split.shared95()),
        interval(measure, split.shared95()),
        record.apart().size(),
        Figures.number(split.ratio(), 2),
        Intervals.interval(split.ratio95(), 2));
  }

  /** As many decimals as the width of the interval asks for: it may begin at 0. */
  private static int decimals(Measure measure, Interval sd) {
    double high = NoiseWords.said(measure, sd.high());
    return Figures.decimals((high - NoiseWords.said(measure, sd.low())) / 4);
  }

  private static String amount(Measure measure, double sd, Interval of) {
    return Figures.number(NoiseWords.said(measure, sd), decimals(measure, of))
        + " "
        + NoiseWords.unit(measure);
  }

  private static String interval(Measure measure, Interval sd) {
    Interval said =
        new Interval(NoiseWords.said(measure, sd.low()), NoiseWords.said(measure, sd.high()));
    return Intervals.interval(said, decimals(measure, sd)) + " " + NoiseWords.unit(measure);
  }
}
