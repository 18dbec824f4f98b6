package blindlap.ride;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TellingTestDay;
import blindlap.desk.TestDay;
import blindlap.desk.day.DayResult;
import blindlap.desk.day.MeasureState;
import blindlap.desk.day.RiderDays;
import blindlap.fault.CanonicalJson;
import blindlap.phone.PhoneModule;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.Day;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.Trial;
import blindlap.session.day.VoidEvent;
import blindlap.timing.TimeRecord;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.StreamSupport;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A phone says of any day what the window's page says of it, also where the last answers are still
 * on the phone alone. Long: {@code -Dphone.days=200}.
 */
class PhoneDayTest {
  private static final int DAYS = Integer.getInteger("phone.days", 12);
  private static final int ACTS = 60;
  private static final ObjectMapper JSON = new ObjectMapper();

  private static final String SETTLED =
      TestDay.EIGHT
              .replace(
                  "laps: {warm_up: 1, settling: 0, scored: 1}",
                  "laps: {warm_up: 2, settling: 1, scored: 2}")
              .replace(", lap_budget: 12", ", lap_budget: 26")
          + "covariates:\n"
          + "  - {name: fatigue, kind: fatigue, unit: 0 to 10, by: rider, per: rider, reason:"
          + " rested}\n"
          + "  - {name: wind, kind: wind, unit: m/s, by: starter, per: lap, reason: weather}\n";

  private static final String PLAIN =
      TestDay.EIGHT
          .replace("blinding: {", "blinding: {guesses: false, ")
          .replace(", lap_budget: 12", "");

  /** Duo-trios, with what is asked and timed of every lap besides. */
  private static final String TRIALS =
      TellingTestDay.plan("task: duo-trio, trials: 6")
          + TestDay.EIGHT
              .substring(TestDay.EIGHT.indexOf("measures:"), TestDay.EIGHT.indexOf("protocol:"))
              .replace(", role: primary, worthwhile: 0.5", "");

  private @TempDir(factory = RamFolder.class) Path folder;

  /** One day, what was done on it, and how it stood after each act. */
  private static final class Run {
    final List<String> acts = new ArrayList<>();
    final List<Day> days = new ArrayList<>();
    final TestDay day;
    final Random random;
    final RiderDays riders;

    Run(TestDay day, long seed) {
      this.day = day;
      this.random = new Random(seed);
      this.riders = day.desk().riderDays();
      days.add(riders.day(day.id()).orElseThrow());
    }

    Day now() {
      return days.get(days.size() - 1);
    }

    void took(DayResult result, String act, Object... fields) {
      if (result instanceof DayResult.Done done) {
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("do", act);
        for (int i = 0; i < fields.length; i += 2) {
          Object value = fields[i + 1];
          all.put(
              (String) fields[i], value == null || value instanceof Map ? value : value.toString());
        }
        acts.add(CanonicalJson.text(all));
        days.add(done.day());
      }
    }
  }

  @Test
  void aPhoneAndTheWindowSayTheSameOfEveryDay() {
    int compared = 0;
    Map<RideSheet.Stage, Integer> met = new TreeMap<>();
    try (PhoneModule phone = new PhoneModule("day")) {
      for (int seed = 1; seed <= DAYS; seed++) {
        String plan = List.of(TestDay.EIGHT, SETTLED, PLAIN, TRIALS).get(seed % 4);
        try (TestDay day = new TestDay(folder.resolve("d" + seed), plan, 5, Optional.empty())) {
          Run run = new Run(day, seed);
          for (int i = 0; i < ACTS; i++) {
            act(run);
          }
          compared += compare(phone, run, met);
        }
      }
    }
    assertThat(compared).isGreaterThan(DAYS * 50);
    assertThat(met.keySet())
        .contains(
            RideSheet.Stage.HAND_OVER,
            RideSheet.Stage.WARM_UP,
            RideSheet.Stage.SETTLING,
            RideSheet.Stage.SCORED,
            RideSheet.Stage.CAP,
            RideSheet.Stage.DONE);
  }

