package blindlap.desk;

import blindlap.plan.BlindLevel;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.sample.SampleSession;
import blindlap.sample.SampleSources;
import blindlap.seal.HelperSchedule;
import blindlap.seal.OpenKey;
import blindlap.seal.SealParameters;
import blindlap.store.SqliteNotebook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.IntUnaryOperator;

/**
 * Writes the laps of the invented sessions so that they fit the orders their bytes draw: base
 * value, an effect per setup, drift over the day, normal noise with a fixed seed. Run it with the
 * folder {@code sample-sessions} as argument after a plan of a sample was changed.
 */
public final class SampleLaps {
  /** How one measure of a sample comes about; effects and noise in its unit. */
  private record Recipe(
      String measure,
      double base,
      double[] effects,
      double noise,
      double drift,
      int decimals,
      int missing) {
    /** Every stint has a value. */
    Recipe(
        String measure, double base, double[] effects, double noise, double drift, int decimals) {
      this(measure, base, effects, noise, drift, decimals, 0);
    }
  }

  /** A covariate of a sample: its scatter, and what one of its units does to the first measure. */
  private record Beside(
      String covariate, double base, double scatter, int decimals, double effect, int missing) {}

  private record Sample(
      String name,
      long seed,
      int last,
      boolean guesses,
      List<Recipe> recipes,
      List<Beside> covariates,
      Map<Integer, Double> slips,
      Map<Integer, String> voids) {
    /** Without slips, which make a lap of the first measure slower by so much, and voids. */
    Sample(
        String name,
        long seed,
        int last,
        boolean guesses,
        List<Recipe> recipes,
        List<Beside> covariates) {
      this(name, seed, last, guesses, recipes, covariates, Map.of(), Map.of());
    }

    /** Without covariates. */
    Sample(String name, long seed, int last, boolean guesses, List<Recipe> recipes) {
      this(name, seed, last, guesses, recipes, List.of());
    }
  }

