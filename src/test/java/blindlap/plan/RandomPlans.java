package blindlap.plan;

import blindlap.exchange.PlanReader;
import blindlap.fault.CanonicalJson;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * Plans of a seed: two to four setups, every kind of measure, blind or not, with and without
 * warm-up, settling laps, lap caps and guesses. Each setup, measure and scale end carries a word of
 * its own, so that a page can be searched for it.
 */
public final class RandomPlans {
  private static final Protocols PROTOCOLS = new Protocols();
  private static final String[] WIDE = {
    "WWWWWWWW", "MMMM", "mmmmmmmmmmmm", "ÄÖÜ", "œuvre", "il", "WMWMWMWMWMWMWMWMWM", "é", "(&<>)"
  };

  private final Random random;

  private RandomPlans(Random random) {
    this.random = random;
  }

  /** The protocols, read when they are first asked for. */
  private static final class Protocols {
    private final blindlap.exchange.Protocols read = Plans.protocols();
  }

  /** The word of a setup, 0 = A. */
  public static String setupWord(int setup) {
    return "Sq" + setup + "zk";
  }

  /** The word of a measure, from 0. */
  public static String measureWord(int measure) {
    return "Mq" + (char) ('a' + measure) + "zk";
  }

  /** A comparison that can be committed. */
  public static Plan comparison(Random random) {
    int setups = 2 + random.nextInt(3);
    int block = setups == 2 ? List.of(2, 4).get(random.nextInt(2)) : setups;
    return comparison(random, setups, block * (1 + random.nextInt(40 / block)), 3);
  }

  /**
   * A comparison that can be committed.
   *
   * @param stints a multiple of four, or of the number of setups
   * @param scored most scored laps of a stint
   */
  public static Plan comparison(Random random, int setups, int stints, int scored) {
    return read(new RandomPlans(random).fields(setups, stints, scored));
  }

  /** An open noise run that can be committed. */
  public static Plan noiseRun(Random random) {
    Map<String, Object> fields = new RandomPlans(random).fields(1, 2 + random.nextInt(12), 2);
    fields.put("kind", "noise run");
    fields.remove("rule");
    fields.remove("covariates");
    return read(fields);
  }

  private static Plan read(Map<String, Object> fields) {
    PlanReader.Reading reading = PlanReader.read(CanonicalJson.text(fields), PROTOCOLS.read);
    Plan plan = reading.plan();
    if (plan == null || !reading.problems().isEmpty() || !PlanCheck.problems(plan).isEmpty()) {
      throw new AssertionError(
          reading.problems() + " " + (plan == null ? "" : PlanCheck.problems(plan)));
    }
    return plan;
  }

