package blindlap.desk;

import blindlap.plan.Plan;
import blindlap.seal.SealParameters;
import blindlap.seal.SecureBytes;
import blindlap.seal.SessionKind;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import blindlap.store.SqliteNotebook;
import blindlap.timing.TimeRecord;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A committed session on a real notebook, with every source fixed. Only the order follows from the
 * seed; codes, nonce, warm-up, phrase, salt and IVs are the same for all seeds.
 */
public final class TestDay implements AutoCloseable {
  /** Eight stints, 50 orders, one of each kind of measure. */
  public static final String EIGHT =
      """
      question: Is Shock L quicker than Shock K?
      rider: R. Lind
      trail: Quarry loop
      day: 2026-11-14
      setups:
        - name: Shock K
          settings:
            - {name: compression, value: 9, unit: clicks, tolerance: 0}
            - {name: sag, value: 26, unit: "%", tolerance: 1, readings: 3}
          steps: [Rider in the hut, Bike in the stand and covered, Fit the shock, Set clicks and check sag, Cycle the bike ten times]
          limits:
            - {what: shock bolts, value: 12 N.m, source: "manual of the invented shock, p. 14"}
        - name: Shock L
          settings:
            - {name: compression, value: 6, unit: clicks, tolerance: 0}
            - {name: sag, value: 26, unit: "%", tolerance: 1, readings: 3}
          steps: [Rider in the hut, Bike in the stand and covered, Fit the shock, Set clicks and check sag, Cycle the bike ten times]
          limits:
            - {what: shock bolts, value: 12 N.m, source: "manual of the invented shock, p. 9"}
      bike:
        - {name: front tyre, value: 1.55, unit: bar, tolerance: 0.03, check: each lap}
      measures:
        - {name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 0.5}
        - {name: grip in the rocks, kind: line scale, unit: points, low_words: none at all, high_words: all I could ask for}
        - {name: harshness at the hands, kind: line scale, unit: points, low_words: none at all, high_words: unbearable}
        - {name: trust, kind: category scale, unit: points, low_words: none, high_words: complete}
        - {name: feet off the pedals, kind: count, unit: a lap}
      protocol: eight-stints
      stints: 8
      laps: {warm_up: 1, settling: 0, scored: 1}
      blinding: {helper: M. Oster, cover: Cloth over the shock}
      timetable: {zone: Europe/Vienna, start: "09:00", daylight_end: "16:38", lap: 2, climb: 8, swap: 7, scoring: 2, lap_budget: 12}
      """;

  /** Sixteen stints in blocks of four, 1,296 orders. */
  public static final String SIXTEEN =
      EIGHT
          .replace("protocol: eight-stints\nstints: 8", "protocol: blocks-of-four\nstints: 16")
          .replace("lap_budget: 12", "lap_budget: 20");

  /** The same day at another blind level, such as "level: drawn". */
  public static String at(String level) {
    return EIGHT.replace(
        "blinding: {helper: M. Oster, cover: Cloth over the shock}", "blinding: {" + level + "}");
  }

  private static final SealParameters QUICK = new SealParameters(1);

  /** Plans that were read before: they depend on nothing but their text. */
  private static final Map<String, Plan> READ = new ConcurrentHashMap<>();

  private final Desk desk;
  private final SessionId id;
  private final String phrase;
  private final SetClock clock;

  /** A day in a new notebook file of the folder. */
  public TestDay(Path folder, String plan, long orderSeed) {
    this(folder.resolve("day-" + orderSeed + ".blindlap"), plan, orderSeed, Optional.empty());
  }

  /**
   * A day in a new notebook file.
   *
   * @param nullRun the setup that is ridden under all names, from 0; empty for a comparison
   */
  public TestDay(Path file, String plan, long orderSeed, Optional<Integer> nullRun) {
    clock = new SetClock(Instant.parse("2026-11-14T08:00:00Z"));
    SecureBytes ids = FixedSources.stream(7);
    desk =
        new Desk(
            SqliteNotebook.open(file, ids.exactly(16), clock.instant()),
            clock,
            FixedSources.order(orderSeed),
            QUICK,
            ids);
    Plan read = READ.computeIfAbsent(plan, TestDay::read);
    if (plan.contains("level:") && read.blinding().level().shown()) {
      Committing.Result result = desk.committing().cover(read, List.of("R. Lind"));
      id = ((Committing.Result.Covered) result).state().id();
      phrase = "";
      return;
    }
    Committing.Result.Committed committed =
        Commits.commit(
            desk,
            read,
            nullRun.map(SessionKind::nullRun).orElseGet(SessionKind::comparison),
            List.of("R. Lind"));
    id = committed.state().id();
    phrase = committed.sealed().phrase().text();
  }

  private static Plan read(String plan) {
    PlanPreview preview = PlanPreview.of(plan, BundledProtocols.load());
    return preview.plan().orElseThrow(() -> new AssertionError("refused: " + preview.problems()));
  }

  /** The desk on its notebook. */
  public Desk desk() {
    return desk;
  }

  /** The session. */
  public SessionId id() {
    return id;
  }

  /** The helper phrase; empty where the order is covered. */
  public String phrase() {
    return phrase;
  }

  /** The clock of everything. */
  public SetClock clock() {
    return clock;
  }

  /** The session as it stands on disk. */
  public SessionState state() {
    return desk.sessions().state(id).orElseThrow();
  }

  /** A lap under the starter's watch; the clock moves on by its time. */
  public void watched(LapId lap, String measure, int seconds) {
    Instant start = clock.instant();
    desk.riderDays().watchStarted(id, lap, measure, start);
    clock.move(Duration.ofSeconds(seconds));
    TimeRecord time =
        new TimeRecord(
            start,
            clock.instant(),
            Duration.ofSeconds(seconds).toNanos(),
            TimeRecord.TimedBy.STARTER,
            null);
    desk.riderDays().time(id, lap, measure, time, false);
  }

  /** The helper's day, open. */
  public HelperDay helper() {
    HelperDays.Opened opened = desk.helperDays().open(state(), phrase);
    return ((HelperDays.Opened.Day) opened).day();
  }

  /** The drawn order as letters, by what the helper is told. */
  public String order() {
    HelperDay day = helper();
    StringBuilder letters = new StringBuilder();
    for (int stint = 1; stint <= day.plan().stints(); stint++) {
      letters.append((char) ('A' + day.work(stint).setup()));
    }
    return letters.toString();
  }

  @Override
  public void close() {
    desk.close();
  }
}
