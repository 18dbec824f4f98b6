package blindlap.plan;

import blindlap.fault.CanonicalJson;
import blindlap.stats.compare.StintSummary;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A plan as a tree and as canonical bytes: every field present, defaults filled in, numbers as
 * decimal strings. The field names are those of a plan file (docs/plan-file.md).
 */
public final class PlanJson {
  /** Version of the plan form, part of the bytes. */
  public static final String VERSION = "1";

  private PlanJson() {}

  /** The bytes that are stored, sealed and hashed. */
  public static byte[] bytes(Plan plan) {
    return CanonicalJson.bytes(tree(plan));
  }

  /** The plan as a tree of maps, lists, strings, booleans and nulls. */
  public static Map<String, Object> tree(Plan plan) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("plan", VERSION);
    tree.put("kind", word(plan.kind()));
    tree.put("question", plan.question());
    tree.put("expectations", expectations(plan.expectations()));
    tree.put("rider", plan.rider());
    tree.put("trail", plan.trail());
    tree.put("day", plan.day().toString());
    tree.put("conditions", plan.conditions());
    tree.put("setups", plan.setups().stream().map(PlanJson::setup).toList());
    tree.put("change", word(plan.change()));
    tree.put("bikes", plan.bikes() == null ? null : bikes(plan.bikes()));
    tree.put("differences_reason", plan.differencesReason());
    tree.put("bike", plan.bike().stream().map(PlanJson::setting).toList());
    tree.put("measures", plan.measures().stream().map(PlanJson::measure).toList());
    tree.put("protocol", protocol(plan.protocol()));
    tree.put("stints", number(plan.stints()));
    tree.put("laps", laps(plan.laps()));
    tree.put("blinding", blinding(plan.blinding()));
    tree.put("timetable", plan.timetable() == null ? null : timetable(plan.timetable()));
    tree.put("noise", plan.noise() == null ? null : noise(plan.noise()));
    tree.put("override", plan.override());
    tree.put("series", plan.series());
    putSeriesSessions(tree, plan);
    if (!plan.covariates().isEmpty()) {
      // Left out where there is none, so that plans from before there were any keep their bytes.
      tree.put("covariates", plan.covariates().stream().map(PlanJson::covariate).toList());
    }
    putLooks(tree, plan);
    putTrailVersion(tree, plan);
    StepsJson.put(tree, plan.steps());
    TellingJson.put(tree, plan.telling());
    tree.put("level", "0.05");
    tree.put("missing", "mask");
    return tree;
  }

  private static Map<String, Object> expectations(Plan.Expectations expectations) {
    return object(
        "tester", expectations.tester(),
        "rider", expectations.rider(),
        "helper", expectations.helper());
  }

  private static Map<String, Object> laps(Plan.Laps laps) {
    return object(
        "warm_up", number(laps.warmUp()),
        "settling", number(laps.settling()),
        "scored", number(laps.scored()));
  }

  /** Left out where none is declared, so that plans without looks keep their bytes. */
  private static void putLooks(Map<String, Object> tree, Plan plan) {
    if (!plan.looks().isEmpty()) {
      tree.put("looks", LooksCheck.text(plan.looks()));
    }
  }

  /** Since version 6, left out where no recording gives a time. */
  private static void putTrailVersion(Map<String, Object> tree, Plan plan) {
    TrailVersion version = plan.trailVersion();
    if (version != null) {
      tree.put(
          "trail_version",
          object(
              "number", number(version.number()),
              "gates", version.gates().stream().map(PlanJson::gate).toList(),
              "sha256", version.sha256()));
    }
  }

  private static Map<String, Object> gate(TrailGate gate) {
    return object(
        "name", gate.name(),
        "first", point(gate.first()),
        "second", point(gate.second()),
        "direction", number(gate.direction()));
  }

  private static Map<String, Object> point(TrailGate.Point point) {
    return object("latitude", number(point.latitude()), "longitude", number(point.longitude()));
  }

  /** Left out where none is declared, so that plans without a series keep their bytes. */
  private static void putSeriesSessions(Map<String, Object> tree, Plan plan) {
    if (plan.seriesSessions() != null) {
      tree.put("series_sessions", number(plan.seriesSessions()));
    }
  }

  private static Map<String, Object> setup(Setup setup) {
    Setup.Price price = setup.price();
    return object(
        "id", setup.id(),
        "name", setup.name(),
        "component", setup.component(),
        "settings", setup.settings().stream().map(PlanJson::setting).toList(),
        "mass_g", number(setup.massGrams()),
        "mass", setup.massTyped(),
        "ballast_g", number(setup.ballastGrams()),
        "price",
            price == null
                ? null
                : object("amount", number(price.amount()), "currency", price.currency()),
        "steps", setup.steps(),
        "limits",
            setup.limits().stream()
                .map(l -> object("what", l.what(), "value", l.value(), "source", l.source()))
                .toList(),
        "most_refits", number(setup.mostRefits()),
        "consumables", setup.consumables(),
        "cautions", setup.cautions());
  }

  private static Map<String, Object> bikes(Bikes bikes) {
    return object(
        "first", bikes.first(),
        "second", bikes.second(),
        "differences",
            bikes.differences().stream()
                .map(d -> object("name", d.name(), "first", d.first(), "second", d.second()))
                .toList(),
        "change_after", number(bikes.changeAfter()));
  }

  private static Map<String, Object> setting(Setting setting) {
    return object(
        "name", setting.name(),
        "value", setting.value(),
        "unit", setting.unit(),
        "tolerance", number(setting.tolerance()),
        "check", word(setting.check()),
        "equal", setting.equal(),
        "range", number(setting.range()),
        "step", number(setting.step()),
        "readings", number(setting.readings()));
  }

  private static Map<String, Object> measure(Measure measure) {
    Map<String, Object> fields =
        object(
            "name",
            measure.name(),
            "kind",
            word(measure.kind()),
            "unit",
            measure.unit(),
            "low_words",
            measure.lowWords(),
            "high_words",
            measure.highWords(),
            "role",
            word(measure.role()),
            "better",
            word(measure.better()),
            "worthwhile",
            number(measure.worthwhile()),
            "drift",
            measure.drift().text(),
            "scale",
            measure.scale().text(),
            "definition",
            measure.definition(),
            "worthwhile_reason",
            measure.worthwhileReason());
    // Only where it is not usual, so that plans from before it existed keep their bytes.
    if (measure.summary() != StintSummary.MEAN) {
      fields.put("summary", measure.summary().text());
    }
    putAssessor(fields, measure.assessor());
    putTiming(fields, measure.timing());
    return fields;
  }

  private static void putAssessor(Map<String, Object> fields, @Nullable Assessor assessor) {
    if (assessor != null) {
      fields.put("assessor", assessor.name());
      if (assessor.knowsKey()) {
        fields.put("assessor_knows", true);
      }
    }
  }

  /** Since version 6, left out where it is a watch. */
  private static void putTiming(Map<String, Object> fields, Timing timing) {
    if (timing.by() != TimedBy.WATCH) {
      fields.put("timed_by", word(timing.by()));
    }
    Sector sector = timing.sector();
    if (sector != null) {
      fields.put("from_gate", sector.from());
      fields.put("to_gate", sector.to());
    }
  }

  private static Map<String, Object> covariate(Covariate covariate) {
    Map<String, Object> fields =
        object(
            "name", covariate.name(),
            "kind", word(covariate.kind()),
            "unit", covariate.unit(),
            "by", word(covariate.by()),
            "per", word(covariate.per()),
            "reason", covariate.reason());
    if (covariate.correlation() != null) {
      fields.put("correlation", number(covariate.correlation()));
    }
    return fields;
  }

  private static Map<String, Object> protocol(Protocol protocol) {
    Map<String, Object> fields =
        object(
            "name", protocol.name(),
            "title", protocol.title(),
            "when", protocol.when(),
            "setups", protocol.setups().stream().map(PlanJson::number).toList(),
            "block", number(protocol.block()),
            "patterns", protocol.patterns(),
            "max_run", number(protocol.maxRun()),
            "min_trend_efficiency",
                protocol.minTrendEfficiency() == null
                    ? null
                    : number(BigDecimal.valueOf(protocol.minTrendEfficiency())),
            "usual_stints", number(protocol.usualStints()));
    if (protocol.levels()) {
      fields.put("levels", true); // since version 8, only where it is so
    }
    return fields;
  }

  /** Whose record counts is left out where it is the starter's, so that plans keep their bytes. */
  private static Map<String, Object> blinding(Blinding blinding) {
    Map<String, Object> tree = fields(blinding);
    BlindLevel level = blinding.level();
    if (level != BlindLevel.OPEN && level != BlindLevel.HELPER) {
      tree.put("level", word(level)); // since version 5; the two others are said by "blinded"
    }
    if (blinding.recordOf() != Blinding.RecordOf.STARTER) {
      tree.put("record_of", word(blinding.recordOf())); // since version 4
    }
    putPreparation(tree, blinding.preparation());
    return tree;
  }

  /** Since version 5, each only where there is something to say. */
  private static void putPreparation(Map<String, Object> tree, Preparation preparation) {
    if (!preparation.by().isEmpty()) {
      tree.put("prepared_by", preparation.by());
    }
    if (preparation.on() != null) {
      tree.put("prepared_on", preparation.on().toString());
    }
    if (preparation.masks() != Preparation.Masks.FRIEND) {
      tree.put("masks", word(preparation.masks()));
    }
    if (preparation.units() != null) {
      tree.put("units", number(preparation.units()));
    }
    if (preparation.recovers()) {
      tree.put("recovers", true);
    }
  }

  private static Map<String, Object> fields(Blinding blinding) {
    return object(
        "blinded", blinding.blinded(),
        "helper", blinding.helper(),
        "others_who_know", blinding.othersWhoKnow(),
        "cover", blinding.cover(),
        "ballast", blinding.ballast(),
        "noise", blinding.noise(),
        "rider_waits", blinding.riderWaits(),
        "bike_moved_by", blinding.bikeMovedBy(),
        "levers_touched_by", blinding.leversTouchedBy(),
        "remaining_cues", blinding.remainingCues(),
        "guesses", blinding.guessesTyped(),
        "helper_waits", blinding.helperWaits(),
        "timed_by", blinding.timedBy(),
        "times", word(blinding.times()));
  }

  private static Map<String, Object> timetable(Timetable timetable) {
    Map<String, Object> tree =
        object(
            "zone", timetable.zone().getId(),
            "start", timetable.start().toString(),
            "daylight_end", timetable.daylightEnd().toString(),
            "lap", number(timetable.lap()),
            "climb", number(timetable.climb()),
            "swap", number(timetable.swap()),
            "scoring", number(timetable.scoring()),
            "rest_every", number(timetable.restEvery()),
            "rest", number(timetable.rest()),
            "cool_down", number(timetable.coolDown()),
            "lap_budget", number(timetable.lapBudget()));
    if (timetable.practised().any()) {
      tree.put("practised", timetable.practised().text()); // since version 4
    }
    return tree;
  }

  private static Map<String, Object> noise(DeclaredNoise noise) {
    Map<String, Object> tree =
        object(
            "sd", number(noise.sd()),
            "df", number(noise.df()),
            "source", noise.source(),
            "usual_difference", number(noise.usualDifference()));
    // Both since version 4, and written only with a value.
    if (noise.laps() != null) {
      tree.put("laps", number(noise.laps()));
    }
    if (noise.stintShare() != null) {
      tree.put("stint_share", noise.stintShare().text());
    }
    return tree;
  }

  /** A noise as it is typed into a plan's fields, without those that say nothing. */
  public static Map<String, String> typed(DeclaredNoise noise) {
    Map<String, String> fields = new LinkedHashMap<>();
    noise(noise)
        .forEach(
            (name, value) -> {
              if (value != null) {
                fields.put(name, value.toString());
              }
            });
    return fields;
  }

  /** The name of an option in files: lower case, words parted by spaces. */
  public static String word(Enum<?> option) {
    return JsonText.word(option);
  }

  /** A number as the shortest plain decimal string; null stays null. */
  public static @Nullable String number(@Nullable Number value) {
    return JsonText.number(value);
  }

  private static Map<String, Object> object(@Nullable Object... pairs) {
    return JsonText.object(pairs);
  }

  /** Names of the options of an enum, as written in files. */
  public static <E extends Enum<E>> List<String> words(Class<E> options) {
    return java.util.Arrays.stream(options.getEnumConstants()).map(PlanJson::word).toList();
  }
}
