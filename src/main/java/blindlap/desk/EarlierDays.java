package blindlap.desk;

import blindlap.plan.Covariate;
import blindlap.plan.DeclaredNoise;
import blindlap.plan.EarlierNoise;
import blindlap.plan.Measure;
import blindlap.plan.StintShare;
import blindlap.review.NoiseRecord;
import blindlap.stats.compare.Scale;
import blindlap.stats.noise.PooledCorrelation;
import blindlap.stats.noise.RiderNoise;
import blindlap.wording.NoiseWords;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What the noise book tells the next plan of one rider on one trail. */
final class EarlierDays implements EarlierNoise {
  private static final MathContext DIGITS = new MathContext(6);

  private final List<NoiseRecord> records;

  EarlierDays(List<NoiseRecord> records) {
    this.records = List.copyOf(records);
  }

  @Override
  public Optional<DeclaredNoise> of(Measure measure, int scoredLaps) {
    return records.stream()
        .filter(record -> record.isAbout(measure))
        .filter(record -> record.pooled().filter(noise -> noise.sd() > 0).isPresent())
        .max(
            Comparator.comparing((NoiseRecord record) -> record.scoredLaps() == scoredLaps)
                .thenComparing(record -> record.pooled().orElseThrow().df()))
        .map(EarlierDays::declared);
  }

  @Override
  public Optional<PooledCorrelation> correlation(
      Measure measure, int scoredLaps, Covariate covariate) {
    return records.stream()
        .filter(record -> record.isAbout(measure))
        .filter(record -> record.correlation(covariate).isPresent())
        .max(
            Comparator.comparing((NoiseRecord record) -> record.scoredLaps() == scoredLaps)
                .thenComparing(record -> record.correlation(covariate).orElseThrow().days()))
        .flatMap(record -> record.correlation(covariate));
  }

  /** Of means, whatever the plan's summary is: plans know what a median makes of it. */
  private static DeclaredNoise declared(NoiseRecord record) {
    RiderNoise noise = record.pooled().orElseThrow();
    return new DeclaredNoise(
        typed(record, noise.sd()),
        noise.df(),
        NoiseWords.source(record),
        null,
        record.scoredLaps(),
        record.split().map(split -> StintShare.of(split.share95())).orElse(null));
  }

  /** As a plan has it: in the unit, or in per cent on the ratio scale. */
  private static BigDecimal typed(NoiseRecord record, double sd) {
    double said = record.measure().scale() == Scale.RATIO ? 100 * Math.expm1(sd) : sd;
    return BigDecimal.valueOf(said).round(DIGITS);
  }
}
