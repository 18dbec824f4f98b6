package blindlap.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.CanonicalJson;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.Plans;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The JSON schema of plan files and the reader say the same of form. */
class PlanSchemaTest {
  private static final Schema SCHEMA = schema();

  private static Schema schema() {
    try (InputStream in = PlanSchemaTest.class.getResourceAsStream("plan.schema.json")) {
      String text =
          new String(java.util.Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
      return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(text, InputFormat.JSON);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static List<?> complaints(String json) {
    return SCHEMA.validate(json, InputFormat.JSON);
  }

  private static boolean reads(String json) {
    return PlanReader.read(json, Plans.protocols()).problems().isEmpty();
  }

  static Stream<Path> samples() throws IOException {
    return Files.walk(Path.of("sample-sessions"))
        .filter(file -> file.getFileName().toString().equals("plan.yaml"));
  }

  @ParameterizedTest
  @MethodSource("samples")
  void everySamplePlanIsGoodForBothAndComesBackFromItsCanonicalForm(Path file) throws IOException {
    String json = CanonicalJson.text(PlanText.read(Files.readString(file)).fields());
    Plan plan = java.util.Objects.requireNonNull(PlanReader.read(json, Plans.protocols()).plan());
    String canonical = new String(PlanJson.bytes(plan), StandardCharsets.UTF_8);

    assertThat(complaints(json)).isEmpty();
    assertThat(reads(json)).isTrue();
    assertThat(complaints(canonical)).isEmpty();
    assertThat(PlanReader.stored(canonical)).isEqualTo(plan);
    assertThat(PlanJson.bytes(PlanReader.stored(canonical)))
        .asString(StandardCharsets.UTF_8)
        .isEqualTo(canonical);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "change: two bikes\n"
            + "bikes: {first: grey, second: green, change_after: 8, differences: [{name: size,"
            + " first: M, second: L}]}",
        "setups: [{name: A, mass: 1.64 lb, ballast_g: 20, settings: [{name: r, value: 3, range: 12,"
            + " step: 0.5, readings: 3, check: start and end, equal: true}]}, {name: B}]",
        "measures: [{name: overall, kind: category scale, low_words: bad, high_words: good, role:"
            + " primary, worthwhile: 1, definition: the whole lap, worthwhile_reason: its price}]",
        "noise: {sd: 0.5, df: 13, source: two days in May}",
        "noise: null",
        "trail_version: {number: '2'}",
        "trail_version: {number: 2, gates: [{name: Top, first: {latitude: 47, longitude: 8.1},"
            + " second: {latitude: '47,1', longitude: -8.2}, direction: -1}], sha256: ab}",
        "measures: [{name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 1,"
            + " timed_by: Recording_and Watch, from_gate: Top, to_gate: Barn}]",
        "noise: {sd: '0,5', df: ' 13 '}",
        "setups: [{name: A, mass: '1,64 lb', ballast_g: .5, settings: [{name: r, value: '3,5',"
            + " tolerance: '−0,5', range: 12., step: '0,5'}]}, {name: B}]",
        "rule: {stints: 16, block: 4, max_run: 3}",
        "protocol: {name: mine, block: 4, usual_stints: 12}",
        "kind: noise run",
        "{kind: Steps-Day, setups: [{name: Shock K}], steps_day: {setting: rebound, unit: clicks,"
            + " levels: '4, 7; 10 13', way: clicks, least: 2, most: '16', source: p. 12}}",
        "{kind: steps day, setups: [{name: Fork M}], steps_day: {setting: air, unit: bar, levels:"
            + " [5, '5,5', 6.0], way: pressure, low: 4.5, high: '6,5'}}",
        "{kind: steps day, protocol: {name: own, levels: yes, block: 3}}",
        "{kind: Telling_Run, telling_run: {task: duo-trio, trials: '30', matters: '0,4'}}",
        "{kind: telling run, setups: [{name: K}], telling_run: {one_setting: {setting: rebound,"
            + " unit: clicks, levels: '9, 13', way: clicks, least: 2, most: 16, source: p. 12}}}",
        "{kind: telling run, telling_run: {task: two choice, trials: 24, matters: 0.5, attribute:"
            + " grip, more: Shock K}}",
        "blinding: {blinded: false, times: after scoring, helper_waits: in the hut, timed_by:"
            + " starter}",
        "timetable: {zone: Asia/Kathmandu, start: '05:30', daylight_end: '17:45', lap: 2.5,"
            + " rest_every: 0, lap_budget: 20}",
      })
  void goodFormIsGoodForBoth(String yaml) {
    String json = Plans.text(yaml);

    assertThat(complaints(json)).isEmpty();
    assertThat(PlanReader.read(json, Plans.protocols()).problems()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "question: ''",
        "rider: null",
        "day: tomorrow",
        "day: 14.11.2026",
        "stints: many",
        "stints: 16.5",
        "setups: [{name: A, settings: [{name: r, value: 3, tolerance: '1,234.5'}]}]",
        "setups: [{name: A, mass: '1,234.5 g'}]",
        "colour: red",
        "setups: two",
        "setups: [{title: A}]",
        "setups: [{name: A, mass: heavy}]",
        "setups: [{name: A, price: {amount: 5}}]",
        "setups: [{name: A, settings: [{name: r}]}]",
        "setups: [{name: A, settings: [{name: r, value: 3, equal: perhaps}]}]",
        "setups: [{name: A, settings: [{name: r, value: 3, check: sometimes}]}]",
        "setups: [{name: A, settings: [{name: r, value: 3, tolerance: 1e-3}]}]",
        "measures: [{name: lap time}]",
        "measures: [{name: lap time, kind: hour}]",
        "measures: [{name: lap time, kind: lap time, role: main}]",
        "timetable: {start: 9}",
        "timetable: {start: '25:00'}",
        "timetable: {lap: two}",
        "noise: {source: guess}",
        "laps: {scored: one}",
        "change: swap",
        "steps_day: {way: turns}",
        "steps_day: {least: low}",
        "steps_day: {step: 3}",
        "steps_day: {levels: {a: 1}}",
        "telling_run: {task: same-different}",
        "telling_run: {trials: many}",
        "telling_run: {matters: half}",
        "telling_run: {laps: 3}",
        "telling_run: {one_setting: {levels: {a: 1}}}",
        "telling_run: {one_setting: {way: by hand}}",
        "telling_run: {one_setting: {trials: 3}}",
        "level: 0.1",
        "missing: impute",
        "plan: '2'",
        "blinding: {guesses: maybe}",
        "bikes: {third: blue}",
        "trail_version: 2",
        "trail_version: {}",
        "trail_version: {number: 2, gates: [{name: Top}]}",
        "trail_version: {number: 2, gates: [{name: Top, first: {latitude: 47}, second: {latitude:"
            + " 47, longitude: 8}}]}",
        "measures: [{name: lap time, kind: lap time, timed_by: phone}]",
      })
  void badFormIsBadForBoth(String yaml) {
    String json = Plans.text(yaml);

    assertThat(complaints(json)).isNotEmpty();
    assertThat(reads(json)).isFalse();
  }

  /** A word that the program learns must be learnt by the schema too. */
  @ParameterizedTest
  @EnumSource(Measure.Kind.class)
  void everyKindOfMeasureIsGoodForBoth(Measure.Kind kind) {
    String json =
        Plans.text(
            "measures: [{name: m, kind: %s, unit: u, low_words: a, high_words: b, role: primary,"
                    .formatted(PlanJson.word(kind))
                + " worthwhile: 1}]");

    assertThat(complaints(json)).isEmpty();
    assertThat(PlanReader.read(json, Plans.protocols()).problems()).isEmpty();
  }
}
