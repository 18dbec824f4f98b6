package blindlap.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.CanonicalJson;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.Plans;
import blindlap.plan.StepsDays;
import blindlap.plan.TellingRuns;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Plan files that the program writes read as if a person had written them. */
class PlanFileWriterTest {
  private static final int PLANS = 400;

  private static final String[] TEXTS = {
    "Shock K",
    "a: b",
    "5",
    "0,5",
    "ü ☂ 🚵",
    "yes",
    "null",
    "- a",
    "# c",
    "x #y",
    "two\nlines",
    "\"q\" \\ 'r'",
    "a\tb",
    "tail:",
    "007",
    "09:00",
    "~",
    "no-break\u00a0space",
    "{x}",
    "[y]",
    "one\n  indented\nlast",
    "&a",
    "*b",
    "!t",
    "%d",
    "@at",
    "`tick",
    "? q",
    "| p",
    "> g",
    ".5",
    "1_000"
  };

  private final Random random = new Random(20_260_201);

  /** A steps day has one setup and its levels again, as it was typed. */
  @Test
  void aStepsDayIsWrittenWithItsOneSetup() {
    for (String levels : List.of("[4, 7, 10, 13]", "['4,0', 7, '10', 13]")) {
      Plan plan = Plans.with(StepsDays.text("least: 2, levels: " + levels, 16));

      String file = PlanText.yaml(PlanJson.tree(plan));

      assertThat(file).contains("- name: Shock K\n").doesNotContain("shock-k");
      assertThat(file).containsOnlyOnce("rebound\n").contains("levels: ");
      assertThat(read(file)).isEqualTo(new PlanReader.Reading(plan, List.of()));
    }
  }

  /** Rule and stints of a telling run follow from its trials and are not typed again. */
  @Test
  void aTellingRunIsWrittenWithoutRuleAndStints() {
    Plan plan = Plans.with(TellingRuns.text("task: duo-trio, trials: 30, matters: 0.4"));

    String file = PlanText.yaml(PlanJson.tree(plan));

    assertThat(file).contains("telling_run:").doesNotContain("protocol:").doesNotContain("stints:");
    assertThat(read(file)).isEqualTo(new PlanReader.Reading(plan, List.of()));
  }

  /** Setups that say more than the level keep what they say. */
  @Test
  void levelsWithTolerancesOfTheirOwnStayWhatTheyAre() {
    StringBuilder setups = new StringBuilder();
    for (int click : new int[] {4, 7, 10}) {
      setups.append(
          "{name: '%d', id: k-%d, settings: [{name: rebound, value: %d, tolerance: %d}]}, "
              .formatted(click, click, click, click % 2));
    }
    Plan plan =
        Plans.with(
            "{kind: steps day, stints: 18, protocol: null, setups: [%s], steps_day: {setting: rebound, setup: K, setup_id: k}}"
                .formatted(setups));

    assertThat(read(PlanText.yaml(PlanJson.tree(plan))).plan()).isEqualTo(plan);
  }

  @Test
  void aPlanOfEveryKindIsThePlanThatItsFileReads() {
    int plans = 0;
    for (int i = 0; i < PLANS; i++) {
      Map<String, Object> typed = fields();
      PlanReader.Reading meant = read(CanonicalJson.text(typed));
      assertThat(meant.problems()).as("fields %s", typed).isEmpty();
      Plan plan = Objects.requireNonNull(meant.plan());

      for (Map<String, ?> fields : List.of(typed, PlanJson.tree(plan))) {
        String file = PlanText.yaml(fields);
        PlanReader.Reading read = read(file);

        assertThat(read.problems()).as(file).isEmpty();
        assertThat(PlanJson.tree(Objects.requireNonNull(read.plan())))
            .as(file)
            .isEqualTo(PlanJson.tree(plan));
        assertThat(PlanText.yaml(PlanText.read(file).fields())).isEqualTo(file);
      }
      plans++;
    }
    assertThat(plans).isEqualTo(PLANS);
  }

  /** In a file of the whole plan, where every default is filled in, too. */
  @ParameterizedTest
  @CsvSource({
    "worthwhile: 0.5, worthwhile: 0.7",
    "usual_difference: 0.75, usual_difference: 0.9",
    "usual_difference: 0.75, 'usual_difference: 0,9'",
    "mass: 742 g, mass: 1.7 lb",
    "name: Shock L, name: Shock M",
    "stints: 16, stints: 12",
    "value: 9, value: 8",
    "day: 2026-11-14, day: 2026-11-15",
    "swap: 7, 'swap: 7,5'",
    "role: watch for harm, role: secondary",
    "start: 09:00, start: 08:30",
    "guesses: yes, guesses: no",
  })
  void oneValueChangedByHandIsEnough(String before, String after) {
    Map<String, Object> start = PlanText.read(Plans.text("")).fields();
    Map<String, Object> setups =
        PlanText.read(CanonicalJson.text(start).replace("\"mass_g\":\"742\"", "\"mass\":\"742 g\""))
            .fields();
    Plan plan = Objects.requireNonNull(read(CanonicalJson.text(setups)).plan());
    String file = PlanText.yaml(PlanJson.tree(plan));
    assertThat(file).contains(before);

    PlanReader.Reading changed = read(file.replaceFirst(before, after));

    assertThat(changed.problems()).isEmpty();
    assertThat(changed.plan()).isNotNull().isNotEqualTo(plan);
  }

