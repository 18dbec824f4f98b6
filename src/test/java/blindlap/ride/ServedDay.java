package blindlap.ride;

import blindlap.fault.CanonicalJson;
import blindlap.plan.Measure;
import blindlap.session.day.Day;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** A day as it is served to the rider's phone, as far as the page needs it. */
final class ServedDay {
  private ServedDay() {}

  /** What never changes. */
  static String day(Day day) {
    RideQuestions questions = RideQuestions.of(day.plan());
    Map<String, Object> all = new LinkedHashMap<>();
    all.put("stints", text(day.plan().stints()));
    all.put("codes", day.codes().stream().map(String::valueOf).toList());
    all.put(
        "laps",
        Map.of(
            "settling", text(day.plan().laps().settling()),
            "per_stint", text(day.plan().laps().perStint()),
            "warm_up", text(day.plan().laps().warmUp())));
    all.put(
        "questions",
        questions.questions().stream()
            .map(q -> Map.of("name", q.name(), "kind", q.kind().name()))
            .toList());
    all.put("guesses", day.plan().asksGuesses());
    all.put(
        "trial",
        Optional.ofNullable(day.plan().telling())
            .map(run -> Map.of("laps", text(run.task().laps())))
            .orElse(null));
    all.put(
        "covariates",
        day.plan().covariates().stream()
            .map(c -> Map.of("name", c.name(), "by", c.by().name(), "per_lap", c.perLap()))
            .toList());
    all.put(
        "timed",
        day.plan().askedOnTheDay().stream()
            .filter(m -> m.kind().timed())
            .map(Measure::name)
            .toList());
    all.put("cap", day.lapCap().map(String::valueOf).orElse(null));
    return CanonicalJson.text(all);
  }

  /** How it stands. */
  static String state(Day day) {
    Set<LapId> shown = new TreeSet<>();
    day.nextLap().ifPresent(shown::add);
    day.reopenable().ifPresent(shown::add);
    Map<String, Object> all = new LinkedHashMap<>();
    all.put("step", day.step().name());
    all.put(
        "ridden",
        day.laps().values().stream().filter(LapState::ridden).map(l -> key(l.id())).toList());
    all.put("warm_ups", text(day.warmUps()));
    all.put("handed_over", day.stintsHandedOver().stream().map(String::valueOf).toList());
    all.put("helper_hands_over", day.helperHandsOver());
    all.put("bike_out", text(day.bikeOut()));
    all.put("past_cap", text(day.reasonsPastCap()));
    all.put("cut_after", text(day.cutAfter()));
    all.put("reopenable", day.reopenable().map(ServedDay::key).orElse(null));
    all.putAll(laps(day, shown));
    Map<String, Object> covariates = new LinkedHashMap<>();
    day.covariates()
        .forEach(
            (at, value) ->
                covariates.put(
                    at.covariate() + "@" + at.stint() + "." + at.lap(), value.toPlainString()));
    all.put("covariates", covariates);
    Map<String, Object> guesses = new LinkedHashMap<>();
    for (LapId lap : shown) {
      Guess guess = day.guesses().get(lap.stint());
      if (guess != null) {
        guesses.put(text(lap.stint()), guess(guess));
      }
    }
    all.put("guesses", guesses);
    return CanonicalJson.text(all);
  }

  private static Map<String, Object> laps(Day day, Set<LapId> shown) {
    Map<String, Object> watches = new LinkedHashMap<>();
    Map<String, Object> voids = new LinkedHashMap<>();
    Map<String, Object> conditions = new LinkedHashMap<>();
    Map<String, Object> values = new LinkedHashMap<>();
    Map<String, Object> notes = new LinkedHashMap<>();
    List<String> rated = new ArrayList<>();
    RideQuestions.of(day.plan()).questions().forEach(q -> rated.add(q.name()));
    day.laps()
        .forEach(
            (id, lap) -> {
              Map<String, Object> of = new LinkedHashMap<>();
              lap.running()
                  .forEach(
                      (m, at) -> of.put(m, Map.of("running", String.valueOf(at.toEpochMilli()))));
              lap.times().keySet().forEach(m -> of.put(m, Map.of("stopped", true)));
              if (!of.isEmpty()) {
                watches.put(key(id), of);
              }
              lap.voided().ifPresent(why -> voids.put(key(id), why.event().name()));
              if (!lap.conditions().isEmpty()) {
                conditions.put(key(id), lap.conditions());
              }
              if (shown.contains(id)) {
                Map<String, Object> given = new LinkedHashMap<>();
                lap.values()
                    .forEach(
                        (m, v) -> {
                          if (rated.contains(m)) {
                            given.put(m, v.toPlainString());
                          }
                        });
                values.put(key(id), given);
                notes.put(key(id), lap.note());
              }
            });
    return Map.of(
        "watches",
        watches,
        "voids",
        voids,
        "conditions",
        conditions,
        "values",
        values,
        "notes",
        notes);
  }

  static Map<String, Object> guess(Guess guess) {
    Map<String, Object> all = new LinkedHashMap<>();
    Integer setup = guess.setup();
    all.put("setup", setup == null ? null : text(setup + 1));
    Guess.Sureness sure = guess.sureness();
    all.put("sureness", sure == null ? null : sure.name());
    all.put("cue", guess.cue());
    return all;
  }

  static String key(LapId lap) {
    return lap.stint() + "." + lap.lap();
  }

  private static @Nullable String text(@Nullable Integer number) {
    return number == null ? null : String.valueOf(number);
  }
}
