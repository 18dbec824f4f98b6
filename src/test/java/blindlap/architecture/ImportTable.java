package blindlap.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import com.tngtech.archunit.library.dependencies.SliceAssignment;
import com.tngtech.archunit.library.dependencies.SliceIdentifier;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Which room may import which. Rooms are named relative to the root; the root is "". */
final class ImportTable {
  private static final Path DECISION = Path.of("docs/adr/0001-packages-and-borders.md");

  /** The rows of the table in the decision record: there is no second one. */
  static final Map<String, Set<String>> ROWS = rows();

  private ImportTable() {}

  private static Map<String, Set<String>> rows() {
    try {
      return rows(Files.readAllLines(DECISION));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The rows of a table with a room in the first column and what it may import in the last. */
  static Map<String, Set<String>> rows(List<String> lines) {
    Map<String, Set<String>> rows = new LinkedHashMap<>();
    for (String line : lines) {
      String[] cells = line.split("\\|", -1);
      if (cells.length == 5 && cells[1].startsWith(" `")) {
        rows.put(bare(cells[1]), rooms(cells[3]));
      }
    }
    if (rows.isEmpty()) {
      throw new IllegalStateException("no row of the import table was found in " + DECISION);
    }
    return Map.copyOf(rows);
  }

  private static Set<String> rooms(String cell) {
    return Arrays.stream(cell.split(","))
        .map(ImportTable::bare)
        .filter(name -> !name.equals("nobody"))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static String bare(String cell) {
    String name = cell.replace('`', ' ').strip();
    return name.equals("blindlap") ? "" : name;
  }

  /** True if the table lets one room import another. */
  static boolean allows(String from, String to) {
    return from.equals(to)
        || ROWS.getOrDefault(from, Set.of()).stream().anyMatch(name -> covers(name, to));
  }

  private static boolean covers(String name, String room) {
    return name.endsWith(".*")
        ? room.startsWith(name.substring(0, name.length() - 1))
        : name.equals(room);
  }

  /**
   * Every class lives in a room of the table and has to do only with what its row allows: whether
   * it names a type, or one is handed through it by a parameter, a return, a field or a generic.
   */
  static ArchRule rule(String root) {
    return classes()
        .that()
        .resideInAPackage(root + "..")
        .should(
            new ArchCondition<>("live in a package of the table and import what its row allows") {
              @Override
              public void check(JavaClass type, ConditionEvents events) {
                checkRow(root, type, events);
              }
            });
  }

  private static void checkRow(String root, JavaClass type, ConditionEvents events) {
    String from = Code.part(root, type);
    if (!ROWS.containsKey(from)) {
      String message = "Class <%s> is in a package that is not in the table: %s";
      events.add(SimpleConditionEvent.violated(type, message.formatted(type.getName(), from)));
    }
    Handed.mentions(type, other -> Code.under(root, other) && !allows(from, Code.part(root, other)))
        .forEach(line -> events.add(SimpleConditionEvent.violated(type, line)));
  }

  /**
   * The same for import lines, which also catches what the compiler leaves no trace of: constants
   * and names in comments.
   *
   * @return one sentence for each import line that the table does not allow
   */
  static List<String> refusedImportLines(String root, Sources sources) {
    return sources.units().stream()
        .flatMap(
            unit -> {
              String from = part(root, unit.getPackageName().toString() + ".Any");
              return unit.getImports().stream()
                  .map(line -> line.getQualifiedIdentifier().toString())
                  .filter(name -> name.startsWith(root + "."))
                  .filter(name -> !allows(from, part(root, name)))
                  .map(name -> unit.getSourceFile().getName() + " imports " + name);
            })
        .toList();
  }

  /** The package of a qualified name, relative to the root: all before the first capital. */
  private static String part(String root, String name) {
    return name.substring(root.length() + 1).replaceFirst("(^|\\.)[A-Z*].*", "");
  }

  /** No two rooms need each other, not even by way of others. */
  static ArchRule noCycles(String root) {
    return slices()
        .assignedFrom(
            new SliceAssignment() {
              @Override
              public SliceIdentifier getIdentifierOf(JavaClass type) {
                return Code.under(root, type)
                    ? SliceIdentifier.of(type.getPackageName())
                    : SliceIdentifier.ignore();
              }

              @Override
              public String getDescription() {
                return "the rooms";
              }
            })
        .should()
        .beFreeOfCycles();
  }
}
