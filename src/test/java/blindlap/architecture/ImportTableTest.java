package blindlap.architecture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ImportTableTest {
  private static final String ROOT = "pairs";
  private static final String UNKNOWN = "util";

  @Test
  void everyRoomOfTheApplicationHasARowAndEveryRowHasARoom() {
    Set<String> present =
        Code.application().stream()
            .map(type -> Code.part(Code.APPLICATION, type))
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(present).isEqualTo(new TreeSet<>(ImportTable.ROWS.keySet()));
  }

  @Test
  void everyRowNamesRoomsThatExistAndNeedsThemAll() {
    Set<String> used = new TreeSet<>();
    for (JavaClass type : Code.application()) {
      String from = Code.part(Code.APPLICATION, type);
      Stream.concat(
              type.getDirectDependenciesFromSelf().stream().map(Dependency::getTargetClass),
              type.getAccessesFromSelf().stream().flatMap(Handed::handled))
          .filter(target -> Code.under(Code.APPLICATION, target))
          .forEach(target -> used.add(from + " > " + Code.part(Code.APPLICATION, target)));
    }
    List<String> idle = new ArrayList<>();
    ImportTable.ROWS.forEach(
        (from, row) ->
            row.stream()
                .filter(name -> used.stream().noneMatch(way -> leads(way, from, name)))
                .forEach(name -> idle.add(from + " > " + name)));
    assertThat(idle).as("allowed without need").isEmpty();
  }

  private static boolean leads(String way, String from, String name) {
    String start = from + " > ";
    return name.endsWith(".*")
        ? way.startsWith(start + name.substring(0, name.length() - 1))
        : way.equals(start + name);
  }

  @Test
  void aDocumentWithoutATableIsNoTable() {
    assertThatThrownBy(() -> ImportTable.rows(List.of("# Rooms", "| room | subject |")))
        .isInstanceOf(IllegalStateException.class);
  }

  @Test
  void everyPairOfRoomsIsAllowedOrRefusedAsTheDecisionRecordSays(@TempDir Path folder) {
    Set<String> expected = new TreeSet<>();
    for (String from : known()) {
      for (String to : known()) {
        if (!from.equals(to) && !listed(from, to)) {
          expected.add(qualified(from, "Needs." + field(to)));
        }
      }
    }
    assertThat(refused(compiledPairs(folder))).isEqualTo(expected);
  }

  @Test
  void importLinesOfTheApplicationKeepToTheTable() {
    assertThat(ImportTable.refusedImportLines(Code.APPLICATION, Sources.application())).isEmpty();
  }

  @Test
  void anImportLineIsRefusedEvenIfOnlyAConstantOrACommentNeedsIt() {
    Sources broken =
        Sources.of(
            """
            package blindlap.stats.order;
            import static blindlap.plan.Rule.MOST_STINTS;
            import blindlap.plan.Plan.Kind;
            import blindlap.screen.book.*;
            import blindlap.stats.order.Drift;
            import java.util.List;
            /** See {@link Kind}. */
            class Broken { int most = MOST_STINTS; }
            """);
    assertThat(ImportTable.refusedImportLines("blindlap", broken))
        .extracting(line -> line.substring(line.lastIndexOf(' ') + 1))
        .containsExactly(
            "blindlap.plan.Rule.MOST_STINTS", "blindlap.plan.Plan.Kind", "blindlap.screen.book.*");
  }

  @Test
  void importLinesThatTheTableAllowsPassInWhateverForm() {
    String lines =
        "import blindlap.stats.order.*;\nimport static blindlap.stats.order.Orders.parse;\n";
    for (String home : List.of("blindlap.plan", "blindlap.stats.order", "blindlap.review")) {
      Sources sound = Sources.of("package " + home + ";\n" + lines + "class Sound {}\n");
      assertThat(ImportTable.refusedImportLines("blindlap", sound)).isEmpty();
    }
  }

  /** The same question asked of the plain cells of a row. */
  private static boolean listed(String from, String to) {
    Set<String> row = ImportTable.ROWS.getOrDefault(from, Set.of());
    String group = to.replaceFirst("\\.\\w+$", ".*");
    return row.contains(to) || to.contains(".") && row.contains(group);
  }

  private static List<String> known() {
    List<String> all = new ArrayList<>(ImportTable.ROWS.keySet());
    all.add(UNKNOWN);
    return all;
  }

  /** A class in each package that needs every other one, a field for each. */
  private static JavaClasses compiledPairs(Path folder) {
    Map<String, String> sources = new LinkedHashMap<>();
    for (String from : known()) {
      StringBuilder fields = new StringBuilder();
      for (String to : known()) {
        fields.append("%s %s;%n".formatted(qualified(to, "Target"), field(to)));
      }
      String head = "package " + (from.isEmpty() ? ROOT : ROOT + "." + from) + ";\n";
      sources.put(qualified(from, "Target"), head + "public class Target {}");
      sources.put(qualified(from, "Needs"), head + "class Needs {" + fields + "}");
    }
    return Code.compiled(folder, sources);
  }

  /** Fields, one for each pair of packages, that the rule refuses. */
  private static Set<String> refused(JavaClasses classes) {
    return ImportTable.rule(ROOT).evaluate(classes).getFailureReport().getDetails().stream()
        .filter(line -> line.startsWith("Field <"))
        .map(line -> line.substring("Field <".length(), line.indexOf('>')))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static String field(String to) {
    return "to_" + to.replace('.', '_');
  }

  private static String qualified(String part, String name) {
    return part.isEmpty() ? ROOT + "." + name : ROOT + "." + part + "." + name;
  }
}
