package blindlap.compute;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * docs/compute.md against the calculations: every one and every field is there, shapes and what is
 * required are those that the check files show, and every example answers the printed digits. With
 * {@code -Dblindlap.write=true} the answers are written again.
 */
class ComputeDocumentTest {
  private static final Calculations CALCULATIONS = Calculations.standard();
  private static final Pattern LITERAL =
      Pattern.compile(
          "\\.(?:number|whole|flag|text|none|interval|numbers|wholesOrNone|texts|table|objects?)"
              + "\\(\\s*\"([a-z0-9_]+)\"");

  private static ComputePage page;
  private static Map<String, List<ObjectNode>> checks;
  private static Map<String, ObjectNode> byId;

  @BeforeAll
  static void read() throws Exception {
    page = ComputePage.read();
    byId = new HashMap<>();
    checks = new HashMap<>();
    try (Stream<Path> files = Files.walk(CheckFilesTest.folder())) {
      for (Path file : files.filter(each -> each.toString().endsWith(".json")).sorted().toList()) {
        for (StrictJson.Rooted check :
            StrictJson.objects(StrictJson.parse(Files.readString(file)))) {
          byId.put(check.object().get("id").textValue(), check.object());
          checks
              .computeIfAbsent(
                  check.object().get("calculation").textValue(), n -> new ArrayList<>())
              .add(check.object());
        }
      }
    }
  }

  @Test
  void everyCalculationHasItsSection() {
    assertThat(page.names()).isEqualTo(CALCULATIONS.names());
  }

  @Test
  void everyFieldOfARequestIsNamedAndNoOther() {
    for (String name : CALCULATIONS.names()) {
      Set<String> named = new TreeSet<>(page.given(name).keySet());
      named.removeIf(field -> !field.matches("[a-z_]+"));
      assertThat(named).as(name).isEqualTo(new TreeSet<>(CALCULATIONS.fields(name)));
    }
  }

  @Test
  void shapesAreThoseOfTheChecks() {
    for (String name : CALCULATIONS.names()) {
      Map<String, ComputePage.Row> rows = page.given(name);
      for (ObjectNode check : checks.getOrDefault(name, List.of())) {
        shapes(name, rows, "", (ObjectNode) check.get("given"));
      }
    }
  }

  private static void shapes(
      String name, Map<String, ComputePage.Row> rows, String before, ObjectNode given) {
    given
        .fields()
        .forEachRemaining(
            field -> {
              String path = before + field.getKey();
              assertThat(rows).as(name).containsKey(path);
              JsonNode value = field.getValue();
              assertThat(Objects.requireNonNull(rows.get(path)).fits(value))
                  .as("%s %s: %s", name, path, value)
                  .isTrue();
              if (value instanceof ObjectNode inner) {
                shapes(name, rows, path + ".", inner);
              } else if (value.isArray() && value.path(0).isObject()) {
                value.forEach(each -> shapes(name, rows, path + "[].", (ObjectNode) each));
              }
            });
  }

  /**
   * "yes" where no check does without the field, and each refuses to; "no" where one of them does.
   */
  @Test
  void whatIsRequiredIsRequired() {
    for (String name : CALCULATIONS.names()) {
      page.given(name)
          .forEach(
              (field, row) -> {
                if (!field.matches("[a-z_]+")) {
                  return;
                }
                if (row.required().equals("yes")) {
                  assertThat(oneOfEachForm(name))
                      .as("%s without %s", name, field)
                      .allMatch(check -> check.get("given").has(field) && refused(check, field));
                } else if (row.required().startsWith("no")) {
                  assertThat(oneOfEachForm(name))
                      .as("%s without %s", name, field)
                      .anyMatch(check -> !check.get("given").has(field) || !refused(check, field));
                } else {
                  assertThat(row.required()).as(name + " " + field).matches(".*[a-z]{3}.*");
                }
              });
    }
  }

  private static boolean refused(ObjectNode check, String without) {
    ObjectNode copy = check.deepCopy();
    ((ObjectNode) copy.get("given")).remove(without);
    try {
      answer(copy);
      return false;
    } catch (RequestException e) {
      return true;
    }
  }

