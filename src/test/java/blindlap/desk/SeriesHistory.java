package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Plan;
import blindlap.review.SeriesFinding;
import blindlap.seal.SealParameters;
import blindlap.seal.SessionKind;
import blindlap.session.LifeCommands;
import blindlap.session.SeriesEnded;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.session.day.Step;
import blindlap.store.SqliteNotebook;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;

/** One history, and what really happened in it. */
final class SeriesHistory implements AutoCloseable {
  private static final String PLAN =
      """
      question: Is Shock L quicker than Shock K?
      rider: R. Lind
      trail: Quarry loop
      day: 2026-11-14
      setups: [{name: Shock K}, {name: Shock L}]
      measures: [{name: lap time, kind: lap time, unit: s, role: primary, worthwhile: %s}]
      protocol: eight-stints
      stints: 8
      %sseries: k-or-l
      series_sessions: %d
      """;

  private final Random random;
  final int declared;
  private final SetClock[] clocks = new SetClock[2];
  private final Desk[] desks = new Desk[2];
  private final List<SessionId> sessions = new ArrayList<>();
  private final Map<SessionId, Integer> home = new HashMap<>();
  private final Map<SessionId, String> phrases = new HashMap<>();
  private final Map<SessionId, Integer> closedAt = new HashMap<>();
  private final Map<SessionId, Integer> unsealedAt = new HashMap<>();
  private final List<String> held = new ArrayList<>();
  private final Map<SessionId, Integer> abandonedAt = new HashMap<>();
  private final List<SessionId> scored = new ArrayList<>();

  /** Abandoned with laps that count by someone who did not declare to know nothing. */
  final List<SessionId> undeclared = new ArrayList<>();

  private final long seed;
  boolean ended;
  int refused;
  private boolean oneClock = true;
  private int now;

  SeriesHistory(Path folder, long seed) {
    folder.toFile().mkdirs();
    this.seed = seed;
    random = new Random(seed);
    declared = 2 + random.nextInt(2);
    for (int i = 0; i < 2; i++) {
      // The second clock is wrong by up to five days, so that it misleads whoever believes it.
      clocks[i] =
          new SetClock(
              Instant.parse("2026-10-01T08:00:00Z")
                  .plus(Duration.ofHours(i * (random.nextInt(240) - 120))));
      desks[i] =
          new Desk(
              SqliteNotebook.open(
                  folder.resolve("book" + i + ".blindlap"),
                  FixedSources.stream(40 + i).exactly(16),
                  clocks[i].instant()),
              clocks[i],
              FixedSources.of(FixedSources.stream(1000 + 2 * seed + i)),
              new SealParameters(1),
              FixedSources.stream(2 * seed + i));
    }
  }

  void run() {
    if (seed % 4 == 1) {
      storms();
    } else if (seed % 8 == 3) {
      dropLate();
    } else {
      anything();
    }
    finish();
  }

  /** Days that a storm ends before a scored lap, or after some, and others in their place. */
  private void storms() {
    for (int i = 0; i < 12 && sessions.size() - abandonedAt.size() < declared; i++) {
      tick();
      int at = random.nextInt(2);
      int before = sessions.size();
      commit(at, 0);
      if (sessions.size() == before) {
        continue;
      }
      SessionId id = sessions.get(before);
      boolean storm = abandonedAt.size() < 2 && random.nextInt(3) > 0;
      if (!storm && random.nextBoolean()) {
        rideAndClose(id);
      } else if (storm && random.nextBoolean()) {
        abandon(at, id, random.nextBoolean());
      } else if (storm) {
        ride(at, id, 1 + random.nextInt(6));
        abandon(at, id, true);
      }
      sessions.forEach(each -> give(home.get(each), each));
    }
  }

  /**
   * Both notebooks commit, so that there is one session more than declared; with all of them closed
   * and one unsealed, the other notebook, which knows that, drops another.
   */
  private void dropLate() {
    commit(1, 0);
    for (int i = 0; i < declared; i++) {
      tick();
      commit(0, 0);
    }
    for (SessionId id : sessions) {
      tick();
      rideAndClose(id);
      give(home.get(id), id);
    }
    tick();
    sessions.stream().filter(id -> unsealedAt.isEmpty()).forEach(id -> unseal(0, id, false));
    sessions.forEach(id -> give(0, id));
    tick();
    sessions.stream()
        .filter(id -> !unsealedAt.containsKey(id) && abandonedAt.isEmpty())
        .forEach(id -> abandon(1, id, true));
    sessions.forEach(id -> give(1, id));
  }

