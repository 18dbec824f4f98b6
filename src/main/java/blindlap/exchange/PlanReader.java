package blindlap.exchange;

import blindlap.fault.Problem;
import blindlap.plan.Assessor;
import blindlap.plan.Bikes;
import blindlap.plan.BlindLevel;
import blindlap.plan.Blinding;
import blindlap.plan.ChangeMethod;
import blindlap.plan.Covariate;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.PlanFault;
import blindlap.plan.PlanJson;
import blindlap.plan.Practised;
import blindlap.plan.Preparation;
import blindlap.plan.Protocol;
import blindlap.plan.Rule;
import blindlap.plan.TellingRun;
import blindlap.plan.Timetable;
import blindlap.stats.compare.Scale;
import blindlap.stats.compare.StintSummary;
import blindlap.stats.order.Drift;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Reads plan files (YAML or JSON, docs/plan-file.md) and stored plans, which have the same fields.
 */
public final class PlanReader {
  private static final Plan.Laps USUAL_LAPS = new Plan.Laps(2, 0, 1);

  private final Protocols protocols;
  private final List<Problem> problems = new ArrayList<>();

  private PlanReader(Protocols protocols) {
    this.protocols = protocols;
  }

  /**
   * What a plan file holds.
   *
   * @param plan the plan, null if the file cannot be read at all
   * @param problems mistakes of form; the plan's own mistakes are found by PlanCheck
   */
  public record Reading(@Nullable Plan plan, List<Problem> problems) {
    public Reading {
      problems = List.copyOf(problems);
    }
  }

  /** Reads a plan file's text. */
  public static Reading read(String text, Protocols protocols) {
    try {
      return read(Located.read(text), protocols, true);
    } catch (Located.Unreadable e) {
      return unreadable(e);
    }
  }

  private static Reading read(Located tree, Protocols protocols, boolean typed) {
    PlanReader reader = new PlanReader(protocols);
    FieldReader fields = new FieldReader("", tree, reader.problems, typed);
    Plan plan = reader.plan(fields);
    fields.end();
    return new Reading(plan, reader.problems);
  }

  private static Reading unreadable(Located.Unreadable e) {
    String where = "line " + e.line + ", column " + e.column;
    return new Reading(null, List.of(Problem.of(PlanFault.NOT_READABLE, where, e.getMessage())));
  }

  /**
   * Reads a plan that was stored, whose bytes carry a verified hash.
   *
   * @throws IllegalArgumentException if it is not in the form that is written
   */
  public static Plan stored(String text) {
    Reading reading = storedReading(text);
    if (reading.plan() == null || !reading.problems().isEmpty()) {
      throw new IllegalArgumentException("a stored plan cannot be read: " + reading.problems());
    }
    return reading.plan();
  }

  /** Reads a plan that was stored, with what is wrong with its form. */
  static Reading storedReading(String text) {
    try {
      return read(Located.readJson(text), Protocols.NONE, false);
    } catch (Located.Unreadable e) {
      return unreadable(e);
    }
  }

  private Plan plan(FieldReader f) {
    fixed(f, "plan", PlanJson.VERSION);
    fixed(f, "level", "0.05");
    fixed(f, "missing", "mask");
    Plan.Kind kind = f.option("kind", Plan.Kind.class, Plan.Kind.COMPARISON);
    Plan.Expectations expectations = f.object("expectations", PlanReader::expectations);
    KindReader own = KindReader.of(f, kind, problems);
    Blinding blinding = or(f.object("blinding", PlanReader::blinding), Blinding.BLIND);
    Protocol protocol = protocol(f, kind, own.telling(), own.setups().size(), blinding.level());
    int stints = f.integer("stints", protocol.usualStints());
    return new Plan(
        kind,
        f.requiredText("question"),
        or(expectations, Plan.Expectations.NONE),
        f.requiredText("rider"),
        f.requiredText("trail"),
        day(f),
        f.text("conditions", ""),
        own.setups(),
        f.option("change", ChangeMethod.class, ChangeMethod.REFIT),
        f.object("bikes", PlanReader::bikes),
        f.text("differences_reason", ""),
        f.objects("bike", SetupReader::setting),
        f.objects("measures", PlanReader::measure),
        protocol,
        stints,
        Objects.requireNonNullElse(f.object("laps", PlanReader::laps), USUAL_LAPS),
        blinding,
        f.object("timetable", PlanReader::timetable),
        f.object("noise", NoiseReader::noise),
        f.text("override", ""),
        blankToNull(f.text("series", "")),
        f.integer("series_sessions"),
        f.objects("covariates", PlanReader::covariate),
        f.wholes("looks", FieldWords.LOOKS.say()),
        f.object("trail_version", TimingReader::trailVersion),
        own.steps(),
        own.telling());
  }

