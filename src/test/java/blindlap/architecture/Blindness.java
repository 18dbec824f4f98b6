package blindlap.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget;
import com.tngtech.archunit.core.domain.AccessTarget.FieldAccessTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaType;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** Who may hold a drawn order. Class names are relative to the root package. */
final class Blindness {
  /** The forms in which a drawn order leaves the seal package. */
  static final Set<String> KEY_TYPES =
      Set.of("seal.OpenKey", "seal.HelperSchedule", "seal.KeySheet", "seal.SealedPart");

  /** What carries such a form or opens it: of no concern to a rider page either. */
  static final Set<String> NEAR_THE_KEY =
      Set.of(
          "seal.Sealing",
          "seal.Sealed",
          "seal.Opening",
          "seal.SheetReading",
          "seal.HelperPhrase",
          "seal.HelperLock",
          "review.DayRecord",
          "review.Finding",
          "desk.HelperDay",
          "desk.HelperDays",
          "session.HelperEntry",
          "screen.model.SwapSheet");

  /**
   * The classes outside the seal package that may hold a drawn order, each with the reason. Nested
   * types are covered by the class around them. Rider pages can never be put on this list.
   */
  static final Map<String, String> MAY_NAME_THE_KEY =
      Map.ofEntries(
          Map.entry("command.HelperCommand", "prints the helper's schedule, against the phrase"),
          Map.entry(
              "command.UnsealCommand",
              "prints the ridden order of the session it has just unsealed"),
          Map.entry("desk.Demo", "plays the helper of an invented day"),
          Map.entry("desk.SampleSession", "plays a helper who fits an invented stint wrongly"),
          Map.entry("desk.HelperDay", "tells the helper what to fit before each stint"),
          Map.entry("desk.Keys", "opens the key for the helper, and unseals"),
          Map.entry("exchange.FactReader", "reads the key back from the text of SealOpened"),
          Map.entry("exchange.FactWriter", "writes the key into the text of SealOpened"),
          Map.entry("desk.Sheets", "hands the helper's schedule and key to the helper's sheet"),
          Map.entry("paper.HelperSheet", "prints the schedule and the key for the helper"),
          Map.entry("review.DayRecord", "hands the opened key to the analysis"),
          Map.entry("session.Fact", "SealOpened records the key that was opened"),
          Map.entry("session.LifeCommands", "accepts the opened key when a session is unsealed"),
          Map.entry("session.SessionState", "gives out the opened key, once the seal is open"));

  private static final Set<String> RIDER_PAGES =
      Set.of("screen.view.Ride", "screen.model.Ride", "paper.Rider", "paper.Starter");

  private Blindness() {}

  /** A drawn order is held only by the seal package and the classes of the list. */
  static ArchRule shortList(String root, Set<String> list) {
    return classes()
        .that(
            describe(
                "are neither of the seal package nor on the list",
                type -> !inSeal(root, type) && !list.contains(Code.topLevel(root, type))))
        .should(notName("a drawn order", root, KEY_TYPES));
  }

  /** Whatever the list says: what a rider or starter looks at never comes near a drawn order. */
  static ArchRule riderPages(String root) {
    Set<String> all = new HashSet<>(KEY_TYPES);
    all.addAll(NEAR_THE_KEY);
    return classes()
        .that(describe("are made for riders and starters", type -> isRiderPage(root, type)))
        .should(notName("a drawn order or what opens it", root, all))
        .allowEmptyShould(true); // no page before screen and paper have one
  }

  /** The drawing and its stream are reached through the sealing only. */
  static ArchRule drawing(String root) {
    return noClasses()
        .that(resideInAPackage(root + ".seal..").negate())
        .should()
        .dependOnClassesThat(
            describe("draw the order to be ridden", type -> isDrawing(root, type)));
  }

  /** Inside the seal package, too, only the sealing draws. */
  static ArchRule oneDoor(String root) {
    return noClasses()
        .that(
            resideInAPackage(root + ".seal..")
                .and(describe("do not seal", type -> !isSealing(root, type)))
                .and(describe("do not draw", type -> !isDrawing(root, type))))
        .should()
        .accessTargetWhere(
            describe(
                "an order is drawn",
                (JavaAccess<?> access) ->
                    access.getTarget() instanceof CodeUnitAccessTarget
                        && isDrawing(root, access.getTargetOwner())))
        .allowEmptyShould(true); // no such class before seal has one
  }

