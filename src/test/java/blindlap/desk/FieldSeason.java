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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/** A season: days of two and three shocks of which the true lap times are known. */
public final class FieldSeason implements AutoCloseable {
  /** Seconds a lap against Shock K, with price and mass. */
  private static final Map<String, String> SHOCKS =
      Map.of(
          "K", "{name: Shock K, price: {amount: 420, currency: EUR}, mass: 742 g}",
          "L", "{name: Shock L, price: {amount: 600, currency: EUR}, mass: 882 g}",
          "M", "{name: Shock M, price: {amount: 510, currency: EUR}, mass: 815 g}",
          "N", "{name: Shock N, price: {amount: 390, currency: EUR}, mass: 760 g}",
          "P", "{name: Shock P, price: {amount: 740, currency: EUR}, mass: 905 g}",
          "Q", "{name: Shock Q}",
          "R", "{name: Shock R}");

  private static final Map<String, Double> SECONDS =
      Map.of("K", 0.0, "L", -2.0, "M", -1.3, "N", -0.1, "P", -2.3, "Q", 0.6, "R", 1.0);

  private static final String PLAN =
      """
      question: Which is quicker?
      rider: R. Lind
      trail: Quarry loop
      day: %s
      setups: [%s]
      measures:
        - {name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 0.5}
        - {name: grip, kind: line scale, unit: points, role: secondary, low_words: loose, high_words: glued}
      protocol: %s
      stints: %d
      """;

  private final Desk desk;
  private final Map<SessionId, String> phrases = new LinkedHashMap<>();
  private boolean counted;
  private final SetClock clock = new SetClock(Instant.parse("2026-08-01T08:00:00Z"));

  /** A season in a notebook of this folder. */
  public FieldSeason(Path folder) {
    SecureBytes ids = FixedSources.stream(7);
    desk =
        new Desk(
            SqliteNotebook.open(
                folder.resolve("quarry.blindlap"),
                FixedSources.stream(9).exactly(16),
                clock.instant()),
            clock,
            FixedSources.of(FixedSources.stream(1003)),
            new SealParameters(1),
            ids);
  }

  /** The desk on the notebook. */
  public Desk desk() {
    return desk;
  }

  /** A day goes by. */
  public void later() {
    clock.move(Duration.ofDays(1));
  }

  /** The plan of a day, such as "KL" on 2026-08-29. */
  public static String plan(String shocks, String day) {
    boolean two = shocks.length() == 2;
    String setups =
        String.join(", ", shocks.chars().mapToObj(c -> SHOCKS.get("" + (char) c)).toList());
    return PLAN.formatted(day, setups, two ? "blocks-of-four" : "three-setups", 12);
  }

  /** Commits, rides, closes and unseals a day whose leads are the true ones. */
  public SessionId ride(String shocks, String day) {
    return unseal(close(plan(shocks, day), SECONDS, 0.5));
  }

  /** The same, one setup being this much slower on that day alone. */
  public SessionId rideChanged(String shocks, String day, String changed, double seconds) {
    Map<String, Double> true_ = new LinkedHashMap<>(SECONDS);
    true_.merge(changed, seconds, Double::sum);
    return unseal(close(plan(shocks, day), true_, 0.5));
  }

  /** Commits, rides and closes a day of any plan with these shocks. */
  public SessionId close(String yaml) {
    return close(yaml, SECONDS, 0.5);
  }

  /** The same with a measure that is counted: whole numbers around eight. */
  public SessionId close(String yaml, boolean counted) {
    this.counted = counted;
    try {
      return close(yaml);
    } finally {
      this.counted = false;
    }
  }

  /** Commits a plan and leaves it. */
  public SessionId commit(String yaml, SessionKind kind) {
    PlanPreview preview = PlanPreview.of(yaml, desk.protocols());
    Plan plan =
        preview.plan().orElseThrow(() -> new AssertionError("refused: " + preview.problems()));
    Committing.Result.Committed committed = Commits.commit(desk, plan, kind, List.of(plan.rider()));
    SessionId id = committed.state().id();
    phrases.put(id, committed.sealed().phrase().text());
    return id;
  }