  private static LocalDate day(FieldReader f) {
    LocalDate day = f.parsed("day", FieldWords.DATE.say(), LocalDate::parse);
    if (day == null && f.value("day") == null) {
      f.required("day");
    }
    return day == null ? Plan.NO_DAY : day;
  }

  private static Plan.Laps laps(FieldReader l) {
    return new Plan.Laps(l.integer("warm_up", 2), l.integer("settling", 0), l.integer("scored", 1));
  }

  private static @Nullable String blankToNull(String text) {
    return text.isBlank() ? null : text;
  }

  private static void fixed(FieldReader f, String name, String only) {
    Located value = f.value(name);
    if (value != null && !only.equals(value.text())) {
      f.wrong(name, value, FieldWords.ONLY.say(only));
    }
  }

  private static Plan.Expectations expectations(FieldReader f) {
    return new Plan.Expectations(f.text("tester", ""), f.text("rider", ""), f.text("helper", ""));
  }

  private static Bikes bikes(FieldReader f) {
    return new Bikes(
        f.text("first", ""),
        f.text("second", ""),
        f.objects(
            "differences",
            d ->
                new Bikes.Difference(
                    d.requiredText("name"), d.text("first", ""), d.text("second", ""))),
        f.integer("change_after"));
  }

  static Measure measure(FieldReader f) {
    Measure.Kind kind = f.option("kind", Measure.Kind.class, Measure.Kind.LAP_TIME);
    if (f.required("kind") == null) {
      kind = Measure.Kind.LAP_TIME;
    }
    return new Measure(
        f.requiredText("name"),
        kind,
        f.text("unit", ""),
        f.text("low_words", ""),
        f.text("high_words", ""),
        f.option("role", Measure.Role.class, Measure.Role.SECONDARY),
        f.option("better", Measure.Better.class, usuallyBetter(kind)),
        f.decimal("worthwhile"),
        f.option("drift", Drift.class, Drift.LINE),
        f.option("scale", Scale.class, Scale.RAW),
        f.option("summary", StintSummary.class, StintSummary.MEAN),
        f.text("definition", ""),
        f.text("worthwhile_reason", ""),
        assessor(f),
        TimingReader.timing(f));
  }

  private static @Nullable Assessor assessor(FieldReader f) {
    String name = f.text("assessor", "");
    boolean knows = f.bool("assessor_knows", false);
    return name.isBlank() ? null : new Assessor(name, knows);
  }

  static Covariate covariate(FieldReader f) {
    f.required("kind");
    return new Covariate(
        f.requiredText("name"),
        f.option("kind", Covariate.Kind.class, Covariate.Kind.FREE),
        f.text("unit", ""),
        f.option("by", Covariate.By.class, Covariate.By.STARTER),
        f.option("per", Covariate.Per.class, Covariate.Per.STINT),
        f.text("reason", ""),
        f.decimal("correlation"));
  }

  private static Measure.Better usuallyBetter(Measure.Kind kind) {
    return kind.rating() ? Measure.Better.HIGHER : Measure.Better.LOWER;
  }

