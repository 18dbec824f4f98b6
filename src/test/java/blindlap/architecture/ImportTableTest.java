package blindlap.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ImportTableTest {
  private static final Path DECISION = Path.of("docs/adr/0001-packages-and-borders.md");
  private static final String ROOT = "pairs";
  private static final String UNKNOWN = "util";

  @Test
  void theTableInTheDecisionRecordIsTheOneThatIsEnforced() throws IOException {
    assertThat(decided()).isEqualTo(ImportTable.ROWS);
  }

  @Test
  void everyPairOfPackagesIsAllowedOrRefusedAsTheDecisionRecordSays(@TempDir Path folder)
      throws IOException {
    Map<String, Set<String>> decided = decided();
    Set<String> expected = new TreeSet<>();
    for (String from : known()) {
      for (String to : known()) {
        if (!from.equals(to) && !decided.getOrDefault(from, Set.of()).contains(to)) {
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
            package blindlap.stats;
            import static blindlap.plan.Rule.MOST_STINTS;
            import blindlap.plan.Plan.Kind;
            import blindlap.screen.model.*;
            import blindlap.stats.order.Drift;
            import java.util.List;
            /** See {@link Kind}. */
            class Broken { int most = MOST_STINTS; }
            """);
    assertThat(ImportTable.refusedImportLines("blindlap", broken))
        .extracting(line -> line.substring(line.lastIndexOf(' ') + 1))
        .containsExactly(
            "blindlap.plan.Rule.MOST_STINTS", "blindlap.plan.Plan.Kind", "blindlap.screen.model.*");
  }

  @Test
  void importLinesThatTheTableAllowsPassInWhateverForm() {
    String lines = "import blindlap.stats.*;\nimport static blindlap.stats.order.Orders.parse;\n";
    for (String home : List.of("blindlap.plan", "blindlap.stats", "blindlap")) {
      Sources sound = Sources.of("package " + home + ";\n" + lines + "class Sound {}\n");
      assertThat(ImportTable.refusedImportLines("blindlap", sound)).isEmpty();
    }
  }

  @Test
  void everyPackageThatShouldHoldClassesByNowDoes() {
    Set<String> present =
        Code.application().stream()
            .map(type -> Code.part(Code.APPLICATION, type))
            .collect(Collectors.toSet());
    assertThat(ImportTable.ROWS.keySet()).containsAll(ImportTable.PRESENT);
    assertThat(present).containsAll(ImportTable.PRESENT);
  }

  /** The rows of the table in the decision record. */
  private static Map<String, Set<String>> decided() throws IOException {
    Map<String, Set<String>> rows = new LinkedHashMap<>();
    for (String line : Files.readAllLines(DECISION)) {
      String[] cells = line.split("\\|", -1);
      if (cells.length == 4 && cells[1].startsWith(" `")) {
        rows.put(bare(cells[1]), packages(cells[2]));
      }
    }
    return rows;
  }

  private static Set<String> packages(String cell) {
    return Arrays.stream(cell.split(","))
        .map(ImportTableTest::bare)
        .filter(name -> !name.equals("nobody"))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static String bare(String cell) {
    String name = cell.replace('`', ' ').strip();
    return name.equals("blindlap") ? "" : name;
  }

  private static List<String> known() {
    List<String> all = new ArrayList<>(ImportTable.ROWS.keySet());
    all.add(UNKNOWN);
    return all;
  }

  /** A class in each package that needs every other one, a field for each. */
  private static JavaClasses compiledPairs(Path folder) {
    List<JavaFileObject> files = new ArrayList<>();
    for (String from : known()) {
      StringBuilder fields = new StringBuilder();
      for (String to : known()) {
        fields.append("%s %s;%n".formatted(qualified(to, "Target"), field(to)));
      }
      files.add(source(from, "Target", "public class Target {}"));
      files.add(source(from, "Needs", "class Needs {" + fields + "}"));
    }
    List<String> options = List.of("-proc:none", "-d", folder.toString());
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    assertThat(compiler.getTask(null, null, null, options, null, files).call()).isTrue();
    return Code.at(folder);
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

  private static JavaFileObject source(String part, String name, String body) {
    String home = part.isEmpty() ? ROOT : ROOT + "." + part;
    URI uri = URI.create("text:///" + home.replace('.', '/') + "/" + name + ".java");
    return new SimpleJavaFileObject(uri, JavaFileObject.Kind.SOURCE) {
      @Override
      public CharSequence getCharContent(boolean ignoreEncodingErrors) {
        return "package " + home + ";\n" + body;
      }
    };
  }
}
