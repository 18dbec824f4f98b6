package blindlap.screen.manual;

import blindlap.desk.Commits;
import blindlap.desk.Committing;
import blindlap.desk.Desk;
import blindlap.desk.Keys;
import blindlap.desk.LapFiles;
import blindlap.desk.PlainDays;
import blindlap.desk.PlanPreview;
import blindlap.desk.SetClock;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.seal.HelperSchedule;
import blindlap.seal.SessionKind;
import blindlap.session.LifeCommands;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;

/** More invented days of forks in a notebook, of which the true lap times are known. */
final class ForkSeason {
  /** Seconds a lap against Fork M, with price and mass. */
  private static final Map<String, String> FORKS =
      Map.of(
          "M", "{name: Fork M, price: {amount: 640, currency: EUR}, mass: 2010 g}",
          "N", "{name: Fork N, price: {amount: 910, currency: EUR}, mass: 2030 g}",
          "O", "{name: Fork O, price: {amount: 480, currency: EUR}, mass: 2190 g}",
          "P", "{name: Fork P, price: {amount: 1150, currency: EUR}, mass: 1890 g}");

  private static final Map<String, Double> SECONDS =
      Map.of("M", 0.0, "N", -1.5, "O", 0.4, "P", -1.9);

  private static final String PLAN =
      """
      question: %s
      rider: %s
      trail: Juniper chute
      day: %s
      setups: [%s]
      measures:
        - {name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 0.8}
      protocol: %s
      stints: %d
      blinding: {helper: M. Oster}
      %s
      """;

  private static final double NOISE = 0.7;
  private final Desk desk;
  private final SetClock clock;
  private final Map<SessionId, String> phrases = new LinkedHashMap<>();

  ForkSeason(Desk desk, SetClock clock) {
    this.desk = desk;
    this.clock = clock;
  }

  /** Four old days of a rider who learns the trail, without codes. */
  ForkSeason old() {
    String[] days = {"2026-05-10", "2026-06-21", "2026-07-05", "2026-08-02"};
    for (int i = 0; i < days.length; i++) {
      Random random = new Random(40 + i);
      StringBuilder csv = new StringBuilder("t\n");
      for (int lap = 0; lap < 14; lap++) {
        double time = 62 - 0.05 * lap + (1.5 - 0.25 * i) * random.nextGaussian();
        csv.append(String.format(Locale.ROOT, "%.2f%n", time));
      }
      PlainDays.Result result =
          desk.plainDays()
              .bring(
                  new PlainDays.Day(
                      "old.csv", "K. Vogt", "Juniper chute", LocalDate.parse(days[i])),
                  csv.toString().getBytes(StandardCharsets.UTF_8),
                  new PlainDays.Mapping(
                      List.of(new PlainDays.Wanted("lap time", "t", Measure.Kind.LAP_TIME, "s")),
                      "",
                      ""));
      if (result instanceof PlainDays.Result.Refused refused) {
        throw new AssertionError("refused: " + refused.problems());
      }
    }
    return this;
  }

  /** Commits a day of two forks, such as "MN". */
  SessionId commit(String forks, String rider, String day, int stints, String series) {
    String setups =
        String.join(
            ", ",
            forks.chars().mapToObj(c -> Objects.requireNonNull(FORKS.get("" + (char) c))).toList());
    String question =
        "Is Fork %s quicker than Fork %s on Juniper chute?"
            .formatted(forks.substring(1), forks.substring(0, 1));
    String protocol = stints == 8 ? "eight-stints" : "blocks-of-four";
    PlanPreview preview =
        PlanPreview.of(
            PLAN.formatted(question, rider, day, setups, protocol, stints, series),
            desk.protocols());
    Plan plan =
        preview.plan().orElseThrow(() -> new AssertionError("refused: " + preview.problems()));
    Duration ahead =
        Duration.between(
            clock.instant(), plan.day().atTime(7, 0).atZone(ZoneOffset.UTC).toInstant());
    if (!ahead.isNegative()) {
      clock.move(ahead);
    }
    Committing.Result.Committed committed =
        Commits.commit(desk, plan, SessionKind.comparison(), List.of(rider, "M. Oster"));
    SessionId id = committed.state().id();
    phrases.put(id, committed.sealed().phrase().text());
    return id;
  }

  /** Rides what is committed and closes its review. */
  SessionId ride(SessionId id) {
    SessionState state = desk.sessions().state(id).orElseThrow();
    Plan plan = state.plan();
    HelperSchedule schedule =
        ((Keys.Result.Open) desk.keys().helper(state, phrases.get(id))).schedule();
    Random random =
        new Random(plan.day().toEpochDay() * 31 + plan.rider().hashCode() + plan.stints());
    StringBuilder laps = new StringBuilder("lap;lap time\n");
    for (int lap = 1; lap <= plan.stints(); lap++) {
      String name = plan.setups().get(schedule.fit(lap).fitted()).name();
      double shift = SECONDS.getOrDefault(name.substring(name.length() - 1), 0.0);
      double time = 61.5 - 0.02 * lap + shift + NOISE * random.nextGaussian();
      laps.append(String.format(Locale.ROOT, "%d;%.2f%n", lap, time));
    }
    byte[] file = laps.toString().getBytes(StandardCharsets.UTF_8);
    Hands.done(new LapFiles(desk.sessions()).record(state, file));
    Hands.done(desk.sessions().act(id, now -> new LifeCommands(now).closeDay()));
    Hands.done(desk.keys().closeReview(id));
    clock.move(Duration.ofHours(9));
    return id;
  }

  /** Opens the key of what is ridden. */
  void unseal(SessionId id) {
    SessionState state = desk.sessions().state(id).orElseThrow();
    Hands.done(desk.keys().unseal(state, phrases.get(id)));
  }

  /** Days after that of Fork M and Fork N: both meet Fork O, and Fork P meets N alone. */
  ForkSeason field() {
    unseal(ride(commit("NO", "K. Vogt", "2026-10-03", 12, "")));
    unseal(ride(commit("MO", "K. Vogt", "2026-10-17", 12, "")));
    unseal(ride(commit("NP", "K. Vogt", "2026-10-31", 12, "")));
    return this;
  }

  /** Two of three days of a series are ridden, and the third is committed. */
  ForkSeason sealedSeries() {
    String series = "series: m-or-n\nseries_sessions: 3";
    ride(commit("MN", "K. Vogt", "2026-09-26", 16, series));
    ride(commit("MN", "K. Vogt", "2026-10-03", 16, series));
    commit("MN", "K. Vogt", "2026-10-10", 16, series);
    return this;
  }

  /** Six days of five riders, all opened at the end. */
  ForkSeason riders() {
    String series = "series: m-or-n\nseries_sessions: 6";
    String[] riders = {"K. Vogt", "K. Vogt", "J. Brand", "T. Falk", "A. Reiter", "L. Ravn"};
    List<SessionId> ridden = new ArrayList<>();
    for (int i = 0; i < riders.length; i++) {
      String day = "2026-10-%02d".formatted(3 + 4 * i);
      ridden.add(ride(commit("MN", riders[i], day, 16, series)));
    }
    ridden.forEach(this::unseal);
    return this;
  }
}