  private static void act(Run run) {
    Day now = run.now();
    Random random = run.random;
    if (now.warmingUp()) {
      warmUp(run);
      return;
    }
    LapId lap = now.nextLap().orElse(null);
    if (lap == null) {
      return;
    }
    if (now.capReached() && random.nextBoolean()) {
      run.took(
          run.riders.pastCap(run.day.id(), lap.stint(), "one more"),
          "past-cap",
          "stint",
          lap.stint(),
          "reason",
          "one more");
      return;
    }
    if (random.nextInt(6) == 0) { // more of it than planned, until the laps agreed to are ridden
      run.took(run.riders.warmUp(run.day.id()), "warm-up");
      return;
    }
    if (lap.stint() > 1 && random.nextInt(12) == 0) { // said too late: the bike stays where it is
      run.took(
          run.riders.handedOver(run.day.id(), lap.stint() - 1),
          "handed-over",
          "stint",
          lap.stint() - 1);
      return;
    }
    if (!now.handedOver(lap.stint())) {
      if (random.nextInt(3) == 0) {
        covariate(run, "fatigue", lap.stint(), 0);
        return;
      }
      run.took(
          run.riders.handedOver(run.day.id(), lap.stint()),
          random.nextBoolean() ? "plate" : "handed-over",
          "stint",
          lap.stint());
      return;
    }
    onLap(run, random.nextInt(8) == 0 ? now.reopenable().orElse(lap) : lap);
  }

  private static void warmUp(Run run) {
    if (run.now().handedOver(0)) {
      run.took(run.riders.warmUp(run.day.id()), "warm-up");
    } else {
      run.took(run.riders.handedOver(run.day.id(), 0), "handed-over", "stint", 0);
    }
  }

  private static void covariate(Run run, String name, int stint, int lap) {
    BigDecimal value =
        run.random.nextInt(4) == 0 ? null : BigDecimal.valueOf(run.random.nextInt(9));
    run.took(
        run.riders.covariate(run.day.id(), new CovariateAt(name, stint, lap), value),
        "covariate",
        "name",
        name,
        "stint",
        stint,
        "lap",
        lap,
        "value",
        value);
  }

  private static void onLap(Run run, LapId lap) {
    Random random = run.random;
    int value = random.nextInt(9) + 1;
    switch (random.nextInt(13)) {
      case 0, 1 -> score(run, lap, "grip in the rocks", value * 10);
      case 2 -> score(run, lap, "trust", value);
      case 3 -> score(run, lap, "feet off the pedals", value);
      case 4 -> takenBack(run, lap);
      case 5 -> {
        String text = random.nextInt(3) == 0 ? "" : "note " + value;
        run.took(
            run.riders.note(run.day.id(), lap, text),
            "note",
            "stint",
            lap.stint(),
            "lap",
            lap.lap(),
            "text",
            text);
      }
      case 6 -> guess(run, lap.stint());
      case 7 ->
          run.took(
              run.riders.conditions(run.day.id(), lap, Map.of("wind", "some")),
              "conditions",
              "stint",
              lap.stint(),
              "lap",
              lap.lap(),
              "name",
              "wind",
              "words",
              "some");
      case 8 -> watch(run, lap);
      case 9 -> covariate(run, "wind", lap.stint(), lap.lap());
      case 10 -> voided(run, lap);
      default ->
          run.took(
              run.riders.ridden(run.day.id(), lap),
              "ridden",
              "stint",
              lap.stint(),
              "lap",
              lap.lap());
    }
  }

  private static void score(Run run, LapId lap, String measure, int value) {
    run.took(
        run.riders.score(run.day.id(), lap, measure, BigDecimal.valueOf(value), false),
        "score",
        "stint",
        lap.stint(),
        "lap",
        lap.lap(),
        "measure",
        measure,
        "value",
        value);
  }

  private static void takenBack(Run run, LapId lap) {
    String measure = "grip in the rocks";
    MeasureState is = MeasureState.of(run.now(), lap, measure);
    BigDecimal from = is.value();
    if (from == null) {
      return;
    }
    BigDecimal to = run.random.nextBoolean() ? null : BigDecimal.valueOf(55);
    run.took(
        run.riders.takeBack(run.day.id(), lap, measure, is, new MeasureState(to, null, null)),
        "score-back",
        "stint",
        lap.stint(),
        "lap",
        lap.lap(),
        "measure",
        measure,
        "from",
        from.toPlainString(),
        "to",
        to);
  }