  /** Orders drawn at random for reference sets and simulations are the business of numbers. */
  static ArchRule randomOrders(String root) {
    return noClasses()
        .that(resideInAnyPackage(root + ".stats..", root + ".plan..").negate())
        .should()
        .accessTargetWhere(
            describe(
                "a random order is asked of the admissible ones",
                (JavaAccess<?> access) ->
                    access.getTargetOwner().getName().equals(root + ".stats.Assignments")
                        && access.getTarget().getName().equals("random")));
  }

  /** True if the class names a form of the key, or handles one that another class hands it. */
  static boolean namesTheKey(String root, JavaClass type) {
    return !mentions(type, part -> isAnyOf(KEY_TYPES, root, part)).isEmpty();
  }

  private static ArchCondition<JavaClass> notName(String what, String root, Set<String> names) {
    return new ArchCondition<>("not hold " + what) {
      @Override
      public void check(JavaClass type, ConditionEvents events) {
        List<String> found = mentions(type, part -> isAnyOf(names, root, part));
        if (!found.isEmpty()) {
          String more =
              found.size() == 1 ? "" : " and in %d more places".formatted(found.size() - 1);
          events.add(SimpleConditionEvent.violated(type, found.get(0) + more));
        }
      }
    };
  }

  private static List<String> mentions(JavaClass type, Predicate<JavaClass> secret) {
    List<String> found = new ArrayList<>();
    type.getDirectDependenciesFromSelf().stream()
        .filter(dependency -> secret.test(dependency.getTargetClass()))
        .forEach(dependency -> found.add(dependency.getDescription()));
    // A key passed on unnamed (a call as an argument of another) leaves no dependency on its type.
    type.getAccessesFromSelf().stream()
        .filter(access -> handled(access).anyMatch(secret))
        .forEach(access -> found.add(access.getDescription()));
    return found;
  }

  private static Stream<JavaClass> handled(JavaAccess<?> access) {
    Stream<JavaType> types =
        access.getTarget() instanceof FieldAccessTarget field
            ? Stream.concat(
                Stream.of(field.getRawType()),
                field.resolveMember().stream().map(JavaField::getType))
            : handledByCall((CodeUnitAccessTarget) access.getTarget());
    return types.flatMap(Blindness::involved);
  }

  private static Stream<JavaClass> involved(JavaType type) {
    // An array of a library's type, which is not read, cannot be asked for its parts.
    return type instanceof JavaClass plain
        ? Stream.of(plain)
        : type.getAllInvolvedRawTypes().stream();
  }

  private static Stream<JavaType> handledByCall(CodeUnitAccessTarget call) {
    Stream<JavaType> raw =
        Stream.concat(Stream.of(call.getRawReturnType()), call.getRawParameterTypes().stream());
    Stream<JavaType> generic =
        call.resolveMember().stream().map(JavaCodeUnit.class::cast).flatMap(Blindness::signature);
    return Stream.concat(raw, generic);
  }

  private static Stream<JavaType> signature(JavaCodeUnit unit) {
    return Stream.concat(Stream.of(unit.getReturnType()), unit.getParameterTypes().stream());
  }

  private static boolean isAnyOf(Set<String> names, String root, JavaClass type) {
    return Code.under(root, type) && names.contains(Code.topLevel(root, type));
  }

  private static boolean inSeal(String root, JavaClass type) {
    return Code.part(root, type).equals("seal");
  }

  private static boolean isRiderPage(String root, JavaClass type) {
    String name = Code.topLevel(root, type);
    return RIDER_PAGES.stream().anyMatch(name::startsWith);
  }

  private static boolean isDrawing(String root, JavaClass type) {
    return Code.under(root, type)
        && (Code.topLevel(root, type).startsWith("seal.Draw")
            || Code.topLevel(root, type).equals("seal.OrderStream"));
  }

  private static boolean isSealing(String root, JavaClass type) {
    return Code.topLevel(root, type).equals("seal.Sealing");
  }
}