  /** Fixes an open noise run, which has no key. */
  public SessionId commitOpen(String yaml) {
    Plan plan = PlanPreview.of(yaml, desk.protocols()).plan().orElseThrow();
    return desk.committing().fix(plan, List.of(plan.rider())).state().id();
  }

  private SessionId close(String yaml, Map<String, Double> seconds, double noise) {
    return closed(commit(yaml, SessionKind.comparison()), seconds, noise);
  }

  /** Rides and closes what is committed, with the true leads. */
  public SessionId closed(SessionId id) {
    return closed(id, SECONDS, 0.5);
  }

  /** The same of a day that ends early, by someone who does not know the key; unsealed. */
  public SessionId cutShort(String yaml, int last) {
    SessionId id = commit(yaml, SessionKind.comparison());
    return unseal(closed(id, SECONDS, 0.5, last));
  }

  private SessionId closed(SessionId id, Map<String, Double> seconds, double noise) {
    return closed(id, seconds, noise, state(id).plan().stints());
  }

  /**
   * The same of a day that a look before its end stopped: ridden so far, looked at, cut short,
   * closed and unsealed.
   */
  public SessionId stoppedByALook(String yaml, int last) {
    SessionId id = commit(yaml, SessionKind.comparison());
    record(id, SECONDS, 0.5, last);
    HelperDays.Opened.Day day =
        (HelperDays.Opened.Day) desk.helperDays().open(state(id), phrases.get(id));
    if (!(new Looking(day.day()).look(last) instanceof Looking.Result.Taken taken
        && taken.settled())) {
      throw new AssertionError("the look after stint " + last + " did not stop the day");
    }
    return unseal(end(id, last));
  }

  private SessionId closed(SessionId id, Map<String, Double> seconds, double noise, int last) {
    record(id, seconds, noise, last);
    return end(id, last);
  }

  private void record(SessionId id, Map<String, Double> seconds, double noise, int last) {
    SessionState state = state(id);
    Plan plan = state.plan();
    HelperSchedule schedule =
        ((Keys.Result.Open) desk.keys().helper(state, phrases.get(id))).schedule();
    Random random = new Random(plan.day().toEpochDay() * 31 + plan.setups().hashCode() % 7);
    StringBuilder laps = new StringBuilder("lap;" + plan.measures().get(0).name() + "\n");
    for (int lap = 1; lap <= last * plan.laps().perStint(); lap++) {
      int stint = (lap - 1) / plan.laps().perStint() + 1;
      String name = plan.setups().get(schedule.fit(stint).fitted()).name();
      double shift = seconds.getOrDefault(name.substring(name.length() - 1), 0.0);
      double value = (counted ? 8 : 95 - 0.03 * lap) + shift + noise * random.nextGaussian();
      laps.append(String.format(Locale.ROOT, counted ? "%d;%.0f%n" : "%d;%.2f%n", lap, value));
    }
    new LapFiles(desk.sessions()).record(state, laps.toString().getBytes(StandardCharsets.UTF_8));
  }

  private SessionId end(SessionId id, int last) {
    if (last < state(id).plan().stints()) {
      desk.riderDays().cutShort(id, last, "dark", "R. Lind", false);
    }
    desk.riderDays().closeDay(id);
    desk.keys().closeReview(id);
    clock.move(Duration.ofDays(7));
    return id;
  }

  /** The session as it stands. */
  public SessionState state(SessionId id) {
    return desk.sessions().state(id).orElseThrow();
  }

  /** Unseals a closed session. */
  public SessionId unseal(SessionId id) {
    Sessions.Result result = desk.keys().unseal(state(id), phrases.get(id));
    if (!(result instanceof Sessions.Result.Done)) {
      throw new AssertionError("not unsealed: " + result);
    }
    return id;
  }

  /** K, L and N in a ring, K and M, M and P: P only follows. */
  public FieldSeason whole() {
    ride("KN", "2026-08-29");
    ride("LN", "2026-09-12");
    ride("KM", "2026-09-26");
    ride("MP", "2026-10-24");
    ride("KL", "2026-11-14");
    return this;
  }

  @Override
  public void close() {
    desk.close();
  }
}