  private static void guess(Run run, int stint) {
    Random random = run.random;
    Integer setup = random.nextInt(3) == 0 ? null : random.nextInt(2);
    Guess.Sureness sure = random.nextBoolean() ? null : Guess.Sureness.HUNCH;
    Guess was = run.now().guesses().get(stint);
    if (was != null && random.nextBoolean()) {
      run.took(
          run.riders.guessTakenBack(run.day.id(), stint, was, null),
          "guess-back",
          "stint",
          stint,
          "from",
          ServedDay.guess(was),
          "to",
          null);
      return;
    }
    run.took(
        run.riders.guess(run.day.id(), stint, new Guess(setup, sure, "")),
        "guess",
        "stint",
        stint,
        "setup",
        setup == null ? null : setup + 1,
        "sureness",
        sure,
        "cue",
        "");
  }

  private static void watch(Run run, LapId lap) {
    String measure = "lap time";
    Instant at = run.day.clock().instant();
    switch (run.random.nextInt(3)) {
      case 0 ->
          run.took(
              run.riders.watchStarted(run.day.id(), lap, measure, at),
              "watch-start",
              "stint",
              lap.stint(),
              "lap",
              lap.lap(),
              "measure",
              measure,
              "at",
              at.toEpochMilli());
      case 1 ->
          run.took(
              run.riders.watchReset(run.day.id(), lap, measure),
              "watch-reset",
              "stint",
              lap.stint(),
              "lap",
              lap.lap(),
              "measure",
              measure);
      default -> {
        TimeRecord time =
            new TimeRecord(
                at, at.plusSeconds(90), 90_000_000_000L, TimeRecord.TimedBy.STARTER, null);
        run.took(
            run.riders.time(run.day.id(), lap, measure, time, false),
            "time",
            "stint",
            lap.stint(),
            "lap",
            lap.lap(),
            "measure",
            measure);
      }
    }
  }

  private static void voided(Run run, LapId lap) {
    boolean stands = run.now().lap(lap).filter(l -> l.voided().isPresent()).isPresent();
    if (stands) {
      run.took(
          run.riders.voidTakenBack(run.day.id(), lap, VoidEvent.TRAFFIC),
          "void-back",
          "stint",
          lap.stint(),
          "lap",
          lap.lap(),
          "event",
          VoidEvent.TRAFFIC);
    } else if (run.random.nextInt(3) == 0) {
      run.took(
          run.riders.spoiled(run.day.id(), lap, VoidEvent.TRAFFIC, ""),
          "void",
          "stint",
          lap.stint(),
          "lap",
          lap.lap(),
          "event",
          VoidEvent.TRAFFIC,
          "words",
          "");
    }
  }

  private static int compare(PhoneModule phone, Run run, Map<RideSheet.Stage, Integer> met) {
    int compared = 0;
    for (int end = 0; end < run.days.size(); end++) {
      int heard = end - run.random.nextInt(Math.min(end, 12) + 1);
      List<String> unsent = run.acts.subList(heard, end);
      Day now = run.days.get(end);
      Day then = run.days.get(heard);
      Integer out = run.random.nextInt(3) == 0 ? null : (Integer) run.random.nextInt(3);
      Day elsewhere = helped(now, out);
      same(phone, then, unsent, now, met);
      same(phone, helped(then, then.bikeOut()), unsent, helped(now, now.bikeOut()), met);
      same(phone, elsewhere, List.of(), elsewhere, met);
      compared += 3;
    }
    return compared;
  }

  /** The same day where a helper's page is in use and the bike is out for a stint, or for none. */
  private static Day helped(Day d, @Nullable Integer out) {
    return new Day(
        d.id(),
        d.plan(),
        d.step(),
        d.codes(),
        d.laps(),
        d.guesses(),
        d.stintsHandedOver(),
        true,
        out,
        d.warmUps(),
        d.reasonsPastCap(),
        d.cutAfter(),
        d.covariates());
  }

