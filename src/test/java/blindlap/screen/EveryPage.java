package blindlap.screen;

import static org.assertj.core.api.Assertions.catchThrowableOfType;

import blindlap.desk.Desk;
import blindlap.desk.HelperDay;
import blindlap.desk.HelperDays;
import blindlap.desk.OddDay;
import blindlap.desk.OneStints;
import blindlap.desk.SafeKeeping;
import blindlap.exchange.QuarryTrail;
import blindlap.screen.alone.AloneModel;
import blindlap.screen.alone.AloneView;
import blindlap.screen.book.KeepingModel;
import blindlap.screen.book.TroubleModel;
import blindlap.screen.book.TroublePage;
import blindlap.screen.friend.FriendModel;
import blindlap.screen.friend.FriendPage;
import blindlap.screen.onestint.OneStintModel;
import blindlap.screen.onestint.OneStintPage;
import blindlap.screen.onestint.RiderSawView;
import blindlap.screen.part.Background;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.screen.plan.PlanModel;
import blindlap.screen.plan.PlanPage;
import blindlap.screen.recording.RecordingModel;
import blindlap.screen.recording.RecordingPage;
import blindlap.screen.ride.RideModel;
import blindlap.screen.ride.RidePage;
import blindlap.screen.ride.RideWays;
import blindlap.screen.swap.SwapModel;
import blindlap.screen.swap.SwapPage;
import blindlap.session.NotebookException;
import blindlap.session.day.SessionId;
import blindlap.store.SqliteFiles;
import blindlap.store.SqliteNotebook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.TitledPane;
import javafx.scene.layout.Pane;

/**
 * Walks every page there is at many moments, on notebooks that hold in every text that was ever
 * typed what a screen would act on.
 */
final class EveryPage {
  /** Looks at a page. */
  interface Looker {
    /**
     * @param moment where the walk is
     * @param odd how many odd texts are shown at least
     */
    void look(Scene scene, String moment, int odd);
  }

  private final Path folder;
  private final Looker looker;

  /**
   * @param folder for the notebooks
   */
  EveryPage(Path folder, Looker looker) {
    this.folder = folder;
    this.looker = looker;
  }

  /** Walks all of them. */
  void walk() throws IOException {
    thePagesOfTheWindow();
    thePagesOfTheDayAtEveryMoment();
    whatAFriendDoesAndARiderAlone();
    aDraftFromAnOldPlanOnItsWayToTheCommit();
    aNotebookThatCannotBeOpened();
  }

  private void look(Scene scene, String moment) {
    look(scene, moment, 0);
  }

