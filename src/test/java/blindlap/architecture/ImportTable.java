package blindlap.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** Which package may import which. Packages are named relative to the root; the root is "". */
final class ImportTable {
  /** The same table stands in docs/adr/0001-packages-and-borders.md; a test compares the two. */
  static final Map<String, Set<String>> ROWS = rows();

  /** Packages that must hold classes by now. Extend it when a package gets its first class. */
  static final List<String> PRESENT =
      List.of("", "exchange", "plan", "seal", "session", "stats", "store", "timing");

  private ImportTable() {}

  private static Map<String, Set<String>> rows() {
    Map<String, Set<String>> rows = new LinkedHashMap<>();
    rows.put("stats", Set.of());
    rows.put("timing", Set.of());
    rows.put("plan", Set.of("stats"));
    rows.put("seal", Set.of("plan", "stats"));
    rows.put("session", Set.of("plan", "seal", "timing"));
    rows.put("review", Set.of("stats", "plan", "seal", "session", "timing"));
    rows.put("wording", Set.of("stats", "plan", "seal", "session", "timing", "review"));
    rows.put("plot", Set.of("stats", "plan", "session", "review", "wording"));
    rows.put("exchange", Set.of("stats", "plan", "seal", "session", "timing", "review", "wording"));
    rows.put("paper", without(rows.keySet(), "paper"));
    rows.put("store", Set.of("plan", "seal", "session", "exchange"));
    rows.put("desk", without(rows.keySet(), "store"));
    rows.put(
        "screen.model",
        Set.of("desk", "stats", "plan", "seal", "session", "timing", "review", "wording", "plot"));
    rows.put("screen.view", Set.of("screen.model", "plot", "wording"));
    rows.put("screen", Set.of("screen.model", "screen.view", "desk", "plot", "wording"));
    rows.put("command", Set.of("desk", "stats", "plan", "seal", "session", "review", "wording"));
    rows.put("", without(rows.keySet(), ""));
    return rows;
  }

  private static Set<String> without(Set<String> packages, String left) {
    Set<String> rest = new TreeSet<>(packages);
    rest.remove(left);
    return rest;
  }

  /** True if the table lets one package import another. */
  static boolean allows(String from, String to) {
    return from.equals(to) || ROWS.getOrDefault(from, Set.of()).contains(to);
  }

  /** Every class lives in a package of the table and imports only what its row allows. */
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
    for (Dependency dependency : type.getDirectDependenciesFromSelf()) {
      JavaClass target = dependency.getTargetClass();
      if (Code.under(root, target) && !allows(from, Code.part(root, target))) {
        events.add(SimpleConditionEvent.violated(dependency, dependency.getDescription()));
      }
    }
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

  /** No two packages need each other, not even by way of others. */
  static ArchRule noCycles(String root) {
    return slices().matching(root + ".(*)..").should().beFreeOfCycles();
  }

  /** The same between the models and the views of the screen. */
  static ArchRule noScreenCycles(String root) {
    // The two packages come after the first numbers and sessions.
    return slices()
        .matching(root + ".screen.(*)..")
        .should()
        .beFreeOfCycles()
        .allowEmptyShould(true);
  }
}
