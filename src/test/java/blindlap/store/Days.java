package blindlap.store;

import blindlap.exchange.PlanReader;
import blindlap.exchange.Protocols;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.seal.HelperLock;
import blindlap.seal.Sealed;
import blindlap.seal.Sealing;
import blindlap.seal.SessionKind;
import blindlap.session.Fact;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import blindlap.session.day.Source;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Invented test days for the tests of the notebook. */
final class Days {
  static final Instant MORNING = Instant.parse("2026-11-14T08:30:00Z");
  static final ZoneId ZONE = ZoneId.of("Europe/Vienna");

  /** The eight-stint set: 50 admissible orders. */
  static final String EIGHT =
      "rule: {setups: 2, stints: 8, block: 8, max_run: 3, min_trend_efficiency: 0.8}\n";

  private Days() {}

  /** Shock K against Shock L over 8, 16 or 24 stints, with six measures. */
  static Plan plan(String rider, String trail, int stints) {
    String rule = stints == 8 ? EIGHT : "rule: {setups: 2, stints: " + stints + ", block: 4}\n";
    return read(
        """
        question: Is Shock L quicker than Shock K on %s?
        expectations: {tester: Shock K quicker by about a second}
        rider: %s
        trail: %s
        day: 2026-11-14
        setups: [{name: Shock K}, {name: Shock L}]
        measures:
          - {name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 1.0}
          - {name: sector, kind: sector time, unit: s}
          - {name: grip, kind: line scale, unit: points, low_words: none, high_words: complete}
          - {name: comfort, kind: line scale, unit: points, low_words: none, high_words: complete}
          - {name: trust, kind: category scale, unit: points, low_words: none, high_words: complete}
          - {name: bottom-outs, kind: count, unit: a lap}
        stints: %d
        laps: {warm_up: 1}
        """
                .formatted(trail, rider, trail, stints)
            + rule);
  }

  static Plan read(String yaml) {
    PlanReader.Reading reading = PlanReader.read(yaml, Protocols.NONE);
    if (reading.plan() == null || !reading.problems().isEmpty()) {
      throw new IllegalArgumentException(reading.problems().toString());
    }
    return reading.plan();
  }

  /** An id that a number gives. */
  static SessionId session(long number) {
    return SessionId.of(new SeededBytes(number).next(16));
  }

  static byte[] planBytes(Plan plan) {
    return PlanJson.bytes(plan);
  }

  static Sealed seal(Plan plan, SessionId session, Sealing sealing) {
    return sealing.seal(
        planBytes(plan),
        plan.rule(),
        session.text(),
        SessionKind.comparison(),
        sealing.drawPhrase(plan.rule()).unasked());
  }

  static Fact.PlanCommitted committed(Plan plan, Sealed sealed) {
    return new Fact.PlanCommitted(
        plan,
        new String(planBytes(plan), StandardCharsets.UTF_8),
        sealed.key(),
        sealed.fingerprint(),
        sealed.codes(),
        List.of("M. Oster"));
  }

  /** A committed plan from a seed. */
  static Fact.PlanCommitted committed(Plan plan, SessionId session, long seed) {
    return committed(plan, seal(plan, session, SeededBytes.sealing(seed)));
  }

  /** What the helper enters for a stint. */
  static Fact handled(
      Sealing sealing, HelperLock lock, SessionId session, int stint, String words) {
    return new Fact.StintHandled(sealing.record(lock, session.text(), stint, words));
  }

  /** A lap with a value of every measure. */
  static List<Fact> lap(Plan plan, int stint, Random random) {
    LapId lap = new LapId(stint, 1);
    List<Fact> facts = new ArrayList<>();
    facts.add(new Fact.LapRidden(lap, Source.SCREEN));
    for (Measure measure : plan.measures()) {
      facts.add(
          new Fact.ScoreGiven(lap, measure.name(), value(measure.kind(), random), Source.SCREEN));
    }
    return facts;
  }

  private static BigDecimal value(Measure.Kind kind, Random random) {
    return switch (kind) {
      case LAP_TIME -> BigDecimal.valueOf(180_000 + random.nextInt(9_000), 3);
      case SECTOR_TIME -> BigDecimal.valueOf(41_000 + random.nextInt(3_000), 3);
      case LINE_SCALE -> BigDecimal.valueOf(10 + random.nextInt(80));
      case CATEGORY_SCALE -> BigDecimal.valueOf(1 + random.nextInt(9));
      case COUNT -> BigDecimal.valueOf(random.nextInt(6));
    };
  }

  static Fact guess(int stint, Random random) {
    return new Fact.GuessGiven(
        stint, new Guess(random.nextInt(2), Guess.Sureness.HUNCH, "sounded softer"));
  }
}
