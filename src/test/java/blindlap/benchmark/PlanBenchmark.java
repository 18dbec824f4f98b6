package blindlap.benchmark;

import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.SeveralMeasures;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Sampling;
import blindlap.stats.power.DayPower;
import blindlap.stats.power.SimulatedDays;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Setup;

/** Three setups, five measures, and what planning asks for. */
public class PlanBenchmark extends InMilliseconds {
  private final Assignments three = Assignments.rule(3, 18).block(3).build();
  private final Assignments sixteen = Assignments.rule(2, 16).block(4).build();
  private final DayPower day = DayPower.of(sixteen, Drift.LINE);
  private final boolean[] valid = new boolean[18];
  private final boolean[] valid16 = new boolean[16];
  private final List<SeveralMeasures.Series> measures = new ArrayList<>();
  private double[] values = {};
  private int[] order3 = {};
  private int[] order2 = {};

  /** Makes the values. */
  @Setup
  public void make() {
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(1L);
    Arrays.fill(valid, true);
    Arrays.fill(valid16, true);
    values = source.doubles(18).toArray();
    order3 = three.random(source);
    order2 = sixteen.random(source);
    for (int m = 0; m < 5; m++) {
      measures.add(new SeveralMeasures.Series("m" + m, source.doubles(16).toArray(), Drift.LINE));
    }
  }

  /** Three setups, 18 stints in blocks of three: 46 656 orders. */
  @Benchmark
  public ManySetups compareMany() {
    return ManySetups.compare(
        three, order3, values, valid, Nuisance.of(Drift.LINE), Sampling.PREFERRED);
  }

  /** Five measures, 16 stints in blocks of four: 1 296 orders. */
  @Benchmark
  public SeveralMeasures compareMeasures() {
    return SeveralMeasures.compare(sixteen, order2, measures, valid16, Sampling.PREFERRED);
  }

  /** 2 000 days of 16 stints, each with its whole curve. */
  @Benchmark
  public SimulatedDays simulatedDays() {
    return day.simulate(2000, 1, () -> false);
  }

  /** Detectable difference by formula from the rule, nothing prepared. */
  @Benchmark
  public double planningFormula() {
    return DayPower.of(sixteen, Drift.LINE).formula().difference(0.8, 0.8);
  }

  /** The same once the day is known, as when a noise is typed. */
  @Benchmark
  public double planningFormulaPrepared() {
    return day.formula().difference(0.8, 0.8);
  }

  /** Verdict odds by formula for one true difference. */
  @Benchmark
  public double verdictOddsFormula() {
    return day.odds(0.4, 0.5, 0.8).open();
  }
}
