package blindlap.architecture;

import fixture.blindlap.StartsEverything;
import fixture.blindlap.command.Answers;
import fixture.blindlap.command.HasADesk;
import fixture.blindlap.desk.AsksForARandomOrder;
import fixture.blindlap.desk.AsksForTheWholeDesk;
import fixture.blindlap.desk.CountsKeys;
import fixture.blindlap.desk.CountsKeysInAnArray;
import fixture.blindlap.desk.DrawsItself;
import fixture.blindlap.desk.HoldsAProperty;
import fixture.blindlap.desk.OnlySeals;
import fixture.blindlap.desk.PassesAKeyOn;
import fixture.blindlap.paper.PrintsForTheHelper;
import fixture.blindlap.paper.ride.PrintsASeal;
import fixture.blindlap.paper.ride.PrintsAState;
import fixture.blindlap.phone.ServesASealingWay;
import fixture.blindlap.phone.ServesAState;
import fixture.blindlap.plan.CarriesAKey;
import fixture.blindlap.plan.ReadsTheOutsideWorld;
import fixture.blindlap.plan.TakesItsSources;
import fixture.blindlap.plan.UsesStats;
import fixture.blindlap.plot.TakesWhatItIsHanded;
import fixture.blindlap.plot.surface.HandsAPlanOut;
import fixture.blindlap.plot.surface.LabelledCanvasSurface;
import fixture.blindlap.plot.surface.MixesColours;
import fixture.blindlap.plot.surface.PlainCanvasSurface;
import fixture.blindlap.review.ImportsWording;
import fixture.blindlap.review.ReadsASchedule;
import fixture.blindlap.review.ReadsAnOpenedKey;
import fixture.blindlap.ride.KnowsTheDay;
import fixture.blindlap.ride.TakesASealingWay;
import fixture.blindlap.screen.book.ExecutesLater;
import fixture.blindlap.screen.book.HoldsAColour;
import fixture.blindlap.screen.book.HoldsAList;
import fixture.blindlap.screen.book.OpensAWindow;
import fixture.blindlap.screen.book.RunsLater;
import fixture.blindlap.screen.book.ShowsNodesView;
import fixture.blindlap.screen.book.ViewOfALabel;
import fixture.blindlap.screen.part.Background;
import fixture.blindlap.screen.ride.ShowsTheKeyPage;
import fixture.blindlap.screen.ride.ShowsTheScheduleView;
import fixture.blindlap.seal.AlsoDraws;
import fixture.blindlap.seal.Draw;
import fixture.blindlap.seal.OpenKey;
import fixture.blindlap.seal.Sealing;
import fixture.blindlap.session.AsksTheDatabase;
import fixture.blindlap.session.SessionState;
import fixture.blindlap.stats.order.ImportsPlan;
import fixture.blindlap.stats.order.Prints;
import fixture.blindlap.store.KeepsTheDatabase;
import fixture.blindlap.store.NotOnTheList;
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
                "rooms have to do only with what the table allows, and no room is unknown to it",
                ImportTable::rule,
                ImportsPlan.class,
                OddsAndEnds.class,
                ImportsWording.class,
                HandsAPlanOut.class,
                TakesWhatItIsHanded.class,
                CarriesAKey.class)
            .sparing(
                UsesStats.class, ImportsReview.class, KnowsTheDay.class, StartsEverything.class),
        Border.of(
                "rooms do not need each other in a circle",
                ImportTable::noCycles,
                ImportsWording.class,
                ImportsReview.class)
            .sparing(TakesItsSources.class),
        Border.of(
                "use cases and pages are given what they need, not the whole desk",
                WholeDesk::rule,
                AsksForTheWholeDesk.class)
            .sparing(HasADesk.class));
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
                "the scene graph is seen only by views, pages, panes, shared widgets, the window"
                    + " and canvas surfaces",
                LibraryBorders::sceneGraph,
                HoldsAColour.class,
                ViewOfALabel.class,
                MixesColours.class)
            .sparing(PlainCanvasSurface.class, ShowsNodesView.class, RunsLater.class),
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
                ReadsASchedule.class,
                PassesAKeyOn.class,
                CountsKeys.class,
                CountsKeysInAnArray.class,
                ShowsTheKeyPage.class)
            .sparing(
                SessionState.class,
                Sealing.class,
                OpenKey.class,
                OnlySeals.class,
                ReadsAnOpenedKey.class),
        Border.of(
                "the blind side has to do with itself and what is open to all",
                Blindness::blindSide,
                ShowsTheKeyPage.class,
                ShowsTheScheduleView.class,
                PrintsASeal.class,
                PrintsAState.class,
                ServesAState.class)
            .sparing(PrintsForTheHelper.class, KnowsTheDay.class),
        Border.of(
                "the blind side leads to no type of the key's side, however far one follows",
                Blindness::blindToTheEnd,
                TakesASealingWay.class,
                ServesASealingWay.class,
                ShowsTheKeyPage.class)
            .sparing(KnowsTheDay.class),
        Border.of(
                "the order to be ridden is drawn only behind the sealing",
                Blindness::drawing,
                DrawsItself.class)
            .sparing(OnlySeals.class, Sealing.class),
        Border.of(
                "within the seal package only the sealing draws",
                Blindness::oneDoor,
                AlsoDraws.class)
            .sparing(Sealing.class, Draw.class),
        Border.of(
                "random orders for reference sets are asked for by numbers and plans only",
                Blindness::randomOrders,
                AsksForARandomOrder.class)
            .sparing(UsesStats.class));
  }
}