  private static final List<Sample> SAMPLES =
      List.of(
          new Sample(
              "bearings-on-clay-steps",
              3,
              16,
              true,
              List.of(
                  new Recipe("lap time", 118.4, new double[] {0, 0.7}, 0.45, -0.4, 2),
                  new Recipe("top sector", 31.2, new double[] {0, 0.2}, 0.25, 0, 2))),
          new Sample(
              "springs-on-ridge-line",
              6,
              16,
              true,
              List.of(
                  new Recipe("lap time", 141.0, new double[] {0, -1.15}, 0.75, 0.3, 2),
                  new Recipe("harshness at the hands", 38, new double[] {0, 16}, 7, 2, 0),
                  new Recipe("trust on the edge", 5, new double[] {0, 1}, 1, 0, 0))),
          new Sample(
              "pads-on-long-drop",
              4,
              8,
              true,
              List.of(new Recipe("lap time", 203.5, new double[] {0, -2.5}, 0.8, 0, 1))),
          new Sample(
              "tyres-on-fern-trail",
              6,
              18,
              true,
              List.of(
                  new Recipe("lap time", 96.2, new double[] {0, 1.9, 0.1}, 0.5, -0.5, 2),
                  new Recipe("grip", 55, new double[] {0, -14, 3}, 7, 0, 0),
                  new Recipe("braking", 6, new double[] {0, -1, 1}, 1, 0, 0),
                  new Recipe("dabs", 2, new double[] {0, 3, 0}, 0.8, 0, 0))),
          new Sample(
              "tyres-on-root-garden",
              7,
              24,
              true,
              List.of(
                  new Recipe("dabs", 4.0, new double[] {0, -2.4}, 0.9, 0, 0),
                  new Recipe("straight sector", 24.1, new double[] {0, 1.0}, 0.3, 0, 2),
                  new Recipe("confidence", 5.5, new double[] {0, 1.2}, 1, 0, 0))),
          new Sample(
              "null-run-on-quarry-loop",
              8,
              16,
              true,
              List.of(
                  new Recipe("lap time", 99.8, new double[] {0, 0}, 0.5, -0.3, 2),
                  new Recipe("grip in corners", 48, new double[] {0, 0}, 8, 0, 0))),
          new Sample(
              "clicks-on-wet-steps",
              9,
              12,
              true,
              List.of(
                  new Recipe("lap time", 88.0, new double[] {0, -1.3}, 0.5, 0.4, 2),
                  new Recipe("feel over steps", 5, new double[] {0, 1}, 1, 0, 0))),
          new Sample(
              "rebound-on-heron-line",
              11,
              16,
              true,
              List.of(
                  new Recipe("lap time", 93.4, new double[] {0, 0.5, 1.3, 2.3}, 0.5, -0.6, 2),
                  new Recipe("calm over rocks", 62, new double[] {0, -4, -9, -15}, 8, 0, 0),
                  new Recipe("upper sector", 28.2, new double[] {0, 0.2, 0.3, 0.5}, 0.25, 0, 2))),
          new Sample(
              "air-on-otter-traverse",
              12,
              18,
              true,
              List.of(
                  new Recipe("lap time", 151.2, new double[] {1.7, 0, 1.5}, 0.7, 0.5, 2),
                  new Recipe("support", 44, new double[] {0, 12, 5}, 8, 0, 0),
                  new Recipe("dabs", 1.5, new double[] {0, 0, 0}, 0.8, 0, 0))),
          new Sample(
              "dampers-on-dust-track",
              10,
              16,
              true,
              List.of(new Recipe("lap time", 132.0, new double[] {0, -1.6}, 0.6, -6, 2))),
          new Sample(
              "oils-on-larch-line",
              14,
              16,
              true,
              List.of(
                  new Recipe("lap time", 154.0, new double[] {0, -2.2}, 0.8, -0.5, 1),
                  new Recipe("top sector", 41.0, new double[] {0, -0.4}, 0.3, 0, 2),
                  new Recipe("calm over roots", 50, new double[] {0, 6}, 7, 0, 0))),
          new Sample(
              "levers-on-flat-lap",
              11,
              12,
              true,
              List.of(new Recipe("feel", 5, new double[] {0, 0}, 0, 0, 0))),
          new Sample(
              "grips-on-moor-path",
              13,
              12,
              false,
              List.of(
                  new Recipe("lap time", 111.0, new double[] {0, 0.1}, 0.5, 0.3, 2),
                  new Recipe("sore hands", 35, new double[] {0, 22}, 6, 5, 0),
                  new Recipe("trust in corners", 6, new double[] {0, -1}, 1, 0, 0, 4))),
          new Sample(
              "wheels-on-windy-ridge",
              14,
              16,
              true,
              List.of(
                  new Recipe("lap time", 126.0, new double[] {0, -1.7}, 0.6, -0.5, 2),
                  new Recipe("calm", 60, new double[] {0, 2}, 7, 0, 0)),
              List.of(
                  new Beside("wind", 4, 1.8, 1, 0.8, 11), new Beside("legs", 4, 1.2, 0, 0.1, 0))),
          new Sample(
              "saddles-on-stone-ladder",
              15,
              12,
              true,
              List.of(
                  new Recipe("lap time", 173.0, new double[] {0, -1.9}, 0.7, -0.8, 2),
                  new Recipe("footing", 55, new double[] {0, 3}, 8, 0, 0)),
              List.of(),
              Map.of(5, 6.4, 11, 9.1, 16, 4.8, 24, 7.7, 32, 5.9),
              Map.of(20, "puncture")),
          new Sample(
              "pedals-on-gravel-bowl",
              16,
              14,
              false,
              List.of(
                  new Recipe("lap time", 137.0, new double[] {0, -1.9}, 0.7, -0.6, 2),
                  new Recipe("footing", 48, new double[] {0, 9}, 8, 0, 0)),
              List.of(),
              Map.of(6, 3.1),
              Map.of(6, "traffic")),
          new Sample(
              "inserts-on-chalk-cutting",
              17,
              12,
              false,
              List.of(
                  new Recipe("lap time", 121.0, new double[] {0, 1.8}, 0.6, -0.5, 2),
                  new Recipe("sore feet", 30, new double[] {0, 4}, 6, 4, 0))),
          new Sample(
              "forks-on-juniper-chute",
              18,
              16,
              true,
              List.of(new Recipe("calm over stones", 52, new double[] {0, 9}, 7, 0, 0))));

  private SampleLaps() {}