  private static void same(
      PhoneModule phone,
      Day heard,
      List<String> unsent,
      Day day,
      Map<RideSheet.Stage, Integer> met) {
    Object served = phone.value(ServedDay.day(day));
    Object now =
        phone.call(
            "standing",
            served,
            phone.value(ServedDay.state(heard)),
            phone.value("[" + String.join(",", unsent) + "]"));
    String what = "heard " + ServedDay.state(heard) + " unsent " + unsent;
    Object shape = phone.call("shape", served);
    assertThat(phone.json(phone.call("reopenable", shape, now)))
        .as(what)
        .isEqualTo(lap(day.reopenable()));
    Optional<LapId> last =
        day.laps().values().stream().filter(l -> l.ridden()).map(l -> l.id()).reduce((a, b) -> b);
    List<Optional<LapId>> none = List.of(Optional.empty(), Optional.empty());
    List<List<Optional<LapId>>> hands =
        List.of(
            none,
            List.of(last.filter(l -> heard == day), Optional.empty()),
            List.of(Optional.empty(), day.reopenable()));
    for (List<Optional<LapId>> hand : hands) {
      RideSheet java = RideSheet.of(day, hand.get(0), hand.get(1));
      met.merge(java.stage(), 1, Integer::sum);
      String js =
          phone.json(
              phone.call(
                  "sheet",
                  served,
                  now,
                  phone.value(
                      "{\"done\":" + lap(hand.get(0)) + ",\"again\":" + lap(hand.get(1)) + "}")));
      boolean known = hand.equals(none) || day.reopenable().isPresent();
      same(read(js), java, known, what);
      assertThat(
              StreamSupport.stream(
                      read(phone.json(phone.call("openAtDone", served, phone.value(js))))
                          .spliterator(),
                      false)
                  .toList())
          .as(what)
          .hasSize(RideDone.open(RideQuestions.of(day.plan()), java).size());
    }
  }

  /** Answers of a lap that may not be opened again are not served, and so not compared. */
  private static void same(JsonNode js, RideSheet java, boolean known, String what) {
    assertThat(js.get("stage").asText()).as(what).isEqualTo(java.stage().name());
    LapId lap = java.lap();
    assertThat(js.get("lap").toString()).as(what).isEqualTo(lap(Optional.ofNullable(lap)));
    assertThat(js.get("number").asInt()).as(what).isEqualTo(java.number());
    assertThat(js.get("of").asInt()).as(what).isEqualTo(java.of());
    assertThat(js.get("code").asText()).as(what).isEqualTo(java.code());
    assertThat(js.get("guessAsked").asBoolean()).as(what).isEqualTo(java.guessAsked());
    assertThat(js.get("ridden").asInt()).as(what).isEqualTo(java.ridden());
    Integer most = java.most();
    assertThat(js.get("most").toString()).as(what).isEqualTo(String.valueOf(most));
    assertThat(js.get("helper").asBoolean()).as(what).isEqualTo(java.helperHandsOver());
    assertThat(js.get("locked").asBoolean()).as(what).isEqualTo(java.locked());
    assertThat(js.get("voided").asBoolean()).as(what).isEqualTo(java.voided());
    Trial trial = java.trial();
    if (trial != null) {
      assertThat(js.get("trial").get("number").asInt()).as(what).isEqualTo(trial.number());
      assertThat(js.get("trial").get("ends").asBoolean()).as(what).isEqualTo(java.endsTrial());
      assertThat(js.get("trial").get("voided").asBoolean())
          .as(what)
          .isEqualTo(trial.voided().isPresent());
    }
    assertThat(texts(js.get("conditions"))).as(what).isEqualTo(java.conditions());
    Map<String, String> watches = new TreeMap<>();
    java.watches().forEach((name, watch) -> watches.put(name, watch.state().name()));
    Map<String, String> shown = new TreeMap<>();
    js.get("watches")
        .fields()
        .forEachRemaining(e -> shown.put(e.getKey(), e.getValue().get("state").asText()));
    assertThat(shown).as(what).isEqualTo(watches);
    if (known) {
      Map<String, String> values = new TreeMap<>();
      java.values().forEach((name, value) -> values.put(name, value.toPlainString()));
      assertThat(texts(js.get("values"))).as(what).isEqualTo(values);
      assertThat(js.get("note").asText()).as(what).isEqualTo(java.note());
      Guess guess = java.guess();
      assertThat(js.get("guess"))
          .as(what)
          .isEqualTo(
              guess == null ? read("null") : read(CanonicalJson.text(ServedDay.guess(guess))));
    }
  }

  private static Map<String, String> texts(JsonNode object) {
    Map<String, String> all = new TreeMap<>();
    object.fields().forEachRemaining(e -> all.put(e.getKey(), e.getValue().asText()));
    return all;
  }

  private static String lap(Optional<@Nullable LapId> lap) {
    return lap.map(l -> "{\"stint\":" + l.stint() + ",\"lap\":" + l.lap() + "}").orElse("null");
  }

  private static JsonNode read(String json) {
    try {
      return JSON.readTree(json);
    } catch (com.fasterxml.jackson.core.JsonProcessingException e) {
      throw new AssertionError(json, e);
    }
  }
}
