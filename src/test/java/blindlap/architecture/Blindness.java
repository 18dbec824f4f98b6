package blindlap.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Who may hold a drawn order. Class names are relative to the root package. */
final class Blindness {
  /** The forms in which a drawn order leaves the seal package. */
  static final Set<String> KEY_TYPES =
      Set.of(
          "seal.OpenKey",
          "seal.HelperSchedule",
          "seal.KeySheet",
          "seal.SealedPart",
          "seal.Cover",
          "seal.CoveredOrder",
          "seal.Masks");

  /**
   * Rooms that work on days whose seal is open: an opened key may be held there, and nothing else.
   */
  static final Set<String> AFTER_UNSEALING = Set.of("review", "exchange", "paper");

  /** What rider and starter see and do, and what it is written and drawn with. */
  static final Set<String> BLIND_SIDE =
      Set.of(
          "session.day",
          "wording.day",
          "desk.day",
          "ride",
          "phone",
          "paper.sheet",
          "paper.ride",
          "screen.part",
          "screen.ride",
          "screen.phones");

  /** What the blind side may have to do with beside itself. */
  static final Set<String> OPEN_TO_ALL = Set.of("fault", "timing", "plan", "plot", "plot.surface");

  /** What lies behind plans: numbers and arithmetic that no key ever enters. */
  private static final Set<String> BEHIND_PLANS =
      Set.of(
          "workshop",
          "stats.distribution",
          "stats.order",
          "stats.compare",
          "stats.noise",
          "stats.pool",
          "stats.power",
          "stats.tell");

  /** What draws the order. */
  private static final Set<String> DRAWING = Set.of("seal.Draw", "seal.OrderStream");

  /**
   * The classes outside the seal package that may hold a drawn order, each with the reason. Nested
   * types are covered by the class around them. The blind side can never be put on this list.
   */
  static final Map<String, String> MAY_NAME_THE_KEY =
      Map.ofEntries(
          Map.entry(
              "command.UnsealCommand",
              "prints the ridden order of the session it has just unsealed"),
          Map.entry("sample.Demo", "plays the helper of an invented day"),
          Map.entry("sample.AloneSample", "plays a friend who masks invented parts"),
          Map.entry("sample.SampleSession", "plays a helper who fits an invented stint wrongly"),
          Map.entry("screen.friend.FriendMasks", "shows a friend which label is on which part"),
          Map.entry("command.MasksCommand", "shows a friend which label is on which part"),
          Map.entry("desk.Committing", "covers the order that it has just drawn"),
          Map.entry("desk.Covers", "opens a covered order, a place at a time"),
          Map.entry("desk.MaskKeeping", "seals which label is on which part for a friend"),
          Map.entry("desk.Sessions", "hands the order to be covered on to the notebook"),
          Map.entry("session.MaskCommands", "asks whether labels are each on a setup of its own"),
          Map.entry(
              "session.OnePersonMeaning", "asks whether labels are each on a setup of its own"),
          Map.entry("store.CoverCheck", "holds kept covers against the plans of their sessions"),
          Map.entry("store.CoverRecovery", "saves covers of a damaged notebook"),
          Map.entry("session.Notebook", "keeps covered orders beside the record"),
          Map.entry("store.CoverTable", "wraps covered orders anew with every entry"),
          Map.entry("store.SqliteNotebook", "hands covered orders to and from their table"),
          Map.entry("desk.HelperDay", "tells the helper what to fit before each stint"),
          Map.entry("desk.Keys", "opens the key for the helper, and unseals"),
          Map.entry("desk.Sheets", "hands the helper's schedule and key to the helper's sheet"),
          Map.entry("paper.HelperSheet", "prints the schedule and the key for the helper"),
          Map.entry("paper.HelperRows", "the lines of that sheet, one for every stint"),
          Map.entry("paper.HelperKey", "the key at the end of that sheet"),
          Map.entry("session.Fact", "SealOpened records the key that was opened"),
          Map.entry("session.LifeCommands", "accepts the opened key when a session is unsealed"),
          Map.entry("session.SessionState", "gives out the opened key, once the seal is open"));