  private Map<String, Object> fields(int setups, int stints, int scored) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("question", "Which is quicker? " + filler(300));
    fields.put("rider", "R. Lind " + filler(40));
    fields.put("trail", "Quarry loop " + filler(40));
    fields.put("day", "2026-11-14");
    fields.put("setups", IntStream.range(0, setups).mapToObj(this::setup).toList());
    fields.put("differences_reason", "whole parts are compared");
    List<Map<String, Object>> measures = measures();
    fields.put("measures", measures);
    fields.put("rule", rule(setups, stints));
    fields.put("stints", String.valueOf(stints));
    int warmUp = random.nextInt(3);
    int settling = random.nextInt(2);
    int each = 1 + random.nextInt(scored);
    Map<String, Object> laps = new LinkedHashMap<>();
    laps.put("warm_up", String.valueOf(warmUp));
    laps.put("settling", String.valueOf(settling));
    laps.put("scored", String.valueOf(each));
    fields.put("laps", laps);
    if (each >= 3) {
      measures.get(0).put("summary", "median");
    }
    fields.put("blinding", Map.of("blinded", word(chance(4)), "guesses", word(chance(4))));
    if (random.nextInt(3) > 0) {
      fields.put("timetable", timetable(warmUp + stints * (settling + each)));
    }
    if (random.nextInt(3) == 0) {
      fields.put("covariates", covariates());
    }
    fields.put("override", "to see how it goes");
    return fields;
  }

  private boolean chance(int of) {
    return random.nextInt(of) > 0;
  }

  private static String word(boolean yes) {
    return yes ? "yes" : "no";
  }

  private Map<String, Object> rule(int setups, int stints) {
    int block = setups > 2 ? setups : stints % 4 == 0 ? 4 : 2;
    return Map.of(
        "setups",
        String.valueOf(setups),
        "stints",
        String.valueOf(stints),
        "block",
        String.valueOf(chance(4) ? block : stints));
  }

  private Map<String, Object> setup(int index) {
    Map<String, Object> setup = new LinkedHashMap<>();
    setup.put("name", setupWord(index) + " " + filler(random.nextInt(54)));
    setup.put("id", "setup-" + index);
    if (chance(2)) {
      setup.put("steps", List.of("Fit it " + filler(120), "Measure it"));
      setup.put("cautions", List.of("Mind the hose. " + filler(80)));
      setup.put("limits", List.of(Map.of("what", "bolts", "value", "12 N.m", "source", "p. 9")));
    }
    if (chance(2)) {
      setup.put(
          "settings",
          List.of(
              Map.of("name", "clicks", "value", String.valueOf(3 + index), "unit", "clicks"),
              Map.of("name", "sag", "value", "26", "unit", "%", "tolerance", "1")));
    }
    return setup;
  }

  private List<Map<String, Object>> measures() {
    List<Map<String, Object>> measures = new ArrayList<>();
    int count = 1 + random.nextInt(6);
    int primary = random.nextInt(count);
    for (int i = 0; i < count; i++) {
      measures.add(measure(i, i == primary));
    }
    return measures;
  }

  private Map<String, Object> measure(int index, boolean primary) {
    String[] kinds = {"lap time", "sector time", "line scale", "category scale", "count"};
    String kind = kinds[random.nextInt(kinds.length)];
    Map<String, Object> measure = new LinkedHashMap<>();
    measure.put("name", measureWord(index) + " " + filler(random.nextInt(54)));
    measure.put("kind", kind);
    measure.put("unit", kind.endsWith("time") ? "s" : kind.equals("count") ? "a lap" : "points");
    if (kind.endsWith("scale")) {
      measure.put("low_words", "none " + filler(random.nextInt(54)));
      measure.put("high_words", "all " + filler(random.nextInt(54)));
    }
    if (primary) {
      measure.put("role", "primary");
      measure.put("worthwhile", "0.5");
    } else if (!chance(4)) {
      measure.put("role", "watch for harm");
      measure.put("worthwhile", "1");
    }
    return measure;
  }

  /** One that is said for laps or stints, and now and then what the rider says before them. */
  private List<Map<String, Object>> covariates() {
    List<Map<String, Object>> covariates = new ArrayList<>();
    Map<String, Object> wind = new LinkedHashMap<>();
    wind.put("name", "Cqazk " + filler(random.nextInt(30)));
    wind.put("kind", List.of("wind", "wetness", "temperature").get(random.nextInt(3)));
    wind.put("unit", "m/s");
    wind.put("by", "starter");
    wind.put("per", chance(2) ? "lap" : "stint");
    wind.put("reason", "read at the start " + filler(60));
    covariates.add(wind);
    if (chance(2)) {
      Map<String, Object> legs = new LinkedHashMap<>();
      legs.put("name", "Cqbzk " + filler(random.nextInt(30)));
      legs.put("kind", "fatigue");
      legs.put("unit", "0 to 10");
      legs.put("by", "rider");
      legs.put("reason", "asked before");
      covariates.add(legs);
    }
    return covariates;
  }

  private Map<String, Object> timetable(int laps) {
    Map<String, Object> timetable = new LinkedHashMap<>();
    timetable.put("zone", "Europe/Vienna");
    timetable.put("start", "00:10");
    timetable.put("daylight_end", "00:05");
    timetable.put("lap", "1");
    timetable.put("swap", "2");
    timetable.put("scoring", "0");
    if (chance(2)) {
      timetable.put("lap_budget", String.valueOf(laps + random.nextInt(2)));
    }
    return timetable;
  }

  /** Words of at most this length, some of them far too wide. */
  private String filler(int most) {
    StringBuilder words = new StringBuilder();
    while (true) {
      String next = WIDE[random.nextInt(WIDE.length)];
      if (words.length() + next.length() + 1 > most) {
        return words.toString().strip();
      }
      words.append(next).append(' ');
    }
  }
}
