package blindlap.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Set;

/** Which library may be seen from where. */
final class LibraryBorders {
  /** Two enums that a canvas takes, which live among the shapes. */
  private static final Set<String> LINE_ENDS =
      Set.of("javafx.scene.shape.StrokeLineCap", "javafx.scene.shape.StrokeLineJoin");

  /** How the names of classes end that may hold nodes. */
  private static final Set<String> NODES = Set.of("View", "Page", "Pane");

  private LibraryBorders() {}

  /** JavaFX belongs to the screen and to the drawing surfaces on a canvas. */
  static ArchRule javaFx(String root) {
    return noClasses()
        .that(resideInAPackage(root + ".screen..").or(canvasSurface(root)).negate())
        .should()
        .dependOnClassesThat(resideInAPackage("javafx.."));
  }

  /** The scene graph belongs to views, pages, panes, shared widgets and the window itself. */
  static ArchRule sceneGraph(String root) {
    return noClasses()
        .that(showsNodes(root).or(canvasSurface(root)).negate())
        .should()
        .dependOnClassesThat(resideInAPackage("javafx.scene.."));
  }

  /** A drawing surface sees of the scene graph only what it draws on and with. */
  static ArchRule canvasOnly(String root) {
    DescribedPredicate<JavaClass> canvas =
        resideInAnyPackage(
                "javafx.scene.canvas",
                "javafx.scene.paint",
                "javafx.scene.text",
                "javafx.scene.image")
            .or(describe("line ends", type -> LINE_ENDS.contains(type.getName())));
    return noClasses()
        .that(canvasSurface(root))
        .should()
        .dependOnClassesThat(resideInAPackage("javafx.scene..").and(canvas.negate()));
  }

  /** Models know properties and collections, and no window. */
  static ArchRule models(String root) {
    DescribedPredicate<JavaClass> properties =
        resideInAnyPackage(
            "javafx.beans..",
            "javafx.collections..",
            "javafx.util..",
            "javafx.concurrent",
            "javafx.event");
    return noClasses()
        .that(
            resideInAPackage(root + ".screen..")
                .and(showsNodes(root).negate())
                .and(background(root).negate()))
        .should()
        .dependOnClassesThat(resideInAPackage("javafx..").and(properties.negate()));
  }

  /** Work goes back to the window's thread through one class. */
  static ArchRule runLater(String root) {
    return noClasses()
        .that(background(root).negate())
        .should()
        .accessTargetWhere(describe("Platform.runLater is meant", LibraryBorders::runsLater));
  }

  /** The database belongs to the store. */
  static ArchRule database(String root) {
    return noClasses()
        .that(resideInAPackage(root + ".store..").negate())
        .should()
        .dependOnClassesThat(
            resideInAnyPackage("java.sql..", "javax.sql..", "org.sqlite..", "org.jdbi.."));
  }

  private static DescribedPredicate<JavaClass> canvasSurface(String root) {
    return describe(
        "canvas surfaces of plot",
        type ->
            Code.part(root, type).equals("plot.surface")
                && Code.topLevel(root, type).endsWith("CanvasSurface"));
  }

  /** A page's own classes that show something say so at the end of their names. */
  private static DescribedPredicate<JavaClass> showsNodes(String root) {
    return describe(
        "views, pages, panes, shared widgets and the window",
        type -> {
          String room = Code.part(root, type);
          String name = Code.topLevel(root, type);
          return room.equals("screen")
              || room.equals("screen.part")
              || room.startsWith("screen.") && NODES.stream().anyMatch(name::endsWith);
        });
  }

  private static DescribedPredicate<JavaClass> background(String root) {
    return describe(
        "the background of the models",
        type -> Code.topLevel(root, type).equals("screen.part.Background"));
  }

  private static boolean runsLater(JavaAccess<?> access) {
    return access.getTargetOwner().getName().equals("javafx.application.Platform")
        && access.getTarget().getName().equals("runLater");
  }
}
