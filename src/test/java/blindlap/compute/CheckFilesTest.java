package blindlap.compute;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every check, from outside and our own apart; each test is named by title and source. */
class CheckFilesTest {
  /** Calculations that no outside check covers, and what else holds them. */
  private static final Map<String, String> OWN_VECTORS_ONLY =
      Map.of(
          "orders", "stats.order.AssignmentsTest",
          "compare-measures", "stats.compare.SeveralMeasuresTest",
          "detectable", "stats.power.DayPowerTest",
          "count-ratio", "stats.compare.CountRatioTest",
          "trend", "stats.compare.TrendTest",
          "along", "stats.compare.AlongTest",
          "field", "stats.pool.FieldTest",
          "waits", "stats.tell.WaitTestTest");

  private final Calculations calculations = Calculations.standard();

  @TestFactory
  Stream<DynamicTest> everyOutsideCheckPasses() throws Exception {
    return outside().stream().map(this::test);
  }

  @TestFactory
  Stream<DynamicTest> everyOwnReferenceVectorPasses() throws Exception {
    return own().stream().map(this::test);
  }

  @Test
  void aCheckLiesInTheFolderOfItsKind() throws Exception {
    assertThat(outside()).hasSize(192).noneMatch(CheckFile::own);
    assertThat(own())
        .hasSize(70)
        .allSatisfy(check -> assertThat(check.source()).startsWith("own: "));
  }

  @Test
  void everyCalculationHasACheckAndEveryCheckItsCalculation() throws Exception {
    assertThat(calculations.names()).isEqualTo(wanted(checks()));
  }

  @Test
  void whatNoOutsideCheckCoversIsNamedWithWhatElseHoldsIt() throws Exception {
    Set<String> bare = wanted(own());
    bare.removeAll(wanted(outside()));
    assertThat(OWN_VECTORS_ONLY.keySet()).isEqualTo(bare);
    String readme = Files.readString(folder().resolve("README.md"));
    assertThat(readme).contains("192 outside checks", "70 own reference vectors");
    assertThat(Files.readString(Path.of("docs/method.md")))
        .contains("192 outside checks", "70 own reference vectors");
    for (Map.Entry<String, String> each : OWN_VECTORS_ONLY.entrySet()) {
      assertThat(readme).contains("`" + each.getKey() + "` (`" + each.getValue() + "`)");
      String file = "src/test/java/blindlap/" + each.getValue().replace('.', '/') + ".java";
      assertThat(Path.of(file)).isRegularFile();
    }
  }

  private static Set<String> wanted(List<CheckFile> checks) {
    return checks.stream()
        .map(check -> check.request().calculation())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private DynamicTest test(CheckFile check) {
    return dynamicTest(
        check.id() + ": " + check.title() + " | " + check.source(),
        () -> assertThat(check.shortfalls(calculations.answer(check.request()))).isEmpty());
  }

  static List<CheckFile> checks() throws IOException, URISyntaxException {
    return Stream.concat(outside().stream(), own().stream()).toList();
  }

  private static List<CheckFile> outside() throws IOException, URISyntaxException {
    return in("outside");
  }

  private static List<CheckFile> own() throws IOException, URISyntaxException {
    return in("own");
  }

  private static List<CheckFile> in(String kind) throws IOException, URISyntaxException {
    try (Stream<Path> files = Files.walk(folder().resolve(kind))) {
      return files
          .filter(file -> file.toString().endsWith(".json"))
          .sorted()
          .flatMap(file -> parse(file).stream())
          .toList();
    }
  }

  static List<Path> folders() throws URISyntaxException {
    return List.of(folder().resolve("outside"), folder().resolve("own"));
  }

  static Path folder() throws URISyntaxException {
    URI uri = Objects.requireNonNull(CheckFilesTest.class.getResource("/blindlap/checks")).toURI();
    return Path.of(uri);
  }

  private static List<CheckFile> parse(Path file) {
    try {
      return CheckFile.parse(Files.readString(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
