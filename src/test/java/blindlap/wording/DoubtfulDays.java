package blindlap.wording;

import blindlap.plan.BlindLevel;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.plan.Setup;
import blindlap.review.DayRecord;
import blindlap.review.Days;
import blindlap.review.HelperFit;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.VoidEvent;
import blindlap.stats.compare.Scale;
import blindlap.stats.order.Orders;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;

/** Invented days with everything that may cast doubt on what they found. */
final class DoubtfulDays {
  private static final String TIME = "lap time";

  private DoubtfulDays() {}

  /** An invented day of any kind that a notebook may hold, with what may be wrong with it. */
  static DayRecord day(Random random, int setups) {
    return day(random, setups, Optional.empty());
  }

  /** The same at a blind level, at any of some where none is named. */
  static DayRecord day(Random random, int setups, Optional<BlindLevel> level) {
    Rule rule = setups == 2 ? Rule.blocks(2, 12, 4) : Rule.blocks(setups, 12, setups);
    Plan plan = plan(rule, level, random);
    String order = Days.order(rule, random);
    int[] fitted = Orders.parse(order);
    double noise = 0.3 + random.nextDouble();
    int last = random.nextInt(4) == 0 ? 9 : 12;
    List<DayRecord.Lap> laps = new ArrayList<>();
    double[] effects = random.doubles(setups, -1.6, 1.6).toArray();
    for (int stint = 1; stint <= last; stint++) {
      for (int lap = 1; lap <= plan.laps().scored(); lap++) {
        Map<String, BigDecimal> values = new HashMap<>();
        for (Measure measure : plan.measures()) {
          double shift = effects[fitted[stint - 1]] + noise * random.nextGaussian();
          values.put(measure.name(), value(measure, shift));
        }
        boolean gone = random.nextInt(14) == 0;
        laps.add(
            new DayRecord.Lap(
                new LapId(stint, lap),
                true,
                values,
                gone
                    ? Optional.of(new LapState.Voided(VoidEvent.TRAFFIC, "", random.nextBoolean()))
                    : Optional.empty(),
                ""));
      }
    }
    SortedMap<Integer, Guess> guesses = new TreeMap<>();
    SortedMap<Integer, HelperFit> fits = new TreeMap<>();
    for (int stint = 1; stint <= last; stint++) {
      boolean knows = random.nextInt(3) > 0;
      guesses.put(stint, new Guess(knows ? fitted[stint - 1] : random.nextInt(setups), null, ""));
      int on = random.nextInt(40) == 0 ? (fitted[stint - 1] + 1) % setups : fitted[stint - 1];
      fits.put(stint, new HelperFit(stint, on, Map.of(), ""));
    }
    SortedMap<Integer, String> broken = new TreeMap<>();
    if (random.nextInt(4) == 0) {
      broken.put(1 + random.nextInt(last), "saw it");
    }
    return new DayRecord(
        "0123456789abcdef",
        plan,
        Days.day(plan, order, Map.of()).key(),
        laps,
        guesses,
        broken,
        last,
        fits,
        List.of());
  }

  private static BigDecimal value(Measure measure, double shift) {
    double value =
        switch (measure.kind()) {
          case LAP_TIME, SECTOR_TIME -> 90 + shift;
          case LINE_SCALE -> 50 + 5 * shift;
          case CATEGORY_SCALE -> Math.max(1, Math.min(9, 5 + shift));
          case COUNT -> Math.max(0, 3 + shift);
        };
    int decimals =
        measure.kind() == Measure.Kind.COUNT || measure.kind() == Measure.Kind.CATEGORY_SCALE
            ? 0
            : 2;
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
  }

  private static <T> T any(Random random, T[] values) {
    return values[random.nextInt(values.length)];
  }

  private static Plan plan(Rule rule, Optional<BlindLevel> fixed, Random random) {
    Scale scale = random.nextInt(3) == 0 ? Scale.RATIO : Scale.RAW;
    List<Measure> measures =
        List.of(
            Days.measure(
                TIME,
                Measure.Kind.LAP_TIME,
                Measure.Role.PRIMARY,
                any(random, Measure.Better.values()),
                "0.8",
                scale),
            measure("grip", Measure.Kind.LINE_SCALE, Measure.Role.SECONDARY, random),
            measure("trust", Measure.Kind.CATEGORY_SCALE, Measure.Role.SECONDARY, random),
            measure("dabs", Measure.Kind.COUNT, Measure.Role.WATCH_FOR_HARM, random));
    Plan plain = Days.plan(rule, measures);
    List<Setup> setups = plain.setups().stream().map(s -> priced(s, random)).toList();
    int roll = random.nextInt(10);
    BlindLevel level =
        fixed.orElse(roll < 2 ? BlindLevel.OPEN : roll < 3 ? BlindLevel.DRAWN : BlindLevel.HELPER);
    return new Plan(
        plain.kind(),
        plain.question(),
        plain.expectations(),
        plain.rider(),
        plain.trail(),
        plain.day(),
        "",
        setups,
        plain.change(),
        null,
        "",
        List.of(),
        measures,
        plain.protocol(),
        plain.stints(),
        new Plan.Laps(2, 0, 1 + random.nextInt(2)),
        Days.at(level, plain).blinding(),
        null,
        null,
        "",
        null,
        null,
        List.of(),
        List.of(),
        null,
        null,
        null);
  }

  private static Measure measure(String name, Measure.Kind kind, Measure.Role role, Random random) {
    Measure.Better better = random.nextBoolean() ? Measure.Better.LOWER : Measure.Better.HIGHER;
    return Days.measure(name, kind, role, better, "1", Scale.RAW);
  }

  private static Setup priced(Setup s, Random random) {
    return new Setup(
        s.id(),
        s.name(),
        "",
        List.of(),
        BigDecimal.valueOf(400 + random.nextInt(3) * 20L),
        "",
        null,
        new Setup.Price(BigDecimal.valueOf(100 + random.nextInt(3) * 50L), "EUR"),
        List.of(),
        List.of(),
        null,
        List.of(),
        List.of());
  }
}