  @Test
  void everyFieldOfAnAnswerIsNamed() {
    for (String name : CALCULATIONS.names()) {
      Set<String> paths = new TreeSet<>();
      oneOfEachForm(name)
          .forEach(
              check -> paths("", StrictJson.parse(answer(check).print()).get("result"), paths));
      assertThat(page.answers(name).keySet()).as(name).containsAll(paths);
    }
  }

  /** What only a sampled set, an open end or a rare request brings, and no check's answer holds. */
  @Test
  void everyFieldThatTheCodeWritesIsNamed() throws IOException {
    Set<String> written = new TreeSet<>();
    try (Stream<Path> sources = Files.list(Path.of("src/main/java/blindlap/compute"))) {
      for (Path source :
          sources.filter(s -> s.toString().matches(".*(Calculations|Given)\\.java")).toList()) {
        LITERAL.matcher(Files.readString(source)).results().forEach(m -> written.add(m.group(1)));
      }
    }
    assertThat(written).hasSizeGreaterThan(150);
    Set<String> named = new HashSet<>();
    for (String name : CALCULATIONS.names()) {
      Stream.of(page.given(name).keySet(), page.answers(name).keySet())
          .flatMap(Collection::stream)
          .forEach(path -> named.add(path.replaceAll(".*\\.", "")));
    }
    assertThat(named).containsAll(written);
    Set<String> answered =
        CALCULATIONS.names().stream()
            .flatMap(name -> page.answers(name).keySet().stream())
            .map(path -> path.replaceAll(".*\\.", ""))
            .collect(Collectors.toSet());
    answered.removeAll(written);
    // Written from lists of names: intervals of a level, what is solved for, a level by its name.
    assertThat(answered)
        .isSubsetOf(
            Set.of(
                "interval_95",
                "interval_90",
                "interval_80",
                "interval_50",
                "hartung_knapp_interval_95",
                "modified_hartung_knapp_interval_95",
                "middle_better",
                "still_better"));
  }

  @Test
  void everyExampleIsItsCheckAndAnswersThePrintedDigits() throws IOException {
    for (ComputePage.Example example : page.examples()) {
      ObjectNode request = (ObjectNode) StrictJson.parse(example.request());
      ObjectNode check = Objects.requireNonNull(byId.get(example.check()), example.check());
      assertThat(request.get("calculation").textValue()).isEqualTo(example.calculation());
      assertThat(request.get("calculation")).isEqualTo(check.get("calculation"));
      assertThat(request.get("given")).as(example.check()).isEqualTo(check.get("given"));
    }
    String again = page.withAnswers(ComputeDocumentTest::answer);
    if (Boolean.getBoolean("blindlap.write")) {
      page.write(again);
    }
    assertThat(again).isEqualTo(ComputePage.read().text());
  }

  /** The smallest check for each set of fields: all of them would take many seconds again. */
  private static List<ObjectNode> oneOfEachForm(String name) {
    Map<Set<String>, ObjectNode> forms = new HashMap<>();
    for (ObjectNode check : checks.getOrDefault(name, List.of())) {
      Set<String> fields = new TreeSet<>();
      check.get("given").fieldNames().forEachRemaining(fields::add);
      forms.merge(fields, check, (a, b) -> a.toString().length() <= b.toString().length() ? a : b);
    }
    return List.copyOf(forms.values());
  }

  private static CalculationAnswer answer(ObjectNode request) {
    return CALCULATIONS.answer(CalculationRequest.parse(request.toString()).requests().get(0));
  }

  private static void paths(String before, JsonNode node, Set<String> paths) {
    node.fields()
        .forEachRemaining(
            field -> {
              String path = before + field.getKey();
              paths.add(path);
              if (field.getValue().isObject()) {
                paths(path + ".", field.getValue(), paths);
              }
              field
                  .getValue()
                  .forEach(
                      each -> {
                        if (each.isObject() && field.getValue().isArray()) {
                          paths(path + "[].", each, paths);
                        }
                      });
            });
  }
}