  private void anything() {
    boolean honest = random.nextInt(3) == 0;
    int steps = 12 + random.nextInt(20);
    for (int i = 0; i < steps; i++) {
      tick();
      int at = random.nextInt(2);
      switch (random.nextInt(honest ? 5 : 7)) {
        case 0, 1 -> commit(at, honest ? 0 : random.nextInt(8));
        case 2, 3 -> any().ifPresent(this::rideAndClose);
        case 4 -> any().ifPresent(id -> give(at, id));
        case 5 -> any().filter(id -> random.nextInt(3) == 0).ifPresent(this::abandonSomewhere);
        default -> any().ifPresent(id -> unseal(at, id, random.nextInt(2) == 0));
      }
    }
    for (int i = 0; i < declared; i++) {
      commit(0, 0);
    }
    if (sessions.isEmpty()) {
      commit(0, 0);
    }
  }

  private void finish() {
    for (SessionId id : sessions) {
      tick();
      give(home.get(id), id);
      rideAndClose(id);
      give(home.get(id), id);
    }
    sessions.forEach(id -> give(1, id));
    for (SessionId id : sessions) {
      tick();
      unseal(0, id, false);
      give(0, id);
    }
  }

  private void tick() {
    now++;
    clocks[0].move(Duration.ofMinutes(20));
    clocks[1].move(Duration.ofMinutes(20));
  }

  private Optional<SessionId> any() {
    return sessions.isEmpty()
        ? Optional.empty()
        : Optional.of(sessions.get(random.nextInt(sessions.size())));
  }

  private boolean known(int at, SessionId id) {
    return desks[at].sessions().state(id).isPresent();
  }

  private SessionState state(int at, SessionId id) {
    return desks[at].sessions().state(id).orElseThrow();
  }

  private void commit(int at, int otherwise) {
    if (sessions.size() - Math.min(2, abandonedAt.size()) >= declared + 1) {
      return;
    }
    String text =
        PLAN.formatted(
            otherwise == 1 ? "0.3" : "0.5",
            covariate(otherwise),
            otherwise == 2 ? declared + 1 : declared);
    Plan plan = PlanPreview.of(text, desks[at].protocols()).plan().orElseThrow();
    if (!desks[at].seriesPlans().refusals(plan).isEmpty()) {
      refused++;
      return;
    }
    // All of the series is of this notebook, and one clock wrote it.
    boolean whole = sessions.stream().allMatch(id -> home.get(id) == at);
    Committing.Result.Committed committed =
        Commits.commit(desks[at], plan, SessionKind.comparison(), List.of("R. Lind"));
    SessionId id = committed.state().id();
    sessions.add(id);
    home.put(id, at);
    if (whole) {
      held.add(id.text());
    }
    phrases.put(id, committed.sealed().phrase().text());
  }

  /** One history in three declares a covariate; a plan with another meaning of it is refused. */
  private String covariate(int otherwise) {
    return windy()
        ? "covariates: [{name: wind, kind: wind, unit: %s, by: starter, reason: read}]\n"
            .formatted(otherwise == 3 ? "knots" : "m/s")
        : "";
  }

  boolean windy() {
    return seed % 3 == 0;
  }

  private void rideAndClose(SessionId id) {
    int at = home.get(id);
    if (!state(at, id).step().day()) {
      return;
    }
    ride(at, id, 8);
    desks[at].riderDays().closeDay(id);
    desks[at].keys().closeReview(id);
    assertThat(state(at, id).step()).isEqualTo(Step.REVIEW_CLOSED);
    closedAt.put(id, now);
  }

  private void ride(int at, SessionId id, int until) {
    StringBuilder laps = new StringBuilder(windy() ? "lap;lap time;wind\n" : "lap;lap time\n");
    Random winds = new Random(id.hashCode());
    for (int lap = 1; lap <= until; lap++) {
      laps.append(String.format(Locale.ROOT, "%d;%.2f", lap, 95 + random.nextGaussian()));
      laps.append(windy() ? ";" + winds.nextInt(12) : "").append('\n');
    }
    new LapFiles(desks[at].sessions())
        .record(state(at, id), laps.toString().getBytes(StandardCharsets.UTF_8));
    scored.add(id);
  }

