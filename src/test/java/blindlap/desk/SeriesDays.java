package blindlap.desk;

import blindlap.plan.Plan;
import blindlap.seal.HelperSchedule;
import blindlap.seal.SealParameters;
import blindlap.seal.SecureBytes;
import blindlap.seal.SessionKind;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.store.SqliteNotebook;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/**
 * A notebook in which sessions of a series are committed, ridden, closed and unsealed. Codes,
 * nonces, phrases and ids are the same for all seeds of the order; only orders follow from it.
 */
public final class SeriesDays implements AutoCloseable {
  /** Name of the series. */
  public static final String SERIES = "k-or-l";

  private static final String PLAN =
      """
      question: Is Shock L quicker than Shock K on every day?
      rider: %s
      trail: Quarry loop
      day: %s
      setups: %s
      measures: [%s]
      protocol: %s
      stints: %d
      series: k-or-l
      %s
      """;

  private static final String LAP_TIME =
      "{name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 0.5}";

  /** Three more, of which the riders say a number after every lap. */
  private static final String SCALES =
      ", {name: grip, kind: line scale, unit: points, role: secondary, low_words: loose,"
          + " high_words: glued},"
          + " {name: braking, kind: line scale, unit: points, role: secondary, low_words: weak,"
          + " high_words: strong},"
          + " {name: arms, kind: line scale, unit: points, better: lower, role: watch for harm,"
          + " worthwhile: 5, low_words: fresh, high_words: pumped}";

  private final Desk desk;
  private final Map<SessionId, String> phrases = new LinkedHashMap<>();
  private final SetClock clock = new SetClock(Instant.parse("2026-10-01T08:00:00Z"));

  /** What a session is to be like. */
  public record Day(
      String rider, String day, int declared, double effect, double noise, boolean depends) {}

  public SeriesDays(Path folder, long orderSeed) {
    SecureBytes ids = FixedSources.stream(7);
    desk =
        new Desk(
            SqliteNotebook.open(
                folder.resolve("quarry.blindlap"),
                FixedSources.stream(9).exactly(16),
                clock.instant()),
            clock,
            FixedSources.of(FixedSources.stream(1000 + orderSeed)),
            new SealParameters(1_000),
            ids);
  }

  /** The desk on the notebook. */
  public Desk desk() {
    return desk;
  }

  /** Commits, rides and closes a session of two setups in sixteen stints. */
  public SessionId ride(Day day) {
    return ride(day, "[{name: Shock K}, {name: Shock L}]", "blocks-of-four", 16);
  }

  /** Commits, rides and closes a session. */
  public SessionId ride(Day day, String setups, String protocol, int stints) {
    return ride(day, setups, LAP_TIME, protocol, stints);
  }

  private SessionId ride(Day day, String setups, String measures, String protocol, int stints) {
    SessionId id = commit(day, setups, measures, protocol, stints);
    boolean scales = measures.endsWith(SCALES);
    SessionState state = state(id);
    HelperSchedule schedule =
        ((Keys.Result.Open) desk.keys().helper(state, phrases.get(id))).schedule();
    Random random = new Random(day.day().hashCode() + 31L * day.rider().hashCode());
    StringBuilder laps = new StringBuilder("lap;lap time");
    laps.append(scales ? ";grip;braking;arms\n" : "\n");
    for (int lap = 1; lap <= stints; lap++) {
      int fitted = schedule.fit(lap).fitted();
      double shift = day.depends() ? day.effect() * fitted : 0;
      laps.append(
          String.format(
              Locale.ROOT,
              "%d;%.2f",
              lap,
              95 - 0.05 * lap + shift + day.noise() * random.nextGaussian()));
      laps.append(scales ? said(stints, lap, fitted, random) : "").append('\n');
    }
    new LapFiles(desk.sessions()).record(state, laps.toString().getBytes(StandardCharsets.UTF_8));
    desk.riderDays().closeDay(id);
    desk.keys().closeReview(id);
    clock.move(Duration.ofDays(1));
    return id;
  }

  /** Points on three scales; of days of eight stints one scale has gaps, one does harm. */
  private static String said(int stints, int lap, int fitted, Random random) {
    boolean eight = stints == 8;
    String braking = eight && lap == 5 ? "" : String.valueOf(40 + random.nextInt(6));
    int arms = 20 + random.nextInt(7) + (eight ? 12 : -1) * fitted;
    return ";%d;%s;%d".formatted(50 + 6 * fitted + random.nextInt(9), braking, arms);
  }

