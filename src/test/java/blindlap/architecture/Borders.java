package blindlap.architecture;

import fixture.blindlap.StartsEverything;
import fixture.blindlap.command.Answers;
import fixture.blindlap.desk.AsksForARandomOrder;
import fixture.blindlap.desk.CountsKeys;
import fixture.blindlap.desk.CountsKeysInAnArray;
import fixture.blindlap.desk.DrawsItself;
import fixture.blindlap.desk.HoldsAProperty;
import fixture.blindlap.desk.OnlySeals;
import fixture.blindlap.desk.PassesAKeyOn;
import fixture.blindlap.exchange.NotOnTheList;
import fixture.blindlap.paper.HelperSheet;
import fixture.blindlap.paper.RiderSheet;
import fixture.blindlap.paper.StarterSheet;
import fixture.blindlap.plan.ReadsTheOutsideWorld;
import fixture.blindlap.plan.TakesItsSources;
import fixture.blindlap.plan.UsesStats;
import fixture.blindlap.plot.LabelledCanvasSurface;
import fixture.blindlap.plot.MixesColours;
import fixture.blindlap.plot.PlainCanvasSurface;
import fixture.blindlap.review.ImportsWording;
import fixture.blindlap.screen.model.Background;
import fixture.blindlap.screen.model.HoldsAColour;
import fixture.blindlap.screen.model.HoldsAList;
import fixture.blindlap.screen.model.ImportsView;
import fixture.blindlap.screen.model.OpensAWindow;
import fixture.blindlap.screen.model.RideModel;
import fixture.blindlap.screen.view.ExecutesLater;
import fixture.blindlap.screen.view.ImportsModel;
import fixture.blindlap.screen.view.RidePane;
import fixture.blindlap.screen.view.RunsLater;
import fixture.blindlap.seal.AlsoDraws;
import fixture.blindlap.seal.DrawsOrders;
import fixture.blindlap.seal.OpenKey;
import fixture.blindlap.seal.Sealing;
import fixture.blindlap.session.AsksTheDatabase;
import fixture.blindlap.session.SessionState;
import fixture.blindlap.stats.ImportsPlan;
import fixture.blindlap.stats.Prints;
import fixture.blindlap.store.KeepsTheDatabase;
import fixture.blindlap.util.OddsAndEnds;
import fixture.blindlap.wording.ImportsReview;
import java.util.List;
import java.util.stream.Stream;

/** Every border between packages, with the examples that break it. */
final class Borders {
  private Borders() {}

  /** All of them. */
  static List<Border> all() {
    return Stream.of(packages(), libraries(), outsideWorld(), blindness())
        .flatMap(List::stream)
        .toList();
  }

  private static List<Border> packages() {
    return List.of(
        Border.of(
                "packages import only what the table allows, and no package is unknown to it",
                ImportTable::rule,
                ImportsPlan.class,
                OddsAndEnds.class,
                ImportsWording.class,
                ImportsView.class)
            .sparing(UsesStats.class, ImportsReview.class, StartsEverything.class),
        Border.of(
                "packages do not need each other in a circle",
                ImportTable::noCycles,
                ImportsWording.class,
                ImportsReview.class)
            .sparing(TakesItsSources.class),
        Border.of(
                "models and views do not need each other",
                ImportTable::noScreenCycles,
                ImportsView.class,
                ImportsModel.class)
            .sparing(HoldsAList.class));
  }

  private static List<Border> libraries() {
    return List.of(
        Border.of(
                "JavaFX is seen only by the screen and the canvas surfaces of plot",
                LibraryBorders::javaFx,
                HoldsAProperty.class,
                MixesColours.class)
            .sparing(PlainCanvasSurface.class, HoldsAList.class),
        Border.of(
                "the scene graph is seen only by views, the application class and canvas surfaces",
                LibraryBorders::sceneGraph,
                HoldsAColour.class,
                MixesColours.class)
            .sparing(PlainCanvasSurface.class, RunsLater.class),
        Border.of(
                "canvas surfaces draw and make no controls",
                LibraryBorders::canvasOnly,
                LabelledCanvasSurface.class)
            .sparing(PlainCanvasSurface.class),
        Border.of(
                "models know properties and collections, and no window",
                LibraryBorders::models,
                OpensAWindow.class,
                HoldsAColour.class)
            .sparing(HoldsAList.class, Background.class),
        Border.of(
                "work goes back to the thread of the window through Background alone",
                LibraryBorders::runLater,
                RunsLater.class,
                ExecutesLater.class)
            .sparing(Background.class),
        Border.of(
                "the database is seen only by the store",
                LibraryBorders::database,
                AsksTheDatabase.class)
            .sparing(KeepsTheDatabase.class));
  }

  private static List<Border> outsideWorld() {
    return List.of(
        Border.of(
                "clock, randomness and environment are handed in by the composition root",
                OutsideWorld::sources,
                ReadsTheOutsideWorld.class)
            .sparing(TakesItsSources.class, StartsEverything.class),
        Border.of(
                "standard streams and the end of the process belong to commands",
                OutsideWorld::streams,
                Prints.class)
            .sparing(Answers.class, StartsEverything.class));
  }

  private static List<Border> blindness() {
    return List.of(
        Border.of(
                "a drawn order is held only by the seal package and classes with a reason in"
                    + " Blindness.MAY_NAME_THE_KEY",
                root -> Blindness.shortList(root, Blindness.MAY_NAME_THE_KEY.keySet()),
                NotOnTheList.class,
                PassesAKeyOn.class,
                CountsKeys.class,
                CountsKeysInAnArray.class,
                RideModel.class)
            .sparing(SessionState.class, Sealing.class, OpenKey.class, OnlySeals.class),
        Border.of(
                "rider and starter pages never come near a drawn order",
                Blindness::riderPages,
                RideModel.class,
                RidePane.class,
                RiderSheet.class,
                StarterSheet.class)
            .sparing(HelperSheet.class),
        Border.of(
                "the order to be ridden is drawn only behind the sealing",
                Blindness::drawing,
                DrawsItself.class)
            .sparing(OnlySeals.class, Sealing.class),
        Border.of(
                "within the seal package only the sealing draws",
                Blindness::oneDoor,
                AlsoDraws.class)
            .sparing(Sealing.class, DrawsOrders.class),
        Border.of(
                "random orders for reference sets are asked for by numbers and plans only",
                Blindness::randomOrders,
                AsksForARandomOrder.class)
            .sparing(UsesStats.class));
  }
}