  private void abandonSomewhere(SessionId id) {
    int at = random.nextInt(2);
    abandon(known(at, id) ? at : home.get(id), id, random.nextBoolean());
  }

  /** By the program's own way, or as an entry that came in from elsewhere. */
  private void abandon(int at, SessionId id, boolean declares) {
    String unaware = declares ? "R. Lind" : "";
    Sessions.Result result = desks[at].sessionList().abandon(id, "thunderstorm", unaware);
    if (result instanceof Sessions.Result.Refused) {
      result =
          desks[at]
              .sessions()
              .act(id, latest -> new LifeCommands(latest).abandon("thunderstorm", unaware));
    }
    if (result instanceof Sessions.Result.Done) {
      abandonedAt.merge(id, now, Math::min);
      oneClock &= home.get(id) == at;
      if (scored.contains(id) && !declares) {
        undeclared.add(id);
      }
    }
  }

  private void unseal(int at, SessionId id, boolean end) {
    if (!known(at, id)) {
      return;
    }
    Optional<SeriesEnded> ending =
        end ? Optional.of(new SeriesEnded("rain", "A. Quill")) : Optional.empty();
    Sessions.Result result = desks[at].keys().unseal(state(at, id), phrases.get(id), ending);
    if (result instanceof Sessions.Result.Done done) {
      unsealedAt.merge(id, now, Math::min);
      oneClock &= home.get(id) == at;
      ended |= done.written().stream().anyMatch(e -> e.entry().fact() instanceof SeriesEnded);
    }
  }

  /** Everything that one notebook knows of a session goes to the other. */
  private void give(int from, SessionId id) {
    if (known(from, id)) {
      desks[1 - from].notebook().addEntries(state(from, id).entries());
    }
  }

  SeriesFinding finding() {
    SeriesFinding here = desks[0].series().finding("k-or-l").orElseThrow();
    SeriesFinding there = desks[1].series().finding("k-or-l").orElseThrow();
    assertThat(there.verdict()).as("both notebooks").isEqualTo(here.verdict());
    assertThat(there.noVerdict()).isEqualTo(here.noVerdict());
    assertThat(there.peeks()).isEqualTo(here.peeks());
    return here;
  }

  /** Sessions that gave their place to another. */
  List<SessionId> replaced(SeriesFinding found) {
    return found.parts().stream()
        .filter(part -> part.fate() == SeriesFinding.Fate.ABANDONED)
        .map(part -> new SessionId(part.session()))
        .toList();
  }

  /** What really happened: it was abandoned before any seal of the series was opened. */
  boolean couldNotBeDroppedForItsResult(SessionId id) {
    return unsealedAt.values().stream().allMatch(unsealed -> abandonedAt.get(id) <= unsealed);
  }

  /** What really happened: a session that was still sealed was dropped once one was not. */
  boolean droppedLate() {
    return abandonedAt.keySet().stream()
        .anyMatch(id -> !couldNotBeDroppedForItsResult(id) && !unsealedAt.containsKey(id));
  }

  /** Sessions that commit held against their series, and that are not pooled for their plan. */
  List<String> refusedAtCommit(SeriesFinding found) {
    boolean oneNotebook = sessions.stream().map(home::get).distinct().count() == 1;
    return found.parts().stream()
        .filter(part -> oneNotebook && oneClock && held.contains(part.session()))
        .filter(
            part ->
                part.fate() == SeriesFinding.Fate.DECLARED_OTHERWISE
                    || part.fate() == SeriesFinding.Fate.BEYOND_DECLARED
                    || part.fate() == SeriesFinding.Fate.AFTER_A_RESULT)
        .map(SeriesFinding.Part::session)
        .toList();
  }

  /** What really happened: a seal was opened before a counted session was closed. */
  boolean peeked(SeriesFinding found) {
    return found.parts().stream()
        .filter(part -> part.fate().counts())
        .map(part -> new SessionId(part.session()))
        .anyMatch(
            counted ->
                unsealedAt.entrySet().stream()
                    .anyMatch(
                        unsealed ->
                            !unsealed.getKey().equals(counted)
                                && unsealed.getValue()
                                    < closedAt.getOrDefault(counted, Integer.MAX_VALUE)));
  }

  @Override
  public void close() {
    desks[0].close();
    desks[1].close();
  }
}