  private void look(Scene scene, String moment, int odd) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    looker.look(scene, moment, odd);
  }

  private Pages pages(Desk desk, Shell shell, Look look) {
    SafeKeeping safe =
        new SafeKeeping(
            new SqliteFiles(desk.clock(), () -> new byte[16]), folder.resolve("odd.blindlap"));
    return new Pages(
        desk,
        shell,
        look,
        Background.immediate(),
        System::nanoTime,
        new KeepingModel(desk.exchange(safe), safe, Background.immediate()),
        java.util.Optional.empty(),
        java.util.Optional.of(new blindlap.phone.FakeMaker()));
  }

  static Scene scene(Look look, Parent page) {
    Scene scene = new Scene(page, 1280, 2000);
    look.dress(scene);
    return scene;
  }

  private void thePagesOfTheWindow() {
    try (Desk desk = OddDay.desk(folder.resolve("odd.blindlap"))) {
      List<SessionId> days = new ArrayList<>();
      for (OddDay.Gone gone : OddDay.Gone.values()) {
        days.add(OddDay.write(desk, gone).id());
      }
      OddDay.another(desk);
      desk.trails().keep(QuarryTrail.trail("Quarry\u202E loop", 10, 690));
      desk.profiles().keep("Fast\u202E and steep: lap\u202E time, mass");
      desk.profiles().keep("Fast\u202E and steep: lap\u202E time");
      Window.run(
          () -> {
            Look look = new Look();
            Shell shell = new Shell();
            Pages maker = pages(desk, shell, look);
            Scene scene = scene(look, new ShellView(look, shell, maker.makers(), List.of("odd")));
            look(scene, "Notebook", 1);
            new BookDoors(scene, this::look).walk();
            for (SessionId day : days) {
              shell.readPlan(day);
              scene
                  .getRoot()
                  .lookupAll(".titled-pane")
                  .forEach(pane -> ((TitledPane) pane).setExpanded(true));
              look(scene, "committed plan of " + day, 1);
              for (Shell.Page page : Shell.Page.values()) {
                shell.open(page, day);
                look(scene, page + " of " + day);
              }
            }
            shell.open(Shell.Page.RIDE, days.get(0));
            buttons(scene, "Phones: off").fire();
            look(scene, "Phones");
            shell.go(Shell.Page.TRAIL);
            look(scene, "Trail", 1);
            shell.open(Shell.Page.REVIEW, days.get(2));
            look(scene, "blind review", 1);
            shell.open(Shell.Page.REVIEW, days.get(3));
            look(scene, "Review", 11);
            maker.closing();
            scene.setRoot(new Pane());
          });
    }
  }

  private void thePagesOfTheDayAtEveryMoment() {
    try (Desk desk = OddDay.desk(folder.resolve("day.blindlap"))) {
      OddDay.Old old = OddDay.write(desk, OddDay.Gone.COMMITTED);
      Window.run(
          () -> {
            swap(desk, old);
            ride(desk, old);
            oneStint(desk, old);
          });
    }
  }

  private void swap(Desk desk, OddDay.Old old) {
    Look look = new Look();
    SwapModel swap =
        new SwapModel(
            desk.helperDays(),
            desk.riderDays(),
            desk.notebook()::dataVersion,
            Background.immediate(),
            desk.clock(),
            () -> 0);
    swap.open(old.id());
    Scene scene = scene(look, new SwapPage(look, swap, () -> {}));
    look(scene, "Swap, phrase");
    swap.phrase(old.phrase());
    swap.choosePin("4711");
    look(scene, "Swap, not begun");
    swap.work().begin();
    look(scene, "Swap, at the bike", 1);
    buttons(scene, "Something happened").fire();
    look(scene, "Swap, events");
    scene.setRoot(new Pane());
  }

  private void oneStint(Desk desk, OddDay.Old old) {
    HelperDays.Opened opened =
        desk.helperDays().open(desk.sessions().state(old.id()).orElseThrow(), old.phrase());
    HelperDay day = ((HelperDays.Opened.Day) opened).day();
    OneStints.Made made = desk.oneStints().make(day, desk.sessions().state(old.id()).orElseThrow());
    OneStints.Slip slip = ((OneStints.Made.Slips) made).slips().get(0);
    OneStintModel model =
        new OneStintModel(
            desk.oneStints(), desk.sessions(), Background.immediate(), () -> 0, () -> {});
    model.open(old.id());
    Look look = new Look();
    Scene scene = scene(look, new OneStintPage(look, model, new Pane(), () -> {}));
    model.begin();
    look(scene, "one stint, asked");
    model.show("P. Wier", String.valueOf(slip.stint()), slip.words().text());
    look(scene, "one stint, in sight", 2);
    model.hide();
    look(scene, "one stint, gone");
    scene.setRoot(new Pane());
    RidePage rides = new RidePage(look, ride(desk, old.id()), () -> {});
    rides.ask(new RiderSawView(look, model));
    look(scene(look, rides), "Ride, did the rider see");
  }

  private void ride(Desk desk, OddDay.Old old) {
    Look look = new Look();
    RideModel ride = ride(desk, old.id());
    Scene scene = scene(look, new RidePage(look, ride, () -> {}));
    look(scene, "Ride, waiting");
    ride.handedOver();
    while (ride.sheetProperty().get().lap() == null) {
      ride.warmUpRidden();
      look(scene, "Ride, warmed up");
      ride.handedOver();
    }
    look(scene, "Ride, sheet", 1);
    buttons(scene, "Something happened").fire();
    look(scene, "Ride, events");
    ride.keyIn().open(old.id());
    look(scene, "key-in");
    RecordingModel recording =
        new RecordingModel(desk.sessions(), desk.recordings(), Background.immediate());
    recording.open(old.id());
    scene.setRoot(new RecordingPage(look, recording, new NoDialogs(), () -> {}, () -> 0));
    look(scene, "Recording");
    scene.setRoot(new Pane());
  }

  static Button buttons(Scene scene, String words) {
    return scene.getRoot().lookupAll(".button").stream()
        .filter(node -> node instanceof Button b && b.getText().startsWith(words))
        .map(Button.class::cast)
        .findFirst()
        .orElseThrow(() -> new AssertionError("there is no button " + words));
  }

  private void aDraftFromAnOldPlanOnItsWayToTheCommit() {
    try (Desk desk = OddDay.desk(folder.resolve("draft.blindlap"))) {
      OddDay.Old old = OddDay.write(desk, OddDay.Gone.COMMITTED);
      Window.run(
          () -> {
            Look look = new Look();
            PlanModel model = Models.plan(desk, new Shell(), Background.immediate(), 0);
            Scene scene = scene(look, new PlanPage(look, model, new NoDialogs()));
            model.copies().startFrom(old.id());
            look(scene, "Plan", 1);
            model.commit().begin();
            look(scene, "commit");
            scene.setRoot(new Pane());
          });
    }
  }

  /** Its folder may have a name that no screen should act on. */
  private void aNotebookThatCannotBeOpened() throws IOException {
    Path odd = Files.createDirectory(folder.resolve("rides\u0007\u202E"));
    Path file = Files.write(odd.resolve("odd.blindlap"), new byte[8192]);
    SqliteFiles files = new SqliteFiles(java.time.Clock.systemUTC(), () -> new byte[16]);
    NotebookException why =
        catchThrowableOfType(
            NotebookException.class,
            () -> SqliteNotebook.open(file, new byte[16], java.time.Instant.EPOCH).close());
    Window.run(
        () -> {
          TroubleModel model =
              TroubleModel.of(new SafeKeeping(files, file), why, Background.immediate(), path -> {})
                  .orElseThrow();
          Look look = new Look();
          Scene scene = scene(look, new TroublePage(look, model, new NoDialogs(), () -> {}));
          look(scene, "trouble", 1);
          model.recover(odd.resolve("saved.blindlap"));
          look(scene, "trouble, saved");
          scene.setRoot(new Pane());
        });
  }

  private void whatAFriendDoesAndARiderAlone() {
    try (Desk desk = OddDay.desk(folder.resolve("friend.blindlap"))) {
      SessionId masked = OddDay.masked(desk);
      OddDay.Old prepared = OddDay.prepared(desk);
      Window.run(
          () -> {
            masks(desk, masked);
            units(desk, prepared);
            alone(desk, prepared.id());
          });
    }
  }

  private static FriendModel friend(Desk desk, SessionId session) {
    FriendModel friend =
        new FriendModel(
            desk.aloneDays(),
            desk.helperDays(),
            desk.masks(),
            desk.clock(),
            Background.immediate());
    friend.open(session);
    return friend;
  }

  private static Scene friend(FriendModel model) {
    Look look = new Look();
    return scene(look, new FriendPage(look, model, new Pane(), () -> {}, () -> {}));
  }

  private void masks(Desk desk, SessionId session) {
    FriendModel model = friend(desk, session);
    Scene scene = friend(model);
    look(scene, "friend, PIN", 1);
    model.begin("4711");
    look(scene, "friend, which label on which part", 2);
    model.masks().choose(List.of(1, 0));
    look(scene, "friend, labels and phrase", 2);
    model.masks().noted();
    look(scene, "friend, two words");
    scene.setRoot(new Pane());
  }

  private void units(Desk desk, OddDay.Old old) {
    FriendModel model = friend(desk, old.id());
    Scene scene = friend(model);
    model.begin("4711");
    look(scene, "friend, phrase");
    model.phrase(old.phrase());
    model.units().measured(0, 1, "40");
    look(scene, "friend, units", 9);
    scene.setRoot(new Pane());
  }

  private void alone(Desk desk, SessionId session) {
    Look look = new Look();
    RideModel ride = ride(desk, session);
    AloneModel alone =
        new AloneModel(desk.aloneDays(), Background.immediate(), desk.clock(), () -> 0, ride::tick);
    alone.open(session);
    Scene scene =
        scene(
            look,
            new RidePage(
                look,
                ride,
                new AloneView(look, alone),
                () -> {},
                new RideWays(() -> {}, () -> {})));
    look(scene, "alone, a unit to mount", 1);
    scene.setRoot(new Pane());
  }

  private static RideModel ride(Desk desk, SessionId session) {
    RideModel ride =
        new RideModel(
            desk.riderDays(),
            desk.notebook()::dataVersion,
            Background.immediate(),
            desk.clock(),
            () -> 0);
    ride.open(session);
    return ride;
  }
}