  private Blindness() {}

  /** A drawn order is held only by the seal package and the classes of the list. */
  static ArchRule shortList(String root, Set<String> list) {
    return classes()
        .that(
            describe(
                "are neither of the seal package nor on the list",
                type -> !inSeal(root, type) && !list.contains(Code.topLevel(root, type))))
        .should(
            new ArchCondition<>("not hold a drawn order") {
              @Override
              public void check(JavaClass type, ConditionEvents events) {
                Set<String> forbidden = new HashSet<>(KEY_TYPES);
                if (AFTER_UNSEALING.contains(Code.part(root, type))) {
                  forbidden.remove("seal.OpenKey");
                }
                List<String> found = Handed.mentions(type, part -> isAnyOf(forbidden, root, part));
                if (!found.isEmpty()) {
                  String more =
                      found.size() == 1 ? "" : " and in %d more places".formatted(found.size() - 1);
                  events.add(SimpleConditionEvent.violated(type, found.get(0) + more));
                }
              }
            });
  }

  /**
   * Whatever table and list say: the blind side has to do with itself and what is open to all, and
   * nothing else passes through its hands.
   */
  static ArchRule blindSide(String root) {
    return classes()
        .that(describe("are of the blind side", type -> isBlind(root, type)))
        .should(
            new ArchCondition<>(
                "have to do with nothing but the blind side and what is open to all") {
              @Override
              public void check(JavaClass type, ConditionEvents events) {
                Handed.mentions(type, other -> isBeyond(root, other, OPEN_TO_ALL))
                    .forEach(line -> events.add(SimpleConditionEvent.violated(type, line)));
              }
            });
  }

  /** However far one follows what it holds, asks for and answers: no type of the key's side. */
  static ArchRule blindToTheEnd(String root) {
    Set<String> open = new HashSet<>(OPEN_TO_ALL);
    open.addAll(BEHIND_PLANS);
    return classes()
        .that(describe("are of the blind side", type -> isBlind(root, type)))
        .should(
            new ArchCondition<>("lead to no type of the key's side") {
              @Override
              public void check(JavaClass type, ConditionEvents events) {
                List<String> way = Handed.wayTo(root, type, other -> isBeyond(root, other, open));
                if (!way.isEmpty()) {
                  String message = "Class <" + type.getName() + "> leads on: ";
                  events.add(
                      SimpleConditionEvent.violated(type, message + String.join(" > ", way)));
                }
              }
            });
  }

  private static boolean isBlind(String root, JavaClass type) {
    return BLIND_SIDE.contains(Code.part(root, type));
  }

  private static boolean isBeyond(String root, JavaClass type, Set<String> open) {
    return Code.under(root, type) && !isBlind(root, type) && !open.contains(Code.part(root, type));
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
                        && isDrawing(root, access.getTargetOwner())));
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
                    access.getTargetOwner().getName().equals(root + ".stats.order.Assignments")
                        && access.getTarget().getName().equals("random")));
  }

  /** True if the class names a form of the key, or handles one that another class hands it. */
  static boolean namesTheKey(String root, JavaClass type) {
    return !Handed.mentions(type, part -> isAnyOf(KEY_TYPES, root, part)).isEmpty();
  }

  private static boolean isAnyOf(Set<String> names, String root, JavaClass type) {
    return Code.under(root, type) && names.contains(Code.topLevel(root, type));
  }

  private static boolean inSeal(String root, JavaClass type) {
    return Code.part(root, type).equals("seal");
  }

  private static boolean isDrawing(String root, JavaClass type) {
    return Code.under(root, type) && DRAWING.contains(Code.topLevel(root, type));
  }

  private static boolean isSealing(String root, JavaClass type) {
    return Code.topLevel(root, type).equals("seal.Sealing");
  }
}