  private Protocol protocol(
      FieldReader f, Plan.Kind kind, @Nullable TellingRun telling, int setups, BlindLevel level) {
    Located rule = f.value("rule");
    Located named = f.value("protocol");
    if (rule != null) {
      return Protocol.unnamed(
          java.util.Objects.requireNonNull(f.object("rule", r -> rule(r, setups))));
    }
    if (named != null && named.fields() != null) {
      return java.util.Objects.requireNonNull(f.object("protocol", Protocols::fields));
    }
    if (named == null && kind == Plan.Kind.TELLING_RUN && telling != null) {
      return telling.protocol();
    }
    String name = f.text("protocol", Protocols.usualFor(kind, setups, level));
    Protocol protocol = protocols.named(name).orElse(null);
    if (protocol == null) {
      problems.add(
          Problem.of(
              PlanFault.UNKNOWN_PROTOCOL,
              named == null ? "protocol" : FieldReader.where("protocol", named),
              name,
              String.join(", ", protocols.names())));
      return Protocol.unnamed(Rule.blocks(2, 16, 4));
    }
    return protocol;
  }

  private static Rule rule(FieldReader f, int setups) {
    int stints = f.integer("stints", 16);
    return new Rule(
        f.integer("setups", setups),
        stints,
        f.integer("block", stints),
        f.texts("patterns"),
        f.integer("max_run"),
        f.share("min_trend_efficiency"));
  }

  private static Blinding blinding(FieldReader f) {
    BlindLevel level =
        f.option(
            "level",
            BlindLevel.class,
            f.bool("blinded", true) ? BlindLevel.HELPER : BlindLevel.OPEN);
    return new Blinding(
        level,
        f.text("helper", ""),
        f.text("others_who_know", ""),
        f.text("cover", ""),
        f.text("ballast", ""),
        f.text("noise", ""),
        f.text("rider_waits", ""),
        f.text("bike_moved_by", ""),
        f.text("levers_touched_by", ""),
        f.text("remaining_cues", ""),
        f.bool("guesses", level.blind()),
        f.text("helper_waits", ""),
        f.text("timed_by", ""),
        f.option("times", Blinding.Times.class, Blinding.Times.AT_THE_REVIEW),
        f.option("record_of", Blinding.RecordOf.class, Blinding.RecordOf.STARTER),
        preparation(f));
  }

  private static Preparation preparation(FieldReader f) {
    return new Preparation(
        f.text("prepared_by", ""),
        f.parsed("prepared_on", FieldWords.DATE.say(), LocalDate::parse),
        f.option("masks", Preparation.Masks.class, Preparation.Masks.FRIEND),
        f.integer("units"),
        f.bool("recovers", false));
  }

  private static Timetable timetable(FieldReader f) {
    return new Timetable(
        or(f.parsed("zone", FieldWords.ZONE.say(), ZoneId::of), ZoneId.of("UTC")),
        or(f.parsed("start", FieldWords.START.say(), PlanReader::clock), LocalTime.of(9, 0)),
        or(
            f.parsed("daylight_end", FieldWords.DAYLIGHT_END.say(), PlanReader::clock),
            LocalTime.of(17, 0)),
        f.decimal("lap", "0"),
        f.decimal("climb", "0"),
        f.decimal("swap", "0"),
        f.decimal("scoring", "2"),
        f.integer("rest_every", 0),
        f.decimal("rest", "0"),
        f.decimal("cool_down", "0"),
        f.integer("lap_budget"),
        or(
            f.parsed(
                "practised",
                FieldWords.PRACTISED.say(),
                text -> Practised.read(text).orElseThrow()),
            Practised.NONE));
  }

  private static LocalTime clock(String text) {
    if (text.length() != 5) {
      throw new java.time.DateTimeException("not hours and minutes");
    }
    return LocalTime.parse(text);
  }

  private static <T> T or(@Nullable T value, T otherwise) {
    return value == null ? otherwise : value;
  }
}