  /** Writes the laps of all samples made here. */
  public static void main(String[] arguments) throws IOException {
    Path folder = Path.of(arguments[0]);
    for (Sample sample : SAMPLES) {
      Files.writeString(folder.resolve(sample.name()).resolve("laps.csv"), laps(sample));
    }
  }

  private static String laps(Sample sample) throws IOException {
    Path notebook = Files.createTempDirectory("sample").resolve("sample.blindlap");
    Clock clock = Clock.fixed(java.time.Instant.EPOCH, ZoneId.of("UTC"));
    var ids = SampleSources.stream(sample.name(), "id");
    try (Desk desk =
        new Desk(
            SqliteNotebook.open(notebook, ids.exactly(16), clock.instant()),
            clock,
            SampleSources.of(sample.name()),
            new SealParameters(1_000),
            ids)) {
      SampleSession session = new SampleSession(sample.name(), desk);
      Plan plan = session.preview().plan().orElseThrow();
      if (plan.blinding().level() == BlindLevel.DRAWN
          || plan.blinding().level() == BlindLevel.MASKED) {
        OpenKey key = desk.notebook().cover(session.cover().id()).orElseThrow().key().orElseThrow();
        return text(sample, plan, key::setup);
      }
      HelperSchedule schedule = session.commit().sealed().schedule();
      return text(sample, plan, stint -> schedule.fit(stint).fitted());
    }
  }

  private static String text(Sample sample, Plan plan, IntUnaryOperator order) {
    Random random = new Random(sample.seed());
    StringBuilder out = new StringBuilder("lap");
    sample.recipes().forEach(r -> out.append(',').append(r.measure()));
    sample.covariates().forEach(c -> out.append(',').append(c.covariate()));
    out.append(sample.voids().isEmpty() ? "" : ",void");
    out.append(sample.guesses() ? ",guess\n" : "\n");
    for (int stint = 1; stint <= sample.last(); stint++) {
      int fitted = order.applyAsInt(stint);
      StringBuilder beside = new StringBuilder();
      double effect = 0;
      for (Beside each : sample.covariates()) {
        double said = Math.max(0, each.base() + each.scatter() * random.nextGaussian());
        effect += each.effect() * (said - each.base());
        beside.append(',').append(stint == each.missing() ? "" : decimal(said, each.decimals()));
      }
      for (int lap = 1; lap <= plan.laps().perStint(); lap++) {
        int number = (stint - 1) * plan.laps().perStint() + lap;
        out.append(number);
        double slip = sample.slips().getOrDefault(number, 0.0);
        double t = (stint - 0.5) / plan.stints();
        for (Recipe recipe : sample.recipes()) {
          double value =
              recipe.base()
                  + recipe.effects()[fitted]
                  + recipe.drift() * t
                  + recipe.noise() * random.nextGaussian()
                  + (recipe == sample.recipes().get(0) ? effect + slip : 0);
          out.append(',').append(stint == recipe.missing() ? "" : number(plan, recipe, value));
        }
        out.append(beside);
        String spoiled = sample.voids().getOrDefault(number, "");
        out.append(sample.voids().isEmpty() ? "" : "," + spoiled);
        boolean last = lap == plan.laps().perStint();
        out.append(sample.guesses() ? "," + (last ? guess(plan, fitted, random) : "") : "");
        out.append('\n');
      }
    }
    return out.toString();
  }

  private static String number(Plan plan, Recipe recipe, double value) {
    Measure.Kind kind = plan.measure(recipe.measure()).orElseThrow().kind();
    double most = kind == Measure.Kind.COUNT ? 9999 : kind.most();
    double inside = Math.max(kind.least(), Math.min(most, value));
    return decimal(inside, recipe.decimals());
  }

  private static String decimal(double value, int decimals) {
    return String.format(Locale.ROOT, "%." + decimals + "f", value);
  }

  /** Half of the guesses are "don't know", the rest barely better than chance. */
  private static String guess(Plan plan, int fitted, Random random) {
    if (random.nextInt(3) == 0) {
      return "-";
    }
    boolean lucky = random.nextInt(100) < 15;
    if (plan.steps() != null) {
      int end = lucky ? 2 * fitted / plan.setups().size() : random.nextInt(2);
      return end == 0 ? "low" : "high";
    }
    int setup = lucky ? fitted : random.nextInt(plan.setups().size());
    return String.valueOf((char) ('A' + setup));
  }
}