  @Test
  void numbersStandWithoutQuotesAndTheQuestionFirst() {
    String file = PlanText.yaml(PlanJson.tree(Plans.with("")));

    assertThat(file.lines().filter(line -> !line.startsWith("#") && !line.isEmpty()).findFirst())
        .hasValue("question: Is Shock L quicker than Shock K on Quarry loop?");
    assertThat(file).doesNotContainPattern("\"[\\d.,:]+\"").doesNotContain("null", "mask", "level");
    assertThat(file.lines().filter(line -> line.startsWith("# "))).hasSizeGreaterThan(8);
  }

  @Test
  void whatMustBeThereAndIsNotStandsReadyToBeFilledIn() {
    Map<String, Object> fields = PlanText.read(Plans.text("")).fields();
    fields.remove("day");
    String file = PlanText.yaml(fields);

    assertThat(file).containsPattern("(?m)^day:  # .*2026-11-14$");
    assertThat(read(file.replaceFirst("(?m)^day:", "day: 2026-12-01")).problems()).isEmpty();
  }

  private static PlanReader.Reading read(String text) {
    return PlanReader.read(text, Plans.protocols());
  }

  private String any(String... texts) {
    return texts[random.nextInt(texts.length)];
  }

  private void maybe(Map<String, Object> fields, String name, Object value) {
    if (random.nextBoolean()) {
      fields.put(name, value);
    }
  }

  private Map<String, Object> fields() {
    Map<String, Object> plan = new LinkedHashMap<>();
    maybe(plan, "level", "0.05");
    maybe(plan, "kind", any("comparison", "noise run"));
    plan.put("question", any(TEXTS));
    plan.put("rider", any(TEXTS));
    plan.put("trail", any(TEXTS));
    plan.put("day", any("2026-11-14", "2027-01-01"));
    maybe(plan, "conditions", any(TEXTS));
    List<Object> setups = new ArrayList<>();
    for (int i = 2 + random.nextInt(3); i > 0; i--) {
      setups.add(setup());
    }
    plan.put("setups", setups);
    maybe(plan, "change", any("refit", "wheel change", "two bikes"));
    maybe(
        plan,
        "bikes",
        Map.of("first", any(TEXTS), "differences", List.of(Map.of("name", any(TEXTS)))));
    maybe(plan, "differences_reason", any(TEXTS));
    maybe(plan, "bike", List.of(setting()));
    plan.put("measures", List.of(measure(), measure()));
    maybe(plan, "stints", any("8", "16"));
    maybe(plan, "rule", Map.of("stints", "8", "patterns", List.of("ABBA", "BAAB")));
    maybe(plan, "laps", Map.of("warm_up", any("0", "3"), "scored", any("1", "2")));
    maybe(
        plan,
        "blinding",
        Map.of("blinded", any("true", "no"), "guesses", "false", "cover", any(TEXTS)));
    maybe(
        plan, "timetable", Map.of("start", any("09:00", "23:30"), "lap", any("6", "2,5", "0.25")));
    maybe(plan, "noise", noise());
    maybe(plan, "override", any(TEXTS));
    maybe(plan, "series", any("after-1", "5"));
    maybe(plan, "series_sessions", "3");
    maybe(plan, "looks", any("16, 20", "12"));
    maybe(plan, "expectations", Map.of("tester", any(TEXTS), "rider", any(TEXTS)));
    return plan;
  }

  private Map<String, Object> noise() {
    return switch (random.nextInt(5)) {
      case 3 -> Map.of("sd", "0.62", "laps", "3", "stint_share", any("30", "10 to 60"));
      case 4 -> Map.of("usual_difference", "0.7", "stint_share", "12,5");
      case 0 -> Map.of("sd", "0.62", "df", "12", "source", any(TEXTS));
      case 1 -> Map.of("usual_difference", "0,7");
      default -> Map.of("usual_difference", "0.7", "sd", "0.6204");
    };
  }

  private Map<String, Object> setup() {
    Map<String, Object> setup = new LinkedHashMap<>();
    setup.put("name", any(TEXTS));
    maybe(setup, "id", any("shock-k", "own-id"));
    maybe(setup, "component", any(TEXTS));
    maybe(setup, "settings", List.of(setting(), setting()));
    maybe(setup, "mass", any("1.64 lb", "742 g", "0,742 kg"));
    if (!setup.containsKey("mass")) {
      maybe(setup, "mass_g", "742");
    }
    maybe(setup, "price", Map.of("amount", "12.50", "currency", any(TEXTS)));
    maybe(setup, "steps", List.of(any(TEXTS), any(TEXTS)));
    maybe(setup, "limits", List.of(Map.of("what", any(TEXTS), "value", any("12 N.m", "12"))));
    maybe(setup, "cautions", List.of(any(TEXTS)));
    return setup;
  }

  private Map<String, Object> setting() {
    Map<String, Object> setting = new LinkedHashMap<>();
    setting.put("name", any(TEXTS));
    setting.put("value", any(TEXTS));
    maybe(setting, "unit", any("bar", "%", "clicks from closed"));
    maybe(setting, "tolerance", any("0", "0,03"));
    maybe(setting, "equal", any("yes", "no", "true", "false"));
    maybe(setting, "check", any("each lap", "each stint"));
    maybe(setting, "readings", any("1", "3"));
    return setting;
  }

  private Map<String, Object> measure() {
    Map<String, Object> measure = new LinkedHashMap<>();
    measure.put("name", any(TEXTS));
    measure.put("kind", any("lap time", "line scale", "count"));
    maybe(measure, "unit", any("s", "a lap"));
    maybe(measure, "role", any("primary", "secondary", "watch for harm"));
    maybe(measure, "better", any("lower", "neither"));
    maybe(measure, "worthwhile", any("0.5", "8"));
    maybe(measure, "drift", any("none", "line"));
    maybe(measure, "scale", any("raw", "ratio"));
    maybe(measure, "low_words", any(TEXTS));
    return measure;
  }
}