  /**
   * Commits, rides, closes and unseals sessions with four measures, one a rider's name; the second
   * plan lists the setups the other way round.
   *
   * @param measure further fields of the primary measure, such as ", scale: ratio"
   */
  public void withScales(List<String> riders, String measure, String protocol, int stints) {
    String primary = LAP_TIME.replace("}", measure + "}") + SCALES;
    for (int i = 0; i < riders.size(); i++) {
      Day day =
          new Day(riders.get(i), "2026-10-%02d".formatted(3 + 2 * i), riders.size(), -1, 0.7, true);
      String setups =
          i == 1 ? "[{name: Shock L}, {name: Shock K}]" : "[{name: Shock K}, {name: Shock L}]";
      ride(day, setups, primary, protocol, stints);
    }
    unsealAll();
  }

  /** Commits a session and leaves it. */
  public SessionId commit(Day day) {
    return commit(day, "[{name: Shock K}, {name: Shock L}]", LAP_TIME, "blocks-of-four", 16);
  }

  private SessionId commit(Day day, String setups, String measures, String protocol, int stints) {
    String declared = day.declared() > 0 ? "series_sessions: " + day.declared() : "";
    PlanPreview preview =
        PlanPreview.of(
            PLAN.formatted(day.rider(), day.day(), setups, measures, protocol, stints, declared),
            desk.protocols());
    Plan plan =
        preview.plan().orElseThrow(() -> new AssertionError("refused: " + preview.problems()));
    // What this notebook would refuse comes from one that knows nothing of the series.
    Committing.Result.Committed committed =
        desk.seriesPlans().refusals(plan).isEmpty()
            ? Commits.commit(desk, plan, SessionKind.comparison(), List.of(day.rider()))
            : Commits.elsewhere(desk, plan, phrases.size());
    SessionId id = committed.state().id();
    phrases.put(id, committed.sealed().phrase().text());
    return id;
  }

  /** The session as it stands on disk. */
  public SessionState state(SessionId id) {
    return desk.sessions().state(id).orElseThrow();
  }

  /** Unseals a session. */
  public Sessions.Result unseal(SessionId id) {
    clock.move(Duration.ofHours(1));
    return desk.keys().unseal(state(id), phrases.get(id));
  }

  /** Unseals every session whose review is closed. */
  public void unsealAll() {
    for (SessionId id : new ArrayList<>(phrases.keySet())) {
      if (state(id).step() == blindlap.session.day.Step.REVIEW_CLOSED
          && !(unseal(id) instanceof Sessions.Result.Done)) {
        throw new AssertionError("not unsealed: " + id);
      }
    }
  }

  /** Four sessions of one rider, declared and unsealed. */
  public void oneRider() {
    String[] days = {"2026-10-03", "2026-10-10", "2026-10-17", "2026-10-24"};
    double[] effects = {-1.6, -0.9, -1.3, -0.4};
    for (int i = 0; i < days.length; i++) {
      ride(new Day("R. Lind", days[i], 4, effects[i], 0.9 - 0.15 * i, true));
    }
    unsealAll();
  }

  /** Six sessions of five riders, declared and unsealed. */
  public void riders() {
    String[] riders = {"R. Lind", "R. Lind", "M. Oster", "J. Brand", "T. Falk", "A. Reiter"};
    double[] effects = {-1.5, -1.1, -0.9, 0.2, -1.9, -1.2};
    for (int i = 0; i < riders.length; i++) {
      ride(
          new Day(
              riders[i],
              "2026-10-" + (3 + 2 * i < 10 ? "0" : "") + (3 + 2 * i),
              6,
              effects[i],
              0.7,
              true));
    }
    unsealAll();
  }

  /** Three setups and three riders, declared and unsealed. */
  void threeSetups() {
    for (int i = 0; i < 3; i++) {
      Day day =
          new Day(
              List.of("R. Lind", "M. Oster", "J. Brand").get(i),
              "2026-10-%02d".formatted(3 + 2 * i),
              3,
              -0.8,
              0.7,
              true);
      ride(day, "[{name: Shock K}, {name: Shock L}, {name: Shock M}]", "three-setups", 12);
    }
    unsealAll();
  }

  @Override
  public void close() {
    desk.close();
  }
}
